"""Whether what people depend on is supplied at all, and what a battery outlet may be asked for."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.limits import largest
from checker.facts.catalogue import fact
from checker.facts.darkness import live_node, reaches
from checker.facts.essential import ALARMS, ROAD, ending_at
from checker.facts.mains import TOO_MANY, states_of
from checker.facts.subject import Subject
from checker.facts.supply import supplies_by_load
from checker.quantities import Number, Truth, Unknown, equal

GUARDING = (*ROAD, "medical", "navigation", "way out", "bilge")
"""Purposes on which people depend, whatever the list of essential loads says."""


@fact(
    "load",
    "guards_people",
    type="yes/no",
    says="Its loss is a danger: an alarm or detector, road lamps, brakes, steering, medical gear, navigation, a lamp "
    "of the way out, a bilge pump.",
    method="its kind, and its purpose; untold it is open where something speaks for such a duty",
    source="common practice, no source",
)
def guards_people(s: Subject) -> Truth:
    if s.item.kind in ALARMS or s.item.kind == "brake":
        return True
    purpose = s.read(s.item, "purpose") if s.item.allows("purpose") else None
    if isinstance(purpose, Unknown):
        # Silence on the purpose of a lamp or motor is the rule; it is a question where something speaks for a duty.
        return purpose if isinstance(s.is_road_load, Unknown) or _speaks_for_duty(s) else False
    return isinstance(purpose, str) and purpose in GUARDING


def _speaks_for_duty(s: Subject) -> bool:
    """A lamp with its own cell may show the way out, a motor behind a float or low in a boat may empty the bilge."""
    if s.item.kind == "lamp":
        return s.own_cell is not None and not isinstance(s.own_cell, Unknown)
    if s.item.kind != "motor":
        return False
    links = [
        link
        for one in ending_at(s.facts, s.id)
        for line in s.facts.network.by_circuit.get(one.name, ())
        for link in line.links
    ]
    floats = any(link.equipment.allows("operated") and link.equipment.says("operated", "float") for link in links)
    body = s.facts.subject("equipment", s.id)
    low = body is not None and equal(body.place_kind, "under body") is True
    return floats or (low and s.facts.design.vehicle.says("kind", "boat"))


MAY_NEED_VOLTAGE = ("motor", "lamp", "load")
"""Kinds that have such a purpose, or that of a guard, where the file tells none."""
NEEDS_VOLTAGE = ("communication", "water", "ventilation")
"""Purposes that ISO 10133, 4.8, and ABYC E-11, 11.14, count with those on which people depend."""


@fact(
    "load",
    "weak_when_low",
    type="yes/no",
    says="It is dangerous when its voltage is low: what guards people, pumps, blowers, radio.",
    method="its kind, and its purpose; untold, a motor may be a pump, a lamp that of navigation, a load electronics",
    source="ISO 10133, 4.8, 2012 (seen); ABYC E-11, 11.14, 2021 (from memory)",
)
def weak_when_low(s: Subject) -> Truth:
    if s.guards_people is True or s.item.kind == "fan":
        return True
    purpose = s.read(s.item, "purpose") if s.item.allows("purpose") else None
    if isinstance(purpose, Unknown):
        return purpose if s.item.has("purpose") or s.item.kind in MAY_NEED_VOLTAGE else False
    return purpose in NEEDS_VOLTAGE


@fact(
    "load",
    "has_supply",
    type="yes/no",
    says="A battery, or the shore, supplies it with every contact closed.",
    method="walk from every battery; of a load of the mains the supply states; what is on no circuit has none",
)
def has_supply(s: Subject) -> Truth:
    node = live_node(s.facts, s.item)
    if node is None:
        if equal(s.facts.design.purpose.value, "design") is True:
            return False
        return Unknown(f"what supplies {s.id} was perhaps not seen")
    if node.endswith(":L"):
        return _fed_with_mains(s)
    if node in reaches(s.facts, 0, most=False):
        return True
    if node in reaches(s.facts, 0, most=True):
        return Unknown(f"part of the supply of {s.id} was not seen")
    return False


def _fed_with_mains(s: Subject) -> Truth:
    """Whether some source of mains reaches it in some supply state."""
    if not states_of(s.facts).complete:
        return TOO_MANY
    found = supplies_by_load(s.facts).get(s.id, [])
    if any(one.item.certain for one in found):
        return True
    if found or any(wire.gap is not None for wire in s.facts.network.wires()):
        return Unknown(f"whether a source of mains reaches {s.id} is not known")
    return False


@fact(
    "outlet",
    "lasting_current",
    unit="A",
    says="Greatest current that may flow at it for long before a device opens; none for mains.",
    method="conductor.overload_current of the circuits that end at it",
)
def lasting_current(s: Subject) -> Any:
    if s.is_mains is not False:
        return None if s.is_mains is True else s.is_mains
    found: Number = None
    for circuit in s.facts.network.circuits:
        if any(port.equipment == s.id for port in circuit.ends):
            live = s.facts.network.conductor(circuit.name, LIVE)
            subject = None if live is None else s.facts.of("conductor", live)
            unseen = Unknown(f"the conductor of {circuit.name} is not known")
            current = unseen if subject is None else subject.overload_current
            found = current if found is None else largest(found, current)
    return Unknown(f"{s.id} is connected to no circuit") if found is None else found
