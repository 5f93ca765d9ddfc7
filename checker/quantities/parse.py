"""Text as it stands on a part ('70 mm2', '2 m ± 20 %', '0 B&S', 'unknown') to a Number in SI."""

from __future__ import annotations

import re
from functools import lru_cache
from math import inf, isinf

from checker.quantities.arithmetic import rounded
from checker.quantities.gauges import gauge_area
from checker.quantities.refusals import QuantityError, bare, beyond, refuse
from checker.quantities.units import BY_SYMBOL, COUNT, Kind, Scale, kind_of
from checker.quantities.values import Number, Range, Unknown, Window, between

NUMBER = r"[-+]?[0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]{1,3})?"
_simple = re.compile(rf"({NUMBER}) ?((?:[^0-9\s].*)?)").fullmatch
_only_number = re.compile(NUMBER).fullmatch
# Compiled when first used: a gauge; a hyphen or the word `to` between two numbers, as people write ranges.
_GAUGE = r"([0-9./]+) ?(AWG|B&S|mm auto)"
_OTHER_RANGE = r"([-+]?[0-9.]+[^-–—]*?) ?(?:-|–|—|to|\.\.\.+|…) ?([0-9].*)"
_LONGEST = 100

SAME_LETTERS = str.maketrans(
    {
        "μ": "µ",
        "\u2126": "Ω",
        "²": "2",
        "³": "3",
        "−": "-",
        "\u00a0": " ",
        "\u202f": " ",
        "\u2009": " ",
        "·": " ",
        "⋅": " ",
    }
)


def parse(text: str, unit: str) -> Number:
    """Read `text` as a quantity of what `unit` measures; the result is in SI (°C for temperatures).

    Any unit of the same kind is accepted: '500 mA' where 'A' is asked. A range gives a Range,
    'unknown' or '?' an Unknown, 'none' gives None. A suffix `each` is accepted (see `says_each`).
    Raises QuantityError, which says what would be right; UnitError if `unit` is not in the table.
    """
    return _parse(text, unit)


@lru_cache(maxsize=4096)
def _parse(text: str, unit: str) -> Number:
    kind = kind_of(unit)
    match = _simple(text)
    if match is not None:
        scale = kind.symbols.get(match[2])
        if scale is not None and kind is not COUNT:
            return _si(match[1], scale, text, kind)
    text = _tidied(text, kind)
    if kind is not COUNT:
        text = text.removesuffix(" each")
    if text in ("unknown", "?"):
        return Unknown("unknown")
    if text == "none":
        return None
    try:
        return _number(text, kind, unit)
    except QuantityError as error:
        if f"'{text}'" in error.message or not text:
            raise
        # The fault lies in one end of a range: show the whole as well.
        raise QuantityError(f"{error.message}, in '{text}'", error.right) from None


def _tidied(text: str, kind: Kind) -> str:
    if len(text) > _LONGEST:
        raise QuantityError(
            f"expected {kind.name} such as '{kind.example}', found a text of {len(text)} letters", f"'{kind.example}'"
        )
    return " ".join(text.translate(SAME_LETTERS).split())


def _number(text: str, kind: Kind, unit: str) -> Number:
    """Any form but the plain words."""
    if "," in text:
        raise refuse(text, kind, unit)
    if text.startswith(("at least ", "at most ")) and ".." in text:
        ends = text.split(" ", 2)[2]
        raise QuantityError(
            f"expected one number in '{text}': a range has its ends already", f"'{ends}', or one end alone"
        )
    if text.startswith("at least "):
        return between(_exact(text[9:], kind, unit), inf)
    if text.startswith("at most "):
        return between(-inf, _exact(text[8:], kind, unit))
    for sign in ("±", "+-", "+/-"):
        if sign in text:
            return _tolerance(text, sign, kind, unit)
    if ".." in text and "..." not in text:
        return _range(text, kind, unit)
    return _single(text, kind, unit)


def _single(text: str, kind: Kind, unit: str) -> Number:
    """One number with its unit, or one gauge."""
    match = _simple(text)
    if match is not None:
        scale = kind.symbols.get(match[2])
        if scale is not None:
            return _whole(_si(match[1], scale, text, kind), text, kind)
    gauge = re.fullmatch(_GAUGE, text) if unit == "mm2" else None
    if gauge is not None:
        area = gauge_area(gauge[1], gauge[2])
        if area is not None:
            return area
    elif re.fullmatch(r"[-+]?[0-9.]+[eE][-+]?[0-9]{4,}( .*)?", text):
        raise beyond(text, kind)
    other = re.fullmatch(_OTHER_RANGE, text)
    if other is not None and gauge is None:
        raise QuantityError(
            f"expected {kind.name} such as '{kind.example}', found '{text}': a range is written with two dots",
            f"'{other[1].strip()}..{other[2]}'",
        )
    raise refuse(text, kind, unit)


def _whole(value: float, text: str, kind: Kind) -> float:
    if kind is COUNT and not value.is_integer():
        raise QuantityError(f"expected a count, a whole number such as '3', found '{text}'", "a whole number")
    return value


def _exact(text: str, kind: Kind, unit: str) -> float:
    """One number that is not itself a range."""
    value = _single(text, kind, unit)
    if not isinstance(value, float):
        raise QuantityError(
            f"expected {kind.name} such as '{kind.example}', found '{text}', which is not one exact number",
            "the area in mm2",
        )
    return value


def _si(digits: str, scale: Scale, text: str, kind: Kind) -> float:
    """The number in SI, the nearest float to its exact decimal (or rational) value."""
    mantissa, _, exponent = digits.lower().partition("e")
    if scale.suffix:
        value = float(f"{mantissa}e{int(exponent) + scale.power}") if exponent else float(digits + scale.suffix)
    else:
        whole, _, part = mantissa.partition(".")
        top, bottom = int(whole + part) * scale.numerator, scale.denominator
        power = int(exponent or 0) - len(part) + scale.power
        try:
            value = top * 10**power / bottom if power >= 0 else top / (bottom * 10**-power)
        except OverflowError:
            raise beyond(text, kind) from None
    if isinf(value) or (value == 0.0 and mantissa.strip("+-0.") != ""):
        raise beyond(text, kind)
    return value + 0.0  # minus zero becomes zero


def _with_unit_of(left: str, right: str) -> str:
    """`left` with the unit that `right` carries, if it has none of its own."""
    left = left.strip()
    if not re.fullmatch(rf"{NUMBER}|[0-9]+/0", left):
        return left
    symbol = re.sub(rf"^(?:[0-9]+/0|{NUMBER}) ?", "", right.strip())
    return f"{left} {symbol}".strip()


def _range(text: str, kind: Kind, unit: str) -> Number:
    left, _, right = text.partition("..")
    right = right.strip()
    if not bare(kind) and _only_number(right):
        missing = _only_number(left.strip()) is not None
        reason = "a unit is missing" if missing else "the unit stands last, or at both ends"
        raise QuantityError(
            f"expected {kind.name} such as '{kind.example}', found '{text}': {reason}",
            f"'{text} {unit}'" if missing else f"'25..35 {unit}' or '25 {unit}..35 {unit}'",
        )
    if "unknown" in (left.strip(), right.split(" ")[0]):
        raise QuantityError(f"expected a number at both ends of '{text}'", "'at least ...', 'at most ...' or 'unknown'")
    if unit == "mm2" and re.search(r"(AWG|B&S)$", right):
        ends = [_single(_with_unit_of(left, right), kind, unit), _single(right, kind, unit)]
        lows = [end.low if isinstance(end, Range) else end for end in ends]
        highs = [end.high if isinstance(end, Range) else end for end in ends]
        return between(min(x for x in lows if isinstance(x, float)), max(x for x in highs if isinstance(x, float)))
    low, high = _exact(_with_unit_of(left, right), kind, unit), _exact(right, kind, unit)
    if low > high:
        raise QuantityError(f"expected the lower end first, found '{text}'", f"'{right}..{_with_unit_of(left, right)}'")
    return between(low, high)


def _tolerance(text: str, sign: str, kind: Kind, unit: str) -> Number:
    left, right = (part.strip() for part in text.split(sign, 1))
    if kind.unit == "%" or left.endswith("%") or sign in right:
        raise QuantityError(
            f"expected {kind.name} such as '{kind.example}', found '{text}': the ± is ambiguous",
            "both ends, such as '35..45 %'" if "%" in text else "one ± only",
        )
    if right.endswith("%"):
        if kind.unit == "°C":
            raise QuantityError(f"expected a tolerance in K after the ± of '{text}'", "'25 °C ± 5 K'")
        centre = _exact(left, kind, unit)
        share = _exact(right, BY_SYMBOL["%"], "%")
        spread = abs(centre) * share
        if share > 1:
            raise QuantityError(f"expected a tolerance of 0 to 100 %, found '{text}'", "both ends, such as 'a..b'")
    else:
        if _only_number(right) and not bare(kind):
            raise QuantityError(
                f"expected a unit or % after the ± of '{text}'", f"'{left} ± {right} {unit}' or '{left} ± {right} %'"
            )
        centre = _exact(_with_unit_of(left, right), kind, unit)
        is_difference = kind.unit == "°C" and right.endswith("K")
        spread = _exact(right, BY_SYMBOL["K"], "K") if is_difference else _exact(right, kind, unit)
    if spread < 0 or right.startswith(("-", "+")):
        raise QuantityError(f"expected a tolerance without a sign, found '{text}'", f"'{left} ± {right.lstrip('+-')}'")
    return between(rounded(centre - spread), rounded(centre + spread))


def says_each(text: str) -> bool:
    """Whether the text says that the quantity is that of each of several things: '50 Ah each'."""
    return text.rstrip().endswith(" each")


def parse_voltage(text: str) -> tuple[Number, str | None]:
    """Read a rated voltage: '80 V DC' is (80.0, 'dc'), '230 V AC' (230.0, 'ac'), '24 V' (24.0, None).

    Raises QuantityError as `parse` does.
    """
    short = text.rstrip().removesuffix(" each").rstrip()
    for word in ("DC", "AC"):
        if short.endswith(f"V {word}"):
            return parse(short[:-3], "V"), word.lower()
    return parse(text, "V"), None


def parse_window(text: str, unit: str) -> Window | Unknown | None:
    """Read a true interval: '10..15 V' is Window(10.0, 15.0), '230 V' Window(230.0, 230.0).

    One end may be 'unknown' ('unknown..15 V', '10 V..unknown'), an end in doubt is written
    'from 10..11 V to 15 V', and 'at least 10 V' has no upper end (it is infinite).
    'unknown' gives Unknown, 'none' gives None. Raises QuantityError as `parse` does.
    """
    kind = kind_of(unit)
    tidy = _tidied(text, kind)
    ends = re.fullmatch(r"from (.+) to (.+)|(unknown) ?\.\. ?(.+)|(.+?) ?\.\. ?(unknown)", tidy)
    if ends is not None:
        left, right = (part for part in ends.groups() if part is not None)
        low, high = parse(left, unit), parse(right, unit)
        if isinstance(low, float) and isinstance(high, float) and low > high:
            raise QuantityError(f"expected the lower end first, found '{text}'", f"'from {right} to {left}'")
        return Window(low, high)
    value = parse(text, unit)
    if isinstance(value, Range):
        return Window(value.low, value.high)
    return Window(value, value) if isinstance(value, float) else value
