"""The closed table of units: what each measures, its dimension and its exact size in SI.

Symbols are strict in case, and every prefix allowed is listed. Inside the program a value is in
the SI unit of its dimension, with three exceptions: temperatures stay in °C, per cent is a ratio,
and a rotational speed in rpm becomes revolutions per second.
"""

from __future__ import annotations

from functools import lru_cache

Dimension = tuple[int, int, int, int, int, int]
"""Exponents of (m, kg, s, A, K) and a mark, 1 for a point on the Celsius scale."""


class UnitError(ValueError):
    """A unit that is not in the table, or an operation that the dimensions do not allow."""


class Scale:
    """The size of one symbol in SI: (numerator / denominator) * 10**power, all whole numbers."""

    __slots__ = ("denominator", "numerator", "power", "suffix")

    def __init__(self, power: int, numerator: int = 1, denominator: int = 1) -> None:
        self.power = power
        self.numerator = numerator
        self.denominator = denominator
        # A pure power of ten is appended to the digits, so that 70 mm2 is float("70e-6"), exactly.
        self.suffix = f"e{power}" if numerator == denominator == 1 else ""


class Kind:
    """What a unit measures: words for messages, an example, its dimension and its symbols."""

    __slots__ = ("dimension", "example", "name", "symbols", "unit")

    def __init__(self, name: str, unit: str, example: str, dimension: Dimension, symbols: str) -> None:
        self.name = name
        self.unit = unit
        self.example = example
        self.dimension = dimension
        self.symbols = _symbols(symbols)


def _symbols(text: str) -> dict[str, Scale]:
    """'mA:-3 A:0 h:0*3600/1' as symbol to scale; a no-break space in a symbol stands for a space."""
    found = {}
    for entry in text.split(" "):
        symbol, _, size = entry.partition(":")
        power, _, factor = size.partition("*")
        numerator, _, denominator = factor.partition("/")
        found[symbol.replace("\u00a0", " ")] = Scale(int(power), int(numerator or 1), int(denominator or 1))
    return found


def _si(m: int = 0, kg: int = 0, s: int = 0, a: int = 0, k: int = 0, celsius: int = 0) -> Dimension:
    return (m, kg, s, a, k, celsius)


# Their empty symbol stands for a bare number.
COUNT = Kind("a count", "count", "3", _si(), ":0")
RATIO = Kind("a ratio", "ratio", "0.94", _si(), ":0 %:-2")

# name, canonical unit, example, dimension, symbol:power of ten[*numerator/denominator]
# A year is 365.25 days and a month a twelfth of it. 9.80665 m/s2: standard gravity (memory: SI brochure).
KINDS: tuple[Kind, ...] = (
    Kind("a voltage", "V", "12 V", _si(2, 1, -3, -1), "V:0 mV:-3 kV:3"),
    Kind("a current", "A", "30 A", _si(a=1), "A:0 mA:-3 kA:3 µA:-6"),
    Kind("a resistance", "Ω", "4 mΩ", _si(2, 1, -3, -2), "Ω:0 mΩ:-3 µΩ:-6 kΩ:3 MΩ:6 ohm:0 mohm:-3 kohm:3 Mohm:6"),
    Kind("a power", "W", "45 W", _si(2, 1, -3), "W:0 mW:-3 kW:3 VA:0 kVA:3"),
    Kind("an energy", "Wh", "2.4 kWh", _si(2, 1, -2), "Wh:0*3600 kWh:3*3600 J:0 kJ:3 MJ:6"),
    Kind("a charge", "Ah", "100 Ah", _si(s=1, a=1), "Ah:0*3600 mAh:-3*3600 kAh:3*3600 C:0"),
    Kind("a length", "m", "0.3 m", _si(1), "m:0 mm:-3 cm:-2 km:3 µm:-6"),
    Kind("an area", "mm2", "6 mm2", _si(2), "mm2:-6 cm2:-4 m2:0"),
    Kind("a volume", "L", "20 L", _si(3), "L:-3 mL:-6 m3:0 cm3:-6"),
    Kind("a mass", "kg", "12 kg", _si(kg=1), "kg:0"),
    Kind("a temperature", "°C", "25 °C", _si(k=1, celsius=1), "°C:0"),
    Kind("a temperature difference", "K", "10 K", _si(k=1), "K:0"),
    Kind(
        "a time",
        "s",
        "0.4 s",
        _si(s=1),
        "s:0 ms:-3 µs:-6 min:0*60 h:0*3600 day:0*86400 days:0*86400 month:0*2629800 months:0*2629800 "
        "year:0*31557600 years:0*31557600",
    ),
    Kind("a rotational speed", "rpm", "2000 rpm", _si(s=-1), "rpm:0*1/60"),
    Kind("a frequency", "Hz", "50 Hz", _si(s=-1), "Hz:0 kHz:3 MHz:6"),
    Kind("a force", "N", "500 N", _si(1, 1, -2), "N:0 kN:3"),
    Kind("a torque", "N m", "10 N m", _si(2, 1, -2), "N\u00a0m:0 Nm:0"),
    Kind("a capacitance", "F", "2 mF", _si(-2, -1, 4, 2), "F:0 mF:-3 µF:-6 nF:-9"),
    Kind("an inductance", "H", "5 µH", _si(2, 1, -2, -2), "H:0 mH:-3 µH:-6"),
    Kind("an acceleration", "m/s2", "20 g", _si(1, 0, -2), "m/s2:0 g:-5*980665"),
    Kind("a speed", "m/s", "0.1 m/s", _si(1, 0, -1), "m/s:0 km/h:0*10/36"),
    Kind("a percentage", "%", "40 %", _si(), "%:-2"),
    Kind("a flow", "m3/h", "5 m3/h", _si(3, 0, -1), "m3/h:0*1/3600 m3/s:0 L/s:-3 L/min:-3*1/60 L/h:-3*1/3600"),
    Kind("a pressure", "Pa", "5 kPa", _si(-1, 1, -2), "Pa:0 kPa:3 MPa:6 bar:5 mbar:2"),
    Kind("a thermal resistance", "K/W", "1.5 K/W", _si(-2, -1, 3, 0, 1), "K/W:0"),
    Kind("a thermal conductance", "W/K", "3 W/K", _si(2, 1, -3, 0, -1), "W/K:0"),
    Kind("a relative temperature coefficient", "%/K", "-0.29 %/K", _si(k=-1), "%/K:-2"),
    Kind("a voltage temperature coefficient", "mV/K", "-24 mV/K", _si(2, 1, -3, -1, -1), "mV/K:-3 V/K:0"),
    Kind("an irradiance", "W/m2", "500 W/m2", _si(0, 1, -3), "W/m2:0 kW/m2:3"),
    Kind("an illuminance", "lx", "100 lx", _si(-2), "lx:0"),
    Kind("a let-through I²t", "A2s", "1500 A2s", _si(s=1, a=2), "A2s:0 kA2s:3"),
    Kind("a resistance per length", "Ω/km", "0.5 Ω/km", _si(1, 1, -3, -2), "Ω/km:-3 Ω/m:0 mΩ/m:-3"),
    Kind("a power per length", "W/m", "8 W/m", _si(1, 1, -3), "W/m:0"),
    Kind("a mass per length", "kg/m", "0.4 kg/m", _si(-1, 1), "kg/m:0 kg/km:-3"),
    Kind("a current density", "A/mm2", "4 A/mm2", _si(-2, 0, 0, 1), "A/mm2:6 A/m2:0"),
    RATIO,
    COUNT,
)

BY_SYMBOL: dict[str, Kind] = {symbol: kind for kind in KINDS[:-2] for symbol in kind.symbols}
# Units that a key may name but that no value carries; the suffix `each` on a value is another thing.
BARE_UNITS: dict[str, Kind] = {"ratio": RATIO, "count": COUNT, "each": COUNT}


def kind_of(unit: str) -> Kind:
    """What `unit` measures. Raises UnitError, naming the nearest, if it is not in the table."""
    kind = BY_SYMBOL.get(unit) or BARE_UNITS.get(unit)
    if kind is not None:
        return kind
    from difflib import get_close_matches

    near = get_close_matches(unit, [*BY_SYMBOL, *BARE_UNITS], 3, 0.5)
    hint = f"; the nearest are {', '.join(near)}" if near else ""
    raise UnitError(f"there is no unit '{unit}'{hint}")


def scale_of(unit: str) -> Scale:
    """The size of `unit` in SI. Raises UnitError if it is not in the table."""
    return kind_of(unit).symbols["" if unit in BARE_UNITS else unit]


def dimension_of(unit: str) -> Dimension:
    """The dimension of `unit`, such as (0, 0, 0, 1, 0, 0) for 'kA'. Raises UnitError."""
    return kind_of(unit).dimension


def _scalable(*dimensions: Dimension) -> None:
    if any(dimension[5] for dimension in dimensions):
        raise UnitError("a temperature in °C can only be added to or subtracted from; take a difference first")


def multiply_dimensions(a: Dimension, b: Dimension) -> Dimension:
    """The dimension of a product. Raises UnitError for a temperature in °C."""
    _scalable(a, b)
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3], a[4] + b[4], 0)


def divide_dimensions(a: Dimension, b: Dimension) -> Dimension:
    """The dimension of a quotient. Raises UnitError for a temperature in °C."""
    _scalable(a, b)
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2], a[3] - b[3], a[4] - b[4], 0)


def power_dimension(a: Dimension, exponent: int) -> Dimension:
    """The dimension of a whole power. Raises UnitError for a temperature in °C."""
    _scalable(a)
    return (a[0] * exponent, a[1] * exponent, a[2] * exponent, a[3] * exponent, a[4] * exponent, 0)


CELSIUS = dimension_of("°C")
KELVIN = dimension_of("K")


def add_dimensions(a: Dimension, b: Dimension) -> Dimension:
    """The dimension of a sum: both alike, or °C and K, which is °C. Raises UnitError."""
    if a == b != CELSIUS:
        return a
    if (a, b) in ((CELSIUS, KELVIN), (KELVIN, CELSIUS)):
        return CELSIUS
    raise UnitError(f"cannot add {say_dimension(b)} to {say_dimension(a)}")


def subtract_dimensions(a: Dimension, b: Dimension) -> Dimension:
    """The dimension of a difference: both alike (°C - °C is K), or °C - K, which is °C. Raises UnitError."""
    if a == b:
        return KELVIN if a == CELSIUS else a
    if (a, b) == (CELSIUS, KELVIN):
        return CELSIUS
    raise UnitError(f"cannot subtract {say_dimension(b)} from {say_dimension(a)}")


@lru_cache(maxsize=256)
def unit_for(dimension: Dimension) -> str | None:
    """The unit in which to show a computed value, or None if the table has none. Where several
    measure the same dimension (energy and torque) it is the first in the table; a plain number is 'ratio'."""
    if dimension == RATIO.dimension:
        return "ratio"
    return next((kind.unit for kind in KINDS if kind.dimension == dimension), None)


def say_dimension(dimension: Dimension) -> str:
    """Words for a dimension: 'a current', or '(m2 A-1)' if the table has no name for it."""
    if dimension == RATIO.dimension:
        return "a plain number"
    for kind in KINDS:
        if kind.dimension == dimension:
            return kind.name
    names = ("m", "kg", "s", "A", "K", "°C")
    parts = [f"{name}{'' if n == 1 else n}" for name, n in zip(names, dimension, strict=True) if n]
    return f"({' '.join(parts)})"
