"""The outline of the vehicle: its envelope, and what stands out of it on the roof, at the sides and behind."""

from __future__ import annotations

from typing import Any

from checker.design.given import Box
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.space import Extent, extent, is_kind, place_of, stands, upper
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Truth, Unknown, add, greatest, least, less_equal, subtract
from checker.quantities.values import between, or_more

IN_THE_SKIN = ("shore inlet", "outlet", "vehicle coupling", "metal part", "switch")
"""Kinds that sit in a wall rather than on the roof; common practice, no source."""


def outline(s: Subject, axis: int) -> tuple[Number, Number]:
    """Where the vehicle begins and ends along an axis, m: envelope, boxes and points of equipment, parts that move.

    Both ends may lie farther out where something on the outside was told but not wholly placed.
    """
    around = s.read(s.item.vehicle, "envelope")
    if not isinstance(around, Box):
        missing = Unknown("the envelope of the vehicle is not told")
        return missing, missing
    low, high = around.at[axis], add(around.at[axis], around.size[axis])
    for here in _bodies(s):
        low, high = least(low, here.low[axis]), greatest(high, here.high[axis])
    for item in _told(s, "projects") if axis < 2 else ():
        before, behind = _stands_out(s, item, around, axis)
        low, high = least(low, subtract(around.at[axis], before)), greatest(high, add(_end(around, axis), behind))
    return (subtract(0.0, or_more(subtract(0.0, low))), or_more(high)) if _some_half_placed(s) else (low, high)


def _end(around: Box, axis: int) -> Number:
    return add(around.at[axis], around.size[axis])


AT_THE_WALL_M = 0.15
"""What stands no farther from a wall than this sits in it; common practice, no source."""


def _stands_out(s: Subject, item: Equipment, around: Box, axis: int) -> tuple[Number, Number]:
    """How far something in the skin stands out beyond the low and the high wall of an axis, m: in the wall where it
    stands; of what stands near two walls, or nobody knows where, anything up to that."""
    out = s.read(item, "projects")
    if out is None:
        return 0.0, 0.0
    here = stands(s, item) if item.has("box") or item.has("at") else None
    if here is None or not here.exact:
        return _up_to(out), _up_to(out)
    other = 1 - axis
    near = [[_near(here, around, one, high) for high in (False, True)] for one in (axis, other)]
    beside = any(one is not False for one in near[1])
    found: list[Number] = []
    for one in near[0]:
        found.append(0.0 if one is False else _up_to(out) if beside or one is not True else out)
    return found[0], found[1]


def _near(here: Extent, around: Box, axis: int, high: bool) -> Truth:
    """Whether something stands at the low or high wall of an axis."""
    gap = subtract(_end(around, axis), here.high[axis]) if high else subtract(here.low[axis], around.at[axis])
    return less_equal(gap, AT_THE_WALL_M)


def _up_to(value: Number) -> Number:
    return between(0.0, upper(value)) if isinstance(value, float | Range) else value


def _some_half_placed(s: Subject) -> bool:
    """Whether a length of a box or point is not known, of something that no wall surely holds within the vehicle."""
    parts = any(part.has("box") and extent(s, part) is None for part in s.item.moving.values())
    return parts or any(
        _half_placed(s, item) for item in s.item.equipment.values() if item.has("box") or item.has("at")
    )


def _half_placed(s: Subject, item: Equipment) -> bool:
    here = stands(s, item)
    if here is not None and here.exact:
        return False
    place = s.facts.design.places.get(str(place_of(s, item)))
    return place is None or is_kind(s, place, "outside") is not False


def _bodies(s: Subject) -> list[Extent]:
    """Boxes and points of equipment of which more is told than the place, and of parts that move, drawn in."""
    found = [stands(s, item) for item in s.item.equipment.values() if item.has("box") or item.has("at")]
    found += [extent(s, part) for part in s.item.moving.values() if part.has("box")]
    return [one for one in found if one is not None and one.exact]


@fact(
    "design",
    "overall_height",
    unit="m",
    says="Height of the vehicle with what was put on its roof.",
    method="top of the envelope plus the most that any equipment adds, and the tops of boxes; what stands on the "
    "outside with neither box nor height may add anything",
)
def overall_height(s: Subject) -> Any:
    around = s.read(s.item.vehicle, "envelope")
    if not isinstance(around, Box):
        return Unknown("the envelope of the vehicle is not told")
    adds = [s.read(item, "height added") for item in _told(s, "height added")]
    top = add(around.at[2], around.size[2])
    found = greatest(outline(s, 2)[1], add(top, greatest(adds)) if adds else top)
    silent = [item for item in s.item.equipment.values() if _perhaps_on_roof(s, item)]
    for item in silent:
        s.read(item, "height added")
    return or_more(found) if silent else found


def _told(s: Subject, key: str) -> list[Equipment]:
    return [item for item in s.item.equipment.values() if item.allows(key) and item.has(key)]


def _perhaps_on_roof(s: Subject, item: Any) -> bool:
    """Whether it stands on the outside and nothing tells how high."""
    if item.kind in IN_THE_SKIN or not item.allows("height added"):
        return False
    if any(item.allows(key) and item.has(key) for key in ("height added", "height", "box", "at")):
        return False
    place = s.facts.design.places.get(str(place_of(s, item)))
    return place is not None and is_kind(s, place, "outside") is True


def _span(s: Subject, axis: int) -> Any:
    low, high = outline(s, axis)
    return subtract(high, low)


@fact("design", "overall_width", unit="m", says="Width of the vehicle with what stands out at its sides.",
      method="envelope, boxes of equipment and of moving parts drawn in, what projects from a wall")  # fmt: skip
def overall_width(s: Subject) -> Any:
    return _span(s, 1)


@fact("design", "overall_length", unit="m", says="Length of the vehicle with what stands out before and behind.",
      method="envelope, boxes of equipment and of moving parts drawn in, what projects from a wall")  # fmt: skip
def overall_length(s: Subject) -> Any:
    return _span(s, 0)
