"""Where the vapour of petrol or gas fuel gets to: places that open to that of a tank or fitting."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.space import chain, is_kind, place_of
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, either, equal, negate, some


@fact("equipment", "vapour_reaches", type="yes/no",
      says="It stands in a place that opens to one of petrol or gas fuel, and is not sealed from it.",
      method="openings of both places, and holes between them that are not sealed")  # fmt: skip
def vapour_reaches(s: Subject) -> Truth:
    burning = [one for one in s.facts.design.places.values() if _burns(s, one) is not False]
    if not burning:
        return False
    name = place_of(s, s.item)
    if isinstance(name, Unknown):
        return name
    own = chain(s, name)
    return some(both(_burns(s, fuel), _opens(s, fuel, one)) for fuel in burning for one in own if one is not fuel)


def _burns(s: Subject, place: Item) -> Truth:
    fuel = s.read(place, "fuel") if is_kind(s, place, "fuel") is not False else None
    burns = fuel if isinstance(fuel, Unknown) else fuel in ("petrol", "gas")
    return both(is_kind(s, place, "fuel"), burns)


def _opens(s: Subject, fuel: Item, other: Item) -> Truth:
    """Whether air passes between two places."""
    sealed = either(equal(_word(s, other, "sealed from"), fuel.name), equal(_word(s, fuel, "sealed from"), other.name))
    vents = either(equal(_word(s, other, "vents.to"), fuel.name), equal(_word(s, fuel, "vents.to"), other.name))
    return both(negate(sealed), either(vents, some(_joins(s, one, fuel, other) for one in _holes(s))))


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
