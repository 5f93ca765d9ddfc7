"""A site pillar that belongs to the design, and the distances of outlets along a wall."""

from __future__ import annotations

import itertools
import math
from typing import Any

from checker.design.vocabulary.vehicle import CODES
from checker.facts.catalogue import fact
from checker.facts.degree import against_objects, against_water
from checker.facts.equipment import place_name
from checker.facts.space import chain
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, add, both, equal

Point = tuple[float, float, float]


@fact("design", "pillar_told", type="yes/no", says="A site pillar belongs to the design.")
def pillar_told(s: Subject) -> bool:
    return any(key.startswith("site pillar.") for key, _ in s.item.vehicle.written())


def _pillar(s: Subject, key: str) -> Any:
    return s.read(s.item.vehicle, f"site pillar.{key}")


@fact("design", "pillar_height", unit="m", says="Height of the underside of its site pillar.")
def pillar_height(s: Subject) -> Any:
    return _pillar(s, "height")


@fact("design", "pillar_outlets", unit="count", says="Outlets in its site pillar.")
def pillar_outlets(s: Subject) -> Any:
    return _pillar(s, "outlets")


@fact("design", "pillar_distance", unit="m", says="Greatest distance from its site pillar to a pitch.")
def pillar_distance(s: Subject) -> Any:
    return _pillar(s, "distance")


@fact("design", "pillar_rating", unit="A", says="Rated current of an outlet of its site pillar.")
def pillar_rating(s: Subject) -> Any:
    return _pillar(s, "rating")


@fact("design", "pillar_water", unit="count", says="Second digit of the degree of protection of its site pillar.",
      source="IEC 60529 (from memory)")  # fmt: skip
def pillar_water(s: Subject) -> Any:
    degree = _pillar(s, "degree")
    return degree if isinstance(degree, Unknown) else against_water(degree)


@fact("design", "pillar_objects", unit="count", says="First digit of the degree of protection of its site pillar.",
      source="IEC 60529 (from memory)")  # fmt: skip
def pillar_objects(s: Subject) -> Any:
    degree = _pillar(s, "degree")
    return degree if isinstance(degree, Unknown) else against_objects(degree)


@fact("design", "pillar_pitches", unit="count", says="Pitches that its site pillar serves.")
def pillar_pitches(s: Subject) -> Any:
    return _pillar(s, "pitches")


@fact("design", "pillar_guarded", type="yes/no", says="Each outlet of its site pillar has devices of its own.")
def pillar_guarded(s: Subject) -> Any:
    return _pillar(s, "own devices")


@fact("place", "code", words=CODES, says="The code of practice whose limits apply.")
def code(s: Subject) -> Any:
    return s.use("code", s.facts.design.code)


@fact("place", "counters", unit="count", says="Counters of 0.3 m and more along its walls.")
def counters(s: Subject) -> Any:
    return s.read(s.item, "counters")


@fact("place", "counter_outlets", unit="count", says="Mains outlets in it whose plugs are used at a counter.",
      method="use of each outlet that stands in it, or in a place inside it")  # fmt: skip
def counter_outlets(s: Subject) -> Any:
    found: Number = 0.0
    for outlet in s.facts.subjects("outlet"):
        where = place_name(outlet)
        if isinstance(where, Unknown) and outlet.is_mains is not False:
            return Unknown(f"where {outlet.id} stands is not told")
        if outlet.is_mains is False or s.item not in chain(outlet, where):
            continue
        here = both(outlet.is_mains, equal(outlet.used_where, "counter"))
        if isinstance(here, Unknown):
            return Unknown(f"where the plugs of {outlet.id} are used is not told")
        found = add(found, s.read(outlet.item, "count")) if here else found
    return found


@fact(
    "place",
    "outlet_gap",
    unit="m",
    says="Greatest distance along its wall from a point of it to the nearest mains outlet in the place.",
    method="outlets with a point, each at the nearest point of the wall; half of the way between two of them",
)
def outlet_gap(s: Subject) -> Any:
    wall = s.read(s.item, "wall")
    line = [_exact(point) for point in wall] if isinstance(wall, tuple) else []
    if len(line) < 2 or None in line:
        return Unknown(f"the wall of {s.id} is not told")
    corners = [point for point in line if point is not None]
    ends = [0.0]
    for a, b in itertools.pairwise(corners):
        ends.append(ends[-1] + math.dist(a, b))
    at: list[float] = []
    for outlet in s.facts.subjects("outlet"):
        here = equal(s.read(outlet.item, "place"), s.id)
        if outlet.is_mains is False or here is False:
            continue
        point = _exact(s.read(outlet.item, "at"))
        if point is None or outlet.is_mains is not True or here is not True:
            return Unknown(f"where {outlet.id} stands, or what it gives, is not told")
        at.append(_along(corners, ends, point))
    if not at:
        return ends[-1]
    at.sort()
    between = [(b - a) / 2 for a, b in itertools.pairwise(at)]
    return max(at[0], ends[-1] - at[-1], *between)


def _exact(point: Any) -> Point | None:
    exact = isinstance(point, tuple) and all(isinstance(one, float) for one in point)
    return (point[0], point[1], point[2]) if exact else None


def _along(corners: list[Point], ends: list[float], point: Point) -> float:
    """Length along the wall up to its point that is nearest to `point`."""
    best = (math.inf, 0.0)
    for number, (a, b) in enumerate(itertools.pairwise(corners)):
        long = math.dist(a, b)
        share = sum((p - u) * (v - u) for p, u, v in zip(point, a, b, strict=True)) / long**2 if long else 0.0
        share = min(1.0, max(0.0, share))
        foot = [u + share * (v - u) for u, v in zip(a, b, strict=True)]
        best = min(best, (math.dist(foot, point), ends[number] + share * long))
    return best[1]
