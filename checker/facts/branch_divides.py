"""Whether a branch divides, or feeds something, before the device that protects it."""

from __future__ import annotations

from checker.circuit.elements import LIVE, Link, Wire
from checker.facts.branch import outer_stretches, unseen_feeder, ways_up
from checker.facts.catalogue import fact
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth, Unknown


@fact(
    "conductor",
    "divides_before_device",
    type="yes/no",
    says="Before its own device another branch leaves it, or something draws from it.",
    method="nodes of the stretch between the branch point and its own device: what else is joined there",
)
def divides_before_device(s: Subject) -> Truth:
    stretches = [wire for wire, _ in outer_stretches(s)]
    if not stretches:
        loose = unseen_feeder(s)
        return False if loose is None else loose
    own = {part.equipment.name for part in s.item.links if part.is_protective}
    starts = ways_up(s)
    for node in dict.fromkeys(node for wire in stretches for node in (wire.a, wire.b)):
        if node not in starts and leaving(s.facts, s.item.id, own, node) > 1:
            return True
    if any(wire.gap is not None for wire in stretches):
        return Unknown(f"part of {s.id} was not seen and may divide")
    return False


def leaving(facts: Facts, mine: str, own: set[str], node: str) -> int:
    """Ways on from a node of a branch that is no branch point: its own device and its own wire on are one way, and so
    is what one piece of equipment does there, as the throws of a changeover or the transfer of an inverter."""
    network = facts.network
    on = False
    equipment = {item.name for item in network.sinks.get(node, ())}
    wires, arriving = 0, 0
    for edge, _ in network.near.get(node, ()):
        if isinstance(edge, Wire):
            if edge.conductor.role != LIVE:
                continue
            if edge.conductor.id == mine:
                arriving += 1
            else:
                wires += 1
        elif edge.pole == LIVE:
            belongs = isinstance(edge, Link) and network.by_link.get(id(edge)) is not None
            if edge.equipment.name in own or (belongs and network.by_link[id(edge)].id == mine):
                on = True
            else:
                equipment.add(edge.equipment.name)
    return len(equipment) + wires + (1 if on or arriving > 1 else 0)
