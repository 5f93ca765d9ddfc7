"""Boxes, points and lines to draw, in vehicle axes and metres, and how a doubtful one is drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from checker.facts.space import extent, lower, upper

if TYPE_CHECKING:
    from checker.design.item import Item
    from checker.facts.space import Extent
    from checker.facts.subject import Subject

Point = tuple[float, float, float]


class Shape(NamedTuple):
    """A box, metres. `doubtful` when its size or place is a range: the outermost box is drawn."""

    name: str
    kind: str
    low: Point
    high: Point
    doubtful: bool = False

    @property
    def middle(self) -> Point:
        """Its middle."""
        return tuple((a + b) / 2.0 for a, b in zip(self.low, self.high, strict=True))  # type: ignore[return-value]


class Line(NamedTuple):
    """A service line, or a circuit along which its band of voltage is told: points in order."""

    name: str
    band: str
    points: tuple[Point, ...]


def shape_of(item: Item, at: Extent | None) -> Shape | None:
    """The outermost box that a thing may fill; None when no box is told or one has no end."""
    if at is None:
        return None
    low = (lower(at.low[0]), lower(at.low[1]), lower(at.low[2]))
    high = (upper(at.high[0]), upper(at.high[1]), upper(at.high[2]))
    sure = all(isinstance(one, float) for one in (*at.low, *at.high))
    if any(abs(one) == float("inf") for one in (*low, *high)):
        return None
    return Shape(item.name, item.kind, low, high, not sure)


def middle(shape: Shape | None) -> Point | None:
    """The middle of a box."""
    return None if shape is None else shape.middle


def room_of(s: Subject, name: str) -> Shape | None:
    """The box of a place by its name."""
    place = s.facts.design.places.get(name)
    return None if place is None else shape_of(place, extent(s, place))


def through(stops: list[Any]) -> list[Point]:
    """Points through which a route is drawn: equipment as it stands, a place at its nearest to the way."""
    fixed = [one for one in stops if one is not None]
    found: list[Point] = []
    for index, stop in enumerate(fixed):
        point: Point = stop if not isinstance(stop, Shape) else _nearest(stop, found, fixed[index + 1 :])
        if not found or found[-1] != point:
            found.append(point)
    return found


def _nearest(room: Shape, before: list[Point], after: list[Any]) -> Point:
    """The point of a place that lies nearest to the middle of the way past it."""
    ends = [before[-1]] if before else []
    ends += [one if not isinstance(one, Shape) else one.middle for one in after][:1]
    if not ends:
        return room.middle
    aim = [sum(end[i] for end in ends) / len(ends) for i in range(3)]
    return tuple(min(max(aim[i], room.low[i]), room.high[i]) for i in range(3))  # type: ignore[return-value]
