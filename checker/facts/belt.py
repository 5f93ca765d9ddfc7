"""What an alternator takes from the engine: shaft power at the current asked of it."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.physics.alternator import shaft_power
from checker.quantities import UNKNOWN, Range, Unknown, Window, corners, least, multiply

EFFICIENCY = 0.67
"""Baseline of an alternator: Implementing Decision (EU) 2017/785, annex (seen)."""


@fact(
    "converter",
    "belt_power",
    unit="W",
    says="Shaft power an alternator takes at the greatest lasting current asked of it; none for other equipment.",
    method="current asked, no more than its hot output, times its highest set voltage over an efficiency of 67 %",
    source="efficiency: Implementing Decision (EU) 2017/785, annex (seen)",
)
def belt_power(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    window = s.read(s.item, "set voltage")
    volts = window.high if isinstance(window, Window) else UNKNOWN
    asked, gives = s.asked_current, s.hot_output
    current = least(asked, gives) if isinstance(gives, float | Range) and not isinstance(asked, Unknown) else asked
    return corners(shaft_power, multiply(current, volts), EFFICIENCY)


@fact("converter", "belt_limit", unit="W", says="Shaft power for which the belt of an alternator is made.")
def belt_limit(s: Subject) -> Any:
    return s.read(s.item, "belt power") if s.item.allows("belt power") else None
