"""Devices behind a source that limits its current: a short that looks like a load, and the cable it keeps warm."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.facts.catalogue import fact
from checker.facts.least_fault import least_faults_of, limiting, sides, zones_of
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import Number, Truth, Unknown, divide, least, negate, show


@fact(
    "device",
    "hangs_on_a_limit",
    type="yes/no",
    says="In some mode no battery stands on the bus behind it, and a converter that limits its current feeds it alone.",
    method="graph: the converter behind it, and converter.bus_has_battery",
)
@where_it_stands
def hangs_on_a_limit(s: Subject) -> Truth:
    source = limiting(s)
    if source is None:
        return False
    converter = s.facts.subject("converter", source.equipment.name)
    return Unknown(f"{source.name} is not known") if converter is None else negate(converter.bus_has_battery)


@fact(
    "device",
    "limited_share",
    unit="%",
    says="What that converter keeps giving into a short, over the rating of the device; none without such a converter.",
    method="device.limited_current over device.rating",
)
def limited_share(s: Subject) -> Any:
    return divide(s.limited_current, s.rating)


@fact(
    "device",
    "limited_capacity",
    unit="A",
    says="What the thinnest conductor behind it carries for ever, up to the next devices; none without such a "
    "converter.",
    method="least conductor.carrying_capacity in the zones that the converter feeds through the device",
)
@where_it_stands
def limited_capacity(s: Subject) -> Any:
    held, zones = least_faults_of(s.facts), zones_of(s.facts)
    fed = {zones.of(node) for link, node in sides(s) if held.limited(link, node) is not None}
    found: list[Number] = []
    for conductor in s.facts.network.conductors:
        if conductor.role != LIVE or not any(zones.of_wire(wire) in fed for wire in conductor.wires):
            continue
        twin = s.facts.of("conductor", conductor)
        if twin is not None:
            found.append(twin.carrying_capacity)
            line = f"{twin.id} carries {show(twin.carrying_capacity, 'A')}"
            s.note(line.__str__)
    return least(found) if found else None
