"""What stands in a run and neither protects nor switches, and boards: the current that passes."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Conductor, Wire
from checker.design.given import RatedVoltage
from checker.facts.catalogue import fact
from checker.facts.levels import Level, level_at, read_level
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, greatest

IN_RUN = ("shunt", "diode", "connector", "voltage monitor", "rcd")


@fact(
    "equipment",
    "passes_current",
    type="yes/no",
    says="It is a board, or what stands in a run and neither blows nor is switched: it must carry what flows there.",
    method="kind, and the graph",
)
def passes_current(s: Subject) -> Truth:
    return s.item.kind in (*IN_RUN, "board") and bool(_conductors(s))


def _conductors(s: Subject) -> list[Conductor]:
    """The conductors in whose run it stands; of a board those that feed it, its ways left out."""
    found: dict[str, Conductor] = {}
    network = s.facts.network
    if s.item.kind == "board":
        for pole in ("+", "L"):
            for edge, _ in network.near.get(f"{s.item.name}:{pole}", ()):
                if isinstance(edge, Wire) and edge.conductor.role == LIVE:
                    found.setdefault(edge.conductor.id, edge.conductor)
        return list(found.values())
    for link in network.links:
        owner = network.by_link.get(id(link)) if link.equipment is s.item else None
        if owner is not None:
            found.setdefault(owner.id, owner)
    return list(found.values())


@fact(
    "equipment",
    "through_current",
    unit="A",
    says="Greatest lasting current through it over all modes.",
    method="design current of the conductors in whose run it stands, or that feed it",
)
def through_current(s: Subject) -> Any:
    most: Number = 0.0
    for conductor in _conductors(s):
        twin = s.facts.of("conductor", conductor)
        current = Unknown(f"{conductor.id} is not known") if twin is None else twin.design_current
        most = current if isinstance(current, Unknown) else greatest(most, current)
    return most


@fact("equipment", "through_rating", unit="A", says="Current it may carry for ever.")
def through_rating(s: Subject) -> Any:
    return s.read(s.item, "rating") if s.item.allows("rating") else None


def _level(s: Subject) -> Level | None:
    network = s.facts.network
    for link in network.links:
        if link.equipment is s.item:
            level = level_at(s.facts, link.a) or level_at(s.facts, link.b)
            if level is not None:
                return level
    return None


@fact(
    "equipment",
    "through_voltage",
    unit="V",
    says="Highest voltage of the circuit in whose run it stands.",
    method="graph",
)
def through_voltage(s: Subject) -> Any:
    level = _level(s)
    read_level(s, level)
    return Unknown(f"{s.id} stands in no live conductor") if level is None else level.highest


@fact(
    "equipment",
    "through_voltage_rating",
    unit="V",
    says="Its rated voltage in the system of that circuit; none when it is rated for the other system alone.",
)
def through_voltage_rating(s: Subject) -> Any:
    level = _level(s)
    rated = s.read(s.item, "voltage") if s.item.allows("voltage") else None
    if not isinstance(rated, RatedVoltage):
        return rated if rated is None else Unknown("its voltage rating is not stated")
    if level is None or rated.system is None:
        return Unknown("the rating does not say whether it holds for direct or alternating current")
    return rated.volts if rated.system == level.system else None
