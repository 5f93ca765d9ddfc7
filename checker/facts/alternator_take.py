"""What an alternator with no converter between drives into a lead-acid bank."""

from __future__ import annotations

from typing import Any

from checker.facts.battery_body import LEAD
from checker.facts.catalogue import fact
from checker.facts.charging import charge_current, outputs_to
from checker.facts.contacts import engine_runs
from checker.facts.subject import Subject
from checker.physics.storage import lead_acid_acceptance
from checker.quantities import UNKNOWN, Number, Range, Unknown, corners, greatest, least, multiply, total

LOW = 0.2
"""Charge at which a bank takes most: as far as it is drained in use; common practice, no source."""
AGE_AND_COLD = Range(0.5, 2.0)
"""Factor by which age and temperature change what a battery takes: common practice, no source."""


@fact(
    "bank",
    "alternator_take",
    unit="A",
    says="Greatest charging current of a lead-acid bank from an alternator with no converter between; none where no "
    "alternator reaches it so.",
    method="the greatest current read at it with the engine running; else what it takes when a fifth is left, half to "
    "twice as much by age and temperature, never above the rating of the alternator",
    source="common practice, no source",
)
def alternator_take(s: Subject) -> Any:
    outputs = [one for one in outputs_to(s.facts, s.item) if one.source.equipment.kind == "alternator"]
    if not outputs:
        return None
    seen = _seen(s)
    if seen:
        return greatest(seen)
    if not isinstance(s.chemistry, str) or s.chemistry not in LEAD:
        return Unknown(f"what {s.id} takes is not known")
    takes = corners(lambda capacity_as: lead_acid_acceptance(capacity_as, LOW), s.capacity)
    given = total([charge_current(s, one) for one in outputs])
    most = multiply(takes, AGE_AND_COLD)
    return most if isinstance(given, Unknown) else least(most, given)


def _seen(s: Subject) -> list[Number]:
    """The currents read at it in modes in which the engine runs, or perhaps so; what of that is open stays open."""
    found: list[Number] = []
    for item in s.facts.design.readings:
        if not item.has("current") or not item.has("mode"):
            continue
        here, mode = item.value("at"), item.value("mode")
        running = engine_runs(s.facts.design.modes[mode]) if mode in s.facts.design.modes else UNKNOWN
        if running is False or (isinstance(here, str) and here != s.id):
            continue
        value = s.read(item, "current")
        sure = running is True and isinstance(here, str) and isinstance(value, float | Range)
        found.append(corners(abs, value) if sure else UNKNOWN)
    return found
