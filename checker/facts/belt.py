"""What an alternator takes from the engine: shaft power at the current asked of it."""

from __future__ import annotations

from typing import Any

from checker.facts.alternator import asked_and_given
from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.subject import Subject
from checker.physics.alternator import shaft_power
from checker.quantities import UNKNOWN, Number, Range, Unknown, Window, corners, greatest, least, multiply

EFFICIENCY = 0.67
"""Baseline of an alternator: Implementing Decision (EU) 2017/785, annex (seen)."""
SOURCE = "efficiency: Implementing Decision (EU) 2017/785, annex (seen)"


@fact(
    "converter",
    "belt_power",
    unit="W",
    says="Shaft power an alternator takes at the lasting current asked of it, in the worst mode with engine; none for "
    "other equipment.",
    method="current asked, no more than its hot output at that speed, times its highest set voltage over an efficiency "
    "of 67 %",
    source=SOURCE,
)
def belt_power(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    found = [_power(s, asked, gives) for _, asked, gives in asked_and_given(s)]
    return greatest(found) if found else Unknown("no mode says that the engine runs")


@fact(
    "converter",
    "belt_power_at_idle",
    unit="W",
    says="The same in the modes in which the engine idles, when the belt has least speed and wrap.",
    method="current asked, no more than its hot output at the lowest speed of its curve, times its highest set voltage "
    "over an efficiency of 67 %",
    source=SOURCE,
)
def belt_power_at_idle(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    found = []
    for mode, asked, gives in asked_and_given(s):
        idles = is_word(mode.value("engine"), "idle")
        if isinstance(idles, Unknown):
            return Unknown(f"whether the engine idles in {mode.name} is not known")
        if idles:
            found.append(_power(s, asked, gives))
    return greatest(found) if found else Unknown("no mode says that the engine idles")


def _power(s: Subject, asked: Number, gives: Number) -> Number:
    """Shaft power (W); what is asked counts whole where the output is not known."""
    window = s.read(s.item, "set voltage")
    volts = window.high if isinstance(window, Window) else UNKNOWN
    current = least(asked, gives) if isinstance(gives, float | Range) and not isinstance(asked, Unknown) else asked
    return corners(shaft_power, multiply(current, volts), EFFICIENCY)


@fact("converter", "belt_limit", unit="W", says="Shaft power for which the belt of an alternator is made.")
def belt_limit(s: Subject) -> Any:
    return s.read(s.item, "belt power") if s.item.allows("belt power") else None
