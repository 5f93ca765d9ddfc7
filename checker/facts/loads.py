"""What a piece of equipment draws, as current at its own voltage."""

from __future__ import annotations

from typing import Any

from checker.design.given import Given
from checker.design.model import Equipment
from checker.quantities import UNKNOWN, Number, Range, Unknown, divide

POWER_FACTOR = 1.0
"""Alternating-current loads are taken at unity where the file says power: current is power over voltage."""


def rated_current(item: Equipment, volts: Number) -> Number:
    """Current a load draws when it runs (A): stated running current or current, else power over nominal voltage."""
    for key in ("running", "current"):
        if item.allows(key):
            stated = item.value(key)
            if isinstance(stated, float | Range):
                return stated
    if item.allows("power"):
        power = item.value("power")
        if isinstance(power, float | Range):
            return divide(power, volts)
    if item.kind == "outlet":
        rating: Any = item.value("rating")
        return rating if isinstance(rating, float | Range) else UNKNOWN
    return Unknown(f"what {item.name} draws is not stated")


def running_current(given: Given, unit: str, volts: Number) -> Number:
    """Current of one entry under `running` of a mode: A as it stands, W over the voltage."""
    value: Any = given.value
    if unit == "W":
        return divide(value, volts)
    return value if isinstance(value, float | Range | Unknown) else 0.0
