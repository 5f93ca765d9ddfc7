"""Steering and brakes: the circuits that feed them, and what an overload does there."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import PROTECTIVE
from checker.circuit.supply import joined, passed, storage_nodes, ways
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.loads import rated_current
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, every, greater_equal, greatest, multiply, some

ROAD_EFFORT = ("steering", "service brake", "breakaway")
MAY_MOVE = ("motor", "load")
"""Kinds of load that may steer or brake when nobody says what they are for."""
OVERLOAD = 2.0
"""Times the working current that an overload asks for; common practice, no source."""


def _is_road_effort(s: Subject, item: Equipment) -> Truth:
    """Whether a piece of equipment steers or brakes; untold it is open where it may belong to the road vehicle."""
    if item.kind == "brake":
        return True
    purpose = s.read(item, "purpose") if item.allows("purpose") else None
    if isinstance(purpose, Unknown):
        load = s.facts.subject("load", item.name)
        doubtful = item.kind in MAY_MOVE and load is not None and isinstance(load.is_road_load, Unknown)
        return purpose if doubtful else False
    return isinstance(purpose, str) and purpose in ROAD_EFFORT


def _at_ends(s: Subject, circuit: Any) -> list[Equipment]:
    found = (s.facts.network.equipment.get(port.equipment) for port in circuit.ends)
    return [item for item in found if item is not None]


@fact(
    "circuit",
    "feeds_road_effort",
    type="yes/no",
    says="Steering or brakes stand at its end.",
    method="their purpose; untold it is open for a motor or load that may belong to the road vehicle",
)
def feeds_road_effort(s: Subject) -> Truth:
    return some([_is_road_effort(s, item) for item in _at_ends(s, s.item)])


@fact(
    "approach",
    "feeds_road_effort",
    type="yes/no",
    says="Steering or brakes stand at the end of its circuit, or of a branch that meets no device.",
    method="as circuit.feeds_road_effort",
)
def reaches_road_effort(s: Subject) -> Truth:
    reached = {one.circuit.name: one.circuit for one in (s.item.conductor, *s.item.reach.bare)}
    return some([_is_road_effort(s, item) for circuit in reached.values() for item in _at_ends(s, circuit)])


@fact("circuit", "overload_alarm", type="yes/no", says="An overload gives an alarm in place of opening the circuit.")
def overload_alarm(s: Subject) -> Any:
    stated = s.read(s.item, "overload alarm")
    return False if stated is None else stated


@fact(
    "circuit",
    "carries_overload",
    type="yes/no",
    says="No device on the way to the steering or brakes at its end opens on an overload.",
    method="rating of each fuse and breaker on the way from a battery, and of the fuse of a towing vehicle, against "
    "twice the working current, and the stall current where it is told",
    source="twice the working current: common practice, no source",
)
def carries_overload(s: Subject) -> Truth:
    answers: list[Truth] = []
    for item in _at_ends(s, s.item):
        if _is_road_effort(s, item) is False:
            continue
        most = _overload(s, item)
        for device in _devices_to(s, item):
            rating = s.read(device, "rating")
            if greater_equal(rating, most) is not True:
                s.note(lambda device=device: f"{device.name} may open on an overload")  # type: ignore[misc]
            answers.append(greater_equal(rating, most))
        answers.extend(greater_equal(fuse, most) for fuse in _fuses_over_there(s, item) if fuse is not None)
    return every(answers)


def _overload(s: Subject, item: Equipment) -> Number:
    """What a load draws when it is overloaded (A)."""
    for key in ("running", "current", "power"):
        if item.allows(key):
            s.read(item, key)
    most = multiply(rated_current(item, s.voltage), OVERLOAD)
    stall = s.read(item, "stall") if item.allows("stall") else None
    return most if stall is None or (isinstance(stall, Unknown) and not item.has("stall")) else greatest(most, stall)


def _fuses_over_there(s: Subject, item: Equipment) -> list[Any]:
    """The fuse of the contact of a towing vehicle on which a load hangs, A; none where it has none. Where a battery
    aboard stands on the same conductors, the load outlasts that fuse."""
    reached = joined(s.facts.network, [f"{item.name}:+"])
    feeding = [one for one in s.facts.network.sources if one.storage and one.live in reached]
    if any(one.equipment.kind != "vehicle coupling" for one in feeding):
        return []
    return [s.read(one.equipment, f"supplies.{one.port}.fuse") for one in feeding]


def _devices_to(s: Subject, item: Equipment) -> list[Equipment]:
    """Fuses and breakers on the way from a battery or towing vehicle to a load, in file order."""
    shared = s.facts.shared
    if "ways from storage" not in shared:
        shared["ways from storage"] = ways(s.facts.network, storage_nodes(s.facts.network))
    found = shared["ways from storage"]
    node = f"{item.name}:+"
    names = passed(found, node) if node in found else set()
    return [one for name, one in s.facts.network.equipment.items() if name in names and one.kind in PROTECTIVE]
