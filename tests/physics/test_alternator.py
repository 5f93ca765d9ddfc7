"""Alternators."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import alternator

speeds = st.floats(1000, 8000)


@given(speeds, speeds)
def test_a_faster_alternator_gives_no_less_and_a_hot_one_no_more(one: float, other: float) -> None:
    slow, fast = sorted((one, other))
    for read in (alternator.cold_output, alternator.hot_output):
        low, high = read(150, fast)
        assert low >= read(150, slow)[0] - 1e-9
        assert high >= read(150, slow)[1] - 1e-9
        assert low <= high
    assert alternator.hot_output(150, slow)[1] <= alternator.cold_output(150, slow)[1]


def test_at_the_rating_speed_a_cold_alternator_gives_its_rating() -> None:
    assert alternator.cold_output(150, 6000) == (150, 150)


@pytest.mark.parametrize("rpm", [999, 8001])
def test_the_typical_curve_ends(rpm: float) -> None:
    with pytest.raises(OutOfRange, match="alternator speed"):
        alternator.cold_output(150, rpm)


def test_the_machines_own_curve_is_read_between_its_points_and_not_beyond() -> None:
    points = ((1800.0, 60.0), (3000.0, 120.0))
    assert alternator.output_from_points(points, 2400) == 90
    with pytest.raises(OutOfRange, match="alternator speed"):
        alternator.output_from_points(points, 3001)
    with pytest.raises(OutOfRange, match="number of points"):
        alternator.output_from_points(points[:1], 1800)


def test_duty_and_shaft_power() -> None:
    assert alternator.duty(52, 80) == pytest.approx(0.65)
    assert alternator.shaft_power(1000, 0.5) == 2000
    with pytest.raises(OutOfRange, match="rated current"):
        alternator.duty(52, 0)
