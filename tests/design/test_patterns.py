"""Patterns for editors take what the reader takes, and refuse what a fitter most often gets wrong."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.design.patterns import (
    ARRANGEMENT,
    DATES,
    DEGREE,
    quantity_pattern,
    rated_voltage_pattern,
    window_pattern,
)
from checker.quantities import parse, parse_voltage, parse_window
from checker.quantities.units import KINDS

UNITS = sorted({kind.unit for kind in KINDS})


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.unit)
def test_every_example_of_a_unit_fits_its_pattern(kind: object) -> None:
    unit, example = kind.unit, kind.example  # type: ignore[attr-defined]
    assert re.search(quantity_pattern(unit), example)


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("70 mm2", "mm2"), ("70 mm²", "mm2"), ("70mm2", "mm2"), ("25..35 mm2", "mm2"), ("2/0 AWG", "mm2"),
        ("0 B&S", "mm2"), ("6 mm auto", "mm2"), ("2 m ± 20 %", "m"), ("2 m ± 0.1 m", "m"), ("at least 300 A", "A"),
        ("500 mA", "A"), ("0.35 m each", "m"), ("10 N m", "N m"), ("-0.28 %/K", "%/K"), ("-5..0 °C", "°C"),
        ("1.5 mΩ", "mΩ"), ("15 mF", "F"), ("1 h", "s"), ("20 g", "m/s2"), ("12", "count"), ("94 %", "ratio"),
    ],
)  # fmt: skip
def test_what_the_reader_takes_fits_the_pattern(text: str, unit: str) -> None:
    parse(text, unit)
    assert re.search(quantity_pattern(unit), text)


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("6 mm", "mm2"), ("70", "mm2"), ("70 A", "mm2"), ("300 a", "A"), ("12", "V"), ("12V.", "V"), ("red", "V"),
        ("3 mm2 cable", "mm2"), ("2.5", "count"), ("-1", "count"), ("", "V"),
    ],
)  # fmt: skip
def test_what_is_wrong_does_not_fit(text: str, unit: str) -> None:
    assert not re.search(quantity_pattern(unit), text)


@given(
    st.sampled_from([unit for unit in UNITS if unit not in ("count", "ratio")]),
    st.integers(0, 10**6),
    st.integers(0, 10**6),
)
def test_any_whole_number_and_any_range_of_any_unit_fits(unit: str, a: int, b: int) -> None:
    low, high = sorted((a, b))
    for text in (f"{a} {unit}", f"{low}..{high} {unit}", f"{low} {unit}..{high} {unit}", f"at most {a} {unit}"):
        parse(text, unit)
        assert re.search(quantity_pattern(unit), text), text


@pytest.mark.parametrize("text", ["10..15 V", "14.4 V", "unknown..15 V", "10 V..unknown", "from 10..11 V to 15 V"])
def test_windows_the_reader_takes_fit(text: str) -> None:
    parse_window(text, "V")
    assert re.search(window_pattern("V"), text)


@pytest.mark.parametrize("text", ["10..15", "10 to 15 V", "unknown", "12 A"])
def test_other_texts_are_no_window(text: str) -> None:
    assert not re.search(window_pattern("V"), text)


@pytest.mark.parametrize("text", ["80 V DC", "230 V AC", "24 V", "12..24 V DC"])
def test_rated_voltages_the_reader_takes_fit(text: str) -> None:
    parse_voltage(text)
    assert re.search(rated_voltage_pattern(), text)


@pytest.mark.parametrize("text", ["80 V dc", "80 DC", "80", "80 A DC"])
def test_other_texts_are_no_rated_voltage(text: str) -> None:
    assert not re.search(rated_voltage_pattern(), text)


@pytest.mark.parametrize(
    ("pattern", "right", "wrong"),
    [
        (DATES, ["2026", "2026-10", "2026-10-30", "2008..2012"], ["26-10", "2026/10", "30.10.2026", "2026-1"]),
        (ARRANGEMENT, ["1s3p", "16s1p"], ["3p1s", "0s1p", "1s", "1s 3p"]),
        (DEGREE, ["IP44", "IPX4", "IP69K", "IP67", "IP6K9K", "IP5K4K"], ["44", "IP4", "ip44", "IP74", "IP6K", "IPK69"]),
    ],
)
def test_dates_arrangements_and_degrees(pattern: str, right: list[str], wrong: list[str]) -> None:
    assert [text for text in right if not re.search(pattern, text)] == []
    assert [text for text in wrong if re.search(pattern, text)] == []
