"""What stands close above, below and beside a battery: sparks, fuel, heat, appliances."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from checker.facts.catalogue import fact
from checker.facts.distances import above
from checker.facts.space import apart, extent, places_of, stands
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, both, either, greater, least, some

HOT_C = 60.0
"""A surface above it is hot to a battery: common practice, no source."""
APPLIANCES = ("fridge", "air conditioner")


@fact(
    "equipment",
    "spark_above",
    type="yes/no",
    says="Something that sparks stands right above it; none for what gives off no gas.",
    method="the boxes share ground and the one that sparks is higher",
)
def spark_above(s: Subject) -> Any:
    if s.is_flooded is False:
        return None
    here = stands(s, s.item)
    others = (one for one in s.facts.subjects("equipment") if one.id != s.id and one.sparks is not False)
    return some(both(one.sparks, above(here, stands(s, one.item))) for one in others)


@fact(
    "equipment",
    "over_or_under_fuel",
    type="yes/no",
    says="It stands right above or below a fuel tank or fitting; none where no place of fuel is told.",
    method="the boxes share ground and one is higher",
)
def over_or_under_fuel(s: Subject) -> Any:
    here = stands(s, s.item)
    places = places_of(s, "fuel")
    if isinstance(places, Unknown):
        return places
    if not places:
        return None
    there = [extent(s, one) for one in places]
    return some(either(above(here, one), above(one, here)) for one in there)


@fact(
    "equipment",
    "distance_to_hot",
    unit="mm",
    says="Distance from a battery to the nearest surface hotter than 60 °C that is told; none where none is told.",
    method="between boxes",
    source="60 °C: common practice, no source",
)
def distance_to_hot(s: Subject) -> Any:
    if not s.is_battery:
        return None
    return _nearest(s, lambda one: greater(one.hot_surface, HOT_C))


@fact(
    "equipment",
    "distance_to_appliance",
    unit="mm",
    says="Distance from a battery to the nearest fridge, air conditioner or hot surface; none where none is there.",
    method="between boxes",
)
def distance_to_appliance(s: Subject) -> Any:
    if not s.is_battery:
        return None
    return _nearest(s, lambda one: either(one.kind_of_equipment in APPLIANCES, greater(one.hot_surface, HOT_C)))


def _nearest(s: Subject, wanted: Callable[[Subject], Truth]) -> Any:
    """Least distance to other equipment of a sort; what is perhaps of it leaves a question."""
    here = stands(s, s.item)
    found: Number = None
    for one, there in _others(s, wanted):
        if there is not True:
            return Unknown(f"whether {one.id} gets hot is not told")
        distance = apart(here, stands(s, one.item))
        if isinstance(distance, Unknown):
            return Unknown(f"the box of {s.id} or of {one.id} is not told")
        found = distance if found is None else least(found, distance)
    return found


def _others(s: Subject, wanted: Callable[[Subject], Truth]) -> Iterator[tuple[Subject, Truth]]:
    for one in s.facts.subjects("equipment"):
        if one.id == s.id:
            continue
        there = wanted(one)
        if there is not False:
            yield one, there
