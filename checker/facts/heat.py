"""Heat that equipment gives off at full output."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.subject import Subject
from checker.physics.converter import loss
from checker.quantities import UNKNOWN, Unknown, corners, multiply


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
        # Either side tells the power; one that is left out is not asked, one that is called unknown may differ.
        rated = [_side(s, item, side) for side in ("low", "high") if item.has(f"sides.{side}.current")]
        return UNKNOWN if not rated or any(isinstance(one, Unknown) for one in rated) else rated[-1]
    if item.kind == "charger":
        return multiply(s.read(item, "dc.nominal"), s.read(item, "dc.current"))
    if item.kind == "solar controller":
        return multiply(s.read(item, "output.nominal"), s.read(item, "output.current"))
    return None


def _side(s: Subject, item: Item, side: str) -> Any:
    return multiply(s.read(item, f"sides.{side}.nominal"), s.read(item, f"sides.{side}.current"))
