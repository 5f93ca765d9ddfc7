"""Loads of the axles and of the two sides, with the work done and all aboard: the lever rule along and across."""

from __future__ import annotations

from math import inf
from typing import Any, NamedTuple

from checker.design.given import Box
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.masses import added, limit_or_load, mass_of
from checker.facts.space import lower, stands, upper
from checker.facts.subject import Subject
from checker.physics.mechanics import support_shares
from checker.quantities import Number, Range, Unknown, add, corners, multiply, show, total
from checker.quantities.values import between

ALONG, ACROSS = 0, 1
ABOARD = (("payload kept", "payload at", 1.0), ("people", "people at", 1.0), ("water", "water at", 1.0),
          ("cables", "cables at", 1.0), ("removed", "removed at", -1.0))  # fmt: skip
"""Key of a mass, key of where it is, and whether it comes or goes."""
LEVER = "lever rule; what has no box or point lies anywhere in its place, else in the vehicle"


class Share(NamedTuple):
    """A mass and where it lies: behind the front axle, or to the right of the middle."""

    name: str
    mass: Number
    at: Number


def position(s: Subject, item: Equipment, axis: int = ALONG) -> Number:
    """Distance of its middle behind the front axle, or right of the middle line, m; without a box where it may be."""
    here = stands(s, item)
    if here is None:
        return _anywhere(s, axis, item.name)
    middle = multiply(add(here.low[axis], here.high[axis]), 0.5)
    if not here.exact:
        middle = between(lower(here.low[axis]), upper(here.high[axis]))
    return multiply(middle, sense(s, axis))


def sense(s: Subject, axis: int) -> Number:
    """1 or -1 by where an axis points, by the usual way where it is left out; anything between where nobody knows."""
    key, turned = ("axes.y", "to the left") if axis == ACROSS else ("axes.x", "forward")
    word = s.read(s.item.vehicle, key)
    if isinstance(word, Unknown) and s.item.vehicle.has(key):
        return Range(-1.0, 1.0)
    return -1.0 if isinstance(word, str) and word == turned else 1.0


def _anywhere(s: Subject, axis: int, name: str) -> Number:
    """Anywhere within the envelope of the vehicle, m."""
    around = s.read(s.item.vehicle, "envelope")
    if not isinstance(around, Box):
        return Unknown(f"where {name} stands is not told")
    way = sense(s, axis)
    ends = (multiply(around.at[axis], way), multiply(add(around.at[axis], around.size[axis]), way))
    if any(isinstance(one, Unknown) or one is None for one in ends):
        return Unknown(f"where {name} stands is not told")
    return between(min(lower(one) for one in ends), max(upper(one) for one in ends))


def aboard(s: Subject, axis: int) -> list[Share]:
    """What was added, taken out and is carried, with where it lies along an axis."""
    found = [Share(item.name, mass_of(s, item), position(s, item, axis)) for item in added(s)]
    for key, place, sign in ABOARD:
        if s.item.vehicle.has(f"masses.{key}"):
            point = s.read(s.item.vehicle, f"masses.{place}") if s.item.vehicle.has(f"masses.{place}") else None
            at = multiply(point[axis], sense(s, axis)) if isinstance(point, tuple) else _anywhere(s, axis, key)
            found.append(Share(key, multiply(limit_or_load(s, key), sign), at))
    return found


def _load(s: Subject, before: Number, axis: int, far: bool, span: Number, near_at: float) -> Number:
    """Load of one of two supports: that before the work, and its share of each mass since, kg."""
    loads: list[Number] = [before]
    for name, mass, at in aboard(s, axis):
        share = corners(lambda x, length: support_shares(x - near_at * length, length)[1 if far else 0], at, span)
        loads.append(multiply(mass, share))
        s.note(_said(name, mass, at, loads[-1]))
    s.note(lambda: "load = load before + sum of mass × lever / distance of the supports")
    found = total(loads)
    if not s.item.vehicle.has("masses.payload kept") and isinstance(found, float | Range):
        return Range(lower(found), inf)  # a payload that is not told is still to come; without it, it is this much
    return found


def _said(name: str, mass: Number, at: Number, load: Number) -> Any:
    return lambda: f"{name}: {show(mass, 'kg')} at {show(at, 'm')} gives {show(load, 'kg')}"


def _axle(s: Subject, which: str) -> Number:
    before = limit_or_load(s, f"before.{which}")
    return _load(s, before, ALONG, which == "rear", limit_or_load(s, "wheelbase"), 0.0)


@fact("design", "front_axle_load", unit="kg", says="Load of the front axle with the work done and all aboard.",
      method=LEVER + " over the wheelbase")  # fmt: skip
def front_axle_load(s: Subject) -> Any:
    return _axle(s, "front")


@fact("design", "rear_axle_load", unit="kg", says="Load of the rear axle with the work done and all aboard.",
      method=LEVER + " over the wheelbase")  # fmt: skip
def rear_axle_load(s: Subject) -> Any:
    return _axle(s, "rear")


@fact("design", "front_axle_limit", unit="kg", says="Greatest load of the front axle.")
def front_axle_limit(s: Subject) -> Any:
    return limit_or_load(s, "front limit")


@fact("design", "rear_axle_limit", unit="kg", says="Greatest load of the rear axle.")
def rear_axle_limit(s: Subject) -> Any:
    return limit_or_load(s, "rear limit")


# --- the two sides


@fact("design", "sides_told", type="yes/no", says="A limit of the wheels at the left or the right is told.")
def sides_told(s: Subject) -> bool:
    return any(s.item.vehicle.has(f"masses.{side} limit") for side in ("left", "right"))


def _side(s: Subject, which: str) -> Number:
    # The wheels stand half a track to either side of the middle line, where y is counted from.
    before = limit_or_load(s, f"before.{which}")
    return _load(s, before, ACROSS, which == "right", limit_or_load(s, "track"), -0.5)


@fact("design", "left_load", unit="kg", says="Load of the wheels at the left with the work done and all aboard.",
      method=LEVER + " over the track, the middle line of the vehicle at y = 0")  # fmt: skip
def left_load(s: Subject) -> Any:
    return _side(s, "left")


@fact("design", "right_load", unit="kg", says="Load of the wheels at the right with the work done and all aboard.",
      method=LEVER + " over the track, the middle line of the vehicle at y = 0")  # fmt: skip
def right_load(s: Subject) -> Any:
    return _side(s, "right")


@fact("design", "left_limit", unit="kg", says="Greatest load of the wheels at the left.")
def left_limit(s: Subject) -> Any:
    return limit_or_load(s, "left limit")


@fact("design", "right_limit", unit="kg", says="Greatest load of the wheels at the right.")
def right_limit(s: Subject) -> Any:
    return limit_or_load(s, "right limit")


__all__ = ["aboard", "position", "sense"]
