"""Between two rows there is a number, outside them there is none."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.interpolation import linear, log_log, nearest_key, row_at_or_above

PAIRS = ((1.0, 10.0), (2.0, 40.0), (4.0, 45.0))


@pytest.mark.parametrize("read", [linear, log_log])
def test_a_row_gives_its_own_value_and_its_neighbours_bound_what_lies_between(read) -> None:
    assert [read("x", key, PAIRS, "s") for key, _ in PAIRS] == [10.0, 40.0, 45.0]
    assert 10.0 < read("x", 1.5, PAIRS, "s") < 40.0


@pytest.mark.parametrize("read", [linear, log_log, row_at_or_above])
def test_beyond_the_last_row_there_is_no_number(read) -> None:
    with pytest.raises(OutOfRange, match=r"x 4.1 is outside"):
        read("x", 4.1, PAIRS, "s")
    with pytest.raises(OutOfRange):
        read("x", math.nan, PAIRS, "s")


@pytest.mark.parametrize("read", [linear, log_log])
def test_before_the_first_row_there_is_no_number(read) -> None:
    with pytest.raises(OutOfRange, match=r"x 0.9 is outside 1 to 4"):
        read("x", 0.9, PAIRS, "s")


def test_linear_takes_the_straight_line() -> None:
    assert linear("x", 1.5, PAIRS, "s") == 25.0


def test_log_log_follows_a_power_law_exactly() -> None:
    square = tuple((x, x**2) for x in (1.0, 3.0, 10.0))
    assert log_log("x", 5.0, square, "s") == pytest.approx(25.0, rel=1e-12)


@given(st.floats(1.0, 4.0), st.floats(1.0, 4.0))
def test_rising_rows_give_rising_values(one: float, other: float) -> None:
    low, high = sorted((one, other))
    for read in (linear, log_log):
        assert read("x", low, PAIRS, "s") <= read("x", high, PAIRS, "s") * (1 + 1e-12)


def test_the_neighbour_above_stands_for_what_lies_between() -> None:
    assert [row_at_or_above("x", x, PAIRS, "s") for x in (0.5, 1.0, 1.1, 4.0)] == [10.0, 10.0, 40.0, 45.0]


def test_a_key_within_the_distance_is_taken_and_one_beyond_is_not() -> None:
    assert nearest_key(2.009, PAIRS, 0.005) == 2.0
    assert nearest_key(2.011, PAIRS, 0.005) == 2.011
