"""Numbers of every sort for the property tests, and the exact numbers that an inexact one may be."""

from __future__ import annotations

from math import inf, isinf

from hypothesis import strategies as st

from checker.quantities import UNKNOWN, Number, Range, Unknown

# A coarse grid beside free floats, so that equal and touching ends come up often.
finite = st.one_of(
    st.integers(-4, 4).map(float),
    st.floats(-1e9, 1e9, allow_nan=False).map(lambda x: float(f"{x:.6g}")),
)


@st.composite
def ranges(draw: st.DrawFn) -> Range:
    low, high = draw(finite), draw(finite)
    if low == high:
        high = low + 1.0
    low, high = min(low, high), max(low, high)
    open_end = draw(st.sampled_from(["", "", "", "low", "high"]))
    return Range(-inf if open_end == "low" else low, inf if open_end == "high" else high)


numbers = st.one_of(finite, ranges(), ranges(), st.just(UNKNOWN), st.none())
truths = st.sampled_from([True, False, UNKNOWN, Unknown("why")])


@st.composite
def point_of(draw: st.DrawFn, value: Number) -> Number:
    """A value that `value` may turn out to be: a number within a range, anything for an unknown."""
    if isinstance(value, Unknown):
        return draw(st.one_of(finite, st.none()))
    if isinstance(value, Range):
        low = max(value.low, -1e12) if isinf(value.low) else value.low
        high = min(value.high, 1e12) if isinf(value.high) else value.high
        return draw(st.one_of(st.sampled_from([low, high]), st.floats(low, high)))
    return value


def holds(value: Number, point: Number) -> bool:
    """Whether `point` is one of those that `value` may be."""
    if isinstance(value, Unknown):
        return True
    if value is None or point is None:
        return value is point
    if isinstance(point, Range):
        return isinstance(value, Range) and value.low <= point.low and point.high <= value.high
    if isinstance(point, Unknown):
        return False
    if isinstance(value, Range):
        return value.low <= point <= value.high
    return value == point
