"""What stands in the working space in front of a distribution board."""

from __future__ import annotations

from checker.facts.bodies import FINE_M, bodies
from checker.facts.catalogue import fact
from checker.facts.space import (
    Extent,
    carried,
    chain,
    extent,
    is_kind,
    lower,
    overlaps,
    place_of,
    swept_extent,
    widened,
)
from checker.facts.subject import Subject
from checker.physics.geometry import axis_of
from checker.quantities import Range, add, subtract

IN_THE_WAY = ("bed", "seat", "locker", "battery locker", "gas locker", "wet room")
"""Kinds of place that are furniture, or have walls."""


@fact(
    "equipment",
    "working_space_taken",
    type="yes/no",
    says="Equipment, furniture or the way of a moving part certainly lies in the depth told in front of it.",
    method="boxes straight before its front; where front or box is not told, the measure that was told stands",
    source="geometry of boxes",
)
def working_space_taken(s: Subject) -> bool:
    room = _before(s)
    if room is None:
        return False
    around = chain(s, place_of(s, s.item))
    inside = widened(room, (-FINE_M,) * 3, (-FINE_M,) * 3)
    if any(one.subject.id != s.id and overlaps(one.here, inside) is True for one in bodies(s.facts)):
        return True
    places = [one for one in s.facts.design.places.values() if one not in around]
    if any(is_kind(s, one, *IN_THE_WAY) is True and overlaps(extent(s, one), inside) is True for one in places):
        return True
    parts = [one for one in s.facts.design.moving.values() if carried(s, one, around) is False]
    return any(overlaps(way, inside) is True for one in parts for way in (extent(s, one), swept_extent(s, one)))


def _before(s: Subject) -> Extent | None:
    """The space straight before its front, as deep as told; None where that cannot be drawn."""
    here, depth = extent(s, s.item), s.working_depth
    faces = s.read(s.item, "front towards") if s.item.allows("front towards") else None
    if here is None or not isinstance(faces, str) or faces.endswith("z") or not isinstance(depth, float | Range):
        return None
    axis, sense = axis_of(faces)
    low, high = list(here.low), list(here.high)
    if sense > 0:
        low[axis], high[axis] = here.high[axis], add(here.high[axis], lower(depth))
    else:
        low[axis], high[axis] = subtract(here.low[axis], lower(depth)), here.low[axis]
    return Extent((low[0], low[1], low[2]), (high[0], high[1], high[2]), True)
