"""Approaches: one source reaching one conductor from one end, as far as its first protective device."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.approaches import Approach, approaches
from checker.circuit.elements import LIVE, Link, Source, Wire
from checker.circuit.limits import ENDLESS
from checker.design.given import Where
from checker.design.model import Equipment
from checker.design.vocabulary.circuits import DUTIES
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import half_standing
from checker.quantities import Number, Truth, Unknown, add, both, every, less_equal


@subjects("approach", "One source reaching one conductor from one end.")
def approach_list(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Named `conductor from source`; where a source reaches a conductor at both ends, the second is numbered."""
    seen: dict[str, int] = {}
    for found in approaches(facts.network):
        name = f"{found.conductor.id} from {found.source_name}"
        seen[name] = seen.get(name, 0) + 1
        yield (name if seen[name] == 1 else f"{name} ({seen[name]})"), found.conductor.where, found


@fact("conductor", "approaches", of="approach", type="list", says="The sources that reach it first.", method="walk")
def approaches_of(s: Subject) -> Any:
    found = tuple(one for one in s.facts.subjects("approach") if one.item.conductor is s.item)
    may_be_reached = s.item.role == LIVE and s.facts.network.systems[s.item.circuit.name] == "dc"
    loose = loose_bank(s.facts) if may_be_reached else None
    return found if loose is None else loose


@fact("approach", "conductor", of="conductor", type="subject", says="The conductor reached.", method="graph")
def conductor(s: Subject) -> Any:
    return s.facts.of("conductor", s.item.conductor)


@fact("approach", "circuit", of="circuit", type="subject", says="Its circuit.", method="graph")
def circuit(s: Subject) -> Any:
    return s.facts.of("circuit", s.item.conductor.circuit)


@fact("approach", "source", type="text", says="The source.", method="graph")
def source(s: Subject) -> str:
    return str(s.item.source_name)


@fact("approach", "system", words=("dc", "ac"), says="Direct or alternating current.", method="graph")
def system(s: Subject) -> str:
    return str(s.item.sources[0].system)


@fact("approach", "duty", words=DUTIES, says="What the circuit is for.")
def duty(s: Subject) -> Any:
    return s.read(s.item.conductor.circuit, "duty")


@fact(
    "approach",
    "scope",
    words=("habitation", "automotive"),
    says="Which rules the circuit falls under; living quarters where a branch without a device is of theirs.",
)
def scope(s: Subject) -> Any:
    return _of_any_bare_branch(s, "scope", "automotive")


@fact(
    "approach",
    "own",
    words=("factory", "fitter", "owner"),
    says="Whose work the conductor is; where a branch without a device goes on into another's work, whose that is.",
)
def own(s: Subject) -> Any:
    return _of_any_bare_branch(s, "own", "factory")


@fact(
    "approach",
    "only_cranks",
    type="yes/no",
    says="Every branch that meets no device ends at the motor that starts the engine.",
    method="walk; a motor for the engine",
)
def only_cranks(s: Subject) -> Truth:
    return every(_starts_engine(s, node) for node in s.item.reach.bare_ends)


def _starts_engine(s: Subject, node: str) -> Truth:
    answers: list[Truth] = []
    for item in s.facts.network.sinks.get(node, ()):
        purpose = s.read(item, "purpose") if item.kind == "motor" else None
        answers.append(purpose if isinstance(purpose, Unknown) else purpose == "engine")
    if any(isinstance(edge, Wire) and edge.gap is not None for edge, _ in s.facts.network.near[node]):
        answers.append(Unknown("part of a branch was not seen and may hide a device"))
    return every(answers) if answers else False


def _of_any_bare_branch(s: Subject, key: str, excused: str) -> Any:
    """The first word, of the circuit reached or of those on branches that meet no device, that excuses nothing."""
    doubts: list[Unknown] = []
    for one in (s.item.conductor, *s.item.reach.bare):
        word = s.read(one.circuit, key)
        if isinstance(word, Unknown):
            doubts.append(word)
        elif word != excused:
            return word
    return doubts[0] if doubts else excused


@fact(
    "approach",
    "source_is_storage",
    type="yes/no",
    says="The source is a battery, or a contact of a vehicle coupling without a fuse over there: nothing limits it.",
    method="kind of source; for a contact the fuse at the towing vehicle",
)
def source_is_storage(s: Subject) -> Truth:
    return every(_endless(s, one) for one in s.item.sources)


def _endless(s: Subject, source: Source) -> Truth:
    if source.storage and source.equipment.kind == "vehicle coupling":
        fuse = s.read(source.equipment, f"supplies.{source.port}.fuse")
        return Unknown(f"the fuse before {source.name} is not told") if isinstance(fuse, Unknown) else fuse is None
    return source.storage


@fact("approach", "source_is_starting", type="yes/no", says="The source is a starting battery.", method="given purpose")
def source_is_starting(s: Subject) -> Any:
    item: Equipment = s.item.sources[0].equipment
    if not item.allows("purpose"):
        return False
    purpose = s.read(item, "purpose")
    return purpose == "starting" if isinstance(purpose, str) else False


@fact("approach", "source_current", unit="A", says="Greatest lasting current the source gives; no limit for a battery.")
def source_current(s: Subject) -> Any:
    found: Number = 0.0
    for one in s.item.sources:
        if isinstance(one.most, Unknown):
            return Unknown(f"what {one.name} gives at most is not stated")
        if isinstance(one.most, float) and one.most == ENDLESS:
            return ENDLESS
        found = add(found, one.most)
    s.note(lambda: f"sources: {', '.join(one.name for one in s.item.sources)}")
    return found


@fact(
    "approach",
    "self_limiting",
    type="yes/no",
    says="The source cannot give more than the conductor carries.",
    method="greatest current of the source, or its fuse at the towing vehicle, against the carrying capacity",
)
def self_limiting(s: Subject) -> Any:
    current = s.source_current
    if isinstance(current, float) and current == ENDLESS:
        return False
    return less_equal(current, s.conductor.carrying_capacity)


@fact("approach", "has_device", type="yes/no", says="A protective device stands on every way on.", method="walk")
def has_device(s: Subject) -> Any:
    found = s.item.reach.has_device
    if found is True and s.item.reach.seen_length is not None and half_standing(s.facts):
        return Unknown(f"{', '.join(half_standing(s.facts))} may branch off where the run was not seen")
    return found


@fact("approach", "devices", of="device", type="list", says="The first devices met.", method="walk along the run")
def devices(s: Subject) -> Any:
    if s.item.reach.seen_length is not None:
        return Unknown("part of the way was not seen and may hide the first device")
    found = (s.facts.subject("device", device.name) for device in s.item.reach.devices)
    return tuple(device for device in found if device is not None)


@fact(
    "approach",
    "length_before_device",
    unit="m",
    says="Length of conductor between the source and the first device, on the longest branch.",
    method="sum of the stretches walked",
)
def length_before_device(s: Subject) -> Any:
    reach = s.item.reach
    for owner, stretch in reach.stretches:
        place = f" via {stretch.place}" if stretch.place else ""
        s.use(f"{owner.circuit.path}.run{place}", stretch.length, "m")
    return reach.length


@fact(
    "approach",
    "covered",
    type="yes/no",
    says="All of that length lies in a conduit, duct or sleeve.",
    method="covering of the circuits walked",
)
def covered(s: Subject) -> Any:
    answer: Any = True
    for owner in dict.fromkeys(owner for owner, _ in s.item.reach.stretches):
        covering = s.read(owner.circuit, "covering")
        if isinstance(covering, Unknown):
            answer = both(answer, covering)
        elif covering is None:
            return False
    return answer


@fact("approach", "fed_from_both_ends", type="yes/no", says="Another source can feed its other end.", method="graph")
def fed_from_both_ends(s: Subject) -> bool:
    return other_end_feeds(s.facts, s.item)


def other_end_feeds(facts: Facts, item: Approach) -> bool:
    """Whether some source lies beyond the other end of the conductor."""
    network = facts.network
    live = item.conductor
    far = live.end if item.node == live.start else live.start
    seen = {far}
    todo = [far]
    mine = {one.live for one in item.sources}
    while todo:
        node = todo.pop()
        if any(one.live not in mine for one in network.sources_at.get(node, ())):
            return True
        for edge, end in network.near.get(node, ()):
            if isinstance(edge, Wire) and (edge.conductor.role != LIVE or edge.conductor is live):
                continue
            if isinstance(edge, Link) and edge.pole != LIVE:
                continue
            if end not in seen:
                seen.add(end)
                todo.append(end)
    return False
