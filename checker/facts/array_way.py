"""The way of the current of a solar array to its controller and back: its cables and the switches on it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.elements import LIVE, Conductor, Edge, Link, Wire
from checker.circuit.supply import is_live, joined
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.facts.supply_cables import conductors_at
from checker.quantities import Number, Unknown, greatest, total


@fact("array", "conductors", of="conductor", type="list", says="The live conductors between it and its controller.",
      method="graph")  # fmt: skip
def array_conductors(s: Subject) -> Any:
    return conductors_at(s, joined(s.facts.network, [f"{s.id}:+"]))


@fact("array", "return_conductors", of="conductor", type="list",
      says="The conductors by which its current comes back from its controller.",
      method="graph: each without which its negative no longer reaches that of a controller")  # fmt: skip
def return_conductors(s: Subject) -> Any:
    found: dict[str, Conductor] = {}
    for node in _reached(s, [f"{s.id}:-"], _back):
        for edge, _ in s.facts.network.near.get(node, ()):
            if isinstance(edge, Wire) and edge.conductor.role != LIVE:
                found.setdefault(edge.conductor.id, edge.conductor)
    ways = [one for one in found.values() if _cut_off(s, one, [s], "-")]
    subjects = (s.facts.of("conductor", one) for one in ways)
    return tuple(one for one in subjects if one is not None)


@fact("array", "plugs", of="equipment", type="list",
      says="Connectors in the cables between it and its controller, there and back.",
      method="graph; open where part of a run was not seen")  # fmt: skip
def plugs(s: Subject) -> Any:
    found: dict[str, Subject | None] = {}
    for one in (*s.conductors, *s.return_conductors):
        if any(wire.gap is not None for wire in one.item.wires):
            return Unknown(f"part of the run of {one.id} was not seen and may hide a connector")
        names = [link.equipment.name for link in one.item.links if link.equipment.kind == "connector"]
        found.update((name, s.facts.subject("equipment", name)) for name in names)
    return tuple(one for one in found.values() if one is not None)


def _back(edge: Edge) -> bool:
    return not is_live(edge)


def _reached(s: Subject, starts: list[str], passes: Callable[[Edge], bool]) -> dict[str, None]:
    """Nodes joined to some by edges of a kind, those of the return too, in the order met."""
    seen, todo = dict.fromkeys(starts), list(starts)
    while todo:
        for edge, far in s.facts.network.near.get(todo.pop(), ()):
            if far not in seen and passes(edge):
                seen[far] = None
                todo.append(far)
    return seen


def _cut_off(s: Subject, conductor: Conductor, arrays: list[Subject], pole: str) -> list[Subject]:
    """The arrays that reach a controller through a conductor and by no other way."""
    ends = [f"{one.item.name}:{pole}" for one in arrays]

    def side(edge: Edge) -> bool:
        return is_live(edge) if pole == "+" else _back(edge)

    def passes(edge: Edge) -> bool:
        return side(edge) and not (isinstance(edge, Wire) and edge.conductor is conductor)

    goals = [node for node in _reached(s, ends, side) if node.endswith(f":pv{pole}")]
    left = _reached(s, goals, passes) if goals else dict.fromkeys(ends)
    return [one for one, node in zip(arrays, ends, strict=True) if node not in left]


@fact(
    "conductor",
    "array_current",
    unit="A",
    says="Short-circuit current of the arrays that feed through it, there or back; none where it carries no current of "
    "an array.",
    method="it is cut: the arrays that no longer reach their controller; in a ring or a stub all that reach it",
)
def array_current(s: Subject) -> Any:
    if s.item.role == LIVE:
        reaching = _arrays_on(s, "conductors").get(s.item.id, [])
        feeding = _cut_off(s, s.item, reaching, "+") or reaching
    else:
        feeding = _arrays_on(s, "return_conductors").get(s.item.id, [])
    if not feeding:
        return None
    s.note(lambda: f"fed through by {', '.join(one.id for one in feeding)}")
    return total(one.short_current for one in feeding)


def _arrays_on(s: Subject, which: str) -> dict[str, list[Subject]]:
    """The arrays whose current reaches a conductor, by its id; found once."""
    found: dict[str, list[Subject]] | None = s.facts.store.get(f"arrays on {which}")
    if found is None:
        found = s.facts.store[f"arrays on {which}"] = {}
        for array in s.facts.subjects("array"):
            for conductor in getattr(array, which):
                found.setdefault(conductor.item.id, []).append(array)
    return found


@fact(
    "switch",
    "array_current",
    unit="A",
    says="Short-circuit current of the arrays that feed through its contacts; none where no array does.",
    method="conductor.array_current at its terminals",
)
def switch_array_current(s: Subject) -> Any:
    most: Number = None
    for link in s.facts.network.links:
        for node in (link.a, link.b) if link.equipment is s.item else ():
            most = _greater(most, _current_at(s, node, link))
    return most


def _current_at(s: Subject, node: str, link: Link) -> Number:
    """The greatest array current of the conductors at a contact."""
    most: Number = None
    for edge, _ in s.facts.network.near.get(node, ()):
        one = s.facts.of("conductor", edge.conductor) if edge is not link and isinstance(edge, Wire) else None
        most = most if one is None else _greater(most, one.array_current)
    return most


def _greater(a: Number, b: Number) -> Number:
    if a is None or b is None:
        return b if a is None else a
    return b if isinstance(b, Unknown) else greatest(a, b)
