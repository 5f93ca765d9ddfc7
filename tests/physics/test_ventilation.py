"""Air and heat: gas, rising warm air, boxes."""

from __future__ import annotations

import math

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


@given(
    st.floats(0, 400),
    st.floats(0.5, 30),
    st.floats(0, 0.05),
    st.floats(0.05, 1.0),
    st.floats(0, 0.05),
    st.floats(-20, 50),
)
def test_at_the_steady_rise_walls_stack_and_fan_carry_just_what_is_lost(
    loss: float, walls: float, vent: float, height: float, fan: float, outside: float
) -> None:
    rise = ve.steady_rise(loss, walls, vent, vent, height, fan, outside)
    if math.isinf(rise):
        return
    flow = ve.stack_flow(vent, vent, height, outside + rise, outside) + fan
    assert (walls + 353.0 / (outside + 273.15) * ve.AIR_J_PER_KGK * flow) * rise == pytest.approx(loss, abs=1e-6)


def test_with_a_fan_alone_the_rise_is_the_loss_over_the_heat_of_its_air() -> None:
    # A published worked example: 98 W, inlet air of 20 °C, a rise of 12 K; Fundamentals of Engineering Thermodynamics,
    # example 4.8, p 146 [seen]: inlet of 8.13 cm at 1.3 m/s, so 6.749e-3 m3/s at the density of 20 °C.
    flow = math.pi * 0.0813**2 / 4 * 1.3
    assert ve.steady_rise(98.0, 0.0, 0.0, 0.0, 0.0, flow, 20.0) == pytest.approx(12.0, rel=0.003)


def test_what_nothing_carries_away_rises_without_end() -> None:
    assert math.isinf(ve.steady_rise(10.0, 0.0, 0.0, 0.0, 0.0, 0.0, 20.0))
    assert ve.steady_rise(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 20.0) == 0.0
    assert ve.steady_rise(10.0, 0.0, 0.0, 0.0, 0.0, math.inf, 20.0) == 0.0


def test_a_fan_or_openings_never_make_a_place_warmer() -> None:
    closed = ve.steady_rise(100.0, 8.0, 0.0, 0.0, 0.0, 0.0, 30.0)
    vented = ve.steady_rise(100.0, 8.0, 0.01, 0.01, 0.4, 0.0, 30.0)
    blown = ve.steady_rise(100.0, 8.0, 0.01, 0.01, 0.4, 0.02, 30.0)
    assert blown < vented < closed == pytest.approx(12.5)


def test_draught_of_a_column_of_warm_air_matches_a_published_worked_example() -> None:
    # Applied Thermodynamics, example 11.4, p 482 [seen]: 60 m, 290 K outside, 573 K inside, 19 kg air a kg fuel:
    # 34.13 mm of water, by 353 H (1/Ta - 20/19/Tg); with air alone inside it is 353 H (1/Ta - 1/Tg).
    head = 353.0 * 60 * (1 / 290 - 20 / 19 / 573)
    assert head == pytest.approx(34.13, abs=0.005)
    # The stack flow of ours rests on the same difference of densities: v = sqrt(2 g h (Ti - To) / Ti).
    speed = ve.stack_flow(1.0, 1e6, 20.0, 100.0, 20.0) / 0.6
    pressure = 9.80665 * 20.0 * 353.0 * (1 / 293.15 - 1 / 373.15)
    assert speed == pytest.approx((2 * pressure / (353.0 / 293.15)) ** 0.5, rel=1e-6)
