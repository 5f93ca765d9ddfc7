"""Points of the vehicle as its maker built it, from which somebody took more than it was made for."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.supply import joined
from checker.facts.catalogue import fact
from checker.facts.joining import bonded_negative
from checker.facts.starter_drain import came_with_it
from checker.facts.subject import Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    both,
    either,
    equal,
    multiply,
    negate,
    some,
    total,
)

STORES = ("battery", "bank")


@fact("equipment", "of_the_maker", type="yes/no",
      says="It came with the vehicle, or sits in the run of a cable that did, and is no battery.",
      method="whose work it is, and that of the battery-side circuits whose run passes it")  # fmt: skip
def of_the_maker(s: Subject) -> Truth:
    if s.item.kind in STORES or not s.item.allows("own"):
        return False
    return either(equal(s.read(s.item, "own"), "factory"), some(_cuts_a_cable_of_the_maker(s)))


def _cuts_a_cable_of_the_maker(s: Subject) -> list[Truth]:
    """Of each battery-side circuit whose run passes it: whether that came with the vehicle."""
    found: list[Truth] = []
    reached = False
    for circuit in s.facts.network.circuits:
        reached = reached or any(port.equipment == s.item.name for port in circuit.ends)
        live = s.facts.network.conductor(circuit.name, LIVE)
        ends = {circuit.start.equipment, *(port.equipment for port in circuit.ends)}
        if live is None or s.item.name in ends or s.facts.network.systems[circuit.name] != "dc":
            continue
        if any(node.partition(":")[0] == s.item.name for wire in live.wires for node in (wire.a, wire.b)):
            found.append(came_with_it(s, circuit))
    if s.item.kind == "joint" and not found and not reached:
        return [Unknown(f"in which cable {s.id} sits is not told")]
    return found


@fact("equipment", "added_draw", unit="A",
      says="Greatest lasting current of the battery-side circuits that were added at it, together.",
      method="conductor.design_current of each circuit that starts at it and did not come with the vehicle, added up; "
      "none of battery sensing and control")  # fmt: skip
def added_draw(s: Subject) -> Any:
    found: list[Number] = [0.0]
    for circuit in s.facts.network.circuits:
        live = s.facts.network.conductor(circuit.name, LIVE)
        if circuit.start.equipment != s.item.name or live is None or s.facts.network.systems[circuit.name] != "dc":
            continue
        conductor = s.facts.of("conductor", live)
        if conductor is None:
            continue
        sparing = either(equal(conductor.duty, "sense"), equal(conductor.duty, "control"))
        counts = negate(either(came_with_it(s, circuit), sparing))
        if counts is not False:
            drawn: Number = conductor.design_current
            s.note(lambda name=circuit.name: f"added at it: {name}")  # type: ignore[misc]
            found.append(drawn if counts is True else multiply(drawn, Range(0.0, 1.0)))
    return total(found)


@fact("equipment", "permitted_draw", unit="A",
      says="Current that the maker of the vehicle permits to be taken from it.", method="allows")  # fmt: skip
def permitted_draw(s: Subject) -> Any:
    allows = s.read(s.item, "allows") if s.item.allows("allows") else None
    return Unknown(f"what the maker permits at {s.id} is not told") if allows is None else allows


@fact("circuit", "added_return", unit="A",
      says="Current that circuits which were added send back by the chassis to the battery that it bonds, together; "
      "none for what bonds no negative.",
      method="design current of the circuits with a chassis return on the live side of that battery that did not come "
      "with the vehicle; those whose return is not told perhaps")  # fmt: skip
def added_return(s: Subject) -> Any:
    name = bonded_negative(s)
    if name is None:
        return None
    fed = joined(s.facts.network, [f"{name}:+"])
    found: list[Number] = [0.0]
    for circuit in s.facts.network.circuits:
        live = s.facts.network.conductor(circuit.name, LIVE)
        conductor = None if live is None else s.facts.of("conductor", live)
        if live is None or conductor is None or not {live.start, live.end} & fed.keys():
            continue
        how = circuit.returns.how
        by_chassis: Truth = UNKNOWN if how == "unknown" else how == "chassis"
        counts = both(by_chassis, negate(came_with_it(s, circuit)))
        if counts is not False:
            drawn: Number = conductor.design_current
            found.append(drawn if counts is True else multiply(drawn, Range(0.0, 1.0)))
    return total(found)
