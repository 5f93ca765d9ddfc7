"""What stands close above, below and beside a battery: fuel, heat, appliances."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import inf
from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.distances import above
from checker.facts.services import distance_to_lines
from checker.facts.space import Extent, apart, extent, places_of, stands
from checker.facts.subject import Subject
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    both,
    either,
    greater,
    greatest,
    least,
    negate,
    some,
    subtract,
)
from checker.quantities.values import between, or_more

HOT_C = 60.0
"""A surface above it is hot to a battery: common practice, no source."""
APPLIANCES = ("fridge", "air conditioner")
HEATING = ("heating", "cooking")
"""What a load is for that may get hot, unless it tells how hot."""


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
    says="Distance to the nearest fuel tank or fitting that no insulation covers, or line of fuel that rises above it; "
    "none where all are covered.",
    method="between boxes, to the straight stretches of a line; a place of fuel counts as bare unless it is said to be "
    "insulated, a line of fuel may be a hose",
)
def distance_to_bare_fuel(s: Subject) -> Any:
    places = places_of(s, "fuel")
    if isinstance(places, Unknown):
        return places
    lines = _fuel_lines(s)
    if not places and not lines:
        return Unknown("the file tells no place of kind fuel")
    here = stands(s, s.item)
    found: list[Number] = [distance for one in lines for distance in _to_fuel_line(s, here, one)]
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


def _fuel_lines(s: Subject) -> list[Item]:
    """The lines of fuel that are drawn."""
    lines = s.facts.design.services.values()
    fuel = (line for line in lines if s.read(line, "carries") in ("diesel", "petrol"))
    return [line for line in fuel if isinstance(s.read(line, "along"), tuple)]


def _to_fuel_line(s: Subject, here: Extent | None, line: Item) -> Iterator[Number]:
    """Distance to a line of fuel that may be of bare metal and rises above the battery; nothing to another."""
    top = greatest([point[2] for point in s.read(line, "along")])
    higher = Unknown(f"the box of {s.id} is not told") if here is None else greater(top, here.high[2])
    counts = both(negate(s.read(line, "insulated")), higher)
    if counts is not False:
        distance = distance_to_lines(s, [line])
        yield distance if counts is True else or_more(distance)


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
    says="Distance from a battery to the nearest surface above 60 °C, generator or exhaust; none where none is told.",
    method="between boxes, a load for heating or cooking being perhaps hot where it does not tell; to the straight "
    "stretches of an exhaust, which in an engine space or close to one has to be told",
    source="60 °C: common practice, no source",
)
def distance_to_hot(s: Subject) -> Any:
    if not s.is_battery:
        return None
    found = [_nearest(s, _is_hot), _to_exhaust(s)]
    if found[1] is None:
        if s.at_the_engine is True:
            return Unknown(f"how far {s.id} stands from the engine and its exhaust is not told")
        found.append(_to_engine(s))
    told = [one for one in found if one is not None]
    return least(told) if told else None


def _is_hot(one: Subject) -> Truth:
    """Whether a surface of equipment is hot to a battery; that of a heater or cooker may be, where nobody tells."""
    if one.item.kind == "generator":
        return True
    told = one.hot_surface
    if told is None and one.item.allows("purpose") and any(one.item.says("purpose", word) for word in HEATING):
        return Unknown(f"whether {one.id} gets hot is not told")
    return greater(told, HOT_C)


def _to_engine(s: Subject) -> Number:
    """At least the distance to the nearest engine space: where in it the engine stands is not told."""
    spaces = places_of(s, "engine space")
    here = stands(s, s.item)
    if isinstance(spaces, Unknown):
        return None
    told = [apart(here, there) for one in spaces if (there := extent(s, one)) is not None]
    return or_more(least(told)) if told else None


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
    return _nearest(s, lambda one: either(one.kind_of_equipment in APPLIANCES, _is_hot(one)))


@fact(
    "equipment",
    "appliance_above",
    unit="mm",
    says="Height of the lowest fridge, air conditioner or hot surface right above a battery; none where there is none.",
    method="the boxes share ground and the appliance is higher",
)
def appliance_above(s: Subject) -> Any:
    if not s.is_battery:
        return None
    here = stands(s, s.item)
    found: list[Number] = []
    for one, surely in _others(s, lambda one: either(one.kind_of_equipment in APPLIANCES, _is_hot(one))):
        there = stands(s, one.item)
        over = both(surely, above(here, there))
        if over is not False and here is not None and there is not None:
            height = subtract(there.low[2], here.high[2])
            found.append(height if over is True else or_more(height))
        elif over is not False:
            return Unknown(f"the box of {s.id} or of {one.id} is not told")
    return least(found) if found else None


def _nearest(s: Subject, wanted: Callable[[Subject], Truth]) -> Any:
    """Least distance to other equipment of a sort; what is perhaps of it leaves a question."""
    here = stands(s, s.item)
    found: Number = None
    for one, there in _others(s, wanted):
        distance = apart(here, stands(s, one.item))
        if isinstance(distance, Unknown):
            return Unknown(f"the box of {s.id} or of {one.id} is not told")
        distance = distance if there is True else or_more(distance)
        found = distance if found is None else least(found, distance)
    return found


def _others(s: Subject, wanted: Callable[[Subject], Truth]) -> Iterator[tuple[Subject, Truth]]:
    for one in s.facts.subjects("equipment"):
        if one.id == s.id:
            continue
        there = wanted(one)
        if there is not False:
            yield one, there
