"""A Number or Window in SI to text as a fitter writes it; the inverse of parsing."""

from __future__ import annotations

from math import isinf

from checker.quantities.units import BARE_UNITS, Scale, kind_of, scale_of
from checker.quantities.values import Number, Range, Unknown, Window

# Symbols to show in place of the one asked for, each from the size of its number upwards.
_LADDERS: dict[str, tuple[tuple[str, float], ...]] = {
    "V": (("mV", 0), ("V", 0.1), ("kV", 10e3)),
    "A": (("mA", 0), ("A", 0.1), ("kA", 1e3)),
    "Ω": (("µΩ", 0), ("mΩ", 0.1e-3), ("Ω", 1), ("kΩ", 1e3), ("MΩ", 1e6)),
    "W": (("mW", 0), ("W", 0.1), ("kW", 10e3)),
    "VA": (("VA", 0), ("kVA", 1e3)),
    "Wh": (("Wh", 0), ("kWh", 3.6e6)),
    "J": (("J", 0), ("kJ", 1e3), ("MJ", 1e6)),
    "Ah": (("mAh", 0), ("Ah", 360)),
    "m": (("mm", 0), ("m", 0.1), ("km", 10e3)),
    "mm": (("mm", 0), ("m", 10)),
    "m2": (("mm2", 0), ("cm2", 1e-4), ("m2", 0.01)),
    "L": (("L", 0), ("m3", 1)),
    "m3": (("L", 0), ("m3", 0.1)),
    "s": (("ms", 0), ("s", 0.1), ("min", 120), ("h", 7200), ("days", 172800)),
    "Hz": (("Hz", 0), ("kHz", 1e3)),
    "N": (("N", 0), ("kN", 10e3)),
    "F": (("µF", 0), ("mF", 1e-3), ("F", 1)),
    "H": (("µH", 0), ("mH", 1e-3), ("H", 1)),
    "Pa": (("Pa", 0), ("kPa", 1e3)),
    "bar": (("mbar", 0), ("bar", 1e4)),
    "A2s": (("A2s", 0), ("kA2s", 1e4)),
}
_SAME_LADDER = {
    "mV": "V",
    "kV": "V",
    "mA": "A",
    "kA": "A",
    "µA": "A",
    "mΩ": "Ω",
    "µΩ": "Ω",
    "kΩ": "Ω",
    "MΩ": "Ω",
    "mW": "W",
    "kW": "W",
    "kVA": "VA",
    "kWh": "Wh",
    "kJ": "J",
    "MJ": "J",
    "mAh": "Ah",
    "ms": "s",
    "min": "s",
    "h": "s",
    "kHz": "Hz",
    "kN": "N",
    "mF": "F",
    "µF": "F",
    "mH": "H",
    "µH": "H",
    "kPa": "Pa",
    "mbar": "bar",
    "kA2s": "A2s",
}
_PLURALS = ("days", "months", "years")


def show(value: Number | Window, unit: str, digits: int = 4) -> str:
    """`value` in words that `parse` (or `parse_window`) reads back to the same within `digits`
    significant digits, in a handy unit of the kind of `unit`. Raises UnitError for an unlisted unit."""
    kind_of(unit)
    if value is None:
        return "none"
    if isinstance(value, Unknown):
        return "unknown"
    if isinstance(value, Window):
        return _window(value, unit, digits)
    if isinstance(value, Range):
        return _range(value.low, value.high, unit, digits)
    if isinf(value):
        return "no limit"
    symbol = _symbol(abs(value), unit)
    return _join(_digits(value, scale_of(symbol), digits), symbol)


def _window(window: Window, unit: str, digits: int) -> str:
    low, high = window.low, window.high
    if isinstance(low, (int, float)) and isinstance(high, (int, float)):
        return show(low, unit, digits) if low == high else _range(low, high, unit, digits)
    return f"from {show(low, unit, digits)} to {show(high, unit, digits)}"


def _range(low: float, high: float, unit: str, digits: int) -> str:
    if isinf(low) and isinf(high):
        return "unknown"
    if isinf(high):
        return f"at least {show(low, unit, digits)}"
    if isinf(low):
        return f"at most {show(high, unit, digits)}"
    symbol = _symbol(max(abs(low), abs(high)), unit)
    scale = scale_of(symbol)
    for count in range(digits, 18):  # as many digits as it takes to tell the ends apart
        left, right = _digits(low, scale, count), _digits(high, scale, count)
        if left != right:
            break
    return _join(f"{left}..{right}", symbol)


def _join(number: str, symbol: str) -> str:
    if symbol in BARE_UNITS:
        return number
    return f"{number} {symbol.removesuffix('s') if number == '1' and symbol in _PLURALS else symbol}"


def _symbol(size: float, unit: str) -> str:
    """The highest rung of the unit's ladder that `size` (in SI) reaches."""
    chosen = unit
    for symbol, least in _LADDERS.get(_SAME_LADDER.get(unit, unit), ()):
        # A hair below the rung still rounds up to it.
        if size * (1 + 1e-6) >= least and (size > 0 or symbol == unit):
            chosen = symbol
    return chosen


def _digits(value: float, scale: Scale, digits: int) -> str:
    """The number of `value` (in SI) in the unit of `scale`, without an exponent if it is of a usual size."""
    number = value * scale.denominator / scale.numerator
    text = f"{number / 10.0**scale.power if scale.power >= 0 else number * 10.0**-scale.power:.{digits}g}"
    if "e" not in text:
        return "0" if text == "-0" else text
    plain = float(text)
    if abs(plain) >= 1e15 or abs(plain) < 1e-9:
        return text
    return f"{plain:.0f}" if abs(plain) >= 1 else f"{plain:.{digits + 9}f}".rstrip("0")
