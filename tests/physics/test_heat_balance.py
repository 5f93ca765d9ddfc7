"""The steady heat balance keeps the laws of heat and meets its own equation."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import heat_balance as hb
from checker.physics.conductor_resistance import copper_resistance_per_metre

areas = st.floats(0.3e-6, 120e-6)


@given(areas, areas, st.floats(20, 60), st.integers(1, 20))
def test_a_thicker_conductor_carries_more(one: float, other: float, ambient: float, bunched: int) -> None:
    thin, thick = sorted((one, other))
    assert hb.heat_balance_current(thin, 105, ambient, bunched) <= hb.heat_balance_current(thick, 105, ambient, bunched)


@given(areas, st.floats(-40, 105), st.floats(-40, 105))
def test_warmer_air_leaves_less_capacity(area: float, one: float, other: float) -> None:
    cool, warm = sorted((one, other))
    assert hb.heat_balance_current(area, 105, cool, 1) >= hb.heat_balance_current(area, 105, warm, 1) * (1 - 1e-9)


@given(areas, st.integers(1, 40))
def test_one_more_conductor_in_the_bunch_leaves_less_capacity(area: float, bunched: int) -> None:
    fewer, more = (hb.heat_balance_current(area, 90, 30, count) for count in (bunched, bunched + 1))
    assert more < fewer


@given(areas, st.floats(0, 100))
def test_a_better_insulation_carries_more(area: float, rise: float) -> None:
    assert hb.heat_balance_current(area, 80 + rise, 30, 1) >= hb.heat_balance_current(area, 80, 30, 1)


@given(areas, st.floats(-20, 70), st.integers(1, 10))
def test_the_heat_made_is_the_heat_that_leaves(area: float, ambient: float, bunched: int) -> None:
    current = hb.heat_balance_current(area, 105, ambient, bunched)
    made = current**2 * hb.RESISTANCE_RATIO * copper_resistance_per_metre(area, 105)
    cable = hb.typical_cable(area)
    surface = 105 - made * math.log(cable.outer_m / cable.conductor_m) / (2 * math.pi * hb.INSULATION_W_PER_MK)
    diameter = cable.outer_m * (math.sqrt(bunched / hb.BUNCH_FILLING) if bunched > 1 else 1)
    assert hb.surface_heat_w_per_m(surface, ambient, diameter) / bunched == pytest.approx(made, rel=1e-6)


def test_no_rise_allows_no_current() -> None:
    assert hb.heat_balance_current(6e-6, 60, 60, 1) == pytest.approx(0, abs=1e-3)


@pytest.mark.parametrize(
    ("conductor", "ambient", "bunched", "name"),
    [
        (105, -40.1, 1, "ambient temperature"),
        (105, 105.1, 1, "conductor temperature"),
        (205.1, 30, 1, "conductor temperature"),
        (105, 30, 0, "number of conductors"),
        (math.nan, 30, 1, "conductor temperature"),
    ],
)
def test_outside_its_range_the_balance_gives_no_number(
    conductor: float, ambient: float, bunched: int, name: str
) -> None:
    with pytest.raises(OutOfRange, match=name):
        hb.heat_balance_current(6e-6, conductor, ambient, bunched)


@pytest.mark.parametrize(("conductor", "ambient"), [(105, -40), (105, 104.9), (205, 30)])
def test_on_the_bounds_the_balance_gives_a_number(conductor: float, ambient: float) -> None:
    assert hb.heat_balance_current(6e-6, conductor, ambient, 1) > 0


def test_a_surface_at_the_temperature_of_the_air_sheds_no_heat() -> None:
    assert hb.surface_heat_w_per_m(30, 30, 0.01) == 0


def test_half_the_capacity_gives_a_quarter_of_the_rise_and_all_of_it_the_limit() -> None:
    assert hb.conductor_temperature(30, 90, 50, 100) == 45
    assert hb.conductor_temperature(30, 90, 100, 100) == 90
    with pytest.raises(OutOfRange, match="current, A, 101"):
        hb.conductor_temperature(30, 90, 101, 100)


@given(st.floats(0, 100))
def test_the_aircraft_estimate_is_never_below_the_square_law(current: float) -> None:
    assert hb.estimated_conductor_temperature(30, 90, current, 100) >= hb.conductor_temperature(30, 90, current, 100)
