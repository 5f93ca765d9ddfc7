"""A mains circuit thinner than what feeds it: how far it runs before its own device, and whether it divides there."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import takewhile

from checker.circuit.elements import Edge, Link, Wire
from checker.facts.branch_divides import leaving
from checker.facts.catalogue import fact
from checker.facts.changeover import current_of
from checker.facts.conductor_given import wire_length
from checker.facts.mains_short import way_of
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Truth, Unknown, add, between, both, greater, some, total


def _parts(s: Subject) -> tuple[list[Edge], list[Edge]]:
    """The way up to the conductor, and its own edges before its first device."""
    edges = way_of(s)
    mine = {id(part) for part in s.item.conductor.parts}
    first = next((place for place, edge in enumerate(edges) if id(edge) in mine), len(edges))
    own = takewhile(lambda edge: id(edge) in mine and not _opens(edge), edges[first:])
    return edges[:first], list(own)


def _opens(edge: Edge) -> bool:
    return isinstance(edge, Link) and edge.is_protective


def _ahead(s: Subject, before: list[Edge]) -> tuple[Subject | None, list[Wire]]:
    """The last device on the way to a conductor, and the stretches between the two."""
    place = next((at for at in range(len(before) - 1, -1, -1) if _opens(before[at])), None)
    if place is None:
        return None, []
    link = before[place]
    device = s.facts.subject("device", link.equipment.name) if isinstance(link, Link) else None
    return device, [edge for edge in before[place + 1 :] if isinstance(edge, Wire)]


def _may_hide(s: Subject, edges: Sequence[Edge]) -> Unknown | None:
    """Why a device may stand where nobody saw, on the way to a circuit."""
    if not any(isinstance(edge, Wire) and edge.gap is not None for edge in edges):
        return None
    return Unknown(f"part of the way to {s.item.conductor.id} was not seen and may hide a device")


def _is_thin(s: Subject, wire: Wire, device: Subject) -> Truth:
    conductor = s.facts.of("conductor", wire.conductor)
    if conductor is None:
        return Unknown(f"what {wire.conductor.id} carries is not known")
    given = current_of(s, s.item.feed.equipment)
    return both(greater(device.rating, conductor.carrying_capacity), greater(given, conductor.carrying_capacity))


@fact(
    "short",
    "is_tap",
    type="yes/no",
    says="The device ahead of the circuit is rated above what the circuit carries, and the source gives more too.",
    method="rating of the last device aboard on the way to it, and of the source, against its carrying capacity; no "
    "where no device stands ahead",
)
def is_tap(s: Subject) -> Truth:
    before, _ = _parts(s)
    device, lead_up = _ahead(s, before)
    thin = False if device is None else some(_is_thin(s, wire, device) for wire in s.item.conductor.wires[:1])
    hidden = _may_hide(s, before if device is None else lead_up)
    return hidden if hidden is not None and (device is None or thin is True) else thin


@fact(
    "short",
    "tap_length",
    unit="m",
    says="Length that the circuit runs before a device of its own, with thinner circuits that lead up to it; none "
    "where no device aboard stands ahead.",
    method="its stretches up to its own device; of what leads up to it the part behind the last thick enough",
)
def tap_length(s: Subject) -> Number:
    before, own = _parts(s)
    device, lead_up = _ahead(s, before)
    if device is None:
        return _may_hide(s, before)
    length: Number = 0.0
    for wire in lead_up:
        thin = _is_thin(s, wire, device)
        length = 0.0 if thin is False else add(length, _length(s, wire) if thin is True else _perhaps(_length(s, wire)))
    stretches = [_length(s, edge) for edge in own if isinstance(edge, Wire)]
    return add(length, total(stretches)) if stretches else 0.0


@fact("short", "run_from_device", unit="m",
      says="Length from the last device aboard on the way to the circuit to the first one of its own, thick or thin; "
      "none where no device aboard stands ahead.",
      method="all stretches between the two")  # fmt: skip
def run_from_device(s: Subject) -> Number:
    before, own = _parts(s)
    device, lead_up = _ahead(s, before)
    wires = [*lead_up, *(edge for edge in own if isinstance(edge, Wire))]
    return _may_hide(s, before) if device is None else total([_length(s, wire) for wire in wires]) if wires else 0.0


def _length(s: Subject, wire: Wire) -> Number:
    owner = s.facts.of("conductor", wire.conductor)
    length = Unknown(f"the length of {wire.conductor.id}") if owner is None else wire_length(owner, wire)
    return length if wire.gap is None else _perhaps(length)  # a device that was not seen may stand in it


def _perhaps(length: Number) -> Number:
    if isinstance(length, Unknown) or length is None:
        return length
    return between(0.0, length.high if isinstance(length, Range) else length)


@fact(
    "short",
    "tap_divides",
    type="yes/no",
    says="Before a device of its own something else leaves the circuit, or draws from it.",
    method="nodes between where it branches off and its own device: what else is joined there",
)
def tap_divides(s: Subject) -> Truth:
    _, own = _parts(s)
    wires = [edge for edge in own if isinstance(edge, Wire)]
    if not wires:
        return False
    devices = {link.equipment.name for link in s.item.conductor.links if link.is_protective}
    nodes = dict.fromkeys(node for wire in wires for node in (wire.a, wire.b))
    ends = {s.item.conductor.start, s.item.conductor.end} - {s.item.end}
    if any(leaving(s.facts, s.item.conductor.id, devices, node) > 1 for node in nodes if node not in ends):
        return True
    if any(wire.gap is not None for wire in wires):
        return Unknown(f"part of {s.item.conductor.id} was not seen and may divide")
    return False


@fact("short", "tap_covered", type="yes/no", says="Conduit, tube, duct or sleeve covers the circuit.",
      method="conductor.covered")  # fmt: skip
def tap_covered(s: Subject) -> Truth:
    conductor = s.facts.of("conductor", s.item.conductor)
    return Unknown("its covering") if conductor is None else conductor.covered
