"""Water on tap: what stands with a shower, how far from its tray and from a sink, which voltage it may have there."""

from __future__ import annotations

import math
from typing import Any

from checker.design.given import Box
from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.levels import level_at, read_level
from checker.facts.space import OPEN_AIR, chain, is_kind
from checker.facts.subject import Subject
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    add,
    between,
    both,
    either,
    greater,
    greatest,
    least,
    negate,
    some,
)
from checker.quantities.values import or_more

WET = "wet room"
NO_SIZE = (0.0, 0.0, 0.0)
ROOMS = (WET, "living space")
"""Kinds of place that have sinks and basins."""
WALLED = ("locker", "battery locker", "battery box", "engine space", "gas locker", "duct", "cavity", "fuel")
"""Kinds of place whose own walls part what is in them from the room."""
ZONE_0_V, ZONE_1_V = 30.0, 60.0
ZONE_0_HIGH_M = 0.1
"""Direct voltage in the tray and over it, and the least height of what counts as in it: IEC 60364-7-701, zones 0 and
1, 2019 (from memory)."""


def _room(s: Subject) -> Any:
    """The place where a piece of equipment stands."""
    place = s.read(s.item, "place")
    known = s.facts.design.places.get(place) if isinstance(place, str) else None
    return Unknown(f"where {s.id} stands is not known") if known is None else known


def _is_wet(s: Subject, place: Item) -> Truth:
    """Whether a place holds a shower: a wet room, or a room of another kind with a tray."""
    tray = s.read(place, "tray") if place.has("tray") else None
    return either(is_kind(s, place, WET), tray if isinstance(tray, Unknown) else tray is not None)


@fact("equipment", "is_in_wet_room", type="yes/no", says="It stands in a room with a shower.",
      method="kind of its place and of those around it; a file without such a room has nothing in it")  # fmt: skip
@fact("outlet", "is_in_wet_room", type="yes/no", says="It stands in a room with a shower.",
      method="kind of its place and of those around it; a file without such a room has nothing in it")  # fmt: skip
def is_in_wet_room(s: Subject) -> Any:
    room = _room(s)
    if isinstance(room, Unknown):
        kinds = [_is_wet(s, place) for place in s.facts.design.places.values()]
        return room if any(kind is not False for kind in kinds) else False
    around = chain(s, room.name)
    answers = [_is_wet(s, one) for one in around]
    hidden = around[-1].has("inside") and isinstance(s.read(around[-1], "inside"), Unknown)
    if hidden and any(_is_wet(s, place) is not False for place in s.facts.design.places.values()):
        answers.append(Unknown(f"what {around[-1].name} is part of is not known"))
    return some(answers)


@fact("equipment", "beside_shower", type="yes/no",
      says="It stands in a room with a shower, or no walls part it from one.",
      method="its place; of a wet room that it does not stand in, whether walls and a door part it off; the skin of "
      "the vehicle and the walls of a locker part off what is behind them")  # fmt: skip
@fact("outlet", "beside_shower", type="yes/no",
      says="It stands in a room with a shower, or no walls part it from one.",
      method="its place; of a wet room that it does not stand in, whether walls and a door part it off; the skin of "
      "the vehicle and the walls of a locker part off what is behind them")  # fmt: skip
def beside_shower(s: Subject) -> Truth:
    inside: Truth = s.is_in_wet_room
    room = _room(s)
    if inside is True or (isinstance(room, Item) and is_kind(s, room, *OPEN_AIR, *WALLED) is True):
        return inside
    return some([inside, *(_lies_open(s, one) for one in s.facts.design.places.values())])


def _lies_open(s: Subject, place: Item) -> Truth:
    """Whether a place is a wet room without walls of its own all round."""
    wet = _is_wet(s, place)
    return wet if wet is False else both(wet, negate(s.read(place, "walled off")))


@fact("equipment", "distance_to_shower", unit="mm",
      says="Distance to the nearest shower tray that no wall parts it from, measured level; none where there is none.",
      method="gap between tray and its point or box, height left out")  # fmt: skip
@fact("outlet", "distance_to_shower", unit="mm",
      says="Distance to the nearest shower tray that no wall parts it from, measured level; none where there is none.",
      method="gap between tray and its point or box, height left out")  # fmt: skip
def distance_to_shower(s: Subject) -> Any:
    trays = _trays(s)
    return trays if isinstance(trays, Unknown) or not trays else least([_level_gap(s, one) for one in trays])


def _trays(s: Subject) -> list[Any] | Unknown | None:
    """The trays of its own room, else of the rooms that lie open to it; none without one."""
    room = _room(s)
    if isinstance(room, Unknown):
        return room
    own = next((one for one in chain(s, room.name) if _is_wet(s, one) is not False), None)
    rooms = [own] if own else [one for one in s.facts.design.places.values() if _lies_open(s, one) is not False]
    found = [tray for one in rooms if (tray := s.read(one, "tray")) is not None]
    return found or None


def _level_gap(s: Subject, tray: Any) -> Number:
    body = _body(s)
    if not isinstance(tray, Box) or body is None:
        return Unknown(f"the place of {s.id} or of the tray is not known")
    along, across = (_gap(body, tray, axis) for axis in (0, 1))
    return between(math.hypot(along[0], across[0]), math.hypot(along[1], across[1]))


@fact("equipment", "shower_voltage", unit="V",
      says="Direct voltage that battery-side equipment may have in the tray or over it.",
      method="30 V up to the rim of the tray, at least 0.1 m; 60 V above it",
      source="IEC 60364-7-701, zones 0 and 1, 2019 (from memory)")  # fmt: skip
def shower_voltage(s: Subject) -> Any:
    trays, body = _trays(s), _body(s)
    if not isinstance(trays, list) or body is None or not all(isinstance(one, Box) for one in trays):
        return Range(ZONE_0_V, ZONE_1_V)
    low: Number = body.at[2]
    above = [_is_over(low, tray) for tray in trays]
    if all(one is True for one in above):
        return ZONE_1_V
    return ZONE_0_V if any(one is False for one in above) else Range(ZONE_0_V, ZONE_1_V)


def _is_over(low: Number, tray: Box) -> Truth:
    rim = add(tray.at[2], greatest(tray.size[2], ZONE_0_HIGH_M))
    return greater(low, rim)


@fact("equipment", "terminal_voltage", unit="V", says="Highest voltage that can stand at its terminals.",
      method="the highest of the live conductors that end at it; the nominal one or more where "
      "that is not told")  # fmt: skip
def terminal_voltage(s: Subject) -> Any:
    found: list[Number] = []
    for node in s.facts.network.nodes_of(s.item.name):
        level = level_at(s.facts, node)
        if level is not None and level.told_by:  # a return has no voltage of its own
            read_level(s, level)
            found.append(or_more(level.nominal) if isinstance(level.highest, Unknown) else level.highest)
    return greatest(found) if found else Unknown(f"{s.id} hangs on no live conductor")


@fact("outlet", "distance_to_sink", unit="m",
      says="Distance to the nearest sink or basin aboard; none where there is none.",
      method="from its point to those of the sinks, measured level; rooms that do not tell theirs leave "
      "it open")  # fmt: skip
def distance_to_sink(s: Subject) -> Any:
    point, found = s.read(s.item, "at"), []
    for place in s.facts.design.places.values():
        if is_kind(s, place, *ROOMS) is False:
            continue
        sinks = s.read(place, "sinks")
        if sinks is None:
            continue
        if not isinstance(sinks, tuple) or not isinstance(point, tuple):
            return Unknown(f"where {s.id} and the sinks of {place.name} are is not told")
        for sink in sinks:
            away = [_gap(Box(point, NO_SIZE), Box(sink, NO_SIZE), axis) for axis in (0, 1)]
            found.append(between(*(math.hypot(away[0][end], away[1][end]) for end in (0, 1))))
    return least(found) if found else None


def _body(s: Subject) -> Box | None:
    """Its box, or its point as a box without size."""
    box = s.read(s.item, "box") if s.item.has("box") else None
    if isinstance(box, Box):
        return box
    point = s.read(s.item, "at")
    return Box(point, NO_SIZE) if isinstance(point, tuple) else None


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
