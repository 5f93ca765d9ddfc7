"""Capacity of a conductor: never above the published cell, never better for being hotter, bunched or lagged."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import carrying_capacity as cc
from checker.physics.installed_capacity import table_capacity

areas = st.floats(0.5e-6, 107e-6)
ratings = st.sampled_from([60.0, 70.0, 75.0, 80.0, 90.0, 105.0, 120.0, 125.0, 150.0, 200.0])
lagging = st.sampled_from(cc.IN_INSULATION)


@given(areas, ratings, st.floats(-40, 60), st.integers(1, 30), lagging)
def test_the_capacity_used_is_the_lower_of_table_and_heat_balance(
    area: float, rating: float, ambient: float, bunched: int, in_insulation: str
) -> None:
    found = cc.dc_carrying_capacity(area, rating, ambient, bunched, in_insulation)
    assert found.current_a == min(found.corrected_a, found.heat_balance_a)
    assert found.governing == ("table" if found.current_a == found.corrected_a else "heat balance")
    assert found.current_a <= found.table_a
    product = found.table_a
    for factor in found.factors:
        assert 0 <= factor.value <= 1
        assert factor.source
        product *= factor.value
    assert found.corrected_a == pytest.approx(product)


@given(areas, ratings)
def test_a_size_between_two_gauges_stays_between_their_cells(area: float, rating: float) -> None:
    column = cc._free_air_column(cc.insulation_class(rating))
    current = cc.free_air_capacity(area, rating)
    above = [cell for size, cell in column if size >= area * (1 - cc.SAME_GAUGE)]
    below = [cell for size, cell in column if size <= area]
    assert current <= above[0]
    assert all(current >= cell for cell in below)


@given(areas, areas, ratings, st.floats(-40, 60), st.integers(1, 30), lagging)
def test_a_thicker_conductor_never_carries_less(
    one: float, other: float, rating: float, ambient: float, bunched: int, in_insulation: str
) -> None:
    thin, thick = (
        cc.dc_carrying_capacity(area, rating, ambient, bunched, in_insulation).current_a
        for area in sorted((one, other))
    )
    assert thin <= thick * (1 + 1e-9)


@given(areas, ratings, st.floats(-40, 60), st.floats(-40, 60))
def test_hotter_air_never_gives_more(area: float, rating: float, one: float, other: float) -> None:
    cool, hot = (
        cc.dc_carrying_capacity(area, rating, ambient, 2, "none").current_a for ambient in sorted((one, other))
    )
    assert hot <= cool * (1 + 1e-9)


@given(areas, ratings, ratings, st.floats(-40, 59))
def test_a_better_insulation_never_carries_less(area: float, one: float, other: float, ambient: float) -> None:
    low, high = (cc.dc_carrying_capacity(area, rating, ambient, 2, "none").current_a for rating in sorted((one, other)))
    assert low <= high * (1 + 1e-9)


@given(areas, ratings, st.integers(1, 60))
def test_one_more_conductor_in_the_bunch_never_gives_more(area: float, rating: float, bunched: int) -> None:
    fewer, more = (
        cc.dc_carrying_capacity(area, rating, 30, count, "none").current_a for count in (bunched, bunched + 1)
    )
    assert more <= fewer


def test_lagging_costs_capacity_and_more_lagging_costs_more() -> None:
    bare, one_side, surrounded = (cc.dc_carrying_capacity(6e-6, 90, 30, 2, word).current_a for word in cc.IN_INSULATION)
    assert bare > one_side > surrounded == pytest.approx(bare / 2)
    assert cc.dc_carrying_capacity(6e-6, 90, 30, 2, True).current_a == surrounded
    assert cc.dc_carrying_capacity(6e-6, 90, 30, 2, False).current_a == bare


def test_conduit_costs_capacity_where_neither_a_bunch_nor_lagging_costs_more() -> None:
    def carries(bunched: int, word: str, enclosed: bool) -> float:
        return cc.dc_carrying_capacity(6e-6, 90, 30, bunched, word, enclosed).current_a

    assert carries(2, "none", True) == pytest.approx(cc.ENCLOSED_FACTOR * carries(2, "none", False))
    for bunched, word in ((6, "none"), (2, "one side"), (2, "surrounded")):
        assert carries(bunched, word, True) == carries(bunched, word, False) < carries(2, "none", True)


def test_the_least_ratio_of_conduit_to_free_air_is_the_conduit_factor() -> None:
    ratios = [
        table_capacity(area * 1e-6, rating, "B1", 2) / table_capacity(area * 1e-6, rating, "E", 2)
        for area in (1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120)
        for rating in (70, 90)
    ]
    assert cc.ENCLOSED_FACTOR <= min(ratios) < cc.ENCLOSED_FACTOR + 0.01


def test_a_class_the_table_lacks_uses_the_next_lower_one() -> None:
    assert [cc.insulation_class(rating) for rating in (60, 74.9, 75, 104.9, 120, 199.9, 200)] == [
        60,
        60,
        75,
        90,
        105,
        125,
        200,
    ]
    assert cc.dc_carrying_capacity(6e-6, 70, 30, 1, "none").insulation_class_c == 60


def test_no_credit_is_taken_for_cold_air() -> None:
    assert cc.ambient_factor(90, 30) == cc.ambient_factor(90, -30) == 1.0
    assert cc.square_root_factor(90, 0, 30) > 1


def test_at_the_engine_space_temperature_the_published_factor_caps_the_rule() -> None:
    assert cc.ambient_factor(105, 50) == 0.85
    assert cc.ambient_factor(105, 49.9) == pytest.approx(0.857, abs=1e-3)
    assert cc.ambient_factor(200, 50) == pytest.approx(0.9393, abs=1e-4)


@pytest.mark.parametrize("area", [0.49e-6, 108e-6, 0.0, float("nan")])
def test_an_area_outside_the_tables_gives_no_number(area: float) -> None:
    with pytest.raises(OutOfRange, match="conductor area"):
        cc.free_air_capacity(area, 90)


@pytest.mark.parametrize(
    ("area", "current"),
    [(0.5e-6, 3), (0.75e-6, 6), (0.8e-6, 6), (0.82e-6, 20), (0.823e-6, 20), (107.2e-6, 385), (107.2193e-6, 385)],
)
def test_on_and_just_inside_the_tables_there_is_a_number(area: float, current: float) -> None:
    assert cc.free_air_capacity(area, 90) == current


def test_gauges_by_their_exact_formula_meet_their_rows() -> None:
    for gauge, current in ((18, 20), (10, 60), (0, 285), (-3, 445)):
        diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39)
        assert cc.free_air_capacity(3.141592653589793 / 4 * diameter**2, 105) == current


def test_the_source_says_which_table_served() -> None:
    assert "33 CFR 183.425" in cc.dc_carrying_capacity(6e-6, 90, 30, 1, "none").source
    assert "BS 7671" in cc.dc_carrying_capacity(0.75e-6, 90, 30, 1, "none").source


@pytest.mark.parametrize(
    ("rating", "ambient", "bunched", "word", "name"),
    [
        (59.9, 30, 1, "none", "insulation temperature rating"),
        (200.1, 30, 1, "none", "insulation temperature rating"),
        (90, 90.1, 1, "none", "ambient temperature"),
        (90, 30, 0, "none", "number of live conductors"),
        (90, 30, 1, "rock wool", "thermal insulation rock wool"),
    ],
)
def test_outside_its_range_the_capacity_is_no_number(
    rating: float, ambient: float, bunched: int, word: str, name: str
) -> None:
    with pytest.raises(OutOfRange, match=name):
        cc.dc_carrying_capacity(6e-6, rating, ambient, bunched, word)


def test_air_as_hot_as_the_insulation_leaves_no_capacity() -> None:
    assert cc.dc_carrying_capacity(6e-6, 90, 90, 1, "none").current_a == 0


@given(st.floats(0, 2), st.floats(0, 2))
def test_a_longer_stretch_in_insulation_never_gives_more(one: float, other: float) -> None:
    short, long = sorted((one, other))
    assert cc.insulated_length_factor(long) <= cc.insulated_length_factor(short) <= 1


def test_the_least_ratio_of_wall_to_surface_method_is_the_one_side_factor() -> None:
    ratios = [
        table_capacity(area * 1e-6, rating, "A1", 2) / table_capacity(area * 1e-6, rating, "C", 2)
        for area in (1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120)
        for rating in (70, 90)
    ]
    assert cc.ONE_SIDE_FACTOR <= min(ratios) < cc.ONE_SIDE_FACTOR + 0.01


@given(st.floats(1, 500), st.floats(0.05, 1))
def test_the_table_current_needed_undoes_the_derating(current: float, factor: float) -> None:
    assert cc.derated_capacity(cc.required_table_current(current, factor), factor) == pytest.approx(current)
