"""Quantities and words in quotes: read once, when the rule is loaded, in the unit of what stands beside them."""

from __future__ import annotations

import re
from typing import Any

from checker.quantities import QuantityError, UnitError, Window, dimension_of, exact, parse, parse_window
from checker.rulebook.nodes import Const
from checker.rulebook.problems import listed, meant
from checker.rulebook.syntax import ExpressionError
from checker.rulebook.types import NUMBER, TEXT, WINDOW, WORD, WORDS, YES_NO, Type

_UNIT = re.compile(r"\s*[-+]?[0-9][0-9.eE+-]*\s*(?:\.\.\s*[-+]?[0-9][0-9.eE+-]*\s*)?(.*)", re.DOTALL)


def unit_in(text: str) -> str:
    """The unit a quantity is written with; empty when it has none."""
    match = _UNIT.fullmatch(text)
    return match[1].strip() if match else ""


def as_quantity(text: str, offset: int, span: tuple[int, int], beside: Type | None = None) -> Const:
    """The literal as an exact number; its unit is its own or, for gauges, that of what stands `beside` it."""
    unit = unit_in(text)
    try:
        dimension = dimension_of(unit or "count")
    except UnitError as error:
        if beside is None or not beside.unit:
            raise ExpressionError(offset, str(error), "write a quantity such as `'300 mm'`") from None
        unit, dimension = beside.unit, beside.dimension
    if beside is not None and beside.dimension != dimension:
        what = f"`'{text}'` is {Type(NUMBER, dimension)}, and beside it stands {beside}"
        raise ExpressionError(offset, what, f"write {example(beside)}")
    value = _read(text, unit or "ratio", offset, beside)
    if not exact(value):
        raise ExpressionError(offset, f"`'{text}'` is not one exact number", "write one number with its unit")
    return Const(span, Type(NUMBER, dimension, unit or "ratio"), value, f"'{text}'")


def _read(text: str, unit: str, offset: int, beside: Type | None) -> Any:
    try:
        return parse(text, unit)
    except (QuantityError, UnitError) as error:
        right = f"write {example(beside)}" if beside is not None else "write a quantity such as `'300 mm'`"
        raise ExpressionError(offset, str(error), right) from None


def example(kind: Type) -> str:
    """How a literal of that type is written."""
    from checker.quantities.units import kind_of

    try:
        found = kind_of(kind.unit or "ratio")
    except UnitError:
        return "a quantity of the same dimension"
    return f"`{found.example}`" if found.unit in ("count", "ratio") else f"`'{found.example}'`"


def as_word(text: str, offset: int, span: tuple[int, int], kind: Type) -> Const:
    """The literal as one of the words of `kind`."""
    if text not in kind.words:
        raise ExpressionError(
            offset, f"`'{text}'` is not one of its words", meant(text, kind.words, f"write {listed(kind.words)}")
        )
    return Const(span, Type(WORD, words=kind.words), text, f"'{text}'")


def as_window(text: str, offset: int, span: tuple[int, int], beside: Type) -> Const:
    """The literal as a window such as `'10..15 V'`."""
    try:
        window = parse_window(text, beside.unit)
    except (QuantityError, UnitError, ValueError) as error:
        raise ExpressionError(offset, str(error), "write a window such as `'10..15 V'`") from None
    if not isinstance(window, Window) or not (exact(window.low) and exact(window.high)):
        raise ExpressionError(offset, f"`'{text}'` is no window with two ends", "write a window such as `'10..15 V'`")
    return Const(span, Type(WINDOW, beside.dimension, beside.unit), window, f"'{text}'")


def resolve(text: str, offset: int, span: tuple[int, int], beside: Type) -> Const:
    """The literal as what it must be beside something of that type."""
    if beside.name == NUMBER:
        return as_quantity(text, offset, span, beside)
    if beside.name in (WORD, WORDS):
        return as_word(text, offset, span, beside)
    if beside.name == TEXT:
        return Const(span, Type(TEXT), text, f"'{text}'")
    right = "write the fact alone, or `not` before it" if beside.name == YES_NO else f"write something that is {beside}"
    raise ExpressionError(offset, f"`'{text}'` stands beside {beside}", right)
