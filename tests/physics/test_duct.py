"""Cables in an opening."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.duct import fill, round_area, width_beside

DIAMETERS = st.lists(st.floats(0.001, 0.03), min_size=1, max_size=12)


@given(DIAMETERS, st.floats(1e-4, 0.1))
def test_a_further_cable_only_fills_it_more(diameters: list[float], opening: float) -> None:
    assert fill([*diameters, 0.005], opening) > fill(diameters, opening)


@given(DIAMETERS)
def test_cables_beside_each_other_in_a_square_of_their_width_fill_at_most_its_round_share(
    diameters: list[float],
) -> None:
    # Round things in the squares around them fill pi / 4; the whole square is larger than those squares together.
    width = width_beside(diameters, 0.0)
    assert fill(diameters, width**2) <= 0.7854


def test_by_hand() -> None:
    assert round_area(0.02) == pytest.approx(3.14159e-4, rel=1e-5)
    assert width_beside([0.01, 0.02], 0.1) == pytest.approx(0.033)


def test_outside_the_range_there_is_no_number() -> None:
    with pytest.raises(OutOfRange):
        fill([0.01], 0.0)
    with pytest.raises(OutOfRange):
        round_area(-0.001)
    with pytest.raises(OutOfRange):
        width_beside([0.01], 1.1)
