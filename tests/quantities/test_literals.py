"""A quantity that brings its own unit."""

from __future__ import annotations

import pytest

from checker.quantities import Number, QuantityError, Range, parse_any, same


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("300 mm", 0.3, "mm"),
        ("70 mm2", 70e-6, "mm2"),
        ("70mm2", 70e-6, "mm2"),
        ("12V", 12.0, "V"),
        ("10 N m", 10.0, "N m"),
        ("5 m3/h", 5 / 3600, "m3/h"),
        ("1500 A2s", 1500.0, "A2s"),
        ("0.5 m/s2", 0.5, "m/s2"),
        ("20 g", 196.133, "g"),
        ("500 W/m2", 500.0, "W/m2"),
        ("25..35 mm2", Range(25e-6, 35e-6), "mm2"),
        ("1..2mm2", Range(1e-6, 2e-6), "mm2"),
        ("2 m ± 20 %", Range(1.6, 2.4), "m"),
        ("10 ± 0.5 V", Range(9.5, 10.5), "V"),
        ("2 m +- 20 %", Range(1.6, 2.4), "m"),
        ("at least 5 A", Range(5.0, float("inf")), "A"),
        ("40 %", 0.4, "%"),
        ("6 mm auto", 4.59e-6, "mm2"),
        ("0.5", 0.5, "ratio"),
        ("2..3", Range(2.0, 3.0), "ratio"),
        ("-5 °C", -5.0, "°C"),
        ("50 Ah each", 180000.0, "Ah"),
        ("70 mm²", 70e-6, "mm2"),
    ],
)
def test_the_unit_is_found_at_the_end(text: str, value: Number, unit: str) -> None:
    found, symbol = parse_any(text)
    assert same(found, value)
    assert symbol == unit


def test_gauges_are_areas() -> None:
    assert parse_any("2/0 AWG")[1] == "mm2"
    assert isinstance(parse_any("0 B&S")[0], Range)


@pytest.mark.parametrize("text", ["banana", "", "5 x", "300 a", "each", "unknown", "±", "mm"])
def test_a_text_without_a_known_unit_is_refused(text: str) -> None:
    with pytest.raises(QuantityError, match="expected"):
        parse_any(text)
