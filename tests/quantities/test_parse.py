"""Text as it stands on a part, read to a number in SI."""

from __future__ import annotations

from fractions import Fraction
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.quantities import (
    Number,
    QuantityError,
    Range,
    Unknown,
    Window,
    exact,
    parse,
    parse_any,
    parse_voltage,
    parse_window,
    same,
    says_each,
)
from checker.quantities.units import BARE_UNITS, BY_SYMBOL


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("70 mm2", "mm2", 70e-6),
        ("0.3 m", "m", 0.3),
        ("300 A", "A", 300.0),
        ("1e3 A", "A", 1e3),
        ("1.5e-3 A", "A", 1.5e-3),
        ("+5 V", "V", 5.0),
        ("-5 °C", "°C", -5.0),
        ("-0 A", "A", 0.0),
        ("12V", "V", 12.0),
        ("  12   V ", "V", 12.0),
        ("500 mA", "A", 0.5),
        ("0.5 A", "mA", 0.5),
        ("10 N m", "N m", 10.0),
        ("10 N·m", "N m", 10.0),
        ("3", "count", 3.0),
        ("3", "each", 3.0),
        ("0.94", "ratio", 0.94),
        ("94 %", "ratio", 0.94),
        ("50 Ah each", "Ah", 180000.0),
        ("180 W each", "W", 180.0),
        ("007 A", "A", 7.0),
        ("6.6 kW", "W", 6600.0),
    ],
)
def test_a_quantity_is_read_exactly(text: str, unit: str, value: float) -> None:
    assert parse(text, unit) == value
    assert str(parse(text, unit)) == str(value)


@pytest.mark.parametrize(
    ("text", "plain", "unit"),
    [
        ("70 mm²", "70 mm2", "mm2"),
        ("4 m\u2126", "4 mΩ", "Ω"),
        ("5 \u03bcF", "5 µF", "F"),
        ("\u22125 °C", "-5 °C", "°C"),
        ("12\u00a0V", "12 V", "V"),
        ("5 m³/h", "5 m3/h", "m3/h"),
        ("0.5 mohm", "0.5 mΩ", "Ω"),
        ("0.3 m", "300 mm", "m"),
    ],
)
def test_letters_that_look_alike_are_the_same(text: str, plain: str, unit: str) -> None:
    assert parse(text, unit) == parse(plain, unit)


@given(st.integers(-(10**9), 10**9), st.integers(0, 6))
def test_powers_of_ten_are_exact_decimals(whole: int, places: int) -> None:
    digits = f"{whole / 10**places:.{places}f}"
    assert parse(f"{digits} mm2", "mm2") == float(digits + "e-6")
    assert parse(f"{digits} kA", "A") == float(digits + "e3")


@given(st.decimals(-(10**9), 10**9, places=3, allow_nan=False))
def test_other_factors_round_once(digits: object) -> None:
    assert parse(f"{digits} Ah", "Ah") == float(Fraction(str(digits)) * 3600)
    assert parse(f"{digits} rpm", "rpm") == float(Fraction(str(digits)) / 60)
    assert parse(f"{digits}e-3 kWh", "Wh") == float(Fraction(str(digits)) * 3600)


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("25..35 mm2", "mm2", Range(25e-6, 35e-6)),
        ("25 mm2..35 mm2", "mm2", Range(25e-6, 35e-6)),
        ("25 .. 35 mm2", "mm2", Range(25e-6, 35e-6)),
        ("500 mA..2 A", "A", Range(0.5, 2.0)),
        ("-10..50 °C", "°C", Range(-10.0, 50.0)),
        ("-10..-5 °C", "°C", Range(-10.0, -5.0)),
        ("1.5..2.5 m", "m", Range(1.5, 2.5)),
        ("2..4", "count", Range(2.0, 4.0)),
        ("0.9..0.95", "ratio", Range(0.9, 0.95)),
        ("90..95 %", "ratio", Range(0.9, 0.95)),
        ("25..35 Ah each", "Ah", Range(90000.0, 126000.0)),
        ("2 m ± 20 %", "m", Range(1.6, 2.4)),
        ("2 m +- 20 %", "m", Range(1.6, 2.4)),
        ("2 m +/- 20%", "m", Range(1.6, 2.4)),
        ("-2 V ± 10 %", "V", Range(-2.2, -1.8)),
        ("10 V ± 0.5 V", "V", Range(9.5, 10.5)),
        ("10 ± 0.5 V", "V", Range(9.5, 10.5)),
        ("10 V ± 500 mV", "V", Range(9.5, 10.5)),
        ("3 ± 1", "count", Range(2.0, 4.0)),
        ("25 °C ± 5 K", "°C", Range(20.0, 30.0)),
        ("25 °C ± 5 °C", "°C", Range(20.0, 30.0)),
        ("at least 25 mm2", "mm2", Range(25e-6, inf)),
        ("at most 5 A", "A", Range(-inf, 5.0)),
        ("at least 8 AWG", "mm2", Range(8.36556406008e-6, inf)),
        ("25..25 mm2", "mm2", 25e-6),
        ("25 mm2..0.25 cm2", "mm2", 25e-6),
        ("2 m ± 0 %", "m", 2.0),
    ],
)
def test_ranges_of_every_wording(text: str, unit: str, value: Number) -> None:
    assert same(parse(text, unit), value)


def test_unknown_and_none_are_words_of_every_unit() -> None:
    for unit in [*BY_SYMBOL, *BARE_UNITS]:
        assert parse("unknown", unit) == Unknown("unknown")
        assert parse("?", unit) == Unknown("unknown")
        assert parse("none", unit) is None


def test_each_is_seen_in_the_text() -> None:
    assert says_each("50 Ah each")
    assert not says_each("50 Ah")
    assert not says_each("each")


@pytest.mark.parametrize(
    ("text", "rating"),
    [
        ("80 V DC", (80.0, "dc")),
        ("230 V AC", (230.0, "ac")),
        ("24 V", (24.0, None)),
        ("1 kV DC", (1000.0, "dc")),
        ("32 V DC each", (32.0, "dc")),
        ("12..24 V DC", (Range(12.0, 24.0), "dc")),
        ("unknown", (Unknown("unknown"), None)),
        ("none", (None, None)),
        ("at least 32 V DC", (Range(32.0, inf), "dc")),
    ],
)
def test_a_rated_voltage_says_its_kind(text: str, rating: tuple[Number, str | None]) -> None:
    value, kind = parse_voltage(text)
    assert same(value, rating[0])
    assert kind == rating[1]


def test_a_rated_voltage_that_is_misspelt_is_refused() -> None:
    for text, right in (
        ("80 Vdc", "'80 V DC'"),
        ("80 VDC", "'80 V DC'"),
        ("230 v ac", "'230 V AC'"),
        ("12 V d.c.", "'12 V DC'"),
    ):
        with pytest.raises(QuantityError) as caught:
            parse_voltage(text)
        assert right in caught.value.right
    with pytest.raises(QuantityError, match="a current"):
        parse_voltage("30 A")
    with pytest.raises(QuantityError, match="unit is missing"):
        parse_voltage("30")


@pytest.mark.parametrize(
    ("text", "window"),
    [
        ("10..15 V", Window(10.0, 15.0)),
        ("230 V", Window(230.0, 230.0)),
        ("12 V ± 10 %", Window(10.8, 13.2)),
        ("at least 10 V", Window(10.0, inf)),
        ("at most 15 V", Window(-inf, 15.0)),
        ("unknown..15 V", Window(Unknown("unknown"), 15.0)),
        ("10 V..unknown", Window(10.0, Unknown("unknown"))),
        ("from 10..11 V to 15 V", Window(Range(10.0, 11.0), 15.0)),
        ("from 10 V to 15 V", Window(10.0, 15.0)),
        ("from unknown to 15 V", Window(Unknown("unknown"), 15.0)),
        ("unknown", Unknown("unknown")),
        ("none", None),
    ],
)
def test_windows_of_every_wording(text: str, window: Window | Unknown | None) -> None:
    assert same(parse_window(text, "V"), window)


@pytest.mark.parametrize("text", ["15..10 V", "from 15 V to 10 V"])
def test_a_reversed_window_is_refused(text: str) -> None:
    with pytest.raises(QuantityError, match="lower end first"):
        parse_window(text, "V")


def test_a_window_of_the_wrong_kind_is_refused() -> None:
    with pytest.raises(QuantityError, match="a current"):
        parse_window("10..15 A", "V")
    with pytest.raises(QuantityError, match="unit is missing"):
        parse_window("10..15", "V")


@given(
    st.text(alphabet="0123456789.,-+±%eE/& AVmwWhHzΩunkowatles?²2°CBS_'<>~", max_size=24),
    st.sampled_from(["A", "mm2", "°C", "count", "ratio", "%", "Ah"]),
)
def test_any_text_is_read_or_refused_with_both_halves_of_an_error(text: str, unit: str) -> None:
    for read in (
        lambda: parse(text, unit),
        lambda: parse_window(text, unit),
        lambda: parse_voltage(text),
        lambda: parse_any(text),
    ):
        try:
            read()
        except QuantityError as error:
            assert "expected" in error.message
            assert error.right


@given(st.text(max_size=30), st.sampled_from(["A", "mm2", "count"]))
def test_free_text_never_becomes_a_number_that_is_not_finite(text: str, unit: str) -> None:
    try:
        value = parse(text, unit)
    except QuantityError:
        return
    if isinstance(value, float):
        assert exact(value)
