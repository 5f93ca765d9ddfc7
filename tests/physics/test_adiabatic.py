"""Short-time heating: the equation both ways, and its five seconds."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import adiabatic as ad

K_PVC = 115e6


@given(st.floats(0.5e-6, 120e-6), st.floats(0.01, 5.0))
def test_least_area_and_withstand_time_undo_each_other(area: float, time: float) -> None:
    fault = K_PVC * area / time**0.5
    assert ad.least_area(fault, time, K_PVC) == pytest.approx(area)
    assert ad.withstand_time(area, K_PVC, fault * 1.000001) == pytest.approx(time, rel=1e-5)


@given(st.floats(100, 10_000), st.floats(100, 10_000))
def test_a_larger_fault_is_stood_for_a_shorter_time(one: float, other: float) -> None:
    small, large = sorted((one, other))
    assert ad.withstand_time(1e-6, K_PVC, large) <= ad.withstand_time(1e-6, K_PVC, small)


def test_beyond_five_seconds_there_is_no_number() -> None:
    area = 10e-6
    assert ad.withstand_time(area, K_PVC, K_PVC * area / 4.99**0.5) == pytest.approx(4.99)
    with pytest.raises(OutOfRange, match=r"withstand time, s, 5\.01 is outside 0 to 5"):
        ad.withstand_time(area, K_PVC, K_PVC * area / 5.01**0.5)
    assert ad.least_area(100, 5.0, K_PVC) > 0
    with pytest.raises(OutOfRange, match="time, s,"):
        ad.least_area(100, 5.001, K_PVC)


@given(st.floats(60, 124.9))
def test_an_insulation_of_unknown_material_is_taken_as_pvc_at_its_rating(rating: float) -> None:
    assert ad.k_for_insulation(rating) == ad.k_from_temperatures("copper", rating, 160.0)


def test_k_by_rating_never_exceeds_the_published_k_of_a_milder_start() -> None:
    live = "live conductor or core in cable"
    assert ad.k_for_insulation(70) <= ad.k_constant(live, "PVC 70 C up to 300 mm2")
    assert ad.k_for_insulation(90) <= ad.k_constant(live, "PVC 90 C up to 300 mm2")
    assert ad.k_for_insulation(60) <= ad.k_constant(live, "rubber 60 C")
    assert ad.k_for_insulation(180) <= ad.k_constant(live, "silicone 180 C")
    assert ad.k_for_insulation(125) <= ad.k_constant(live, "XLPE or EPR 90 C")


@pytest.mark.parametrize("rating", [59.9, 200.1, float("nan")])
def test_k_by_rating_ends_at_its_range(rating: float) -> None:
    with pytest.raises(OutOfRange, match="insulation temperature rating"):
        ad.k_for_insulation(rating)


@given(st.floats(0, 150), st.floats(0, 150))
def test_a_warmer_start_leaves_less(one: float, other: float) -> None:
    cool, warm = sorted((one, other))
    assert ad.k_from_temperatures("copper", warm, 160) <= ad.k_from_temperatures("copper", cool, 160)


def test_unknown_metals_and_insulations_are_refused_with_what_there_is() -> None:
    with pytest.raises(OutOfRange, match="metal tin is outside copper, aluminium, lead, steel"):
        ad.k_from_temperatures("tin", 70, 160)
    with pytest.raises(OutOfRange, match="use and insulation live, felt is outside the rows live conductor"):
        ad.k_constant("live", "felt")


def test_a_start_above_the_end_is_refused() -> None:
    with pytest.raises(OutOfRange, match="start temperature"):
        ad.k_from_temperatures("copper", 161, 160)


def test_no_fault_current_has_no_withstand_time() -> None:
    with pytest.raises(OutOfRange, match="fault current"):
        ad.withstand_time(1e-6, K_PVC, 0)


def test_all_heat_kept_in_a_gram_of_water_is_its_rise() -> None:
    assert ad.adiabatic_rise(4.186, 1e-3, 4186) == pytest.approx(1.0)
