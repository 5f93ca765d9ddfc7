"""Each source reaching out along its conductors: how far until the first protective device, and whether there is one.

The walk starts at the terminal of a source and follows live wires through switches, bars and joints until a device
that opens on overcurrent, or until the conductor ends. One `Approach` is made for each conductor that leaves the
source; where it branches before a device, the worst branch counts.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.circuit.elements import LIVE, Conductor, Edge, Link, Source, Wire
from checker.circuit.network import Network
from checker.design.model import Equipment
from checker.design.run import Length
from checker.quantities import Number, Range, Unknown, add, greatest

MAY_HIDE = Unknown("part of the run was not seen and may hide a device")


class Reach(NamedTuple):
    """What a walk found: whether every branch meets a device, the longest way to it, the devices, the stretches.

    `seen_length` is the length up to the first stretch that nobody saw, None when all was seen. `bare` are the
    conductors walked on the branches that end without a device, `bare_ends` the nodes
    where those end, and those on whose way a device may hide.
    """

    has_device: bool | Unknown
    length: Number
    devices: tuple[Equipment, ...]
    stretches: tuple[tuple[Conductor, Length], ...]
    seen_length: Number = None
    bare: tuple[Conductor, ...] = ()
    bare_ends: tuple[str, ...] = ()


class Approach(NamedTuple):
    """One source reaching one conductor from one end. `source_name` is a bank where its units meet at a bar."""

    source_name: str
    sources: tuple[Source, ...]
    conductor: Conductor
    node: str
    reach: Reach


def approaches(network: Network) -> list[Approach]:
    """Every approach, source by source in file order, then where the units of a bank meet."""
    found: list[Approach] = []
    for source in network.sources:
        found.extend(_from(network, source.name, (source,), source.live, skip=()))
    for node, meeting in _meetings(network).items():
        skip = tuple(conductor for _, conductor in meeting)
        sources = tuple(source for source, _ in meeting)
        found.extend(_from(network, _name(network, node, sources), sources, node, skip))
        for link in skip:
            others = tuple(source for source, lead in meeting if lead is not link)
            if len(others) > 1 and _has_contact(link):
                skipped = tuple(one for one in _leaving(network, node) if one is not link)
                found.extend(_from(network, _name(network, node, others), others, node, skipped))
    return found


def _has_contact(conductor: Conductor) -> bool:
    """Whether it joins batteries by something that opens: then it is more than the lead of one of them."""
    return any(link.when != "always" for link in conductor.links)


def _leaving(network: Network, node: str) -> list[Conductor]:
    return [edge.conductor for edge, _ in network.near.get(node, ()) if isinstance(edge, Wire)]


def _from(
    network: Network, name: str, sources: tuple[Source, ...], node: str, skip: tuple[Conductor, ...]
) -> list[Approach]:
    found = []
    for edge, far in network.near.get(node, ()):
        if isinstance(edge, Wire) and edge.conductor.role == LIVE and edge.conductor not in skip:
            reach = _follow(network, edge, node, far, {node})
            found.append(Approach(name, sources, edge.conductor, node, reach))
        elif isinstance(edge, Link) and edge.pole == LIVE and not edge.is_protective:
            found.extend(_beyond(network, name, sources, edge, node, far))
    return found


def _beyond(
    network: Network, name: str, sources: tuple[Source, ...], link: Link, node: str, far: str
) -> list[Approach]:
    """A source with a contact of its own before its first wire."""
    found = []
    for edge, end in network.near.get(far, ()):
        if edge is not link and isinstance(edge, Wire) and edge.conductor.role == LIVE:
            found.append(Approach(name, sources, edge.conductor, far, _follow(network, edge, far, end, {node, far})))
    return found


def _follow(network: Network, first: Edge, node: str, far: str, seen: set[str]) -> Reach:
    """Walk on from `node` through `first`; a plain stack, so that no design is too long for it."""
    done: list[Reach] = []
    todo: list[tuple[Edge, str, Reach]] = [(first, far, Reach(False, 0.0, (), ()))]
    while todo:
        edge, end, so_far = todo.pop()
        reach = _step(edge, so_far)
        if isinstance(edge, Link) and edge.is_protective:
            done.append(reach._replace(has_device=True, devices=(edge.equipment,), length=_to_device(reach)))
            continue
        if end in seen:
            continue
        seen.add(end)
        onward = [(after, far_end) for after, far_end in network.near.get(end, ()) if _goes_on(after, edge, end)]
        if not onward or end in network.sinks:
            done.append(reach._replace(length=_to_device(reach), bare_ends=(end,)))
        if end not in network.sinks:
            todo.extend((after, far_end, reach) for after, far_end in reversed(onward))
    return _worst(done)


def _goes_on(edge: Edge, before: Edge, node: str) -> bool:
    if edge is before:
        return False
    if isinstance(edge, Wire):
        return edge.conductor.role == LIVE
    if edge.pole != LIVE or (edge.one_way and node == edge.b):
        return False
    both_throws = isinstance(before, Link) and before.equipment is edge.equipment and edge.when == "throw"
    return not both_throws


def _step(edge: Edge, so_far: Reach) -> Reach:
    if isinstance(edge, Link):
        return so_far
    length, has_device, seen = so_far.length, so_far.has_device, so_far.seen_length
    if edge.gap is not None and seen is None:
        has_device, seen = MAY_HIDE, length
    for stretch in edge.lengths:
        length = add(length, stretch.length.value)
    stretches = so_far.stretches + tuple((edge.conductor, stretch) for stretch in edge.lengths)
    return Reach(has_device, length, so_far.devices, stretches, seen)


def _to_device(reach: Reach) -> Number:
    """The length walked; past an unseen stretch, anything from where that began, since it may hide a nearer device."""
    if reach.seen_length is None:
        return reach.length
    seen = reach.seen_length
    low = seen.low if isinstance(seen, Range) else seen if isinstance(seen, float) else 0.0
    return Range(low, float("inf"))


def _worst(found: list[Reach]) -> Reach:
    """Every branch must meet a device; the longest way counts."""
    if not found:
        return Reach(False, 0.0, (), ())
    answers = [reach.has_device for reach in found]
    has_device: bool | Unknown
    if any(answer is False for answer in answers):
        has_device = False
    else:
        has_device = next((answer for answer in answers if isinstance(answer, Unknown)), True)
    with_device = [reach for reach in found if reach.devices] or found
    length: Number = with_device[0].length
    for reach in with_device[1:]:
        length = greatest(length, reach.length)
    devices = tuple({device.name: device for reach in found for device in reach.devices}.values())
    stretches = tuple(stretch for reach in found for stretch in reach.stretches)
    seen = next((reach.seen_length for reach in found if reach.seen_length is not None), None)
    bare = [reach for reach in found if reach.has_device is False]
    walked = dict.fromkeys(owner for reach in bare for owner, _ in reach.stretches)
    ends = dict.fromkeys(end for reach in found if reach.has_device is not True for end in reach.bare_ends)
    return Reach(has_device, length, devices, stretches, seen, tuple(walked), tuple(ends))


def _meetings(network: Network) -> dict[str, list[tuple[Source, Conductor]]]:
    """Nodes where two or more storage sources arrive, each through a lead with a device of its own."""
    arriving: dict[str, list[tuple[Source, Conductor]]] = {}
    for source in network.sources:
        if not source.storage:
            continue
        for edge, _ in network.near.get(source.live, ()):
            if not isinstance(edge, Wire) or edge.conductor.role != LIVE:
                continue
            lead = edge.conductor
            if any(link.is_protective for link in lead.links):
                far = lead.end if lead.start == source.live else lead.start
                arriving.setdefault(far, []).append((source, lead))
    return {node: meeting for node, meeting in arriving.items() if len(meeting) > 1}


def _name(network: Network, node: str, sources: tuple[Source, ...]) -> str:
    names = {source.equipment.name for source in sources}
    for bank, units in network.units.items():
        if names == set(units):
            return bank
    return node.split(":", 1)[0]
