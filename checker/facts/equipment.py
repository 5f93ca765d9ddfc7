"""Every piece of equipment as a body: where it stands, what it weighs, what holds it, what its labels say."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from checker.circuit.ports import IN_LINE
from checker.design.given import Box, RatedVoltage, Where
from checker.design.model import Equipment
from checker.design.vocabulary import KINDS
from checker.design.vocabulary.places import PLACE_KINDS
from checker.design.vocabulary.words import ACCESS, LABELS, OWNERS
from checker.facts.catalogue import fact, subjects
from checker.facts.degree import against_objects, against_water
from checker.facts.levels import level_at
from checker.facts.space import (
    OPEN_AIR,
    carried,
    chain,
    extent,
    is_kind,
    overlaps,
    place_of,
    places_of,
    stands,
    swept_extent,
)
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Truth,
    Unknown,
    both,
    either,
    equal,
    greater,
    least,
    less,
    multiply,
    negate,
    some,
)

EQUIPMENT_KINDS = tuple(name for section, name in KINDS if section in ("equipment", "joints"))
KIND_WORDS = tuple(dict.fromkeys(EQUIPMENT_KINDS))
BODILESS = ("signal", "supply lead", "metal part")
"""Kinds that have no body with a fixed place: a signal, a lead carried along, the metal of the vehicle itself."""
SPARKING = (
    "switch", "relay", "combiner", "changeover", "breaker", "rcbo", "rcd", "fuse", "motor", "fan", "inverter",
    "inverter-charger", "charger", "dc converter", "solar controller", "alternator", "generator", "outlet",
    "connector", "board", "fridge", "air conditioner",
)  # fmt: skip
"""Kinds that spark, switch or glow in use unless the file says that they cannot light a gas mixture."""
GLOWS_C = 300.0


@subjects("equipment", "A piece of equipment as a body: source, converter, device, switch, load, joint.")
def equipment(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Everything that is fitted now and has a body, in file order; the ways of a board belong to the board."""
    for item in facts.design.equipment.values():
        if item.kind in BODILESS:
            continue
        yield item.name, item.where, item


def told(s: Subject, key: str) -> Any:
    """A key of the equipment; none where its kind has no such key."""
    return s.read(s.item, key) if s.item.allows(key) else None


def place_name(s: Subject) -> Any:
    """The name of its place."""
    return place_of(s, s.item)


@fact("equipment", "kind_of_equipment", words=KIND_WORDS, says="What it is.")
def kind_of_equipment(s: Subject) -> str:
    return str(s.item.kind)


@fact("equipment", "own", words=OWNERS, says="Whose work it is.")
def own(s: Subject) -> Any:
    return told(s, "own")


@fact("equipment", "place", of="place", type="subject", says="Where it stands.")
def place(s: Subject) -> Any:
    name = place_name(s)
    return s.facts.subject("place", name) if isinstance(name, str) else name


@fact("equipment", "place_kind", words=PLACE_KINDS, says="What kind of place it stands in.")
def place_kind(s: Subject) -> Any:
    places = chain(s, place_name(s))
    return s.read(places[0], "kind") if places else Unknown(f"the place of {s.id} is not told")


@fact("equipment", "box_known", type="yes/no", says="Its own box is told.")
def box_known(s: Subject) -> Truth:
    if extent(s, s.item) is not None:
        return True
    # A box of which nothing is known is none; one of which a length is missing may be anywhere.
    partly = s.item.allows("box") and isinstance(s.read(s.item, "box"), Box)
    return Unknown(f"part of the box of {s.id} is not told") if partly else False


@fact("equipment", "spot_known", type="yes/no", says="Its own box is told, or a point of it.")
def spot_known(s: Subject) -> Truth:
    if s.item.allows("at") and s.item.has("at") and not s.item.has("box"):
        point = s.read(s.item, "at")
        known = isinstance(point, tuple) and not any(isinstance(one, Unknown) for one in point)
        return known or Unknown(f"part of the point of {s.id} is not told")
    return s.box_known  # type: ignore[no-any-return]


@fact(
    "equipment",
    "swept_by",
    of="moving",
    type="list",
    says="Moving parts through whose way it stands, those that carry it left out.",
    method="its box shares space with the space that the moving part sweeps over its whole travel",
)
def swept_by(s: Subject) -> Any:
    found = []
    for part in s.facts.subjects("moving"):
        hit = is_swept(s, part.item, s.item)
        if isinstance(hit, Unknown):
            return hit
        if hit:
            found.append(part)
    return tuple(found)


def is_swept(s: Subject, part: Any, item: Equipment) -> Truth:
    """Whether a moving part that does not carry it goes through a piece of equipment."""
    rides = carried(s, part, chain(s, place_of(s, item)))
    if rides is True:
        return False
    hit = overlaps(swept_extent(s, part), stands(s, item))
    if isinstance(hit, Unknown):
        return Unknown(f"whether {item.name} stands in the way of {part.name} is not told: its box is missing")
    return both(hit, rides is False or rides)


# --- where gas may be


@fact(
    "equipment",
    "in_gas_locker",
    type="yes/no",
    says="It stands in a locker of gas cylinders.",
    method="its place, or a place around it, is a gas locker; without a place, its point against the boxes of lockers",
)
def in_gas_locker(s: Subject) -> Truth:
    name = place_name(s)
    places = chain(s, name)
    if places:
        return some(is_kind(s, one, "gas locker") for one in places)
    lockers = places_of(s, "gas locker")
    at = stands(s, s.item)
    if at is not None and not isinstance(lockers, Unknown) and lockers:
        return some(overlaps(extent(s, locker), at) for locker in lockers)
    return Unknown(f"the place of {s.id} is not told")


@fact("equipment", "serves_gas", type="yes/no", says="It belongs to the gas system.")
def serves_gas(s: Subject) -> Truth:
    for one in chain(s, place_name(s)):
        named = s.read(one, "serves") if one.has("serves") else ()
        if isinstance(named, tuple) and s.item.name in named:
            return True
    if s.item.allows("detects"):
        detects: Any = s.read(s.item, "detects")
        return "gas" in detects if isinstance(detects, tuple) else Unknown(f"what {s.id} detects is not told")
    if s.item.allows("purpose"):
        purpose = s.read(s.item, "purpose")
        if isinstance(purpose, Unknown):
            # Left out, it is no gas gear: whoever fits that names it. Written as unknown, it may be.
            return purpose if s.item.has("purpose") else False
        return bool(purpose == "gas system")
    return False


@fact("equipment", "ignition_protected", type="yes/no", says="It cannot light a gas mixture around it.")
def ignition_protected(s: Subject) -> Any:
    return told(s, "ignition protected")


@fact(
    "equipment",
    "sparks",
    type="yes/no",
    says="It switches, sparks or glows in use and is not built so that it cannot light gas.",
    method="by its kind, or a surface above 300 °C, unless it is said to be ignition protected",
    source="common practice, no source",
)
def sparks(s: Subject) -> Truth:
    if s.item.kind not in SPARKING and greater(s.hot_surface, GLOWS_C) is False:
        return False
    if s.item.allows("ignition protected") and s.item.has("ignition protected"):
        said = s.read(s.item, "ignition protected")
        return said if isinstance(said, Unknown) else not said
    return True if s.item.kind in SPARKING else greater(s.hot_surface, GLOWS_C)


@fact("equipment", "system", words=("dc", "ac"), says="Direct or alternating current at its terminals.", method="graph")
def system(s: Subject) -> Any:
    found = set()
    for node in s.facts.network.nodes_of(s.item.name):
        level = level_at(s.facts, node)
        if level is not None and not isinstance(level.nominal, Unknown):
            found.add(level.system)
    if found:
        return "ac" if "ac" in found else "dc"
    rated = s.read(s.item, "voltage") if s.item.allows("voltage") else UNKNOWN
    if isinstance(rated, RatedVoltage) and rated.system is not None:
        return rated.system
    return Unknown(f"the supply of {s.id} is not known")


# --- water and stones


@fact("equipment", "outdoors", type="yes/no", says="It stands outside or under the body, or where rain is told.")
def outdoors(s: Subject) -> Truth:
    if s.item.allows("use") and s.item.has("use") and equal(s.read(s.item, "use"), "outside") is True:
        return True
    kind = s.place_kind
    open_air = kind if isinstance(kind, Unknown) else kind in OPEN_AIR
    told = [s.read(one, "wet") for one in chain(s, place_name(s))[:1] if one.has("wet")]
    return some([open_air, *(one if isinstance(one, Unknown) else one in ("rain", "jets") for one in told)])


@fact("equipment", "under_body", type="yes/no", says="It stands under the body.")
def under_body(s: Subject) -> Truth:
    kind = s.place_kind
    return kind if isinstance(kind, Unknown) else bool(kind == "under body")


SPRAY_M = 1.0
"""Height above the ground up to which wheels throw water at the outside of a body; common practice, no source."""


@fact(
    "equipment",
    "in_spray",
    type="yes/no",
    says="It stands under the body, where jets of water are told, or low on the outside of a road vehicle.",
    method="its place; on the outside by its height, up to 1 m above the ground",
    source="common practice, no source",
)
def in_spray(s: Subject) -> Truth:
    places = chain(s, place_name(s))
    jets = [equal(s.read(one, "wet"), "jets") for one in places[:1] if one.has("wet")]
    on_the_road = negate(equal(s.read(s.facts.design.vehicle, "kind"), "boat"))
    outside = equal(s.place_kind, "outside")
    if s.item.kind == "solar array" or on_the_road is not True:
        outside = False  # arrays lie on the roof
    low = both(outside, _low_down(s)) if outside is not False else False
    return some([s.under_body, *jets, low])


def _low_down(s: Subject) -> Truth:
    """Whether it stands where wheels throw water; not known without a height, a box or a point."""
    if s.item.allows("height") and s.item.has("height"):
        return less(s.read(s.item, "height"), SPRAY_M)
    if s.item.allows("height added") and s.item.has("height added"):
        return False  # it stands on the roof
    here = stands(s, s.item)
    if here is None:
        return Unknown(f"how high {s.id} stands is not told")
    if less(here.low[2], SPRAY_M) is False or here.exact:
        return less(here.low[2], SPRAY_M)
    return Unknown(f"how high {s.id} stands is not told")


@fact("equipment", "corrosion_proof", type="yes/no", says="Its case and terminals stand salt and wet for years.")
def corrosion_proof(s: Subject) -> Any:
    found = told(s, "corrosion proof")
    return False if found is None else found


@fact("design", "something_in_spray", type="yes/no", says="Equipment stands in the spray of wheels or under the body.")
def something_in_spray(s: Subject) -> Truth:
    apart = ("outlet", "shore inlet", "metal part", *BODILESS)
    return some(one.in_spray for one in s.facts.subjects("equipment") if one.item.kind not in apart)


@fact("equipment", "water_degree", unit="count", says="Second digit of its degree of protection: water.",
      method="the digit of the code", source="IEC 60529")  # fmt: skip
def water_degree(s: Subject) -> Any:
    return _worst(s, against_water)


@fact("equipment", "solids_degree", unit="count", says="First digit of its degree of protection: solids and fingers.",
      method="the digit of the code", source="IEC 60529")  # fmt: skip
def solids_degree(s: Subject) -> Any:
    return _worst(s, against_objects)


def _worst(s: Subject, digit: Callable[[Any], Any]) -> Any:
    """The lower digit of the codes told: an outlet may have one open and one with a plug in."""
    found: Number = None
    for key in ("degree", "degree.open", "degree.mated"):
        if not s.item.allows(key) or not s.item.has(key):
            continue
        value = digit(s.read(s.item, key))
        if isinstance(value, Unknown) or value is None:
            return value if value is None else Unknown(f"the degree of protection of {s.id} is not told")
        found = value if found is None else least(found, value)
    if found is None:
        s.read(s.item, "degree" if s.item.allows("degree") else "degree.open")
        return Unknown(f"the degree of protection of {s.id} is not told")
    return found


# --- fixing and mass


@fact("equipment", "mass", unit="kg", says="Its mass, all of them when there are several.",
      method="mass of one times how many there are")  # fmt: skip
def mass(s: Subject) -> Any:
    return multiply(one_mass(s, s.item), float_count(s, s.item))


def one_mass(s: Subject, item: Equipment) -> Any:
    """Mass of one piece; of one unit of a bank."""
    if item.allows("mass") and item.has("mass"):
        return s.read(item, "mass")
    if item.base is not None:
        return one_mass(s, item.base)
    return s.read(item, "mass") if item.allows("mass") else UNKNOWN


def float_count(s: Subject, item: Equipment) -> Any:
    """How many there are under one name."""
    for key in ("units", "modules", "count"):
        if item.allows(key):
            return s.read(item, key)
    return 1.0


@fact("equipment", "restrained", type="yes/no", says="It is held against a crash and rough roads, or its place is.")
def restrained(s: Subject) -> Truth:
    if s.item.allows("restraint") and s.item.has("restraint"):
        return _yes(s.read(s.item, "restraint"))
    if s.item.base is not None and s.item.base.has("restraint"):
        return _yes(s.read(s.item.base, "restraint"))
    for one in chain(s, place_name(s))[:1]:
        if one.has("restraint"):
            return _yes(s.read(one, "restraint"))
    return _yes(s.read(s.item, "restraint")) if s.item.allows("restraint") else UNKNOWN


def _yes(value: Any) -> Truth:
    return False if value is None else value


@fact(
    "equipment",
    "restraint_mass",
    unit="kg",
    says="The mass its hold is made for.",
    method="given with the hold of the equipment, else of its place",
)
def restraint_mass(s: Subject) -> Any:
    if s.item.allows("restraint.for") and s.item.has("restraint.for"):
        return s.read(s.item, "restraint.for")
    places = chain(s, place_name(s))
    return s.read(places[0], "restraint.for") if places else UNKNOWN


@fact("equipment", "restraint_acceleration", unit="m/s2", says="The acceleration its hold is made for.",
      method="given with the hold of the equipment, else of its place")  # fmt: skip
def restraint_acceleration(s: Subject) -> Any:
    if s.item.allows("restraint.acceleration") and s.item.has("restraint.acceleration"):
        return s.read(s.item, "restraint.acceleration")
    places = chain(s, place_name(s))
    return s.read(places[0], "restraint.acceleration") if places else UNKNOWN


@fact("equipment", "movement", unit="mm", says="How far it can still move in its hold.")
def movement(s: Subject) -> Any:
    return told(s, "restraint.movement")


# --- labels and access


@fact("equipment", "labels", words=LABELS, type="words", says="What the labels on it or beside it say.")
def labels(s: Subject) -> Any:
    return told(s, "labels")


@fact("equipment", "marked", type="yes/no", says="It is marked with its function.")
def marked(s: Subject) -> Any:
    stated = told(s, "marked")
    written = told(s, "labels")
    return True if isinstance(stated, Unknown) and isinstance(written, tuple) and "function" in written else stated


@fact("equipment", "access", words=ACCESS, says="How a hand gets to it.")
def access(s: Subject) -> Any:
    return told(s, "access")


@fact("equipment", "in_line", type="yes/no", says="It stands in the run of a circuit: a device, switch or joint.",
      method="by its kind")  # fmt: skip
def in_line(s: Subject) -> bool:
    return s.item.kind in IN_LINE


@fact("equipment", "gas_safe", words=("closes on loss", "stays as it is"),
      says="What its gas valve does when the supply is lost; none for what burns no gas.",
      method="as told; left out, asked of what heats, cooks, cools by absorption or controls gas "
      "where gas is aboard")  # fmt: skip
def gas_safe(s: Subject) -> Any:
    if s.item.kind == "valve":
        if s.serves_gas is not True:
            return None if s.serves_gas is False else s.serves_gas
        rest = s.read(s.item, "rest")
        return rest if isinstance(rest, Unknown) else "closes on loss" if rest == "closed" else "stays as it is"
    if not s.item.allows("gas safe"):
        return None
    stated = s.read(s.item, "gas safe")
    if s.item.has("gas safe"):
        return stated
    burns = both(_perhaps_burns(s), s.facts.subjects("design")[0].carries_gas)
    return None if burns is False else Unknown(f"whether {s.id} burns gas, and what its valve does, is not told")


WARM_C = 60.0
"""A surface of a battery-fed appliance above it is that of a heater or a cooker: common practice, no source."""


def _perhaps_burns(s: Subject) -> Truth:
    """Whether an appliance is of a sort that burns gas, where gas is aboard: it heats or cooks on little current, or is
    a control of the gas."""
    if s.item.kind == "load" and s.item.has("purpose") and equal(s.read(s.item, "purpose"), "gas system") is True:
        return True
    if s.item.allows("works by") and equal(s.read(s.item, "works by"), "absorption") is True:
        return True
    purpose = s.read(s.item, "purpose") if s.item.allows("purpose") and s.item.has("purpose") else None
    warms = either(equal(purpose, "heating"), equal(purpose, "cooking")) if purpose is not None else False
    return both(equal(s.system, "dc"), either(warms, greater(s.hot_surface, WARM_C)))


@fact("equipment", "hold_told", type="yes/no", says="The file speaks of the mass its hold is made for.")
def hold_told(s: Subject) -> bool:
    around = chain(s, place_name(s))[:1]
    return any(one.has("restraint.for") for one in (s.item, *around))
