"""Heat that equipment gives off at full output."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.subject import Subject
from checker.quantities import UNKNOWN, Range, corners, multiply


def loss(output_w: float, efficiency: float) -> float:
    """Heat of a converter, ``P (1 / efficiency - 1)``. [W]"""
    return output_w * (1.0 / efficiency - 1.0)


def heat_of(s: Subject, item: Item) -> Any:
    """Heat of one piece of equipment at full output, W; zero for kinds that convert nothing."""
    for key in ("heat at full", "heat"):
        if item.allows(key) and item.has(key):
            return s.read(item, key)
    output = _output(s, item)
    if output is None:
        return 0.0
    return corners(loss, output, s.read(item, "efficiency"))


def _output(s: Subject, item: Item) -> Any:
    if item.kind in ("inverter", "inverter-charger"):
        return s.read(item, "power")
    if item.kind == "dc converter":
        rated = (_side(s, item, "low"), _side(s, item, "high"))
        known = [one for one in rated if isinstance(one, float | Range)]
        return known[-1] if known else UNKNOWN
    if item.kind == "charger":
        return multiply(s.read(item, "dc.nominal"), s.read(item, "dc.current"))
    if item.kind == "solar controller":
        return multiply(s.read(item, "output.nominal"), s.read(item, "output.current"))
    return None


def _side(s: Subject, item: Item, side: str) -> Any:
    return multiply(s.read(item, f"sides.{side}.nominal"), s.read(item, f"sides.{side}.current"))
