"""Where the vapour of petrol or gas fuel gets to: places that open to that of a tank or fitting."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.services import line_gap
from checker.facts.space import apart, chain, extent, is_kind, place_of
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, either, equal, greater_equal, less_equal, negate, some

OPEN_DISTANCE_M = 0.61
"""Distance from a fuel source beyond which no wall is asked for: 33 CFR 183.410 (seen for the rule of open air)."""


@fact("equipment", "vapour_reaches", type="yes/no",
      says="It stands in a place that opens to one of petrol or gas fuel, and is not sealed from it.",
      method="openings of both places, holes between them that are not sealed, a tank within the place, lines of "
      "petrol through it; on a boat a closed place beside the tank, unless it is told to be sealed")  # fmt: skip
def vapour_reaches(s: Subject) -> Truth:
    burning = [one for one in s.facts.design.places.values() if _burns(s, one) is not False]
    lines = [line for line in s.facts.design.services.values() if s.read(line, "carries") == "petrol"]
    if not burning and not lines:
        return False
    name = place_of(s, s.item)
    if isinstance(name, Unknown):
        return name
    own = chain(s, name)
    tanks = [both(_burns(s, fuel), _opens(s, fuel, one)) for fuel in burning for one in own if one is not fuel]
    return some([*tanks, *(_through(s, line, own) for line in lines)])


def _through(s: Subject, line: Item, own: list[Item]) -> Truth:
    """Whether a line of petrol passes the closed place that equipment stands in; in the open its vapour blows off."""
    near = own[0] if own else None
    place = s.facts.subject("place", near.name) if near is not None else None
    if near is None or place is None or place.open_to_air is True or place.inside_living_space is True:
        return False
    room, points = extent(s, near), s.read(line, "along")
    if room is None or not isinstance(points, tuple):
        return Unknown(f"whether {line.name} passes {near.name} is not told")
    return less_equal(line_gap(room, points, 0.0), 0.0)


def _burns(s: Subject, place: Item) -> Truth:
    fuel = s.read(place, "fuel") if is_kind(s, place, "fuel") is not False else None
    burns = fuel if isinstance(fuel, Unknown) else fuel in ("petrol", "gas")
    return both(is_kind(s, place, "fuel"), burns)


def _opens(s: Subject, fuel: Item, other: Item) -> Truth:
    """Whether air passes between two places."""
    sealed = either(equal(_word(s, other, "sealed from"), fuel.name), equal(_word(s, fuel, "sealed from"), other.name))
    vents = either(equal(_word(s, other, "vents.to"), fuel.name), equal(_word(s, fuel, "vents.to"), other.name))
    within = any(one is other for one in chain(s, fuel.name)[1:])
    ways = [vents, within, _side_by_side(s, fuel, other), *(_joins(s, one, fuel, other) for one in _holes(s))]
    return both(negate(sealed), some(ways))


def _side_by_side(s: Subject, fuel: Item, other: Item) -> Truth:
    """Whether a closed place of a boat lies so near a tank that a wall has to part them; silence tells of none."""
    afloat = equal(s.read(s.facts.design.vehicle, "kind"), "boat")
    place = s.facts.subject("place", other.name)
    told = any(one.has("sealed from") for one in (fuel, other))
    if afloat is False or told or place is None or place.open_to_air is True:
        return False
    far = greater_equal(apart(extent(s, fuel), extent(s, other)), OPEN_DISTANCE_M) is True
    return False if far else Unknown(f"whether a sealed wall stands between {fuel.name} and {other.name} is not told")


def _word(s: Subject, place: Item, key: str) -> Any:
    """Silence about an opening is none: openings are closed until they are told."""
    return s.read(place, key) if place.has(key) else None


def _holes(s: Subject) -> list[Item]:
    return list(s.facts.design.passes.values())


def _joins(s: Subject, hole: Item, fuel: Item, other: Item) -> Truth:
    between = s.read(hole, "between")
    if not isinstance(between, tuple):
        return between if isinstance(between, Unknown) else False
    if any(isinstance(one, Unknown) for one in between):
        return Unknown(f"which places {hole.name} joins is not told")
    if {fuel.name, other.name} - set(between):
        return False
    sealed = s.read(hole, "sealed")
    return negate(sealed) if isinstance(sealed, bool | Unknown) else True
