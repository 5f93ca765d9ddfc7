"""Where things stand: boxes as the file gives them, with every doubt kept."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.design.given import Box
from checker.design.item import Item
from checker.design.model import Equipment
from checker.design.run import Length
from checker.facts.subject import Subject
from checker.physics.geometry import Cuboid, axis_of, diagonal, swing
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    add,
    between,
    corners,
    equal,
    every,
    greatest,
    less,
    less_equal,
    multiply,
    subtract,
)

OUTER_SKIN = "outer skin"
LIVING = ("living space", "wet room", "bed", "seat")
OPEN_AIR = ("outside", "under body")
OUTSIDE_BY_NATURE = ("engine space", "under body", "outside", "fuel", "exit", "gas locker")
"""Kinds of place that are no part of the living space unless the file says what they are inside of."""
DEEPEST = 30
GAS_LOCKER = "gas locker"

Corner = tuple[Number, Number, Number]


class Extent(NamedTuple):
    """A box with its doubts, metres. `exact` is no when the thing only lies somewhere within it."""

    low: Corner
    high: Corner
    exact: bool


def extent(s: Subject, item: Item) -> Extent | None:
    """The box of a place, moving part or piece of equipment; None when it is not told."""
    if not item.allows("box"):
        return None
    return _extent_of(s.read(item, "box"))


def _extent_of(box: Any) -> Extent | None:
    if not isinstance(box, Box):
        return None
    high = (add(box.at[0], box.size[0]), add(box.at[1], box.size[1]), add(box.at[2], box.size[2]))
    if any(isinstance(one, Unknown) or one is None for one in (*box.at, *high)):
        return None
    return Extent(box.at, high, True)


def stands(s: Subject, item: Equipment) -> Extent | None:
    """Where a piece of equipment stands: its box, its point, else somewhere within the nearest place with a box."""
    own = extent(s, item)
    if own is not None:
        return own
    if item.allows("box") and isinstance(item.value("box"), Box):
        return None  # a length of it is not told: what the file says of its place may not be where that box is
    if item.allows("at") and item.has("at"):
        point = s.read(item, "at")
        if isinstance(point, tuple) and not any(isinstance(one, Unknown) or one is None for one in point):
            return Extent(point, point, True)
    for place in chain(s, place_of(s, item)):
        room = extent(s, place)
        if room is not None:
            return Extent(room.low, room.high, False)
    return None


def place_of(s: Subject, item: Equipment) -> Any:
    """The name of the place of equipment; what is written in a run lies where the run has just been."""
    if item.has("place") or not item.allows("place"):
        return s.read(item, "place") if item.allows("place") else UNKNOWN
    circuit = s.facts.design.circuits.get(item.inline_of) if item.inline_of is not None else None
    last: str | None = None
    for step in circuit.run if circuit is not None else ():
        if isinstance(step, Length):
            last = step.place or last
        elif getattr(step, "equipment", None) == item.name and last is not None:
            return last
    return s.read(item, "place")


def chain(s: Subject, name: Any) -> list[Item]:
    """A place and the places it is inside of, innermost first."""
    found: list[Item] = []
    places = s.facts.design.places
    while isinstance(name, str) and name in places and len(found) < DEEPEST and places[name] not in found:
        place = places[name]
        found.append(place)
        name = s.read(place, "inside")
    return found


def told_around(s: Subject, place: Item) -> list[Item]:
    """A place and those the file says it is inside of, innermost first; what is left out is not asked for."""
    found = [place]
    places = s.facts.design.places
    while found[-1].has("inside") and len(found) < DEEPEST:
        name = s.read(found[-1], "inside")
        if not isinstance(name, str) or name not in places or places[name] in found:
            break
        found.append(places[name])
    return found


def is_living(s: Subject, place: Item) -> Truth:
    """Whether a place is part of the living space, by what it is and what it is inside of."""
    for one in chain(s, place.name):
        kind = s.read(one, "kind")
        if isinstance(kind, Unknown):
            return Unknown(f"what kind of place {one.name} is is not told")
        if kind in LIVING:
            return True
        inside = one.value("inside")
        if isinstance(inside, Unknown):
            return False if kind in OUTSIDE_BY_NATURE else Unknown(f"what {one.name} is inside of is not told")
    return False


def overlaps(a: Extent | None, b: Extent | None) -> Truth:
    """Whether two things share space. What only lies somewhere within a box may or may not."""
    if a is None or b is None:
        return Unknown("a box is not told")
    answer = every(one for i in range(3) for one in (less(a.low[i], b.high[i]), less(b.low[i], a.high[i])))
    if answer is False or (a.exact and b.exact):
        return answer
    if holds(a, b) is True and not b.exact and a.exact:
        return True
    if holds(b, a) is True and not a.exact and b.exact:
        return True
    return Unknown("a box is not told")


def holds(outer: Extent, inner: Extent) -> Truth:
    """Whether one box lies wholly in the other."""
    return every(
        one
        for i in range(3)
        for one in (less_equal(outer.low[i], inner.low[i]), less_equal(inner.high[i], outer.high[i]))
    )


def apart(a: Extent | None, b: Extent | None) -> Number:
    """Shortest distance between two things, m; a range when one only lies somewhere within a box."""
    if a is None or b is None:
        return Unknown("a box is not told")
    gaps = [greatest(0.0, subtract(b.low[i], a.high[i]), subtract(a.low[i], b.high[i])) for i in range(3)]
    near = corners(diagonal, *gaps)
    if (a.exact and b.exact) or isinstance(near, Unknown):
        return near
    reaches = [greatest(subtract(b.high[i], a.low[i]), subtract(a.high[i], b.low[i])) for i in range(3)]
    far = corners(diagonal, *(greatest(0.0, reach) for reach in reaches))
    return between(lower(near), upper(far)) if isinstance(far, float | Range) else far


def lower(value: Number) -> float:
    """The least a number may be."""
    return value.low if isinstance(value, Range) else float(value)  # type: ignore[arg-type]


def upper(value: Number) -> float:
    """The most a number may be."""
    return value.high if isinstance(value, Range) else float(value)  # type: ignore[arg-type]


def swept_extent(s: Subject, part: Item) -> Extent | None:
    """All the space a moving part passes through; None when its box or its way is not told.

    Exact for straight travel. For a part on a hinge it is the box around it that the writer gives, else the box
    around any turn about the hinge, which is larger than what it really sweeps.
    """
    if part.has("sweeps"):
        return _extent_of(s.read(part, "sweeps"))
    box = extent(s, part)
    if part.has("hinge.at") or part.has("hinge.along"):
        return _swing(s, part, box)
    along, distance = s.read(part, "travel.along"), s.read(part, "travel.distance")
    if box is None or not isinstance(along, str) or not isinstance(distance, float | Range):
        return None
    axis, sense = axis_of(along)
    step = multiply(distance, sense)
    low, high = list(box.low), list(box.high)
    if sense > 0:
        high[axis] = add(high[axis], step)
    else:
        low[axis] = add(low[axis], step)
    return Extent((low[0], low[1], low[2]), (high[0], high[1], high[2]), True)


def _swing(s: Subject, part: Item, box: Extent | None) -> Extent | None:
    at, along = s.read(part, "hinge.at"), s.read(part, "hinge.along")
    if box is None or not isinstance(at, tuple) or not isinstance(along, str):
        return None
    low = (lower(box.low[0]), lower(box.low[1]), lower(box.low[2]))
    high = (upper(box.high[0]), upper(box.high[1]), upper(box.high[2]))
    points = [one for one in at if isinstance(one, float | Range)]
    if len(points) != 3:
        return None
    reaches = [
        swing(Cuboid(low, high), (x, y, z), along)
        for x in (lower(points[0]), upper(points[0]))
        for y in (lower(points[1]), upper(points[1]))
        for z in (lower(points[2]), upper(points[2]))
    ]
    s.note(lambda: f"{part.name} is taken to turn about its hinge by any angle")
    least_corner = tuple(min(one.low[i] for one in reaches) for i in range(3))
    most_corner = tuple(max(one.high[i] for one in reaches) for i in range(3))
    return Extent(least_corner, most_corner, True)  # type: ignore[arg-type]


def widened(here: Extent, low: tuple[float, float, float], high: tuple[float, float, float]) -> Extent:
    """An extent with so much more at its lesser and at its greater sides, m."""
    return Extent(
        tuple(subtract(here.low[i], low[i]) for i in range(3)),  # type: ignore[arg-type]
        tuple(add(here.high[i], high[i]) for i in range(3)),  # type: ignore[arg-type]
        here.exact,
    )


def carried(s: Subject, part: Item, places: list[Item]) -> Truth:
    """Whether a moving part carries one of these places."""
    named = s.read(part, "carries")
    if isinstance(named, tuple) and any(place.name in named for place in places):
        return True
    if any(equal(s.read(place, "carried by"), part.name) is True for place in places if place.has("carried by")):
        return True
    if not isinstance(named, Unknown):
        return False
    told = any(equal(place.value("carried by"), part.name) is True for place in s.facts.design.places.values())
    return False if told else Unknown(f"what {part.name} carries is not told")


def places_of(s: Subject, kind: str) -> list[Item] | Unknown:
    """The places of a kind; unknown when the kind of some place is not told."""
    found = []
    for place in s.facts.design.places.values():
        answer = is_kind(s, place, kind)
        if isinstance(answer, Unknown):
            return answer
        if answer:
            found.append(place)
    return found


def is_kind(s: Subject, place: Item, *kinds: str) -> Truth:
    """Whether a place is of one of these kinds; where gas cylinders stand is a gas locker, whatever it is besides."""
    if GAS_LOCKER in kinds and place.has("cylinders"):
        count = s.read(place, "cylinders")
        if isinstance(count, Unknown):
            return Unknown(f"whether gas cylinders stand in {place.name} is not told")
        if count:
            return True
    kind = s.read(place, "kind")
    return Unknown(f"what kind of place {place.name} is is not told") if isinstance(kind, Unknown) else kind in kinds


__all__ = [
    "LIVING", "OPEN_AIR", "OUTER_SKIN", "Extent", "apart", "carried", "chain", "extent", "holds", "is_kind",
    "is_living", "lower", "overlaps", "place_of", "places_of", "stands", "swept_extent", "upper", "widened",
]  # fmt: skip
