"""The next standard rating above a capacity: on a rating, just above it, and where the table ends."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.device_ratings import next_standard_rating


@pytest.mark.parametrize(("capacity", "rating"), [(1, 15), (15, 15), (15.01, 20), (52, 60), (400, 400)])
def test_the_rating_is_the_least_that_is_not_below_the_capacity(capacity: float, rating: float) -> None:
    assert next_standard_rating(capacity) == rating


@pytest.mark.parametrize("capacity", [400.01, 0.0, -1.0])
def test_outside_the_table_there_is_no_number(capacity: float) -> None:
    with pytest.raises(OutOfRange):
        next_standard_rating(capacity)


@given(st.floats(0.1, 400), st.floats(0.1, 400))
def test_more_capacity_never_gives_a_lower_rating(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert next_standard_rating(low) <= next_standard_rating(high)
