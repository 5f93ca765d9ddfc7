"""What lies between an inverter and the batteries of its bus: how long, and what takes all that it draws."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link, Wire
from checker.circuit.network import Network
from checker.circuit.supply import is_live, joined
from checker.facts.bank import KINDS, home, loose_bank
from checker.facts.catalogue import fact
from checker.facts.conductor_given import wire_length
from checker.facts.converter import INVERTERS
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, add, greatest

METHOD = "on a way from a battery; without it no battery reaches the inverter"


@fact("converter", "way_conductors", of="conductor", type="list", method=METHOD,
      says="The live conductors through which all that an inverter takes from its batteries passes.")  # fmt: skip
def way_conductors(s: Subject) -> Any:
    found = _alone(s)
    if isinstance(found, Unknown):
        return found
    wires = {edge.conductor.id: edge.conductor for edge in found if isinstance(edge, Wire)}
    subjects = (s.facts.of("conductor", one) for one in wires.values())
    return tuple(one for one in subjects if one is not None)


@fact("converter", "way_devices", of="device", type="list", method=METHOD,
      says="The protective devices through which all that an inverter takes from its batteries passes.")  # fmt: skip
def way_devices(s: Subject) -> Any:
    found = _alone(s)
    if isinstance(found, Unknown):
        return found
    names = dict.fromkeys(edge.equipment.name for edge in found if isinstance(edge, Link))
    subjects = (s.facts.subject("device", name) for name in names)
    return tuple(one for one in subjects if one is not None)


@fact(
    "converter",
    "input_length",
    unit="m",
    says="Length of cable between the battery terminals of an inverter and a battery of its bus, one way.",
    method="sum of the runs on the way with the fewest steps, up to the bar of a bank of several; at least the longest "
    "cable at its terminals",
)
def input_length(s: Subject) -> Any:
    found = s.input_conductors
    if isinstance(found, Unknown):
        return found
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    way: Number = 0.0
    for edge in _way(s.facts.network, _homes(s), f"{s.id}:dc+"):
        if isinstance(edge, Wire):
            way = add(way, wire_length(s, edge))
    return greatest([way, *(one.length for one in found)]) if found else None


def _homes(s: Subject) -> list[str]:
    return [home(s.facts, item) for item in s.facts.design.equipment.values() if item.kind in KINDS]


def _alone(s: Subject) -> Any:
    """The edges that stand alone between an inverter and every battery of its bus; none where no battery reaches it."""
    if s.item.kind not in INVERTERS:
        return ()
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    network, goal = s.facts.network, f"{s.id}:dc+"
    homes = _homes(s)
    return [edge for edge in _way(network, homes, goal) if goal not in joined(network, homes, _without(edge))]


def _way(network: Network, starts: list[str], goal: str) -> list[Edge]:
    """The edges of a way with few steps, that meets nothing that converts; empty without one."""
    before: dict[str, tuple[str, Edge] | None] = dict.fromkeys(starts)
    todo = list(before)
    for node in todo:
        for edge, far in network.near.get(node, ()):
            passes = is_live(edge) and not (isinstance(edge, Link) and edge.one_way and node == edge.b)
            if passes and far not in before:
                before[far] = (node, edge)
                todo.append(far)
    found: list[Edge] = []
    step = before.get(goal)
    while step is not None:
        found.append(step[1])
        step = before[step[0]]
    return found


def _without(gone: Edge) -> Any:
    """Passes all but the conductor or equipment of an edge; the wires of one conductor go together."""

    def passes(edge: Edge) -> bool:
        if isinstance(gone, Wire):
            return not (isinstance(edge, Wire) and edge.conductor is gone.conductor)
        return not (isinstance(edge, Link) and edge.equipment is gone.equipment)

    return passes
