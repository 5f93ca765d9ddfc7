"""Places: whether people breathe their air, where they vent, what stands in them, what they are lined with."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from checker.design.given import Box, Where
from checker.design.item import Item
from checker.design.model import Equipment
from checker.design.vocabulary.places import PLACE_KINDS
from checker.facts.battery_body import LEAD, chemistry_of
from checker.facts.catalogue import fact, subjects
from checker.facts.space import (
    LIVING,
    OPEN_AIR,
    OUTER_SKIN,
    chain,
    is_kind,
    is_living,
    place_of,
    places_of,
    told_around,
)
from checker.facts.subject import Facts, Subject
from checker.physics.panels import box_surface
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    both,
    corners,
    either,
    equal,
    least,
    multiply,
    negate,
    some,
)

ENCLOSED = ("locker", "battery locker", "battery box", "gas locker")


@subjects("place", "A space in or on the vehicle.")
def places(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.design.places.values():
        yield item.name, item.where, item


@fact("place", "kind_of_place", words=PLACE_KINDS, says="What it is.")
def kind_of_place(s: Subject) -> Any:
    return s.read(s.item, "kind")


@fact(
    "place",
    "inside_living_space",
    type="yes/no",
    says="People live in its air: it is a living space, or part of one.",
    method="its kind, else the place it is inside of, and so on outwards",
)
def inside_living_space(s: Subject) -> Truth:
    return is_living(s, s.item)


@fact(
    "place",
    "in_the_body",
    type="yes/no",
    says="Rooms may lie beside it: it is inside the outer skin, or part of the living space.",
    method="what it and the places around it are inside of",
)
def in_the_body(s: Subject) -> Truth:
    around = [one.value("inside") for one in chain(s, s.item.name)]
    return True if any(isinstance(one, str) and one == OUTER_SKIN for one in around) else is_living(s, s.item)


@fact(
    "place",
    "sealed_from_living",
    type="yes/no",
    says="Its air cannot reach the living space.",
    method="sealed from a living space, or from the place it is inside of",
)
def sealed_from_living(s: Subject) -> Truth:
    name = s.read(s.item, "sealed from")
    if name is None or isinstance(name, Unknown):
        lived_in = s.item.has("kind") and is_kind(s, s.item, *LIVING) is True
        return False if name is None or lived_in else Unknown(f"what {s.id} is sealed from is not told")
    around = any(one.name == name for one in chain(s, s.item.name)[1:])
    other = s.facts.design.places.get(name)
    return either(around, is_living(s, other) if other is not None else False)


@fact("place", "in_engine_space", type="yes/no", says="It is the space of an engine, or lies within it.",
      method="its kind and that of the places around it")  # fmt: skip
def in_engine_space(s: Subject) -> Truth:
    return some(is_kind(s, one, "engine space") for one in told_around(s, s.item))


@fact("place", "vent_low", unit="cm2", says="Free area of its low openings.")
def vent_low(s: Subject) -> Any:
    return s.read(s.item, "vents.low")


@fact("place", "vent_high", unit="cm2", says="Free area of its high openings.")
def vent_high(s: Subject) -> Any:
    return s.read(s.item, "vents.high")


@fact("place", "fan_flow", unit="m3/h", says="Air that its fan moves; none without a fan.")
def fan_flow(s: Subject) -> Any:
    item = fan_of(s)
    return s.read(item, "flow") if isinstance(item, Equipment) else item


def fan_of(s: Subject) -> Equipment | Unknown | None:
    """The fan that drives the air of a place: the one named, else one that stands in it where it is a closed box."""
    name = s.read(s.item, "vents.fan")
    if isinstance(name, str):
        found: Equipment | Unknown = s.facts.design.equipment.get(name, UNKNOWN)
        return found
    inside = _fan_inside(s)
    if inside is not None and s.fan is not False:
        return inside if s.fan is True else Unknown(f"whether {s.id} is a closed box is not told")
    return name if isinstance(name, Unknown) else None


def _fan_inside(s: Subject) -> Equipment | None:
    """The first fan that stands in a place of which no word tells what drives its air."""
    standing = (one.item for one in s.holds if one.item.kind == "fan")
    return None if s.item.has("vents.fan") else next(standing, None)


@fact("place", "low_vent_above_floor", unit="mm", says="Height of its low openings above its floor.")
def low_vent_above_floor(s: Subject) -> Any:
    return s.read(s.item, "vents.low above floor")


@fact("place", "high_vent_below_top", unit="mm", says="Distance of its high openings below its top.")
def high_vent_below_top(s: Subject) -> Any:
    return s.read(s.item, "vents.high below top")


@fact("place", "vent_rise", unit="m", says="Height between its low and its high openings.")
def vent_rise(s: Subject) -> Any:
    return s.read(s.item, "vents.rise")


@fact(
    "place",
    "vent_to",
    words=("outside", "living space", "another place"),
    says="Where its openings lead; none when it has none.",
    method="the place named, followed to the living space",
)
def vent_to(s: Subject) -> Any:
    low, high = s.read(s.item, "vents.low"), s.read(s.item, "vents.high")
    if _is_nothing(low) and _is_nothing(high):
        return None
    to = s.read(s.item, "vents.to")
    if not isinstance(to, str):
        return Unknown(f"where the openings of {s.id} lead is not told") if isinstance(to, Unknown) else None
    if to == "outside":
        return "outside"
    other = s.facts.design.places.get(to)
    if other is None:
        return UNKNOWN
    if is_kind(s, other, *OPEN_AIR) is True:
        return "outside"
    living = is_living(s, other)
    return living if isinstance(living, Unknown) else "living space" if living else "another place"


def _is_nothing(area: Any) -> bool:
    return area is None or (isinstance(area, float) and area <= 0.0)


@fact("place", "fan", type="yes/no", says="A fan drives its air.",
      method="the fan named; in a closed box also a fan that stands in it")  # fmt: skip
def fan(s: Subject) -> Truth:
    if s.item.has("vents.fan"):
        return s.read(s.item, "vents.fan") is not None
    return False if _fan_inside(s) is None else is_kind(s, s.item, *ENCLOSED)


@fact("place", "open_to_air", type="yes/no", says="It is open to the outside air: under or on the body, at the engine.",
      method="its kind; the engine space of a boat is a closed one")  # fmt: skip
def open_to_air(s: Subject) -> Truth:
    afloat = equal(s.read(s.facts.design.vehicle, "kind"), "boat")
    return either(is_kind(s, s.item, *OPEN_AIR), both(is_kind(s, s.item, "engine space"), negate(afloat)))


@fact("place", "opens", words=("outside", "inside"), says="Where its door opens.")
def opens(s: Subject) -> Any:
    return s.read(s.item, "opens")


@fact("place", "holds", of="equipment", type="list", says="The equipment that stands in it.", method="their places")
def holds(s: Subject) -> tuple[Any, ...]:
    return tuple(one for one in s.facts.subjects("equipment") if equal(place_of(s, one.item), s.item.name) is True)


def batteries(s: Subject) -> list[Equipment]:
    """The batteries and banks that stand in it."""
    return [item for item, here in perhaps_batteries(s) if here is True]


def perhaps_batteries(s: Subject) -> list[tuple[Equipment, Truth]]:
    """The batteries and banks that stand in it, and those of which nobody knows where they stand."""
    found: list[tuple[Equipment, Truth]] = []
    for item in s.facts.design.equipment.values():
        if item.kind in ("battery", "bank"):
            here = equal(place_of(s, item), s.item.name)
            if isinstance(here, Unknown):
                here = Unknown(f"where {item.name} stands is not told")
            if here is not False:
                found.append((item, here))
    return found


def _chemistry(s: Subject, wanted: tuple[str, ...] | None) -> Truth:
    """Whether a battery of one of these chemistries stands in it; None stands for lithium of any kind."""

    def fits(item: Equipment) -> Truth:
        found = chemistry_of(s, item)
        if isinstance(found, Unknown):
            return Unknown(f"the chemistry of {item.name} is not told")
        if found is None:
            return False
        return found.startswith("lithium") if wanted is None else found in wanted

    return some(both(fits(item), here) for item, here in perhaps_batteries(s))


@fact("place", "holds_battery", type="yes/no", says="A battery stands in it.")
def holds_battery(s: Subject) -> Truth:
    return some(here for _, here in perhaps_batteries(s))


@fact("place", "holds_lithium", type="yes/no", says="A lithium battery stands in it.")
def holds_lithium(s: Subject) -> Truth:
    return _chemistry(s, None)


@fact("place", "holds_lead", type="yes/no", says="A lead-acid battery of any build stands in it.")
def holds_lead(s: Subject) -> Truth:
    return _chemistry(s, LEAD)


@fact("place", "holds_flooded", type="yes/no", says="A lead-acid battery with liquid acid stands in it.")
def holds_flooded(s: Subject) -> Truth:
    return _chemistry(s, ("flooded lead acid",))


@fact("place", "holds_cylinders", type="yes/no", says="It is a locker of gas cylinders, or such stand in it.",
      method="its kind, or the cylinders told")  # fmt: skip
def holds_cylinders(s: Subject) -> Truth:
    return is_kind(s, s.item, "gas locker")


@fact("place", "shared_with_gas", type="yes/no", says="Gas cylinders stand in it, or its openings lead to them.",
      method="its kind, that of the places around it, and where openings lead, also by third places")  # fmt: skip
def shared_with_gas(s: Subject) -> Truth:
    answers: list[Truth] = []
    for one in chain(s, s.item.name):
        answers.append(is_kind(s, one, "gas locker"))
    answers += [is_kind(s, one, "gas locker") for one in _joined_by_openings(s)]
    to = s.read(s.item, "vents.to")
    if isinstance(to, str) and to in s.facts.design.places:
        answers.append(is_kind(s, s.facts.design.places[to], "gas locker"))
    elif isinstance(to, Unknown) and s.vent_to is not None:
        lockers = places_of(s, "gas locker")
        if isinstance(lockers, Unknown) or lockers:
            answers.append(Unknown(f"where the openings of {s.id} lead is not told"))
    answers += [_lets_gas_in(s, one) for one in s.facts.design.places.values() if one.name != s.item.name]
    return some(answers)


def _joined_by_openings(s: Subject) -> list[Item]:
    """The other places whose air comes to it through openings that are told, by way of third places too."""
    places = s.facts.design.places
    beside: dict[str, list[str]] = {name: [] for name in places}
    for name, one in places.items():
        to = s.read(one, "vents.to") if one.has("vents.to") else None
        if isinstance(to, str) and to in places and is_kind(s, places[to], *OPEN_AIR) is not True:
            beside[name].append(to)
            beside[to].append(name)
    found = [s.item.name]
    for name in found:
        found += [far for far in dict.fromkeys(beside[name]) if far not in found]
    return [places[name] for name in found[1:]]


def _lets_gas_in(s: Subject, locker: Item) -> Truth:
    """Whether a gas locker opens into the place, or stands within it and is not sealed from it."""
    gas = is_kind(s, locker, "gas locker")
    if gas is False:
        return False
    to = s.read(locker, "vents.to")
    leads: Truth = to == s.item.name if isinstance(to, str) else UNKNOWN if isinstance(to, Unknown) else False
    within = any(one.name == s.item.name for one in chain(s, locker.name))
    sealed = s.read(locker, "sealed from")
    open_to: Truth = sealed if isinstance(sealed, Unknown) else sealed != s.item.name
    return both(gas, either(leads, both(within, open_to)))


BURNS = ("plywood", "timber", "foam", "plastic")
BURNS_NOT = ("steel", "aluminium", "mineral board")


@fact("place", "lining_combustible", type="yes/no", says="What it is lined with burns.",
      method="as told; wood, foam and plastic always do; steel and mineral board unless told; without a lining its "
      "walls")  # fmt: skip
def lining_combustible(s: Subject) -> Any:
    material = s.read(s.item, "lining.material")
    if isinstance(material, str) and material in BURNS:
        return True
    stated = s.read(s.item, "lining.combustible")
    if isinstance(material, str) and material in BURNS_NOT and not s.item.has("lining.combustible"):
        return False
    bare = stated is None or (material is None and not s.item.has("lining.combustible"))
    if bare or (isinstance(stated, Unknown) and s.item.has("combustible")):
        return s.read(s.item, "combustible")
    return stated


@fact("place", "vents_fixed", type="yes/no", says="Its openings cannot be closed.")
def vents_fixed(s: Subject) -> Any:
    return s.read(s.item, "vents.fixed")


@fact("place", "walls_combustible", type="yes/no", says="Its walls burn.")
def walls_combustible(s: Subject) -> Any:
    return s.read(s.item, "combustible")


@fact("place", "detector", words=("smoke", "heat", "gas"), says="The detector in it.")
def detector(s: Subject) -> Any:
    return s.read(s.item, "detector")


@fact("place", "detected", type="yes/no", says="A smoke or heat detector watches it.",
      method="given with the place, or an alarm or detector for smoke or heat that stands in it")  # fmt: skip
def detected(s: Subject) -> Truth:
    stated = s.read(s.item, "detector")
    if isinstance(stated, str) and stated in ("smoke", "heat"):
        return True
    for one in s.holds:
        if one.item.kind in ("alarm", "detector"):
            detects = s.read(one.item, "detects")
            if isinstance(detects, tuple) and ("smoke" in detects or "heat" in detects):
                return True
    return Unknown(f"the detector in {s.id} is not told") if isinstance(stated, Unknown) else False


@fact("place", "ground_clearance", unit="mm", says="Height of its underside above the ground.",
      method="given, else the underside of its box")  # fmt: skip
def ground_clearance(s: Subject) -> Any:
    if s.item.has("ground clearance"):
        return s.read(s.item, "ground clearance")
    from checker.facts.space import extent

    box = extent(s, s.item)
    return box.low[2] if box is not None else s.read(s.item, "ground clearance")


@fact("place", "coldest", unit="°C", says="Coldest air in it.",
      method="the temperatures stated for it, else the coldest ambient temperature")  # fmt: skip
def coldest(s: Subject) -> Any:
    stated = s.read(s.item, "temperature")
    if isinstance(stated, Window):
        return stated.low
    if is_kind(s, s.item, "engine space") is not False:
        return Unknown(f"the air temperature in {s.id} is not told")
    return s.read(s.facts.design.vehicle, "ambient.low")


@fact("place", "hottest", unit="°C", says="Hottest air in it.",
      method="the temperatures stated for it, else what the heat in it makes on the hottest day")  # fmt: skip
def hottest(s: Subject) -> Any:
    return s.air_temperature


@fact("place", "enclosed", type="yes/no", says="A closed box around equipment, with a body of its own.",
      method="lockers and battery boxes, and places with a box of their own inside another")  # fmt: skip
def enclosed(s: Subject) -> Truth:
    kind = s.read(s.item, "kind")
    if isinstance(kind, Unknown):
        return kind
    inside = s.item.has("box") and s.item.has("inside") and kind == "living space"
    return kind in ENCLOSED or inside


@fact("place", "shut_in", type="yes/no", says="A closed space around equipment: a box, under a seat, behind a panel.",
      method="enclosed, or a seat, bed or cavity by its kind")  # fmt: skip
def shut_in(s: Subject) -> Truth:
    return either(s.enclosed, is_kind(s, s.item, "seat", "bed", "cavity"))


LITTLE_HEAT_W, LET_OUT_W_M2 = 20.0, 100.0
"""Heat that any locker bears without openings, and what a thin wall lets out: 20 K at 5 W/m2K."""


@fact("place", "heat_borne_closed", unit="W", says="Heat that its walls let out without openings.",
      method="100 W/m2 of the surface of its box, at most 20 W; 20 W without a box",
      source="common practice, no source")  # fmt: skip
def heat_borne_closed(s: Subject) -> Any:
    box = s.read(s.item, "box") if s.item.has("box") else None
    if not isinstance(box, Box):
        return LITTLE_HEAT_W
    return least(LITTLE_HEAT_W, multiply(corners(box_surface, *box.size), LET_OUT_W_M2))


def items_in(s: Subject, kinds: tuple[str, ...]) -> list[Item]:
    """Equipment of these kinds that stands in it."""
    return [one.item for one in s.holds if one.item.kind in kinds]


@fact("place", "heat", unit="W", says="Heat that converters, inverters and chargers in it give off at full output.",
      method="stated heat at full, else rated output times (1 / efficiency - 1)")  # fmt: skip
def heat(s: Subject) -> Any:
    from checker.facts.heat import heat_of
    from checker.quantities import add

    found: Number = 0.0
    for one in s.holds:
        found = add(found, heat_of(s, one.item))
    return add(found, heat_of_unplaced(s, heat_of))


def heat_of_unplaced(s: Subject, heat_of: Callable[[Subject, Any], Number]) -> Number:
    """Heat that may arise in a place besides what is known to stand in it: equipment of which no place is told, W."""
    from checker.quantities import add

    most: Number = 0.0
    for one in s.facts.subjects("equipment"):
        if isinstance(place_of(s, one.item), Unknown):
            most = add(most, heat_of(s, one.item))
    if isinstance(most, Unknown):
        return Range(0.0, float("inf"))
    top = most.high if isinstance(most, Range) else most
    return Range(0.0, top) if isinstance(top, float) and top > 0.0 else 0.0
