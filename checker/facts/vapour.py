"""Where the vapour of petrol or gas fuel collects and gets to: places of tanks, engines and generators, and those that
open to them."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.services import line_gap
from checker.facts.space import apart, chain, extent, is_kind, place_of
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, either, equal, greater_equal, less_equal, negate, some

BURNS_EASILY = ("petrol", "gas")
OPEN_DISTANCE_M = 0.61
"""Distance from a fuel source beyond which no wall is asked for: 33 CFR 183.410 (seen for the rule of open air)."""


@fact("equipment", "fuel_burns_easily", type="yes/no",
      says="It stands in a place of petrol or gas fuel, with the engine of a boat that burns such, or shut in with a "
      "generator that does.",
      method="its place and what fuel is there; a generator is not asked for itself but on a boat")  # fmt: skip
def fuel_burns_easily(s: Subject) -> Truth:
    own = chain(s, place_of(s, s.item))
    return some(either(_burns(s, one), either(_engine(s, one), _beside(s, one))) for one in own)


@fact("equipment", "vapour_reaches", type="yes/no",
      says="It stands in a place that opens to one of petrol or gas fuel, and is not sealed from it.",
      method="openings of both places, holes between them that are not sealed, a tank within the place, lines of "
      "petrol through it; openings to the place of the engine of a boat or of a generator; on a boat a closed place "
      "beside the tank, unless it is told to be sealed")  # fmt: skip
def vapour_reaches(s: Subject) -> Truth:
    burning = [one for one in s.facts.design.places.values() if _burns(s, one) is not False]
    lines = [line for line in s.facts.design.services.values() if s.read(line, "carries") == "petrol"]
    engines = [one for one in s.facts.design.places.values() if either(_engine(s, one), _beside(s, one)) is not False]
    if not burning and not lines and not engines:
        return False
    name = place_of(s, s.item)
    if isinstance(name, Unknown):
        return name
    own = chain(s, name)
    tanks = [both(_burns(s, fuel), _opens(s, fuel, one)) for fuel in burning for one in own if one is not fuel]
    for one in own:
        away = (far for far in engines if far not in own)
        tanks += [both(either(_engine(s, far), _beside(s, far)), _airs(s, far, one)) for far in away]
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
    burns = fuel if isinstance(fuel, Unknown) else fuel in BURNS_EASILY
    return both(is_kind(s, place, "fuel"), burns)


def _engine(s: Subject, place: Item) -> Truth:
    """Whether the engine of a boat stands in a place and burns petrol or gas; where it is not told, as its tanks do."""
    if equal(s.read(s.facts.design.vehicle, "kind"), "boat") is False or is_kind(s, place, "engine space") is False:
        return False
    engine = is_kind(s, place, "engine space")
    if place.has("fuel"):
        fuel = s.read(place, "fuel")
        return both(engine, fuel if isinstance(fuel, Unknown) else fuel in BURNS_EASILY)
    if all(_burns(s, one) is False for one in s.facts.design.places.values()):
        return False
    return both(engine, Unknown(f"whether the engine in {place.name} burns petrol is not told"))


def _beside(s: Subject, place: Item) -> Truth:
    """Whether a generator that burns petrol or gas is shut in with what stands in a place."""
    afloat = equal(s.read(s.facts.design.vehicle, "kind"), "boat")
    room = s.facts.subject("place", place.name)
    if room is None or room.open_to_air is True:
        return False
    found: list[Truth] = []
    for one in s.facts.design.equipment.values():
        if one.kind == "generator" and (one is not s.item or afloat is not False):
            fuel = s.read(one, "fuel")
            burns = fuel if isinstance(fuel, Unknown) else fuel in BURNS_EASILY
            found.append(both(equal(place_of(s, one), place.name), burns))
    return some(found)


def _opens(s: Subject, fuel: Item, other: Item) -> Truth:
    """Whether air passes between a tank and another place, or may on a boat where nobody tells of the wall."""
    told = any(one.has("sealed from") for one in (fuel, other))
    return either(_airs(s, fuel, other), False if told else _side_by_side(s, fuel, other))


def _airs(s: Subject, fuel: Item, other: Item) -> Truth:
    """Whether air passes between two places."""
    sealed = either(equal(_word(s, other, "sealed from"), fuel.name), equal(_word(s, fuel, "sealed from"), other.name))
    vents = either(equal(_word(s, other, "vents.to"), fuel.name), equal(_word(s, fuel, "vents.to"), other.name))
    within = any(one is other for one in chain(s, fuel.name)[1:])
    ways = [vents, within, *(_joins(s, one, fuel, other) for one in _holes(s))]
    return both(negate(sealed), some(ways))


def _side_by_side(s: Subject, fuel: Item, other: Item) -> Truth:
    """Whether a closed place of a boat lies so near a tank that a wall has to part them; silence tells of none."""
    afloat = equal(s.read(s.facts.design.vehicle, "kind"), "boat")
    place = s.facts.subject("place", other.name)
    if afloat is False or place is None or place.open_to_air is True:
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
