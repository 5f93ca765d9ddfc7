"""The closed table of units and the arithmetic of their dimensions."""

from __future__ import annotations

import pytest

from checker.quantities import (
    UnitError,
    add_dimensions,
    dimension_of,
    divide_dimensions,
    multiply_dimensions,
    parse,
    power_dimension,
    say_dimension,
    subtract_dimensions,
    unit_for,
)
from checker.quantities.units import BARE_UNITS, BY_SYMBOL, KINDS, kind_of

NUMBER = dimension_of("ratio")


@pytest.mark.parametrize(
    ("unit", "exponents"),
    [
        ("kA", (0, 0, 0, 1, 0, 0)),
        ("mm2", (2, 0, 0, 0, 0, 0)),
        ("V", (2, 1, -3, -1, 0, 0)),
        ("kWh", (2, 1, -2, 0, 0, 0)),
        ("Ah", (0, 0, 1, 1, 0, 0)),
        ("K", (0, 0, 0, 0, 1, 0)),
        ("°C", (0, 0, 0, 0, 1, 1)),
        ("%", (0, 0, 0, 0, 0, 0)),
        ("each", (0, 0, 0, 0, 0, 0)),
        ("K/W", (-2, -1, 3, 0, 1, 0)),
        ("F", (-2, -1, 4, 2, 0, 0)),
    ],
)
def test_a_unit_has_the_dimension_of_what_it_measures(unit: str, exponents: tuple[int, ...]) -> None:
    assert dimension_of(unit) == exponents


@pytest.mark.parametrize(
    ("a", "b", "product"),
    [
        ("V", "A", "W"),
        ("A", "Ω", "V"),
        ("A", "s", "Ah"),
        ("W", "s", "Wh"),
        ("m", "m", "mm2"),
        ("mm2", "m", "L"),
        ("V", "Ah", "Wh"),
        ("N", "m", "N m"),
        ("Pa", "m2", "N"),
        ("K/W", "W", "K"),
        ("%/K", "K", "%"),
        ("mV/K", "K", "V"),
        ("W/m2", "m2", "W"),
        ("Ω/km", "m", "Ω"),
        ("m3/h", "s", "m3"),
        ("kg", "m/s2", "N"),
        ("F", "V", "Ah"),
        ("Hz", "s", "ratio"),
        ("rpm", "s", "count"),
        ("A/mm2", "mm2", "A"),
        ("W/K", "K", "W"),
        ("m/s", "s", "m"),
        ("W/m", "m", "W"),
        ("kg/m", "m", "kg"),
    ],
)
def test_dimensions_multiply_and_divide_as_the_quantities_do(a: str, b: str, product: str) -> None:
    assert multiply_dimensions(dimension_of(a), dimension_of(b)) == dimension_of(product)
    assert divide_dimensions(dimension_of(product), dimension_of(b)) == dimension_of(a)
    assert multiply_dimensions(dimension_of(b), dimension_of(a)) == dimension_of(product)


def test_powers_of_dimensions() -> None:
    assert power_dimension(dimension_of("m"), 2) == dimension_of("mm2")
    assert power_dimension(dimension_of("A"), 0) == NUMBER
    assert multiply_dimensions(power_dimension(dimension_of("A"), 2), dimension_of("s")) == dimension_of("A2s")
    assert power_dimension(dimension_of("s"), -1) == dimension_of("Hz")


def test_temperatures_have_a_point_and_a_difference() -> None:
    point, difference = dimension_of("°C"), dimension_of("K")
    assert subtract_dimensions(point, point) == difference
    assert add_dimensions(point, difference) == point
    assert add_dimensions(difference, point) == point
    assert subtract_dimensions(point, difference) == point
    assert subtract_dimensions(difference, difference) == difference
    with pytest.raises(UnitError, match="cannot add a temperature to a temperature"):
        add_dimensions(point, point)
    with pytest.raises(UnitError, match="cannot subtract a temperature from a temperature difference"):
        subtract_dimensions(difference, point)


def test_a_point_on_the_celsius_scale_is_never_scaled() -> None:
    point = dimension_of("°C")
    for operation in (multiply_dimensions, divide_dimensions):
        for pair in ((point, NUMBER), (NUMBER, point), (point, point)):
            with pytest.raises(UnitError, match="take a difference first"):
                operation(*pair)
    with pytest.raises(UnitError, match="take a difference first"):
        power_dimension(point, 2)


def test_unlike_dimensions_neither_add_nor_subtract() -> None:
    with pytest.raises(UnitError, match="cannot add a voltage to a current"):
        add_dimensions(dimension_of("A"), dimension_of("V"))
    with pytest.raises(UnitError, match="cannot subtract a plain number from a length"):
        subtract_dimensions(dimension_of("m"), NUMBER)
    assert add_dimensions(dimension_of("mA"), dimension_of("kA")) == dimension_of("A")


def test_an_unknown_unit_is_an_error_that_names_the_nearest() -> None:
    with pytest.raises(UnitError, match=r"no unit 'mm3'; the nearest are .*mm2"):
        dimension_of("mm3")
    with pytest.raises(UnitError, match="no unit 'furlong'"):
        parse("3 furlong", "furlong")


def test_a_computed_dimension_has_a_unit_to_show_it_in() -> None:
    assert unit_for(multiply_dimensions(dimension_of("V"), dimension_of("A"))) == "W"
    assert unit_for(NUMBER) == "ratio"
    assert unit_for(dimension_of("°C")) == "°C"
    odd = power_dimension(dimension_of("A"), 3)
    assert unit_for(odd) is None
    assert say_dimension(odd) == "(A3)"
    assert say_dimension(dimension_of("kA")) == "a current"
    assert say_dimension(NUMBER) == "a plain number"


def test_no_symbol_measures_two_things_and_each_kind_reads_its_own_example() -> None:
    symbols = [symbol for kind in KINDS[:-2] for symbol in kind.symbols]
    assert len(symbols) == len(set(symbols)) == len(BY_SYMBOL)
    for kind in KINDS:
        assert isinstance(parse(kind.example, kind.unit), float)
        assert kind_of(kind.unit) is kind
    assert set(BARE_UNITS) == {"ratio", "count", "each"}


# Sizes in SI: SI brochure (decimal prefixes; hour, minute, litre, bar, day), standard gravity (memory).
@pytest.mark.parametrize(
    ("text", "unit", "si"),
    [
        ("1 mV", "V", 1e-3),
        ("1 kV", "V", 1e3),
        ("1 kA", "A", 1e3),
        ("1 µA", "A", 1e-6),
        ("1 mΩ", "Ω", 1e-3),
        ("1 MΩ", "Ω", 1e6),
        ("1 ohm", "Ω", 1.0),
        ("5 kVA", "W", 5000.0),
        ("2.4 kWh", "Wh", 8.64e6),
        ("1 Ah", "Ah", 3600.0),
        ("100 mAh", "Ah", 360.0),
        ("1 km", "m", 1e3),
        ("5 cm", "m", 0.05),
        ("60 cm2", "cm2", 0.006),
        ("1 m2", "mm2", 1.0),
        ("20 L", "L", 0.02),
        ("1 m3", "L", 1.0),
        ("1 mL", "L", 1e-6),
        ("10 ms", "s", 0.01),
        ("90 min", "h", 5400.0),
        ("1 day", "s", 86400.0),
        ("12 months", "months", 31557600.0),
        ("1 year", "s", 31557600.0),
        ("3000 rpm", "rpm", 50.0),
        ("1 kHz", "Hz", 1e3),
        ("1 kN", "N", 1e3),
        ("10 Nm", "N m", 10.0),
        ("2 mF", "F", 2e-3),
        ("470 µF", "F", 470e-6),
        ("5 µH", "H", 5e-6),
        ("20 g", "m/s2", 196.133),
        ("36 km/h", "m/s", 10.0),
        ("40 %", "%", 0.4),
        ("40 %", "ratio", 0.4),
        ("3600 m3/h", "m3/h", 1.0),
        ("60 L/min", "m3/h", 1e-3),
        ("1 bar", "Pa", 1e5),
        ("1 mbar", "bar", 100.0),
        ("-0.29 %/K", "%/K", -0.0029),
        ("-24 mV/K", "mV/K", -0.024),
        ("1 kW/m2", "W/m2", 1000.0),
        ("2 kA2s", "A2s", 2000.0),
        ("1 Ω/km", "Ω/km", 1e-3),
        ("4 A/mm2", "A/mm2", 4e6),
        ("25 °C", "°C", 25.0),
        ("10 K", "K", 10.0),
        ("1.5 K/W", "K/W", 1.5),
        ("100 lx", "lx", 100.0),
    ],
)
def test_every_kind_of_unit_is_read_at_its_size_in_si(text: str, unit: str, si: float) -> None:
    assert parse(text, unit) == si
