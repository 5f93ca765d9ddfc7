"""Earth bars and terminal blocks: how many conductors end on one pole, and how many it holds."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.facts.terminal import wires_at
from checker.quantities import Number, add, greatest


@fact(
    "equipment",
    "conductors_on_pole",
    unit="count",
    says="Conductors that end on its fullest pole.",
    method="wires that end there, each as often as its cables lie in parallel",
)
def conductors_on_pole(s: Subject) -> Any:
    counts: list[Number] = [0.0]
    for node in sorted(s.facts.network.nodes_of(s.item.name)):
        count: Number = 0.0
        for wire in wires_at(s.facts, node):
            count = add(count, s.read(wire.conductor.circuit, "in parallel"))
        counts.append(count)
    return greatest(counts)


@fact(
    "equipment",
    "conductors_held",
    unit="count",
    says="Conductors that one pole of it may hold: an earth bar, a terminal block; none for all else.",
    method="`holds`; for a bar that does not tell it, one for each of its studs",
)
def conductors_held(s: Subject) -> Any:
    if s.item.kind not in ("earth bar", "terminal block"):
        return None
    if not s.item.has("holds") and s.item.allows("studs"):
        return s.read(s.item, "studs")
    return s.read(s.item, "holds")
