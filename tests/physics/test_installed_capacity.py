"""Cables as installed: published cell times published factors, and nothing above it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import installed_capacity as ic

areas = st.floats(1.5e-6, 120e-6)
ratings = st.sampled_from([70.0, 90.0, 105.0])
methods = st.sampled_from(ic.METHODS)


@given(areas, ratings, methods, st.sampled_from([2, 3]), st.floats(-20, 60), st.integers(1, 20), st.floats(0, 2))
def test_capacity_used_is_cell_times_factors_and_never_above_it(
    area: float, rating: float, method: str, loaded: int, ambient: float, circuits: int, lagged: float
) -> None:
    found = ic.installed_capacity(area, rating, method, loaded, ambient, circuits, lagged)
    product = found.table_a
    for factor in found.factors:
        assert 0 < factor.value <= 1
        product *= factor.value
    assert found.current_a == pytest.approx(product)
    assert found.current_a <= found.table_a == ic.table_capacity(area, rating, method, loaded)


@given(areas, areas, ratings, methods, st.sampled_from([2, 3]))
def test_a_thicker_cable_never_carries_less(one: float, other: float, rating: float, method: str, loaded: int) -> None:
    thin, thick = sorted((one, other))
    assert ic.table_capacity(thin, rating, method, loaded) <= ic.table_capacity(thick, rating, method, loaded)


@given(areas, methods, st.sampled_from([2, 3]))
def test_thermoset_carries_more_than_pvc_and_two_loaded_cores_more_than_three(
    area: float, method: str, loaded: int
) -> None:
    assert ic.table_capacity(area, 90, method, loaded) > ic.table_capacity(area, 70, method, loaded)
    assert ic.table_capacity(area, 70, method, 2) >= ic.table_capacity(area, 70, method, 3)


@pytest.mark.parametrize("arrangement", ic.ARRANGEMENTS)
def test_one_more_circuit_in_the_group_never_helps(arrangement: str) -> None:
    factors = [ic.grouping_factor(circuits, arrangement) for circuits in range(1, 10)]
    assert factors == sorted(factors, reverse=True)


def test_between_two_rows_of_the_grouping_table_the_next_row_serves() -> None:
    assert ic.grouping_factor(10, "bunched_in_air_or_enclosed") == ic.grouping_factor(12, "bunched_in_air_or_enclosed")
    with pytest.raises(OutOfRange, match="number of circuits 21"):
        ic.grouping_factor(21, "bunched_in_air_or_enclosed")
    with pytest.raises(OutOfRange, match="arrangement heaped"):
        ic.grouping_factor(2, "heaped")


@pytest.mark.parametrize(
    ("area", "rating", "method", "loaded", "name"),
    [
        (1.49e-6, 70, "C", 2, "conductor area"),
        (120.1e-6, 70, "C", 2, "conductor area"),
        (2.5e-6, 69.9, "C", 2, "insulation temperature rating"),
        (2.5e-6, 70, "H", 2, "reference method H"),
        (2.5e-6, 70, "C", 1, "loaded conductors"),
        (2.5e-6, 70, "C", 4, "loaded conductors"),
    ],
)
def test_outside_the_tables_there_is_no_number(area: float, rating: float, method: str, loaded: int, name: str) -> None:
    with pytest.raises(OutOfRange, match=name):
        ic.table_capacity(area, rating, method, loaded)


@pytest.mark.parametrize(("rating", "ambient"), [(70, 60.1), (90, 80.1), (70, 9.9)])
def test_outside_the_ambient_table_there_is_no_factor(rating: float, ambient: float) -> None:
    with pytest.raises(OutOfRange, match="ambient temperature"):
        ic.ambient_factor(rating, ambient)


def test_a_size_found_by_arithmetic_is_still_on_the_first_row() -> None:
    assert ic.table_capacity(1.5 * 1e-6, 70, "C", 2) == ic.table_capacity(1.5e-6, 70, "C", 2) == 19.5
