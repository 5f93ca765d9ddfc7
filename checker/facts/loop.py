"""Flexible loops: cables that follow a moving part."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import Any

from checker.circuit.elements import LIVE
from checker.design.given import Where
from checker.design.model import Circuit
from checker.design.run import Length, Through
from checker.facts.catalogue import fact, subjects
from checker.facts.chamber import unplaced
from checker.facts.space import lower
from checker.facts.subject import Facts, Subject
from checker.physics.bend import flexible_radius, loop_radius
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    add,
    corners,
    equal,
    every,
    greatest,
    least,
    less_equal,
    some,
    subtract,
)

CHAIN, FREE = "drag chain", "free movement"
GUIDES = ("chain", "tray", "tube", "hanging")


@subjects("loop", "Cables that follow a moving part, between their two clamps.")
def loops(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Places that are flexible loops, in file order."""
    for item in facts.design.places.values():
        if equal(item.value("kind"), "flexible loop") is True:
            yield item.name, item.where, item


def passing(s: Subject) -> list[Circuit]:
    """Circuits whose run goes through the loop."""
    return [one for one in s.facts.design.circuits.values() if _lengths(one, s.item.name)]


def _lengths(circuit: Circuit, place: str) -> list[Length]:
    return [step for step in circuit.run if isinstance(step, Length) and step.place == place]


@fact("loop", "moving", of="moving", type="subject", says="The moving part it bridges.")
def moving(s: Subject) -> Any:
    name = s.read(s.item, "across")
    return s.facts.subject("moving", name) if isinstance(name, str) else name


@fact("loop", "free_length", unit="m", says="Length of cable between the clamps.",
      method="the stated free length or the shortest cable run through it, whichever is less")  # fmt: skip
def free_length(s: Subject) -> Any:
    found: Number = s.read(s.item, "free length")
    for circuit in passing(s):
        run: Number = 0.0
        for step in _lengths(circuit, s.item.name):
            run = add(run, s.use(f"{circuit.path}.run via {s.item.name}", step.length, "m"))
        found = run if found is None else least(found, run)
    return found


@fact("loop", "span_out", unit="m", says="Distance of the clamps with the part farthest out.")
def span_out(s: Subject) -> Any:
    return s.read(s.item, "span out")


@fact(
    "loop",
    "slack",
    unit="mm",
    says="Cable left over where the clamps are furthest apart.",
    method="free length less the widest distance of the clamps on the whole way",
)
def slack(s: Subject) -> Any:
    s.note(lambda: "slack = free length - widest span")
    return subtract(s.free_length, s.widest_span)


@fact("loop", "spans_differ_by_travel", type="yes/no",
      says="The distance of the clamps does not change by more than the part travels.",
      method="span out less span in against the travel")  # fmt: skip
def spans_differ_by_travel(s: Subject) -> Truth:
    part = s.moving
    if part is None or isinstance(part, Unknown):
        return Unknown(f"the part that {s.id} bridges is not told")
    return less_equal(subtract(s.read(s.item, "span out"), s.read(s.item, "span in")), part.travel)


@fact("loop", "bend_radius", unit="mm", says="Smallest radius the loop is guided to.")
def bend_radius(s: Subject) -> Any:
    return s.read(s.item, "bend radius")


@fact(
    "loop",
    "bend_needed",
    unit="mm",
    says="Smallest radius that all cables in it stand while they move.",
    method="greatest of the makers' figures; without one at least a factor of the outer diameter, in a drag chain or "
    "moving freely: the maker may ask for more",
    source="DIN VDE 0298-3, flexible cables, drag chain and free movement (seen)",
)
def bend_needed(s: Subject) -> Any:
    found: Number = None
    for circuit in passing(s):
        radius = _cable_radius(s, circuit)
        if isinstance(radius, Unknown):
            return radius
        found = radius if found is None else greatest(found, radius)
    lost = unplaced(s.facts)
    if not lost:
        return found
    why = Unknown(f"stretches that were not seen may pass {s.id}: {', '.join(lost)}")
    least_needed = found.low if isinstance(found, Range) else found
    return Range(least_needed, inf) if isinstance(least_needed, float) else why


def _cable_radius(s: Subject, circuit: Circuit) -> Any:
    cable = circuit.cable
    if cable is None:
        return Unknown(f"the cable of {circuit.name} is not known")
    if cable.has("bend moving"):
        return s.read(cable, "bend moving")
    outer = s.read(cable, "outer")
    if isinstance(outer, Unknown):
        return Unknown(f"neither bend radius nor outer diameter of {cable.name} is told")
    kind = s.guide
    uses = ([CHAIN] if kind == "chain" else [FREE]) if isinstance(kind, str) else [CHAIN, FREE]
    found = [corners(lambda diameter, use=use: flexible_radius(diameter, use), outer) for use in uses]
    known = [one for one in found if isinstance(one, float | Range)]
    return Range(min(map(lower, known)), inf) if known else found[0]


@fact("loop", "extra_flexible", type="yes/no", says="Every conductor in it is of the finest strands.")
def extra_flexible(s: Subject) -> Truth:
    def fine(circuit: Circuit) -> Truth:
        if circuit.cable is None:
            return Unknown(f"the cable of {circuit.name} is not known")
        strands = s.read(circuit.cable, "strands")
        return strands if isinstance(strands, Unknown) else strands == "extra flexible"

    return every(fine(circuit) for circuit in passing(s))


@fact("loop", "joint_in_it", type="yes/no", says="A joint or connector lies within the moving cable.",
      method="a device in a run between two stretches through the loop")  # fmt: skip
def joint_in_it(s: Subject) -> Truth:
    def joined(circuit: Circuit) -> Truth:
        inside = [isinstance(step, Length) and step.place == s.item.name for step in circuit.run]
        first, last = inside.index(True), len(inside) - 1 - inside[::-1].index(True)
        return any(isinstance(step, Through) for step in circuit.run[first:last])

    return some(joined(circuit) for circuit in passing(s))


@fact("loop", "guide", words=GUIDES, says="What guides it.")
def guide(s: Subject) -> Any:
    return s.read(s.item, "guide")


@fact("loop", "conductors", of="conductor", type="list", says="The live conductors that pass it.", method="graph")
def conductors(s: Subject) -> tuple[Any, ...]:
    found = (s.facts.network.conductor(circuit.name, LIVE) for circuit in passing(s))
    twins = (s.facts.of("conductor", one) for one in found if one is not None)
    return tuple(one for one in twins if one is not None)


@fact(
    "loop",
    "hanging_radius",
    unit="mm",
    says="Radius of the half circle that the slack makes, clamps furthest apart; none where a guide sets it.",
    method="(free length - widest span on the whole way) / pi",
    source="geometry of a half circle",
)
def hanging_radius(s: Subject) -> Any:
    kind = s.guide
    if isinstance(kind, Unknown):
        return kind
    if kind in ("chain", "tube"):
        return None
    widest = s.widest_span
    s.note(lambda: "r = (free length - widest span) / π")
    if less_equal(widest, s.free_length) is False:
        return 0.0
    return corners(loop_radius, s.free_length, widest)
