"""What sparks in the air of a battery that gives off gas."""

from __future__ import annotations

from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.distances import above
from checker.facts.space import chain, extent, overlaps, place_of, stands
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, either, equal, negate, some

CLOSED = ("locker", "battery locker", "battery box", "gas locker")
SWITCHING = (
    "switch", "relay", "combiner", "changeover", "charger", "solar controller", "dc converter", "inverter",
    "inverter-charger",
)  # fmt: skip
"""Kinds that stand over no cells even in moving air: what switches in daily use, and chargers."""


@fact(
    "place",
    "sparks_in_it",
    type="yes/no",
    says="Something that sparks stands in its air.",
    method="equipment in it, in places within it that are not sealed from it, and in what it is a shelf of; without a "
    "place, its box",
)
def sparks_in_it(s: Subject) -> Truth:
    others = (one for one in s.facts.subjects("equipment") if one.sparks is not False)
    return some(both(one.sparks, breathes(s, one.item)) for one in others)


def breathes(s: Subject, item: Equipment) -> Truth:
    """Whether equipment stands in the air of the place."""
    name, room = place_of(s, item), _room(s)
    if isinstance(name, Unknown):
        clear = overlaps(extent(s, room), stands(s, item)) is False
        return False if clear else Unknown(f"where {item.name} stands is not told")
    around = chain(s, name)
    return negate(sealed_within(s, around, room.name)) if room in around else False


def _room(s: Subject) -> Item:
    """The place whose air this one has: itself, or what it is a shelf or a corner of."""
    around = chain(s, s.item.name)
    walled = (place for place in around[:-1] if place.has("kind") or place.has("sealed from"))
    return next(walled, around[-1])


def sealed_within(s: Subject, around: list[Item], outer: str) -> Truth:
    """Whether a wall seals one of the places that lie within another from it."""
    names = [place.name for place in around]
    return some(_sealed(s, place, outer) for place in around[: names.index(outer)])


def _sealed(s: Subject, place: Item, other: str) -> Truth:
    told = s.read(place, "sealed from")
    if not isinstance(told, Unknown):
        return bool(told == other)
    # A shelf or a corner is a part of the room; of a locker nobody knows whether it is tight.
    tight = place.has("sealed from") or s.read(place, "kind") in CLOSED
    return Unknown(f"what {place.name} is sealed from is not told") if tight else False


def parted(s: Subject, other: Equipment) -> Truth:
    """Whether a sealed wall stands between a battery and other equipment."""
    name, there = place_of(s, s.item), place_of(s, other)
    here = s.facts.design.places.get(name) if isinstance(name, str) else None
    if here is None or isinstance(there, Unknown):
        return Unknown(f"where {s.id if here is None else other.name} stands is not told")
    around = chain(s, there)
    if here in around:
        return sealed_within(s, around, here.name)
    sealed = s.read(here, "sealed from")
    if isinstance(sealed, str) and any(place.name == sealed for place in around):
        return True
    if sealed is None:
        return False
    return Unknown(f"whether {here.name} is sealed from {there} is not told")


@fact(
    "equipment",
    "spark_above",
    type="yes/no",
    says="Something that sparks stands right above it, with no sealed wall between; none for what gives off no gas.",
    method="the boxes share ground and the one that sparks is higher; what the place of the battery is sealed from is "
    "left out; at the engine of a road vehicle the chargers and contacts of the fitter that stand there too",
)
def spark_above(s: Subject) -> Truth | None:
    if s.is_flooded is False:
        return None
    here = stands(s, s.item)
    others = (one for one in s.facts.subjects("equipment") if one.id != s.id and one.sparks is not False)
    return some(_over(s, one, above(here, stands(s, one.item))) for one in others)


def _over(s: Subject, one: Subject, higher: Truth) -> Truth:
    if higher is False:
        return False
    over, aired = both(one.sparks, higher), s.at_open_engine
    still = both(over, negate(parted(s, one.item))) if aired is not True else False
    moving = both(over, switches_beside(s, one)) if aired is not False else False
    return aired if isinstance(aired, Unknown) and still is not moving else either(still, moving)


def switches_beside(s: Subject, one: Subject) -> Truth:
    """Whether the fitter put a charger or a contact into the air of the place of a battery."""
    fitted = negate(equal(one.read(one.item, "own"), "factory")) if one.item.kind in SWITCHING else False
    return both(fitted, breathes(s.place, one.item)) if isinstance(s.place, Subject) else fitted


__all__ = ["parted", "switches_beside"]
