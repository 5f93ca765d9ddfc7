"""Circuits that join the same two points: they share a current as their cables are alike, or each is protected."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, RETURN, Conductor
from checker.facts.catalogue import fact
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Range, Truth, Unknown, equal, every


def _pairs(facts: Facts) -> dict[tuple[str, frozenset[str]], list[Conductor]]:
    """Two points -> the conductors that join them, live and return each by themselves; found once."""
    found: dict[tuple[str, frozenset[str]], list[Conductor]] | None = facts.shared.get("conductors side by side")
    if found is None:
        found = facts.shared["conductors side by side"] = {}
        for conductor in facts.network.conductors:
            if conductor.role in (LIVE, RETURN) and any(wire.lengths or wire.gap for wire in conductor.wires):
                key = (conductor.role, frozenset((conductor.start, conductor.end)))
                found.setdefault(key, []).append(conductor)
    return found


def _neighbours(s: Subject) -> list[tuple[Conductor, Conductor]]:
    """Each conductor of a circuit with one of another circuit that joins the same two points."""
    found = []
    for role in (LIVE, RETURN):
        own = s.facts.network.conductor(s.item.name, role)
        if own is not None:
            others = _pairs(s.facts).get((role, frozenset((own.start, own.end))), ())
            found += [(own, other) for other in others if other.circuit.name != s.item.name]
    return found


@fact("circuit", "beside", of="circuit", type="list",
      says="Circuits of which a conductor joins the same two points as one of it, live beside live or return beside "
      "return.",
      method="ends of the conductors")  # fmt: skip
def beside(s: Subject) -> tuple[Any, ...]:
    names = dict.fromkeys(other.circuit.name for _, other in _neighbours(s))
    found = (s.facts.subject("circuit", name) for name in names)
    return tuple(one for one in found if one is not None)


@fact(
    "circuit",
    "alike_beside",
    type="yes/no",
    says="Those beside it have its length, size, metal and crimps, so that they share the current equally.",
    method="length, cross-section and metal of the conductors, compared exactly; crimps where both are told",
)
def alike_beside(s: Subject) -> Truth:
    return every(_same(s, own, other) for own, other in _neighbours(s))


@fact("circuit", "fused_beside", type="yes/no",
      says="What lies beside another is live and has devices of its own, which all open on overcurrent.",
      method="devices in the run; a return is not fused")  # fmt: skip
def fused_beside(s: Subject) -> Truth:
    if any(own.role == RETURN for own, _ in _neighbours(s)):
        # A return whose live conductor lies beside the same circuit is protected with it.
        lone = [own for own, other in _neighbours(s) if own.role == RETURN and not _both_beside(s, other)]
        if lone:
            return False
    return bool(s.devices) and every(device.opens_on_overcurrent for device in s.devices)


def _both_beside(s: Subject, other: Conductor) -> bool:
    return any(own.role == LIVE and one.circuit is other.circuit for own, one in _neighbours(s))


def _same(s: Subject, own: Conductor, other: Conductor) -> Truth:
    one, two = s.facts.of("conductor", own), s.facts.of("conductor", other)
    if one is None or two is None:
        return Unknown("a conductor beside it is not known")
    pairs: list[tuple[Number, Number]] = [(one.length, two.length), (one.area_in_parallel, two.area_in_parallel)]
    alike = [*(_equals(first, second) for first, second in pairs), equal(one.material, two.material)]
    return every([*alike, *_crimps(s, own, other)])


def _crimps(s: Subject, own: Conductor, other: Conductor) -> list[Truth]:
    """Whether the ends on each of the two points are made alike, where both are told."""
    found = []
    for point in (own.start, own.end):
        records = [
            one.circuit.terminations.get("from" if one.start == point else "to") if one.role == LIVE else None
            for one in (own, other)
        ]
        if all(record is not None and record.has("crimp") for record in records):
            first, second = (s.read(record, "crimp") for record in records if record is not None)
            found.append(equal(first, second))
    return found


def _equals(first: Number, second: Number) -> Truth:
    if isinstance(first, Range) or isinstance(second, Range):
        return Unknown("whether two cables side by side are of one length and size is not told exactly")
    return equal(first, second)
