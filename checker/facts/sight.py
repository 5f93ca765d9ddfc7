"""What isolates a source, and whether it is seen from there: the poles it opens, the place it stands in."""

from __future__ import annotations

from typing import Any

from checker.design.model import Equipment
from checker.facts.array import controller_of, isolators_of, perhaps_isolated
from checker.facts.bank import loose_bank
from checker.facts.bank_isolation import main_ways
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, either, equal, every, least, some

IN_SIGHT = "stands in the same place, or `in sight of` names it"


def in_sight(s: Subject, item: Equipment, other: Equipment) -> Truth:
    """Whether an isolator is seen from a piece of equipment; two places without a word stay open."""
    unsaid = Unknown(f"whether {item.name} is seen from {other.name} is not told")
    told = s.read(item, "in sight of") if item.allows("in sight of") and item.has("in sight of") else unsaid
    named = some(equal(one, other.name) for one in told) if isinstance(told, tuple) else told
    return either(equal(s.read(item, "place"), s.read(other, "place")), named if named is not None else False)


def _isolators(s: Subject) -> list[Equipment] | Unknown:
    """The first isolators of each way of a bank to loads."""
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    found: dict[str, Equipment] = {}
    for way in main_ways(s):
        found.update({first.item.name: first.item for first in way.first})
        if not way.first and way.open is not None:
            return way.open
    return list(found.values())


@fact("bank", "isolator_poles", unit="each",
      says="Fewest conductors that a switch on its ways to loads opens together; none without one.",
      method="walk from its terminal along each live conductor to the first switch")  # fmt: skip
def isolator_poles(s: Subject) -> Any:
    found = _isolators(s)
    if isinstance(found, Unknown):
        return found
    fewest: Number = None
    for item in found:
        poles = s.read(item, "poles")
        fewest = poles if fewest is None else least(fewest, poles)
    return fewest


@fact("bank", "isolator_in_sight", type="yes/no", says="Every switch on its ways to loads is seen from it.",
      method=IN_SIGHT)  # fmt: skip
def isolator_in_sight(s: Subject) -> Truth:
    found = _isolators(s)
    return found if isinstance(found, Unknown) else every(in_sight(s, item, s.item) for item in found)


@fact("array", "isolator_at_controller", type="yes/no", says="Its isolator is seen from the controller it feeds.",
      method=IN_SIGHT)  # fmt: skip
def isolator_at_controller(s: Subject) -> Truth:
    controller, found = controller_of(s.facts, s.item), isolators_of(s)
    if not found:
        hidden = perhaps_isolated(s)
        return False if hidden is None else hidden
    if controller is None:
        return Unknown(f"which controller {s.id} feeds is not known")
    return in_sight(s, found[-1], controller)
