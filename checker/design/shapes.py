"""From the text of one scalar to the value of a key, by the shape of the key.

Shared by the reader and by the defaults of the vocabulary, so that a default is read as if it had been written.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache, lru_cache
from math import inf
from typing import Any

from checker.design.given import RatedVoltage
from checker.design.vocabulary.key import Key
from checker.quantities import (
    UNKNOWN,
    QuantityError,
    Range,
    Unknown,
    Window,
    between,
    parse,
    parse_voltage,
    parse_window,
)

UNKNOWN_WORDS = frozenset(("unknown", "?"))
NONE_WORD = "none"

LISTS = frozenset(("quantities", "words", "texts", "names", "points", "records"))
"""Shapes whose value is a tuple; one scalar stands for a list of one."""

STRUCTURED = frozenset(("box", "point", "points", "curve", "map", "choices", "records"))
"""Shapes that take a list or a mapping, and of scalars only `unknown`, `none` and their own words."""

MOST_COUNTED = 1000
"""Counts above this are slips: what is made of so many parts would also cost too much to compute."""

_SIGNED_UNITS = frozenset(("°C", "K", "V/K", "mV/K", "%/K"))
_SIGNED_KEYS = frozenset(("travel.distance",))
"""Quantities that have a direction although their unit is one of sizes."""


class ShapeError(ValueError):
    """A text that does not fit its key: `message` says what is wrong, `right` what would be right."""

    def __init__(self, message: str, right: str) -> None:
        super().__init__(f"{message}; {right}")
        self.message = message
        self.right = right


def parse_shape(key: Key, text: str, signed: bool = False) -> Any:
    """The value that `text` gives `key`: SI numbers, words, texts (see `SHAPES`). `none` is None everywhere.

    Numbers below zero are refused unless the unit has them (temperatures, coefficients) or `signed` allows them.
    Raises `ShapeError`.
    """
    return _parsed(key, text, signed) if len(text) > _LONGEST_KEPT else _kept(key, text, signed)


def _parsed(key: Key, text: str, signed: bool) -> Any:
    if text in UNKNOWN_WORDS:
        return UNKNOWN
    if text == NONE_WORD:
        return None
    if key.words and key.shape not in ("word", "words") and text in key.words:
        return text
    return _PARSERS[key.shape](key, text, signed)


_LONGEST_KEPT = 100  # letters; longer texts are sentences and not said twice
_kept = lru_cache(maxsize=16384)(_parsed)


@cache
def default_value(key: Key) -> Any:
    """The value of the default of `key`. Raises `ShapeError` when the vocabulary itself is wrong."""
    if key.default is None:
        return UNKNOWN
    if key.shape in LISTS and key.default not in (*UNKNOWN_WORDS, NONE_WORD):
        single = [parse_shape(key, text.strip()) for text in key.default.split(",")]
        return tuple(value for values in single for value in values)
    return parse_shape(key, key.default)


def _quantity(key: Key, text: str, signed: bool) -> Any:
    units = key.unit if isinstance(key.unit, tuple) else (key.unit,)
    value = _in_units(text, units)
    if signed or key.name in _SIGNED_KEYS or any(unit in _SIGNED_UNITS for unit in units):
        return value
    return not_negative(value, text)


def _in_units(text: str, units: tuple[str, ...]) -> Any:
    """`text` in the first of `units` that it fits."""
    errors = []
    for unit in units:
        try:
            return parse(text, unit)
        except QuantityError as error:
            errors.append(error)
    if len(errors) == 1:
        raise ShapeError(errors[0].message, f"write {errors[0].right}")
    right = " or ".join(dict.fromkeys(error.right for error in errors))
    raise ShapeError(f"`{text}` is no quantity in {' or '.join(units)}", f"write {right}")


def not_negative(value: Any, text: str) -> Any:
    """`value` again, an open lower end closed at zero. Raises `ShapeError` when it is, or may be, below zero."""
    low = value.low if isinstance(value, Range) else value
    if not isinstance(low, float) or low >= 0:
        return value
    if low == -inf:
        return between(0.0, value.high)
    raise ShapeError(f"`{text}` is below zero", "write a number from zero up")


def _quantities(key: Key, text: str, signed: bool) -> Any:
    return (_quantity(key, text, signed),)


def _count(key: Key, text: str, signed: bool) -> Any:
    value = not_negative(_in_units(text, ("count",)), text)
    high = value.high if isinstance(value, Range) else value
    if isinstance(high, float) and MOST_COUNTED < high < inf:
        raise ShapeError(f"`{text}` is more than any vehicle holds", f"write a count up to {MOST_COUNTED}")
    return value


def _ratio(key: Key, text: str, signed: bool) -> Any:
    value = _in_units(text, ("ratio",))
    return value if signed else not_negative(value, text)


def _window(key: Key, text: str, signed: bool) -> Any:
    try:
        value = parse_window(text, key.unit)
    except QuantityError as error:
        raise ShapeError(error.message, f"write {error.right}") from None
    if isinstance(value, Window) and not signed and key.unit not in _SIGNED_UNITS and value.low != -inf:
        not_negative(value.low, text)
    return value


def _rated_voltage(key: Key, text: str, signed: bool) -> Any:
    try:
        volts, system = parse_voltage(text)
    except QuantityError as error:
        raise ShapeError(error.message, f"write {error.right}") from None
    volts = not_negative(volts, text)
    return volts if isinstance(volts, Unknown) or volts is None else RatedVoltage(volts, system)


def _word(key: Key, text: str, signed: bool) -> Any:
    if text in key.words:
        return text
    raise ShapeError(f"`{text}` is no word for `{key.name}`", "write " + " or ".join(f"`{word}`" for word in key.words))


def _words(key: Key, text: str, signed: bool) -> Any:
    return (_word(key, text, signed),)


def _yes_no(key: Key, text: str, signed: bool) -> Any:
    if text == "true":
        return True
    if text == "false":
        return False
    raise ShapeError(f"`{text}` is neither true nor false", "write `true`, `false` or `unknown`")


def _text(key: Key, text: str, signed: bool) -> Any:
    return text


def _texts(key: Key, text: str, signed: bool) -> Any:
    return (text,)


def _date(key: Key, text: str, signed: bool) -> Any:
    first, dots, last = text.partition("..")
    if _is_date(first) and (not dots or (_is_date(last) and first <= last)):
        return text
    raise ShapeError(f"`{text}` is no date", "write `2026-10-30`, `2026-10` or `2026`")


def _is_date(text: str) -> bool:
    parts = text.split("-")
    if not all(part.isascii() and part.isdigit() for part in parts) or [len(part) for part in parts] not in (
        [4],
        [4, 2],
        [4, 2, 2],
    ):
        return False
    year, month, day = (int(part) for part in (*parts, "01", "01")[:3])
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    days = (31, 29 if leap else 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
    return 1 <= month <= 12 and 1 <= day <= days[month - 1]


def _arrangement(key: Key, text: str, signed: bool) -> Any:
    series, s, rest = text.partition("s")
    parallel, p, end = rest.partition("p")
    if s and p and not end and all(_is_small(part) for part in (series, parallel)):
        return int(series), int(parallel)
    raise ShapeError(f"`{text}` is no arrangement", "write `4s1p`: four in series, one such string in parallel")


def _is_small(text: str) -> bool:
    return text.isascii() and text.isdigit() and len(text) < 5 and 0 < int(text) <= MOST_COUNTED


def _degree(key: Key, text: str, signed: bool) -> Any:
    rest = text[3:].removeprefix("K")  # ISO 20653 writes IP6K9K for vehicles
    digits, letters = text[2:3] + rest[:1], rest[1:]
    known = len(digits) == 2 and digits[0] in "0123456X" and digits[1] in "0123456789X"
    if text.startswith("IP") and known and all(letter in "KABCDHMSW9" for letter in letters):
        return text
    raise ShapeError(f"`{text}` is no degree of protection", "write it as on the part, such as `IP44` or `IPX4`")


def _structured(key: Key, text: str, signed: bool) -> Any:
    raise ShapeError(f"`{text}` is one text, and `{key.name}` is not", EXAMPLES[key.shape])


EXAMPLES = {
    "box": "write `{at: [1 m, 0 m, 0.5 m], size: [0.4 m, 0.3 m, 0.2 m]}`",
    "point": "write three lengths: `[1 m, 0 m, 0.5 m]`",
    "points": "write a list of points: `[[1 m, 0 m, 0.5 m], [2 m, 0 m, 0.5 m]]`",
    "curve": "write pairs, such as `{750 rpm: 70 A, 2000 rpm: 150 A}`",
    "map": "write names with their values, such as `{fridge: 45 W}`",
    "choices": "write names with their positions, such as `{K2: shore}`",
    "records": "write a list of mappings",
}

_PARSERS: dict[str, Callable[[Key, str, bool], Any]] = {
    "quantity": _quantity,
    "quantities": _quantities,
    "count": _count,
    "ratio": _ratio,
    "window": _window,
    "rated voltage": _rated_voltage,
    "word": _word,
    "words": _words,
    "yes/no": _yes_no,
    "text": _text,
    "texts": _texts,
    "date": _date,
    "name": _text,
    "names": _texts,
    "port": _text,
    "signal": _text,
    "arrangement": _arrangement,
    "degree": _degree,
    **dict.fromkeys(STRUCTURED, _structured),
}
