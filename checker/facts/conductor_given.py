"""Conductors as the file tells them: what they are made of, how long they are, where they lie."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import BONDING, EARTH, LIVE, RETURN, Conductor, Wire
from checker.design.given import DEFAULT, MISSING, Given, Where
from checker.design.item import Item
from checker.design.vocabulary.cables import COLOURS
from checker.design.vocabulary.circuits import COVERINGS, DUTIES
from checker.facts.catalogue import fact, subjects
from checker.facts.levels import level_at, read_level
from checker.facts.space import is_kind, told_around
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Truth,
    Unknown,
    Window,
    add,
    both,
    either,
    equal,
    greatest,
    less_equal,
    multiply,
    negate,
)
from checker.quantities.values import or_more

STRANDS = ("solid", "stranded", "flexible", "extra flexible")


@subjects("conductor", "One core of one circuit between its two ends: live, return, earth or bonding.")
def conductors(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Every conductor of every circuit that is fitted now."""
    for conductor in facts.network.conductors:
        yield conductor.id, conductor.where, conductor


def cable_value(s: Subject, key: str) -> Any:
    """A key of the cable of a conductor, unknown when the cable is not known."""
    cable = s.item.circuit.cable
    return no_cable(s) if cable is None else s.read(cable, key)


def no_cable(s: Subject) -> Unknown:
    """The cable of its circuit as an entry that would settle the question."""
    circuit = s.item.circuit
    missing = Unknown(f"the cable of {circuit.name} is not known")
    s.use(f"{circuit.path}.cable", Given(missing, circuit.where, MISSING))
    return missing


@fact("conductor", "circuit", of="circuit", type="subject", says="The circuit it belongs to.", method="graph")
def circuit_of(s: Subject) -> Any:
    return s.facts.of("circuit", s.item.circuit)


@fact("conductor", "is_live", type="yes/no", says="It carries supply: the positive, or the line of the mains.")
def is_live(s: Subject) -> bool:
    return bool(s.item.role == LIVE)


@fact("conductor", "is_return", type="yes/no", says="It brings the current back: the negative, or the neutral.")
def is_return(s: Subject) -> bool:
    return bool(s.item.role == RETURN)


@fact("conductor", "is_earth", type="yes/no", says="It is a protective or bonding conductor.")
def is_earth(s: Subject) -> bool:
    return s.item.role in (EARTH, BONDING)


@fact("conductor", "is_bonding", type="yes/no", says="It bonds parts and is no part of a circuit that feeds loads.")
def is_bonding(s: Subject) -> bool:
    return bool(s.item.role == BONDING)


@fact("conductor", "system", words=("dc", "ac"), says="Direct or alternating current.", method="graph")
def system(s: Subject) -> str:
    return s.facts.network.systems[s.item.circuit.name]


@fact("conductor", "duty", words=DUTIES, says="What its circuit is for.")
def duty(s: Subject) -> Any:
    return s.read(s.item.circuit, "duty")


@fact("conductor", "own", words=("factory", "fitter", "owner"), says="Whose work it is.")
def own(s: Subject) -> Any:
    return s.read(s.item.circuit, "own")


@fact("conductor", "scope", words=("habitation", "automotive"), says="Which rules it falls under.")
def scope(s: Subject) -> Any:
    return s.read(s.item.circuit, "scope")


@fact("conductor", "area", unit="mm2", says="Cross-section of metal of one core; a trade size is turned into area.")
def area(s: Subject) -> Any:
    if s.item.role == RETURN and s.item.circuit.returns.size is not None:
        return s.use(f"{s.item.circuit.path}.return.size", s.item.circuit.returns.size, "mm2")
    if s.item.role == EARTH:
        if s.item.circuit.earth.size is not None:
            return s.use(f"{s.item.circuit.path}.earth.size", s.item.circuit.earth.size, "mm2")
        cable = s.item.circuit.cable
        if cable is not None and cable.has("earth size"):
            return s.read(cable, "earth size")
    return cable_value(s, "size")


@fact(
    "conductor",
    "area_in_parallel",
    unit="mm2",
    says="Cross-section of all like cables side by side together.",
    method="area times the number of cables in parallel",
)
def area_in_parallel(s: Subject) -> Number:
    return multiply(s.area, s.parallel_legs)


@fact("conductor", "parallel_legs", unit="each", says="Like cables side by side that share its current.")
def parallel_legs(s: Subject) -> Any:
    return s.read(s.item.circuit, "in parallel")


@fact("conductor", "material", words=("copper", "tinned copper", "aluminium"), says="Metal of the conductor.")
def material(s: Subject) -> Any:
    return cable_value(s, "material")


@fact("conductor", "strands", words=STRANDS, says="How fine the conductor is.")
def strands(s: Subject) -> Any:
    return cable_value(s, "strands")


@fact("conductor", "insulation_limit", unit="°C", says="Temperature its insulation endures.")
def insulation_limit(s: Subject) -> Any:
    return cable_value(s, "insulation")


@fact("conductor", "voltage_rating", unit="V", says="Rated voltage of the cable.")
def voltage_rating(s: Subject) -> Any:
    return cable_value(s, "voltage")


@fact("conductor", "flame_retardant", type="yes/no", says="The cable does not carry a flame along.")
def flame_retardant(s: Subject) -> Any:
    return cable_value(s, "flame retardant")


@fact("conductor", "ultraviolet", type="yes/no", says="The cable endures sunlight.")
def ultraviolet(s: Subject) -> Any:
    return cable_value(s, "ultraviolet")


@fact("conductor", "colour", words=COLOURS, says="Colour of a single core.")
def colour(s: Subject) -> Any:
    return cable_value(s, "colour")


@fact("conductor", "cores", unit="each", says="Cores in its cable.")
def cores(s: Subject) -> Any:
    return cable_value(s, "cores")


@fact("conductor", "outer_diameter", unit="mm", says="Outer diameter of its cable.")
def outer_diameter(s: Subject) -> Any:
    return cable_value(s, "outer")


@fact("conductor", "covering", words=COVERINGS, says="What covers it; none when it lies bare.")
def covering(s: Subject) -> Any:
    return s.read(s.item.circuit, "covering")


@fact("conductor", "covering_flame_retardant", type="yes/no", says="What covers it does not carry a flame along.")
def covering_flame_retardant(s: Subject) -> Any:
    return s.read(s.item.circuit, "covering flame retardant")


@fact("conductor", "meets_mains", words=("crossing", "alongside"),
      says="How it lies to mains cables where both pass one place.")  # fmt: skip
def meets_mains(s: Subject) -> Any:
    return s.read(s.item.circuit, "meets mains")


@fact("conductor", "support_spacing", unit="m", says="Greatest distance between its supports.")
def support_spacing(s: Subject) -> Any:
    return s.read(s.item.circuit, "support spacing")


@fact("conductor", "upright", type="yes/no", says="It runs upright all along.")
def upright(s: Subject) -> Any:
    return s.read(s.item.circuit, "upright")


@fact("conductor", "length", unit="m", says="Length along the run.", method="sum of the stretches of the run")
def length(s: Subject) -> Number:
    found: Number = 0.0
    for wire in s.item.wires:
        found = add(found, wire_length(s, wire))
    return found


def wire_length(s: Subject, wire: Wire) -> Number:
    """Length of one stretch between devices; unknown when part of it was not seen."""
    if wire.gap is not None:
        return Unknown(f"part of the run of {wire.conductor.circuit.name} was not seen")
    found: Number = 0.0
    for stretch in wire.lengths:
        place = f" via {stretch.place}" if stretch.place else ""
        found = add(found, s.use(f"{wire.conductor.circuit.path}.run{place}", stretch.length, "m"))
    return found


@fact("conductor", "places", of="place", type="list", says="The places it passes through.", method="run of the circuit")
def places(s: Subject) -> Any:
    unseen = unseen_place(s)
    if unseen is not None:
        return unseen
    found = (s.facts.subject("place", name) for name in _names(s))
    return tuple(place for place in found if place is not None)


def unseen_place(s: Subject) -> Unknown | None:
    """Why there may be more places than the run tells; None when every stretch has its place.

    A stretch without one lies where the loom of its circuit runs, if the file says where that is.
    """
    for wire in s.item.wires:
        name = wire.conductor.circuit.name
        if not wire.gap_measured:
            return Unknown(f"where part of the run of {name} lies was not seen")
        for stretch in wire.lengths:
            if stretch.place is None and stretch.length.value != 0.0 and _loom_place(s, wire) is None:
                missing = Unknown(f"the place of a stretch in the run of {name} is not told")
                s.use(f"{wire.conductor.circuit.path}.run", Given(missing, stretch.where, MISSING))
                return missing
    return None


def _loom_place(s: Subject, wire: Wire) -> str | None:
    """The place where the loom of its circuit runs; None where none is told."""
    circuit = wire.conductor.circuit
    for loom in s.facts.design.looms.values():
        carried = loom.value("carries")
        if circuit.says("loom", loom.name) or (isinstance(carried, tuple) and circuit.name in carried):
            place = s.read(loom, "place")
            if isinstance(place, str):
                return place
    return None


def _names(s: Subject) -> list[str]:
    """The names of the places of its run, each once, in order."""
    found = (stretch.place or _loom_place(s, wire) for wire in s.item.wires for stretch in wire.lengths)
    return [name for name in dict.fromkeys(found) if name is not None]


def place_items(s: Subject) -> list[Item]:
    """The places a conductor passes, as the file has them; that of its loom where the run names none."""
    return [s.facts.design.places[name] for name in _names(s)]


@fact(
    "conductor",
    "ambient",
    unit="°C",
    says="Air temperature at the hottest place it passes.",
    method="hottest place of the run, as stated or as heat and sun make it; else the highest ambient, assumed",
)
def ambient(s: Subject) -> Any:
    unseen = unseen_place(s)
    if unseen is not None and any(not wire.gap_measured for wire in s.item.wires):
        return unseen
    hottest = outside = s.read(s.facts.design.vehicle, "ambient.high")
    for place in place_items(s):
        if not place.allows("temperature"):
            continue
        if not place.has("temperature"):
            if place.says("kind", "engine space"):
                s.read(place, "temperature")
                return Unknown(f"the air temperature in {place.name} is not stated")
            twin = s.facts.subject("place", place.name)
            made = twin.air_temperature if twin is not None else outside
            if equal(made, outside) is True:
                s.use(f"{place.path}.temperature", Given(outside, place.where, DEFAULT, "as the air outside"), "°C")
            hottest = greatest(hottest, made)
            continue
        stated = s.read(place, "temperature")
        if not isinstance(stated, Window):
            return Unknown(f"the air temperature in {place.name} is not known")
        hottest = greatest(hottest, stated.high)
    # A stretch of which no place is told may lie in a hotter one.
    return hottest if unseen is None else or_more(hottest)


NEVER_INSULATED = ("under body", "outside", "flexible loop", "exit", "fuel", "gas locker")
"""Kinds of place in which no thermal insulation lies along cables; common practice, no source."""


@fact(
    "conductor",
    "in_thermal_insulation",
    words=("one side", "both sides"),
    says="Thermal insulation along it: the worst place of the run; none where there is not.",
    method="told of the place, else of the place around it; none in the open and at the engine of a road vehicle",
)
def in_thermal_insulation(s: Subject) -> Any:
    worst: Any = None
    doubt: Unknown | None = unseen_place(s)
    for place in place_items(s):
        if not place.allows("thermal insulation"):
            continue
        stated = _insulation(s, place)
        if isinstance(stated, Unknown):
            doubt = stated if doubt is None else doubt
        elif stated == "both sides" or worst is None:
            worst = stated
    return worst if doubt is None or worst == "both sides" else doubt


def _insulation(s: Subject, place: Item) -> Any:
    """What is told of the thermal insulation along cables in a place, by it or by the nearest place around it.

    A cavity is where insulation is put, so it speaks for itself; elsewhere one word for the room serves all in it.
    """
    around = told_around(s, place)
    for at, one in enumerate(around):
        if one.has("thermal insulation"):
            return s.read(one, "thermal insulation")
        if _never_insulated(s, one) is True:
            return None
        if at + 1 == len(around) or is_kind(s, one, "cavity") is not False:
            s.read(one, "thermal insulation")
            return Unknown(f"whether thermal insulation lies along cables in {one.name} is not told")
    return None


def _never_insulated(s: Subject, place: Item) -> Truth:
    on_the_road = negate(equal(s.read(s.facts.design.vehicle, "kind"), "boat"))
    return either(is_kind(s, place, *NEVER_INSULATED), both(is_kind(s, place, "engine space"), on_the_road))


@fact("conductor", "voltage", unit="V", says="Nominal voltage of its circuit.", method="equipment on the same part")
def voltage(s: Subject) -> Any:
    level = level_of(s)
    read_level(s, level)
    return UNKNOWN if level is None else level.nominal


@fact(
    "conductor",
    "highest_voltage",
    unit="V",
    says="Highest voltage of its circuit in use.",
    method="highest of the settings of chargers, the full battery and the cold array on the same part",
)
def highest_voltage(s: Subject) -> Any:
    level = level_of(s)
    read_level(s, level)
    return UNKNOWN if level is None else level.highest


def level_of(s: Subject) -> Any:
    """The level of the live conductor of the same circuit."""
    live = s.facts.network.conductor(s.item.circuit.name, LIVE)
    return None if live is None else level_at(s.facts, live.start)


@fact(
    "conductor",
    "return_area",
    unit="mm2",
    says="Cross-section of the return of its circuit; none where it returns by the chassis.",
    method="graph",
)
def return_area(s: Subject) -> Any:
    how = s.item.circuit.returns.how
    if how == "chassis" or how == "none":
        return None
    if how == "unknown":
        return Unknown(f"how {s.item.circuit.name} returns is not known")
    back = s.facts.network.conductor(s.item.circuit.name, RETURN)
    if back is None:
        return None
    twin = s.facts.of("conductor", back)
    return UNKNOWN if twin is None else twin.area


@fact(
    "conductor",
    "is_weak_return",
    type="yes/no",
    says="A return laid by itself that carries less than its live conductor.",
    method="carrying capacity of both; one in the cable or on the way of its live conductor is judged with that",
)
def is_weak_return(s: Subject) -> Truth:
    if s.item.role != RETURN or s.item.circuit.returns.how != "run":
        return False
    live = s.facts.network.conductor(s.item.circuit.name, LIVE)
    twin = None if live is None else s.facts.of("conductor", live)
    return False if twin is None else negate(less_equal(twin.carrying_capacity, s.carrying_capacity))


@fact("conductor", "open_end", type="yes/no", says="Part of its run was not seen and may hide a device or a joint.")
def open_end(s: Subject) -> bool:
    return any(wire.gap is not None for wire in s.item.wires)


def loop_length(s: Subject) -> Number:
    """Live and return length of the circuit of a conductor, m."""
    live: Conductor = s.item
    back = s.facts.network.conductor(live.circuit.name, RETURN)
    there = s.length
    twin = s.facts.of("conductor", back) if back is not None else None
    return add(there, twin.length) if twin is not None else there
