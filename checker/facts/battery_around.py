"""What stands close above, below and beside a battery: fuel, heat, appliances."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import inf
from typing import Any

from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.distances import above
from checker.facts.services import distance_to_lines
from checker.facts.space import apart, extent, places_of, stands
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Truth, Unknown, either, equal, greater, least, some, subtract
from checker.quantities.values import between

HOT_C = 60.0
"""A surface above it is hot to a battery: common practice, no source."""
APPLIANCES = ("fridge", "air conditioner")


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
    "distance_to_bare_fuel",
    unit="mm",
    says="Distance to the nearest fuel tank or fitting that no insulation covers; none where all are covered.",
    method="between boxes; a place of fuel counts as bare unless it is said to be insulated",
)
def distance_to_bare_fuel(s: Subject) -> Any:
    places = places_of(s, "fuel")
    if isinstance(places, Unknown):
        return places
    if not places:
        return Unknown("the file tells no place of kind fuel")
    here = stands(s, s.item)
    found: list[Number] = []
    for one in places:
        covered = s.read(one, "insulated") if one.has("insulated") else False
        if covered is True:
            continue
        distance = apart(here, extent(s, one))
        if isinstance(distance, Unknown):
            return Unknown(f"the box of {s.id} or of {one.name} is not told")
        if isinstance(covered, Unknown) and isinstance(distance, float | Range):
            # It may not count at all.
            distance = between(distance.low if isinstance(distance, Range) else distance, inf)
        found.append(distance)
    return least(found) if found else None


@fact(
    "equipment",
    "exit_above",
    unit="mm",
    says="Height of the nearest way out that lies right above it; none where none does.",
    method="the boxes share ground and the way out is higher",
)
def exit_above(s: Subject) -> Any:
    here = stands(s, s.item)
    places = places_of(s, "exit")
    if isinstance(places, Unknown):
        return places
    found: list[Number] = []
    for one in places:
        there = extent(s, one)
        over = above(here, there)
        if isinstance(over, Unknown):
            return Unknown(f"whether {one.name} lies right above {s.id} is not told")
        if over and here is not None and there is not None:
            found.append(subtract(there.low[2], here.high[2]))
    return least(found) if found else None


@fact(
    "equipment",
    "distance_to_hot",
    unit="mm",
    says="Distance from a battery to the nearest surface above 60 °C, or exhaust, that is told; none where none is.",
    method="between boxes; to the straight stretches of an exhaust, which in an engine space has to be told",
    source="60 °C: common practice, no source",
)
def distance_to_hot(s: Subject) -> Any:
    if not s.is_battery:
        return None
    surface = _nearest(s, lambda one: greater(one.hot_surface, HOT_C))
    line = _to_exhaust(s)
    if line is None and equal(s.place_kind, "engine space") is True:
        return Unknown(f"how far {s.id} stands from the engine and its exhaust is not told")
    if line is None or isinstance(surface, Unknown):
        return surface
    return line if surface is None or isinstance(line, Unknown) else least(surface, line)


def _to_exhaust(s: Subject) -> Number:
    """Distance to the nearest exhaust that is told; none where none is. What a line carries is always told."""
    lines = s.facts.design.services.values()
    exhausts = [line for line in lines if is_word(s.read(line, "carries"), "exhaust") is True]
    return distance_to_lines(s, exhausts) if exhausts else None


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
