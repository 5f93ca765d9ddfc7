"""The nearest right name."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.source.nearest import distance, nearest

NAMES = ["rating", "voltage", "breaking capacity", "house-bank", "F1", "F2"]


@pytest.mark.parametrize(
    ("wrong", "right"),
    [
        ("ratng", "rating"), ("raitng", "rating"), ("Rating", "rating"), ("voltge", "voltage"),
        ("breaking-capacity", "breaking capacity"), ("house_bank", "house-bank"), ("housebank", "house-bank"),
        ("F3", "F1"), ("f2", "F2"),
    ],
)  # fmt: skip
def test_a_slip_finds_its_name(wrong: str, right: str) -> None:
    assert nearest(wrong, NAMES) == right


def test_a_name_is_not_its_own_nearest() -> None:
    assert nearest("F1", ["F1"]) is None


@pytest.mark.parametrize("name", ["", "x", "colour", "r" * 200])
def test_what_is_far_from_all_finds_none(name: str) -> None:
    assert nearest(name, NAMES) is None


@pytest.mark.parametrize(
    ("first", "second", "steps"),
    [("", "", 0), ("abc", "abc", 0), ("abc", "acb", 1), ("ab", "abc", 1), ("kitten", "sitting", 3)],
)
def test_distances_count_letters(first: str, second: str, steps: int) -> None:
    assert distance(first, second, 5) == steps


@given(st.text("abc", max_size=6), st.text("abc", max_size=6), st.integers(0, 3))
def test_distance_is_the_same_both_ways_and_stops_at_its_limit(first: str, second: str, most: int) -> None:
    exact = distance(first, second, 10)
    assert exact == distance(second, first, 10)
    assert distance(first, second, most) == min(exact, most + 1)
