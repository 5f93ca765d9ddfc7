"""The room with the shower: what stands in it and how far from the tray."""

from __future__ import annotations

import math
from typing import Any

from checker.design.given import Box
from checker.facts.catalogue import fact
from checker.facts.space import chain, is_kind
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Unknown, between, equal, some

WET = "wet room"


def _room(s: Subject) -> Any:
    """The place where a piece of equipment stands."""
    place = s.read(s.item, "place")
    known = s.facts.design.places.get(place) if isinstance(place, str) else None
    return Unknown(f"where {s.id} stands is not known") if known is None else known


@fact("equipment", "is_in_wet_room", type="yes/no", says="It stands in a room with a shower.",
      method="kind of its place and of those around it; a file without such a room has nothing in it")  # fmt: skip
@fact("outlet", "is_in_wet_room", type="yes/no", says="It stands in a room with a shower.",
      method="kind of its place and of those around it; a file without such a room has nothing in it")  # fmt: skip
def is_in_wet_room(s: Subject) -> Any:
    room = _room(s)
    if isinstance(room, Unknown):
        kinds = [equal(place.value("kind"), WET) for place in s.facts.design.places.values()]
        return room if any(kind is not False for kind in kinds) else False
    around = chain(s, room.name)
    answers = [is_kind(s, one, WET) for one in around]
    hidden = around[-1].has("inside") and isinstance(s.read(around[-1], "inside"), Unknown)
    if hidden and any(equal(place.value("kind"), WET) is not False for place in s.facts.design.places.values()):
        answers.append(Unknown(f"what {around[-1].name} is part of is not known"))
    return some(answers)


@fact("equipment", "distance_to_shower", unit="mm",
      says="Distance to the shower tray of its room, measured level; none where there is no shower.",
      method="gap between tray and its point or box, height left out")  # fmt: skip
@fact("outlet", "distance_to_shower", unit="mm",
      says="Distance to the shower tray of its room, measured level; none where there is no shower.",
      method="gap between tray and its point or box, height left out")  # fmt: skip
def distance_to_shower(s: Subject) -> Any:
    room = _room(s)
    if isinstance(room, Unknown):
        return room
    around = next((one for one in chain(s, room.name) if is_kind(s, one, WET) is not False), room)
    tray = s.read(around, "tray")
    if tray is None:
        return None
    body = _body(s)
    if not isinstance(tray, Box) or body is None:
        return Unknown(f"the place of {s.id} or of the tray is not known")
    along, across = (_gap(body, tray, axis) for axis in (0, 1))
    return between(math.hypot(along[0], across[0]), math.hypot(along[1], across[1]))


def _body(s: Subject) -> Box | None:
    """Its box, or its point as a box without size."""
    box = s.read(s.item, "box") if s.item.has("box") else None
    if isinstance(box, Box):
        return box
    point = s.read(s.item, "at")
    return Box(point, (0.0, 0.0, 0.0)) if isinstance(point, tuple) else None


def _gap(body: Box, tray: Box, axis: int) -> tuple[float, float]:
    """Least and most distance along one axis between two intervals, whose ends may be ranges."""
    b, w = _ends(body.at[axis]), _ends(body.size[axis])
    t, u = _ends(tray.at[axis]), _ends(tray.size[axis])
    least = max(t[0] - b[1] - w[1], 0.0, b[0] - t[1] - u[1])
    most = max(t[1] - b[0] - w[0], 0.0, b[1] - t[0] - u[0])
    return least, most


def _ends(value: Number) -> tuple[float, float]:
    if isinstance(value, float):
        return value, value
    return (value.low, value.high) if isinstance(value, Range) else (-math.inf, math.inf)
