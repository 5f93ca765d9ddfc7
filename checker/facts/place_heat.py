"""How warm the air in a place gets from what gives off heat in it, once it changes no more."""

from __future__ import annotations

from math import inf
from typing import Any

from checker.design.given import Box
from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.heat import heat_of
from checker.facts.place import heat_of_unplaced
from checker.facts.space import DEEPEST, OUTER_SKIN, is_kind, lower, upper
from checker.facts.subject import Subject
from checker.physics.converter import loss
from checker.physics.panels import (
    CONDUCTIVITY_W_MK,
    INSIDE_M2K_W,
    OUTSIDE_M2K_W,
    box_surface,
    panel_transmittance,
    sun_rise,
)
from checker.physics.ventilation import steady_rise
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    add,
    corners,
    either,
    equal,
    greatest,
    less,
    multiply,
    negate,
    show,
    total,
)

HOTTEST_AIR_C = 150.0
"""Where the flow formula ends; hotter air is told as at least this."""
INSULATED_M, FOAM = 0.03, CONDUCTIVITY_W_MK["foam"][0]
"""Walls that are not told lie between thin sheet and 30 mm of foam: common practice, no source."""
MAYBE = Range(0.0, 1.0)
INVERTERS = ("inverter", "inverter-charger")


# --- heat in use


@fact(
    "place",
    "heat_in_use",
    unit="W",
    says="Heat that converters, inverters, chargers and stated sources in it give off together, in the worst mode.",
    method="for each mode the losses at the power asked then, straight between idle and full load; the greatest sum; "
    "losses of cables, fuses and batteries and the power of loads left out",
    source="power balance of a converter",
)
def heat_in_use(s: Subject) -> Any:
    modes = tuple(s.facts.design.modes.values())
    sums = [total([_in_mode(s, one.item, mode) for one in s.holds]) for mode in modes]
    return add(greatest(sums), heat_of_unplaced(s, _most)) if sums else s.heat


def _most(s: Subject, item: Item) -> Number:
    """The greatest heat of one piece of equipment, full load or any mode, W."""
    return greatest([heat_of(s, item), *(_in_mode(s, item, mode) for mode in s.facts.design.modes.values())])


def _in_mode(s: Subject, item: Item, mode: Item) -> Number:
    """Heat of one piece of equipment in a mode, W."""
    if item.allows("heat") and item.has("heat"):
        return s.read(item, "heat")  # type: ignore[no-any-return]
    full = heat_of(s, item)
    if isinstance(full, float) and full == 0.0:
        return 0.0
    found: list[tuple[Truth, Number]] = []
    if item.kind in INVERTERS:
        found.append((is_word(s.read(mode, "inverter"), "inverting"), _inverting(s, item, full)))
    if item.kind in ("charger", "inverter-charger"):
        found.append((_mains_there(s, mode), _charging(s, item)))
    if item.kind == "solar controller":
        found.append((negate(equal(s.read(mode, "sun"), 0.0)), _asked(s, item, full)))
    if item.kind == "dc converter":
        found.append((True, _asked(s, item, full)))
    if not any(works is True for works, _ in found):
        found.append((True, _idle(s, item)))
    # What is perhaps at work gives its heat or none.
    return greatest([heat if works is True else multiply(heat, MAYBE) for works, heat in found if works is not False])


def _mains_there(s: Subject, mode: Item) -> Truth:
    absent = is_word(s.read(mode, "shore"), "absent")
    return either(negate(absent), is_word(s.read(mode, "generator"), "running"))


def _idle(s: Subject, item: Item) -> Number:
    for key in ("no load", "idle"):
        if item.allows(key) and item.has(key):
            return s.read(item, key)  # type: ignore[no-any-return]
    return 0.0


def _inverting(s: Subject, item: Item, full: Number) -> Number:
    """Straight between no load and full load: what a real inverter loses lies on or under that line."""
    twin = s.facts.subject("converter", item.name)
    asked = twin.asked_power if twin is not None else UNKNOWN

    def straight(power: float, rated: float, idle: float, most: float) -> float:
        return idle + (most - idle) * min(1.0, power / rated) if rated > 0.0 else most

    return corners(straight, asked, s.read(item, "power"), _idle(s, item), full)


def _charging(s: Subject, item: Item) -> Number:
    from checker.facts.charging import charge_current, highest_setting, outputs_of

    watts = [multiply(charge_current(s, one), highest_setting(s, one)) for one in outputs_of(s.facts, item)]  # type: ignore[arg-type]
    return corners(loss, greatest(watts), s.read(item, "efficiency")) if watts else 0.0


def _asked(s: Subject, item: Item, full: Number) -> Number:
    """A converter at the power it charges with; at its full one where it charges nothing."""
    twin = s.facts.subject("converter", item.name)
    asked = twin.asked_power if twin is not None else None
    return full if asked is None else corners(loss, asked, s.read(item, "efficiency"))


# --- walls


@fact(
    "place",
    "wall_conductance",
    unit="W/K",
    says="Heat that its six walls let through for each kelvin.",
    method="given, else the faces of its box times 1 / (R_si + d/λ + R_se); where thickness or material is not told, "
    "anything between thin sheet and 30 mm of foam",
    source="ISO 6946 (seen); conductivities after ISO 10456 (from memory)",
)
def wall_conductance(s: Subject) -> Any:
    return conductance(s, s.item)


def conductance(s: Subject, place: Item) -> Number:
    """Conductance of the walls of a place, W/K; unknown without a box."""
    if place.has("wall conductance"):
        return s.read(place, "wall conductance")  # type: ignore[no-any-return]
    box = s.read(place, "box")
    if not isinstance(box, Box):
        return Unknown(f"the box of {place.name} is not told")
    surface = corners(box_surface, *box.size)
    beyond = s.read(place, "inside")
    inner = isinstance(beyond, str) and beyond != OUTER_SKIN
    outer: Number = INSIDE_M2K_W if inner else Range(OUTSIDE_M2K_W, INSIDE_M2K_W)
    thick, made = s.read(place, "wall thickness"), s.read(place, "material")
    if isinstance(thick, float | Range) and isinstance(made, str):
        low, high = CONDUCTIVITY_W_MK[made]
        return multiply(surface, corners(panel_transmittance, thick, Range(low, high) if low < high else low, outer))
    return multiply(surface, corners(panel_transmittance, Range(0.0, INSULATED_M), FOAM, outer))


# --- temperature


@fact(
    "place",
    "computed_temperature",
    unit="°C",
    says="Air temperature that the heat in it makes on the hottest day, everything in steady use.",
    method="air around + rise; P = H ΔT + ρ c Q ΔT, Q by stack effect and fan; rooms are taken as aired, "
    "without sun on the walls; an outside place as lying in bright sun",
    source="stack effect (from memory); ISO 6946 (seen); sol-air temperature (seen)",
)
def computed_temperature(s: Subject) -> Any:
    return _computed(s, s.item, ())


@fact(
    "place",
    "air_temperature",
    unit="°C",
    says="Hottest air in it.",
    method="the temperature stated for it; what the heat in it makes where none is stated, or where that is certainly "
    "more and the stated one was not measured",
)
def air_temperature(s: Subject) -> Any:
    return _air(s, s.item, ())


def _air(s: Subject, place: Item, seen: tuple[str, ...]) -> Number:
    stated = s.read(place, "temperature")
    if not isinstance(stated, Window):
        return _computed(s, place, seen)
    if place.get("temperature").basis == "measured":
        return stated.high
    computed = _computed(s, place, seen)
    if less(stated.high, computed) is True:
        # Written from hope: what stands in the place makes it hotter whatever the numbers still open are.
        s.note(lambda: f"{show(stated.high, '°C')} are stated for {place.name}, but the heat in it makes more")
        return computed
    return stated.high


def _computed(s: Subject, place: Item, seen: tuple[str, ...]) -> Number:
    ambient: Number = s.read(s.facts.design.vehicle, "ambient.high")
    if place.name in seen or len(seen) > DEEPEST:
        return corners(lambda low: low, ambient) if not isinstance(ambient, float) else Range(ambient, inf)
    if is_kind(s, place, "engine space") is not False:
        return Unknown(f"the air temperature in {place.name} is not told")
    if is_kind(s, place, "outside") is True:
        s.note(lambda: f"in bright sun: {show(sun_rise(), 'K')} above the air, 0.9 × 1000 W/m2 × 0.04 m2 K/W")
        return add(ambient, sun_rise())
    twin = s.facts.subject("place", place.name)
    return warmed(s, place, twin.heat_in_use if twin is not None else UNKNOWN, ambient, seen)


def warmed(s: Subject, place: Item, heat: Number, ambient: Number, seen: tuple[str, ...] = ()) -> Number:
    """Air of a closed place with so much heat (W) in it, °C; of an open one that around it."""
    twin = s.facts.subject("place", place.name)
    enclosed = twin.enclosed if twin is not None else UNKNOWN
    around = _around(s, place, ambient, (*seen, place.name))
    if enclosed is False or (isinstance(heat, float) and heat == 0.0):
        return around
    if isinstance(enclosed, Unknown):
        return Unknown(f"what kind of place {place.name} is is not told")
    low, high, rise = _openings(s, place)
    found = corners(_capped, heat, conductance(s, place), low, high, rise, _fan(s, place), around)
    if isinstance(found, Unknown) and isinstance(around, float | Range):
        s.note(lambda: f"by how much the heat in {place.name} warms it is not known: {found.reason}")
        return Range(lower(around), inf)
    s.note(lambda: f"{show(heat, 'W')} in {place.name} warm it by {show(found, 'K')}")
    return _endless(add(around, found))


def _capped(
    loss_w: float, walls_w_k: float, low_m2: float, high_m2: float, rise_m: float, fan_m3_s: float, around_c: float
) -> float:
    """The steady rise, but no more than the formula reaches."""
    return min(HOTTEST_AIR_C - around_c, steady_rise(loss_w, walls_w_k, low_m2, high_m2, rise_m, fan_m3_s, around_c))


def _endless(air: Number) -> Number:
    """Air as hot as the formula reaches is told as at least so hot."""
    if not isinstance(air, float | Range) or upper(air) < HOTTEST_AIR_C:
        return air
    return Range(min(lower(air), HOTTEST_AIR_C), inf)


def _around(s: Subject, place: Item, ambient: Number, seen: tuple[str, ...]) -> Number:
    """The warmest of the air around its walls and at its openings."""
    found = [ambient]
    for key in ("inside", "vents.to"):
        name = s.read(place, key) if place.has(key) else None
        other = s.facts.design.places.get(name) if isinstance(name, str) else None
        if isinstance(name, Unknown):
            found.append(Unknown(f"the air around {place.name} is not told"))
        elif other is not None:
            found.append(_air(s, other, seen))
    return greatest(found)


def _openings(s: Subject, place: Item) -> tuple[Number, Number, Number]:
    """Low and high opening (m2) and the height between them (m); nothing where there is none."""
    low, high = (0.0 if area is None else area for area in (s.read(place, "vents.low"), s.read(place, "vents.high")))
    if 0.0 in (low if isinstance(low, float) else 1.0, high if isinstance(high, float) else 1.0):
        return 0.0, 0.0, 0.0
    rise = s.read(place, "vents.rise")
    box = s.read(place, "box")
    if isinstance(rise, Unknown) and isinstance(box, Box) and isinstance(box.size[2], float) and box.size[2] > 0.0:
        rise = Range(0.0, box.size[2])
    return low, high, rise


def _fan(s: Subject, place: Item) -> Number:
    """Air that its fan moves, m3/s; while it runs."""
    name = s.read(place, "vents.fan") if place.has("vents.fan") else None
    if name is None:
        return 0.0
    item = s.facts.design.equipment.get(name) if isinstance(name, str) else None
    flow = s.read(item, "flow") if item is not None and item.allows("flow") else UNKNOWN
    return flow if isinstance(flow, float | Range) else Range(0.0, inf)


@fact("place", "temperature_stated", type="yes/no", says="Air temperatures are stated for it, not measured.",
      method="the key is written and its basis is no measurement")  # fmt: skip
def temperature_stated(s: Subject) -> Truth:
    given = s.item.get("temperature")
    stated = s.read(s.item, "temperature")
    if isinstance(stated, Unknown) and s.item.has("temperature"):
        return stated
    return isinstance(given.value, Window) and given.basis != "measured"


@fact("place", "stated_hottest", unit="°C", says="Hottest air in it by what the file states; none where it is silent.")
def stated_hottest(s: Subject) -> Any:
    stated = s.read(s.item, "temperature")
    if isinstance(stated, Window):
        return stated.high
    return stated if s.item.has("temperature") else None


@fact("equipment", "air_temperature", unit="°C", says="Hottest air around it.", method="that of its place")
def equipment_air(s: Subject) -> Any:
    where = s.place
    if where is None or isinstance(where, Unknown):
        return Unknown(f"where {s.id} stands is not told")
    return where.air_temperature


@fact("equipment", "hot_surface", unit="°C", says="Temperature of its hottest surface; none where none is told.")
def hot_surface(s: Subject) -> Any:
    return s.read(s.item, "hot surface") if s.item.allows("hot surface") and s.item.has("hot surface") else None
