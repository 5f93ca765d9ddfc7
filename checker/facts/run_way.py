"""Whether the lengths of a run can be true: no cable is shorter than the way between its ends."""

from __future__ import annotations

from itertools import pairwise
from math import inf
from typing import Any

from checker.design.given import Box
from checker.design.model import Equipment
from checker.design.run import Gap, Length, Through
from checker.facts.catalogue import fact
from checker.facts.space import Extent, apart, chain, lower, place_of, stands
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Truth, Unknown, add, greater, greater_equal, show


def _stops(s: Subject, end: str) -> list[tuple[str, Extent]]:
    """What stands along the run and where, as far as the file tells."""
    names = [s.item.start.equipment]
    names += [step.equipment for step in s.item.run if isinstance(step, Through)]
    found = []
    for name in (*names, end):
        item = s.facts.design.equipment.get(name)
        here = stands(s, item) if item is not None else None
        if here is not None:
            found.append((name, here))
    return found


@fact(
    "circuit",
    "way_known",
    type="yes/no",
    says="All that stands in its run has a box or a point of its own, or the run is too short even for their places.",
)
def way_known(s: Subject) -> Truth:
    ends = (s.item.start.equipment, *(end.equipment for end in s.item.ends))
    names = (*ends, *(step.equipment for step in s.item.run if isinstance(step, Through)))
    items = [s.facts.design.equipment.get(name) for name in names]
    spots = [stands(s, item) if item is not None else None for item in items]
    if all(here is not None and here.exact for here in spots):
        return True
    if greater_equal(s.run_length, s.least_way) is False:
        return True
    doubts = [_spot_doubtful(s, item) for item in items if item is not None]
    if isinstance(s.run_length, Unknown) and greater(s.least_way, 0.0) is not False:
        doubts.append(s.run_length)
    return next((doubt for doubt in doubts if doubt is not None), False)


def _spot_doubtful(s: Subject, item: Equipment) -> Unknown | None:
    """Why a box or a point that is written does not tell where a thing stands; None when none is, or it does."""
    if item.allows("place") and item.has("place") and isinstance(item.value("place"), Unknown):
        return Unknown(f"where {item.name} stands is not told")
    for one in (item, *chain(s, place_of(s, item))):
        for key in ("box", "at"):
            if one.allows(key) and one.has(key) and _partly(s.read(one, key)):
                return Unknown(f"part of `{key}` of {one.name} is not told")
    return None


def _partly(value: Any) -> bool:
    """Whether a box or a point has a part that is not known."""
    if isinstance(value, Box):
        return _partly(value.at) or _partly(value.size)
    return isinstance(value, tuple) and any(isinstance(one, Unknown) for one in value)


@fact("circuit", "run_length", unit="m", says="Length of its run.", method="sum of the stretches")
def run_length(s: Subject) -> Any:
    found: Number = 0.0
    for step in s.item.run:
        if isinstance(step, Gap):
            return Unknown(f"part of the run of {s.id} was not seen")
        if isinstance(step, Length):
            found = add(found, s.use(f"{s.item.path}.run", step.length, "m"))
    return found


@fact(
    "circuit",
    "least_way",
    unit="m",
    says="Shortest way from its start through what stands in its run to its end.",
    method="straight lines between the nearest points of the boxes; of what lies somewhere in a place, of the place",
    source="geometry of boxes",
)
def least_way(s: Subject) -> Any:
    ways = [_way(s, end.equipment) for end in s.item.ends]
    shortest = max(ways, default=0.0)
    names = (s.item.start.equipment, *(end.equipment for end in s.item.ends))
    names = (*names, *(step.equipment for step in s.item.run if isinstance(step, Through)))
    items = (s.facts.design.equipment.get(name) for name in names)
    doubtful = any(item is not None and _spot_doubtful(s, item) is not None for item in items)
    return Range(shortest, inf) if doubtful else shortest


def _way(s: Subject, end: str) -> float:
    stops = _stops(s, end)
    found = 0.0
    for (a, here), (b, there) in pairwise(stops):
        gap = apart(here, there)
        leg = lower(gap) if isinstance(gap, float | Range) else 0.0
        found += leg
        if leg:
            s.note(_said(a, b, leg))
    return found


def _said(a: str, b: str, leg: float) -> Any:
    return lambda: f"{a} to {b}: at least {show(leg, 'm')}"
