"""A quantity that brings its own unit, as rules write it: '300 mm'."""

from __future__ import annotations

import re

from checker.quantities.parse import NUMBER, SAME_LETTERS, parse
from checker.quantities.refusals import QuantityError
from checker.quantities.units import BY_SYMBOL
from checker.quantities.values import Number


def parse_any(text: str) -> tuple[Number, str]:
    """Read a quantity whose unit is not known beforehand: '300 mm' is (0.3, 'mm'); '0.5' is (0.5, 'ratio').

    A gauge is (area, 'mm2'). Raises QuantityError if no unit of the table ends the text.
    """
    tidy = " ".join(text.translate(SAME_LETTERS).removesuffix(" each").replace("+-", "±").split())
    centre, _, tolerance = tidy.partition("±")
    for part in (centre.strip(), tolerance.strip()):
        symbol = _last_symbol(part)
        if symbol is not None:
            return parse(text, symbol), symbol
    if re.fullmatch(NUMBER, tidy.split("..")[-1].strip()):
        return parse(text, "ratio"), "ratio"
    raise QuantityError(f"expected a quantity with a unit such as '300 mm', found '{text}'", "'300 mm', '30 A', '12 V'")


def _last_symbol(text: str) -> str | None:
    """The unit symbol that ends `text`: 'mm2' of '25..35 mm2', 'N m' of '10 N m'; 'mm2' for gauges."""
    words = text.split(" ")
    glued = re.sub(rf"^(?:.*\.\.)?{NUMBER}(?=[^0-9])", "", words[-1])
    for symbol in (" ".join(words[-2:]), words[-1], glued):
        if symbol in ("AWG", "B&S", "mm auto"):
            return "mm2"
        if symbol in BY_SYMBOL:
            return symbol
    return None
