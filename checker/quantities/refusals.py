"""Why a text is no quantity of the kind expected, and what would be right instead."""

from __future__ import annotations

import re

from checker.quantities.gauges import AUTO_SIZES
from checker.quantities.units import BY_SYMBOL, COUNT, RATIO, Kind


class QuantityError(ValueError):
    """A text that cannot be read as the quantity expected.

    `message` says what was expected, with an example, and what was found; `right` what to write.
    """

    def __init__(self, message: str, right: str) -> None:
        super().__init__(message)
        self.message = message
        self.right = right


# What people write for a unit, in lower case, to the symbol of the table.
_SLIPS = {
    "amp": "A",
    "amps": "A",
    "ampere": "A",
    "amperes": "A",
    "volt": "V",
    "volts": "V",
    "watt": "W",
    "watts": "W",
    "ohms": "Ω",
    "r": "Ω",
    "sqmm": "mm2",
    "sq mm": "mm2",
    "mm^2": "mm2",
    "mm sq": "mm2",
    "mm 2": "mm2",
    "c": "°C",
    "degc": "°C",
    "deg c": "°C",
    "deg": "°C",
    "° c": "°C",
    "°": "°C",
    "celsius": "°C",
    "hr": "h",
    "hrs": "h",
    "hour": "h",
    "hours": "h",
    "sec": "s",
    "secs": "s",
    "second": "s",
    "seconds": "s",
    "mins": "min",
    "minute": "min",
    "minutes": "min",
    "d": "days",
    "yr": "years",
    "yrs": "years",
    "l": "L",
    "litre": "L",
    "litres": "L",
    "liter": "L",
    "liters": "L",
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "kgs": "kg",
    "kilo": "kg",
    "kilos": "kg",
    "percent": "%",
    "per cent": "%",
    "n.m": "N m",
    "n*m": "N m",
    "uf": "µF",
    "ua": "µA",
    "lux": "lx",
    "r/min": "rpm",
    "rev/min": "rpm",
    "hertz": "Hz",
    "m/s^2": "m/s2",
    "w/m^2": "W/m2",
    "a^2s": "A2s",
    "%/c": "%/K",
    "%/°c": "%/K",
    "mv/c": "mV/K",
    "mv/°c": "mV/K",
    "farad": "F",
}
_NUMBER = r"[-+]?[0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?"
_NUMBER_THEN = re.compile(rf"({_NUMBER}) ?(.*)")
_GAUGES = "'8 AWG', '2/0 AWG' or '0 B&S'"
_BLANK_WORDS = {"n/a", "na", "tbc", "tba", "tbd", "unk", "not known", "??", "-", "unknown"}


def _expected(kind: Kind, found: str) -> str:
    return f"expected {kind.name} such as '{kind.example}', found {found}"


def bare(kind: Kind) -> bool:
    """Whether a quantity of this kind may be a number without a unit."""
    return kind is COUNT or kind is RATIO


def refuse(text: str, kind: Kind, unit: str) -> QuantityError:
    """The error for `text`, which is no quantity of `kind` as it stands; `unit` is the one asked for."""
    for reason in (_not_a_number, _only_a_number, _gauge, _trade_size, _other_kind, _misspelt, _other_form):
        error = reason(text, kind, unit)
        if error is not None:
            return error
    return QuantityError(_expected(kind, f"'{text}'" if text else "nothing"), f"'{kind.example}' or 'unknown'")


def _not_a_number(text: str, kind: Kind, unit: str) -> QuantityError | None:
    low = text.casefold()
    if low in _BLANK_WORDS:
        return QuantityError(_expected(kind, f"'{text}'"), "'unknown' if nobody knows it, 'none' if there is none")
    if low == "none":
        return QuantityError(_expected(kind, f"'{text}'"), "'none' in small letters")
    if re.search(r"[0-9][ _'][0-9]{3}(?![0-9])", text):
        return QuantityError(
            _expected(kind, f"'{text}': the digits of a number stand together, without a thousands mark"),
            "'" + re.sub(r"(?<=[0-9])[ _'](?=[0-9]{3})", "", text) + "'",
        )
    if re.search(r"[0-9],[0-9]", text):
        pointed, joined = re.sub(r"(?<=[0-9]),(?=[0-9])", ".", text), text.replace(",", "")
        right = f"'{pointed}'" if not re.search(r",[0-9]{3}(?![0-9])", text) else f"'{joined}' or '{pointed}'"
        return QuantityError(
            _expected(kind, f"'{text}': a number has a decimal point, never a comma, and no thousands mark"), right
        )
    if re.match(r"[-+]?(inf|infinity|nan)\b", low):
        return QuantityError(_expected(kind, f"'{text}': a quantity is a finite number"), f"'{kind.example}'")
    if re.match(r"[-+]?\.[0-9]|[-+]?[0-9]+\.(?![0-9.])", text):
        return QuantityError(
            _expected(kind, f"'{text}': a decimal point needs a digit on each side"), "'0.5', or '5' without a point"
        )
    return None


def beyond(text: str, kind: Kind) -> QuantityError:
    """The error for a number too large or too small for a float."""
    return QuantityError(
        _expected(kind, f"'{text}': the number is too large or too small to compute with"), f"'{kind.example}'"
    )


def _only_a_number(text: str, kind: Kind, unit: str) -> QuantityError | None:
    if bare(kind) or not re.fullmatch(_NUMBER, text):
        return None
    fits = [f"'{text} {unit}'"]
    if unit == "%" and abs(float(text)) <= 1:
        fits = [f"'{float(text) * 100:.4g} %'", *fits]
    if unit == "mm2":
        fits += [f"'{text} mm auto'", f"'{text} AWG'", f"'{text} B&S'"]
    else:
        fits += [f"'{text} {symbol}'" for symbol in kind.symbols if symbol != unit][:2]
    return QuantityError(_expected(kind, f"the bare number '{text}': a unit is missing"), " or ".join(fits))


def _gauge(text: str, kind: Kind, unit: str) -> QuantityError | None:
    system = next((name for name in ("AWG", "B&S") if name in text.upper()), None)
    if system is None:
        return None
    if unit != "mm2":
        return QuantityError(_expected(kind, f"'{text}': a gauge is a size of conductor"), f"'{kind.example}'")
    swapped = re.fullmatch(rf"{re.escape(system)} ?([0-9]+(?:/0)?)", text, re.IGNORECASE)
    cased = re.fullmatch(rf"([0-9]+(?:/0)?) ?{re.escape(system)}", text, re.IGNORECASE)
    for match in (swapped, cased):
        if match and f"{match[1]} {system}" != text:
            return QuantityError(_expected(kind, f"'{text}'"), f"'{match[1]} {system}'")
    return QuantityError(
        _expected(kind, f"'{text}': gauges run from 4/0 (0000) over 1/0 (0) to 40"), f"{_GAUGES}, or '6 mm2'"
    )


def _trade_size(text: str, kind: Kind, unit: str) -> QuantityError | None:
    if unit != "mm2":
        if text.endswith(" auto"):
            return QuantityError(_expected(kind, f"'{text}': a trade size of conductor"), f"'{kind.example}'")
        return None
    if text.endswith("auto"):
        sizes = ", ".join(AUTO_SIZES)
        return QuantityError(
            _expected(kind, f"'{text}': the automotive trade sizes are {sizes} mm"), "'6 mm auto', or the area in mm2"
        )
    match = _NUMBER_THEN.fullmatch(text)
    if match is None or match[2].casefold() != "mm":
        return None
    number = match[1]
    size, area = (number, AUTO_SIZES[number]) if number in AUTO_SIZES else ("6", AUTO_SIZES["6"])
    right = f"'{number} mm2' for the area, or '{number} mm auto' for the trade size"
    return QuantityError(
        _expected(
            kind,
            f"'{text}': millimetres may be the automotive trade size, an outside diameter, "
            f"and {size} mm auto is only {area} mm2",
        ),
        right if number in AUTO_SIZES else f"'{number} mm2'",
    )


def _other_kind(text: str, kind: Kind, unit: str) -> QuantityError | None:
    match = _NUMBER_THEN.fullmatch(text)
    other = BY_SYMBOL.get(match[2]) if match else None
    if match is None or match[2] == "":
        return None
    if kind is COUNT:
        right = f"'{match[1]}'" if re.fullmatch(r"[0-9]+", match[1]) else "'3'"
        return QuantityError(f"expected a count, a whole number without a unit such as '3', found '{text}'", right)
    if other is None or match[2] in kind.symbols:
        return None
    if match[2] == "g" and kind.unit == "kg":
        return QuantityError(_expected(kind, f"'{text}': grams are not used"), "the mass in kg, such as '0.5 kg'")
    if match[2] == "C" and kind.unit in ("°C", "K"):
        return QuantityError(_expected(kind, f"'{text}' (C is coulomb)"), f"'{match[1]} {kind.unit}'")
    if match[2] == "K" and kind.unit == "°C":
        return QuantityError(_expected(kind, f"'{text}' (K is a difference)"), f"'{match[1]} °C'")
    return QuantityError(_expected(kind, f"'{text}' ({other.name})"), f"{kind.name} such as '{kind.example}'")


def _misspelt(text: str, kind: Kind, unit: str) -> QuantityError | None:
    match = _NUMBER_THEN.fullmatch(text)
    if match is None or match[2] == "":
        return None
    number, found = match[1], match[2]
    voltage = re.fullmatch(r"([mk]?v) ?(?:([ad])\.?c\.?)", found, re.IGNORECASE)
    if kind.unit == "V" and voltage:
        symbol = {"v": "V", "mv": "mV", "kv": "kV"}[voltage[1].lower()]
        written = f"{number} {symbol} {voltage[2].upper()}C"
        if written == text:
            return QuantityError(
                _expected(kind, f"'{text}': alternating or direct is not said here"), f"'{number} {symbol}'"
            )
        return QuantityError(
            _expected(kind, f"'{text}'"), f"'{written}', or '{number} {symbol}' where AC or DC is not asked"
        )
    symbols = [symbol for symbol in kind.symbols if symbol.casefold() == found.casefold()]
    slip = _SLIPS.get(found.casefold())
    if not symbols and slip in kind.symbols:
        symbols = [slip]
    if not symbols:
        known = ", ".join(symbol for symbol in kind.symbols if symbol)
        right = f"'{kind.example}'" if bare(kind) else f"a unit out of {known}, such as '{kind.example}'"
        return QuantityError(_expected(kind, f"'{text}': the unit '{found}' is not known here"), right)
    right = " or ".join(f"'{number} {symbol}'" for symbol in symbols)
    return QuantityError(_expected(kind, f"'{text}': the unit '{found}' is written {' or '.join(symbols)}"), right)


def _other_form(text: str, kind: Kind, unit: str) -> QuantityError | None:
    signs = re.match(r"(<=?|>=?|≤|≥|<|>|~|≈|about |approx\.? ?|ca\.? )\s*(.*)", text)
    if signs is None:
        return None
    word = {"<": "at most ", "≤": "at most ", ">": "at least ", "≥": "at least "}.get(signs[1][0], "")
    right = f"'{word}{signs[2]}'" if word else f"'{signs[2]} ± 10 %'"
    return QuantityError(_expected(kind, f"'{text}': the sign '{signs[1].strip()}' is not used"), right)
