"""Lines of gas, fuel, water, hot air and exhaust: how far things stand from them."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.space import Extent, stands
from checker.facts.subject import Subject
from checker.physics.geometry import Cuboid, line_distance
from checker.quantities import Number, Range, Unknown, corners, divide, greatest, least, show, subtract


@fact("design", "services_told", type="yes/no",
      says="Lines of gas, fuel, water, hot air or exhaust are told with their points.")  # fmt: skip
def services_told(s: Subject) -> bool:
    return any(isinstance(s.read(line, "along"), tuple) for line in s.item.services.values())


def _drawn(s: Subject, *words: str) -> bool:
    """Whether a line that carries one of these is told with its points."""
    return any(
        s.read(line, "carries") in words and isinstance(s.read(line, "along"), tuple)
        for line in s.item.services.values()
    )


@fact("design", "lines_told", type="yes/no",
      says="Lines of gas, of fuel and of water are each told with their points.")  # fmt: skip
def lines_told(s: Subject) -> bool:
    return _drawn(s, "gas") and _drawn(s, "diesel", "petrol") and _drawn(s, "water")


@fact("design", "fuel_lines_told", type="yes/no", says="A line of diesel or petrol is told with its points.")
def fuel_lines_told(s: Subject) -> bool:
    return _drawn(s, "diesel", "petrol")


@fact("design", "exhausts_told", type="yes/no", says="An exhaust is told with its points.")
def exhausts_told(s: Subject) -> bool:
    return _drawn(s, "exhaust")


@fact(
    "equipment",
    "distance_to_service",
    unit="mm",
    says="Distance to the nearest line of gas, fuel, water, hot air or exhaust that is told.",
    method="from its box to the straight stretches of the line, less half the outer diameter",
    source="geometry of boxes",
)
def distance_to_service(s: Subject) -> Any:
    lines = list(s.facts.design.services.values())
    if not lines:
        return Unknown("the file tells no line of gas, fuel or water")
    return distance_to_lines(s, lines)


def distance_to_lines(s: Subject, lines: Iterable[Item]) -> Number:
    """Least distance from the box of equipment to lines, m; unknown when a line or the box is not told."""
    here = stands(s, s.item)
    if here is None or not here.exact:
        return Unknown(f"the box of {s.id} is not told")
    found: Number = None
    for line in lines:
        points = s.read(line, "along")
        if not isinstance(points, tuple) or len(points) < 2:
            return Unknown(f"where {line.name} runs is not told")
        distance = line_gap(here, points, s.read(line, "outer") if line.has("outer") else 0.0)
        s.note(_said(line.name, distance))
        found = distance if found is None else least(found, distance)
    return found


def _said(name: str, distance: Number) -> Any:
    return lambda: f"{name}: {show(distance, 'mm')}"


def line_gap(here: Extent, points: tuple[Any, ...], outer: Number) -> Number:
    """From a box to the nearest stretch of a line."""
    if any(not isinstance(one, float) for point in points for one in point):
        return Unknown("a point of the line is not told exactly")
    if any(not isinstance(one, float | Range) for one in (*here.low, *here.high)):
        return Unknown("the box is not told")
    found: Number = None
    for start, end in pairwise(points):
        gap = corners(_from_box(start, end), *here.low, *here.high)
        found = gap if found is None else least(found, gap)
    return greatest(0.0, subtract(found, divide(outer, 2.0)))


def _from_box(start: tuple[float, float, float], end: tuple[float, float, float]) -> Any:
    def distance(*sides: float) -> float:
        low, high = sides[:3], sides[3:]
        # Corners of a doubtful box are tried in all pairs; one turned inside out is turned back.
        turned = [(min(a, b), max(a, b)) for a, b in zip(low, high, strict=True)]
        return line_distance(
            Cuboid(tuple(a for a, _ in turned), tuple(b for _, b in turned)),  # type: ignore[arg-type]
            start,
            end,
        )

    return distance
