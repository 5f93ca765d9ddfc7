"""Numbers in the words of a fitter, and back."""

from __future__ import annotations

from math import inf, isinf
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.quantities import UNKNOWN, Range, UnitError, Unknown, Window, parse, parse_window, show
from checker.quantities.units import BY_SYMBOL

UNITS = st.sampled_from([*BY_SYMBOL, "ratio"])
sizes = st.one_of(
    st.just(0.0),
    st.builds(lambda m, e, s: s * m * 10.0**e, st.floats(1, 10), st.integers(-12, 12), st.sampled_from([1, -1])),
)


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (70e-6, "mm2", "70 mm2"),
        (Range(25e-6, 35e-6), "mm2", "25..35 mm2"),
        (0.3, "m", "0.3 m"),
        (0.035, "m", "35 mm"),
        (0.3, "mm", "300 mm"),
        (0.03, "A", "30 mA"),
        (300.0, "A", "300 A"),
        (6000.0, "A", "6 kA"),
        (0.5, "mA", "0.5 A"),
        (1500.0, "W", "1500 W"),
        (12000.0, "W", "12 kW"),
        (8.64e6, "Wh", "2.4 kWh"),
        (360000.0, "Ah", "100 Ah"),
        (0.004, "Ω", "4 mΩ"),
        (25.0, "°C", "25 °C"),
        (-5.0, "°C", "-5 °C"),
        (Range(-10, 50), "°C", "-10..50 °C"),
        (0.4, "%", "40 %"),
        (0.94, "ratio", "0.94"),
        (3, "count", "3"),
        (3.0, "each", "3"),
        (10.0, "N m", "10 N m"),
        (0.4, "s", "0.4 s"),
        (0.03, "s", "30 ms"),
        (5400.0, "h", "90 min"),
        (86400.0, "s", "24 h"),
        (31557600.0, "months", "12 months"),
        (2629800.0, "months", "1 month"),
        (100 / 3, "rpm", "2000 rpm"),
        (0.002, "F", "2 mF"),
        (0.0, "A", "0 A"),
        (-0.0, "V", "0 V"),
        (Range(0, 5), "A", "0..5 A"),
        (12.3456, "V", "12.35 V"),
        (123456.0, "A", "123.5 kA"),
        (2 / 3, "ratio", "0.6667"),
        (0.006, "cm2", "60 cm2"),
        (Range(25e-6, inf), "mm2", "at least 25 mm2"),
        (Range(-inf, 5), "A", "at most 5 A"),
        (Range(12.00001, 12.00002), "V", "12.00001..12.00002 V"),
        (UNKNOWN, "A", "unknown"),
        (Unknown("not measured"), "A", "unknown"),
        (None, "A", "none"),
        (Window(10.0, 15.0), "V", "10..15 V"),
        (Window(230.0, 230.0), "V", "230 V"),
        (Window(10.0, inf), "V", "at least 10 V"),
        (Window(Range(10, 11), 15.0), "V", "from 10..11 V to 15 V"),
        (Window(UNKNOWN, 15.0), "V", "from unknown to 15 V"),
        (1e-30, "A", "1e-27 mA"),
    ],
)
def test_values_are_shown_as_a_fitter_writes_them(value: Any, unit: str, text: str) -> None:
    assert show(value, unit) == text


def test_more_digits_are_shown_when_asked_for() -> None:
    assert show(29.9996, "A") == "30 A"
    assert show(29.9996, "A", digits=6) == "29.9996 A"


def test_an_unknown_unit_is_an_error_whatever_the_value() -> None:
    for value in (1.0, None, UNKNOWN):
        with pytest.raises(UnitError):
            show(value, "furlong")


def near(a: float, b: float) -> bool:
    return a == b or abs(a - b) <= 5.1e-4 * abs(b)


@given(sizes, UNITS)
def test_a_shown_number_is_read_back_within_four_digits(value: float, unit: str) -> None:
    found = parse(show(value, unit), unit)
    assert isinstance(found, float)
    assert near(found, value)


@given(st.integers(0, 9999))
def test_a_shown_count_is_read_back_exactly(value: int) -> None:
    assert parse(show(value, "count"), "count") == value


@given(sizes, sizes, UNITS, st.sampled_from(["", "", "low", "high"]))
def test_a_shown_range_or_window_is_read_back_within_four_digits(a: float, b: float, unit: str, end: str) -> None:
    if a == b:
        b = a + 1.0
        if a == b:
            return
    low, high = min(a, b), max(a, b)
    value = Range(-inf if end == "low" else low, inf if end == "high" else high)
    found = parse(show(value, unit), unit)
    window = parse_window(show(Window(value.low, value.high), unit), unit)
    assert isinstance(found, Range)
    assert isinstance(window, Window)
    for read, written in ((found.low, value.low), (found.high, value.high)):
        assert read == written if isinf(written) else near(read, written)
    assert (window.low, window.high) == (found.low, found.high)


@given(sizes, UNITS)
def test_what_was_read_is_shown_and_read_the_same_again(value: float, unit: str) -> None:
    once = show(value, unit)
    assert show(parse(once, unit), unit) == once
