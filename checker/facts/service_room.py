"""The free space that must stay beside equipment for hands and air: moving parts, other equipment, walls and doors."""

from __future__ import annotations

from math import inf
from typing import Any

from checker.design.item import Item
from checker.facts.bodies import FINE_M, OPEN, all_placed, bodies
from checker.facts.catalogue import fact
from checker.facts.space import (
    Extent,
    carried,
    chain,
    extent,
    holds,
    is_kind,
    lower,
    overlaps,
    place_of,
    swept_extent,
    upper,
    widened,
)
from checker.facts.subject import Subject
from checker.quantities import Range, Truth, Unknown, both, either, greater, negate, some

SIDES = ("front", "back", "left", "right")
OPPOSITE = {"x": "-x", "-x": "x", "y": "-y", "-y": "y", "z": "-z", "-z": "z"}
FAR_M = 100.0
"""Farther than any vehicle reaches."""
METHOD = (
    "over and under it exactly, before and behind it where the file says which way it faces; else the widest space is "
    "taken all around, and what comes so near leaves a question"
)


@fact("equipment", "service_told", type="yes/no", says="Free space that must stay beside it is told, and its box.")
def service_told(s: Subject) -> Truth:
    told = some(_told(s, side) for side in (*SIDES, "top", "bottom"))
    return both(s.box_known, told)


def _told(s: Subject, side: str) -> Truth:
    """Whether free space is asked for at a side."""
    if not s.item.allows(f"service.{side}") or not s.item.has(f"service.{side}"):
        return False
    value = s.read(s.item, f"service.{side}")
    return greater(value, 0.0)


def _room(s: Subject, side: str) -> tuple[float, float]:
    """Free space told for a side, m: the least and the most it may be; what is called unknown may be any."""
    if not s.item.allows(f"service.{side}") or not s.item.has(f"service.{side}"):
        return 0.0, 0.0
    value = s.read(s.item, f"service.{side}")
    if value is None:
        return 0.0, 0.0
    return (0.0, FAR_M) if isinstance(value, Unknown) else (lower(value), upper(value))


Room = dict[str, float]
"""Free space towards each direction of the vehicle axes, m."""


def _rooms(s: Subject) -> tuple[Room, Room]:
    """The free space that is asked for certain, and the most that may be meant, towards each direction."""
    faces = s.read(s.item, "front towards") if s.item.allows("front towards") and s.item.has("front towards") else None
    room = {side: _room(s, side) for side in (*SIDES, "top", "bottom")}
    sure: Room = {"z": room["top"][0], "-z": room["bottom"][0]}
    most: Room = {"z": room["top"][1], "-z": room["bottom"][1]}
    if not isinstance(faces, str):
        return sure, {**most, **dict.fromkeys(("x", "-x", "y", "-y"), max(room[side][1] for side in SIDES))}
    for side, towards in (("front", faces), ("back", OPPOSITE[faces])):
        sure[towards] = max(sure.get(towards, 0.0), room[side][0])
        most[towards] = max(most.get(towards, 0.0), room[side][1])
    # Left and right of what faces up or down are anywhere around it; of the rest they are the other level axis.
    for one in ("x", "-x", "y", "-y"):
        if one.removeprefix("-") != faces.removeprefix("-"):
            most[one] = max(room["left"][1], room["right"][1])
            if faces.removeprefix("-") != "z":
                sure[one] = min(room["left"][0], room["right"][0])
    return sure, most


def _around(here: Extent, room: Room, left_out: str = "") -> Extent:
    low, high = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    for direction, by in room.items():
        if direction != left_out:
            (low if direction.startswith("-") else high)["xyz".index(direction[-1])] = by
    return widened(here, (low[0], low[1], low[2]), (high[0], high[1], high[2]))


@fact(
    "equipment",
    "service_space_clear",
    type="yes/no",
    says="No moving part sweeps the free space that must stay beside it.",
    method=METHOD,
)
def service_space_clear(s: Subject) -> Truth:
    here = extent(s, s.item)
    if here is None:
        return Unknown(f"the box of {s.id} is not told")
    sure, most = _rooms(s)
    least, widest = _around(here, sure), _around(here, most)
    return negate(some([_enters(s, part.item, least, widest) for part in s.facts.subjects("moving")]))


def _enters(s: Subject, part: Item, sure: Extent, most: Extent) -> Truth:
    """Whether a moving part that does not carry it comes into its free space."""
    rides = carried(s, part, chain(s, place_of(s, s.item)))
    if rides is True:
        return False
    way = swept_extent(s, part)
    certain, perhaps = overlaps(way, sure), overlaps(way, most)
    if certain is True and rides is False:
        return True
    if perhaps is False:
        return False
    return either(False, Unknown(f"which side of {s.id} faces {part.name} is not told"))


@fact(
    "equipment",
    "crowded_by",
    of="equipment",
    type="list",
    says="Equipment whose box stands in the free space that must stay beside it.",
    method=METHOD + "; what touches the space is left out",
)
def crowded_by(s: Subject) -> Any:
    here = extent(s, s.item)
    if here is None:
        return Unknown(f"the box of {s.id} is not told")
    asked, meant = _rooms(s)
    if not any(meant.values()):
        return ()
    sure, most = _around(here, asked), _around(here, meant)
    ends = [upper(one) if isinstance(one, float | Range) else inf for one in most.high]
    starts = [lower(one) if isinstance(one, float | Range) else -inf for one in most.low]
    found, doubtful = [], []
    fine = (-FINE_M, -FINE_M, -FINE_M)
    for other in bodies(s.facts):
        if other.low[0] >= ends[0]:
            break  # they stand in the order in which they begin
        if other.subject.id == s.id or any(other.low[i] >= ends[i] or other.high[i] <= starts[i] for i in range(3)):
            continue
        if overlaps(other.here, widened(most, fine, fine)) is False:
            continue
        if overlaps(other.here, widened(here, fine, fine)) is True:
            continue  # the two boxes share space, which is told as that
        if overlaps(other.here, widened(sure, fine, fine)) is True:
            found.append(other.subject)
        else:
            doubtful.append(other.subject.id)
    if doubtful and not found:
        return Unknown(f"whether the free space of {s.id} lies towards {', '.join(doubtful)} is not told")
    return tuple(found)


@fact(
    "equipment",
    "crowding_settled",
    type="yes/no",
    says="Something stands, or may stand, in its free space, or all equipment has a box or a point of its own.",
)
def crowding_settled(s: Subject) -> Truth:
    known = s.service_told
    if known is not True:
        return known  # type: ignore[no-any-return]
    found = s.crowded_by
    return isinstance(found, Unknown) or bool(found) or all_placed(s.facts)


# --- the walls of its place


@fact("equipment", "walls_told", type="yes/no", says="It stands within the walls of its place, whose box is told.")
def walls_told(s: Subject) -> Truth:
    places = chain(s, place_of(s, s.item))
    if not places or extent(s, places[0]) is None:
        return False
    # What stands outside its place is told of as that.
    return both(negate(is_kind(s, places[0], *OPEN)), s.inside_its_place is not False)


@fact(
    "equipment",
    "service_space_in_place",
    type="yes/no",
    says="The free space that must stay beside it lies in its place, or reaches out through the door.",
    method=METHOD + "; beyond a wall only where the door or lid of the place is at that side",
)
def service_space_in_place(s: Subject) -> Truth:
    here = extent(s, s.item)
    places = chain(s, place_of(s, s.item))
    around = extent(s, places[0]) if places else None
    if here is None or around is None:
        return Unknown(f"the box of {s.id} or of its place is not told")
    fine = (FINE_M, FINE_M, FINE_M)
    walls = widened(around, fine, fine)
    sure, most = _rooms(s)
    if _kept(s, places[0], walls, here, most) is True:
        return True
    if _kept(s, places[0], walls, here, sure) is False:
        return False
    return Unknown(f"which way {s.id} faces, or where the door of {places[0].name} is, is not told")


def _kept(s: Subject, place: Item, walls: Extent, here: Extent, room: Room) -> Truth:
    """Whether free space lies within walls; a door is open at one side, an unknown door perhaps at any."""
    inside = holds(walls, _around(here, room))
    if inside is True:
        return True
    door = s.read(place, "door")
    if isinstance(door, str):
        return holds(walls, _around(here, room, door))
    if isinstance(door, Unknown):
        beyond = [one for one in room if holds(walls, _around(here, {one: room[one]})) is False]
        # One side of a place may be its door; two sides at once are not.
        return Unknown(f"where the door of {place.name} is is not told") if len(beyond) < 2 else inside
    return inside
