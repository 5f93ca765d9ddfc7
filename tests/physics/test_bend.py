"""Bending radii by rule, and the radius of a hanging loop."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import bend


@given(st.floats(0.001, 0.06))
def test_a_moving_cable_never_bends_tighter_than_a_fixed_one(diameter: float) -> None:
    assert bend.flexible_radius(diameter, "free movement") >= bend.flexible_radius(diameter, "fixed")


@given(st.floats(0.001, 0.06), st.floats(0.001, 0.06))
def test_a_thicker_cable_never_bends_tighter(one: float, other: float) -> None:
    thin, thick = sorted((one, other))
    assert bend.flexible_radius(thin, "free movement") <= bend.flexible_radius(thick, "free movement")


@pytest.mark.parametrize(("diameter", "factor"), [(0.008, 3), (0.00801, 4), (0.012, 4), (0.01201, 5), (0.05, 5)])
def test_the_upper_end_of_a_row_belongs_to_it(diameter: float, factor: float) -> None:
    assert bend.bend_factor(diameter, "DIN VDE 0298-3", "flexible to 0.6/1 kV", "free movement") == factor


def test_an_unknown_case_is_refused_with_the_rows_there_are() -> None:
    with pytest.raises(OutOfRange, match="bending case DIN VDE 0298-3, rope, fixed is outside the rows DIN VDE 0298-3"):
        bend.bend_radius(0.01, "DIN VDE 0298-3", "rope", "fixed")


def test_a_loop_with_its_ends_together_is_half_a_circle_of_its_length() -> None:
    assert bend.loop_radius(1.0, 0.0) == pytest.approx(1 / math.pi)
    assert bend.loop_radius(1.0, 1.0) == 0
    with pytest.raises(OutOfRange, match="span of the loop"):
        bend.loop_radius(1.0, 1.1)
