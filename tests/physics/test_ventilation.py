"""Air and heat: gas, rising warm air, boxes."""
from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import ventilation as ve

areas = st.floats(0, 0.05)


@given(areas, areas, st.floats(0, 2), st.floats(-20, 40), st.floats(0, 60))
def test_flow_of_warm_air_rises_with_each_opening_height_and_warmth(
    low: float, high: float, height: float, outside: float, rise: float
) -> None:
    flow = ve.stack_flow(low, high, height, outside + rise, outside)
    assert flow >= 0
    assert ve.stack_flow(low, high + 0.01, height, outside + rise, outside) >= flow * (1 - 1e-9)
    assert ve.stack_flow(low, high, height + 0.1, outside + rise, outside) >= flow
    assert ve.stack_flow(low, high, height, outside + rise + 1, outside) >= flow


def test_without_a_second_opening_a_height_or_warmth_no_air_rises() -> None:
    assert ve.stack_flow(0.01, 0.0, 1, 40, 20) == 0
    assert ve.stack_flow(0.01, 0.01, 0, 40, 20) == 0
    assert ve.stack_flow(0.01, 0.01, 1, 20, 20) == 0


def test_two_equal_openings_by_hand() -> None:
    # 0.6 x 0.01/sqrt(2) m2 x sqrt(2 x 9.80665 x 0.5 x 20 / 313.15)
    assert ve.stack_flow(0.01, 0.01, 0.5, 40, 20) == pytest.approx(0.6 * 0.01 / 2**0.5 * 0.62630**0.5, rel=1e-4)


def test_air_cooler_inside_is_refused() -> None:
    with pytest.raises(OutOfRange, match="inside temperature"):
        ve.stack_flow(0.01, 0.01, 1, 19.9, 20)


@given(st.floats(0, 400), st.floats(0.5, 3), areas, areas, st.floats(0, 1), st.floats(-20, 45))
def test_vents_never_make_a_box_hotter(
    loss: float, wall: float, low: float, high: float, height: float, outside: float
) -> None:
    try:
        closed = ve.closed_box_rise(loss, wall)
    except OutOfRange:
        return
    assert ve.vented_box_rise(loss, wall, low, high, height, outside) <= closed + 1e-6


@given(st.floats(1, 200), st.floats(1, 3), st.floats(0.001, 0.05), st.floats(0.1, 1))
def test_a_vented_box_carries_off_its_loss(loss: float, wall: float, vent: float, height: float) -> None:
    rise = ve.vented_box_rise(loss, wall, vent, vent, height, 30)
    flow = ve.stack_flow(vent, vent, height, 30 + rise, 30)
    carried = ve.WALL_W_PER_M2K * wall * rise + 353.0 / 303.15 * ve.AIR_J_PER_KGK * flow * rise
    assert carried == pytest.approx(loss, rel=1e-6)


def test_a_box_that_would_rise_beyond_a_hundred_kelvin_gives_no_number() -> None:
    assert ve.closed_box_rise(500, 1.0) == 100
    with pytest.raises(OutOfRange, match="rise, K"):
        ve.closed_box_rise(501, 1.0)
    with pytest.raises(OutOfRange, match="loss, W, 10000"):
        ve.vented_box_rise(10_000, 1.0, 0.001, 0.001, 0.2, 30)


@given(st.integers(1, 100), st.floats(0, 10))
def test_hydrogen_needs_air_in_proportion(cells: int, gassing: float) -> None:
    flow = ve.hydrogen_airflow(cells, gassing)
    assert flow * 3600 == pytest.approx(0.05 * cells * gassing)
    assert ve.hydrogen_vent_area(flow) == pytest.approx(28e-4 * flow * 3600)


def test_the_rounded_constant_is_the_product_of_its_parts() -> None:
    product = ve.hydrogen_flow_constant(ve.DILUTION, ve.HYDROGEN_M3_PER_AH, ve.SAFETY)
    assert product == pytest.approx(ve.FLOW_M3_PER_AH, rel=0.01)


def test_an_unknown_cell_is_refused_with_the_rows_there_are() -> None:
    with pytest.raises(OutOfRange, match="cell EN, wet, fast is outside the rows EN 50272-2"):
        ve.gassing_current("EN", "wet", "fast", 3600)


def test_air_changes_and_wind() -> None:
    assert ve.air_changes(ve.wind_flow(2, 1, 0.65), 126) == pytest.approx(37.1, abs=0.05)
    with pytest.raises(OutOfRange, match="volume"):
        ve.air_changes(1, 0)
