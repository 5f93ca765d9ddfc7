"""Residual-current devices."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import rcd


def test_half_the_rated_current_has_no_limit_of_time() -> None:
    assert rcd.trip_limits("general (no delay)", "IEC 61008-1 / 61009-1", 0.5) == (None, None)


def test_five_times_the_rated_current_opens_in_forty_milliseconds() -> None:
    assert rcd.trip_limits("general (no delay)", "IEC 61008-1 / 61009-1", 5).max_s == 0.04


def test_nothing_is_taken_between_the_printed_multiples() -> None:
    with pytest.raises(OutOfRange, match=r"general \(no delay\), IEC 61008-1 / 61009-1, 3 is outside the rows"):
        rcd.trip_limits("general (no delay)", "IEC 61008-1 / 61009-1", 3)


@given(st.floats(0.006, 0.264), st.floats(0.006, 0.264))
def test_a_larger_current_opens_an_interrupter_no_later(one: float, other: float) -> None:
    small, large = sorted((one, other))
    assert rcd.ground_fault_interrupter_time(large) <= rcd.ground_fault_interrupter_time(small)


@pytest.mark.parametrize("amps", [0.0059, 0.265])
def test_the_interrupter_curve_ends(amps: float) -> None:
    with pytest.raises(OutOfRange, match="residual current"):
        rcd.ground_fault_interrupter_time(amps)


@given(st.floats(1, 5000))
def test_the_greatest_rating_keeps_the_electrode_at_the_touch_limit(ohms: float) -> None:
    assert rcd.greatest_rating(ohms, rcd.TOUCH_LIMIT_V) * ohms == pytest.approx(50)


def test_an_electrode_without_resistance_is_refused() -> None:
    with pytest.raises(OutOfRange, match="resistance of the electrode"):
        rcd.greatest_rating(0, 50)
