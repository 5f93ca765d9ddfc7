"""Banks and single batteries as the file tells them: chemistry, voltages, capacity, restraint, standards."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import Any

from checker.circuit.elements import LIVE, RETURN, Link, Wire
from checker.circuit.supply import joined
from checker.design.given import MISSING, Given, Where
from checker.design.model import Equipment
from checker.design.vocabulary.words import CHEMISTRIES
from checker.facts.catalogue import fact, subjects
from checker.facts.levels import highest_of, nominal_of, stacked_voltage
from checker.facts.subject import Facts, Subject
from checker.physics.charging import cells_for, charge_window
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    corners,
    equal,
    every,
    least,
    multiply,
    total,
)
from checker.quantities.values import between, perhaps

KINDS = ("battery", "bank")
TABLE_SOURCE = "usual data of battery makers; common practice, no source"
SAFETY_STANDARDS = ("IEC 62619", "IEC 62620", "IEC 63056", "UL 1973", "UL 1642", "UL 2580", "SAE J2464", "SAE J2929")


@subjects("bank", "A bank of batteries, or a single battery.")
def banks(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order; the units of a bank written short are no subjects of their own."""
    for item in facts.design.equipment.values():
        if item.kind in KINDS:
            yield item.name, item.where, item


def unit(item: Equipment) -> Equipment:
    """The battery that a bank is made of; a battery is its own."""
    return item.base if item.kind == "bank" and item.base is not None else item


def of_unit(s: Subject, item: Equipment, key: str) -> Any:
    """A key of a bank, or of the battery it is made of; unknown when neither may say it."""
    one = unit(item)
    if item.has(key) or not one.allows(key):
        return s.read(item, key) if item.allows(key) else Unknown(f"{item.name} does not say its {key}")
    return s.read(one, key)


def home(facts: Facts, item: Equipment) -> str:
    """The live node at which a bank is joined: its bar when its units are written out, else its own terminal."""
    lead = facts.network.conductor(f"{item.name}.lead-1", LIVE) if item.name in facts.network.units else None
    return lead.end if lead is not None else f"{item.name}:+"


def home_return(facts: Facts, item: Equipment) -> str:
    """The node at which the negative of a bank is joined: as `home` for the other pole."""
    lead = facts.network.conductor(f"{item.name}.lead-1", RETURN) if item.name in facts.network.units else None
    return lead.end if lead is not None else f"{item.name}:-"


def loose_bank(facts: Facts) -> Unknown | None:
    """Why the walk from a bank leads nowhere that is known: how the units of some bank are joined is not told."""
    if "loose bank" not in facts.shared:
        names = (
            item.name
            for item in facts.design.equipment.values()
            if item.kind == "bank" and isinstance(item.value("joined by"), Unknown)
        )
        name = next(names, None)
        told = None if name is None else Unknown(f"how the units of {name} are joined is not told")
        facts.shared["loose bank"] = told
    found: Unknown | None = facts.shared["loose bank"]
    return found


def some_gap(facts: Facts) -> bool:
    """Whether part of any live run was not seen."""
    held: bool | None = facts.store.get("some gap")
    if held is None:
        held = facts.store["some gap"] = any(
            wire.gap is not None for conductor in facts.network.conductors for wire in conductor.wires
        )
    return held


def stands_unseen(facts: Facts, item: Equipment) -> bool:
    """Whether a device touches no wire although part of some run was not seen: it may stand there."""
    if not some_gap(facts):
        return False
    near = facts.network.near
    return not any(isinstance(edge, Wire) for node in facts.network.nodes_of(item.name) for edge, _ in near[node])


def always_joined(edge: Any) -> bool:
    """Wires, fuses, bars and joints: what nobody opens in use."""
    return isinstance(edge, Wire) or (isinstance(edge, Link) and edge.when == "always")


def parallel(facts: Facts, item: Equipment) -> tuple[Equipment, ...]:
    """The batteries always in parallel with a battery, itself among them; a bank written short stands alone."""
    held: dict[str, tuple[Equipment, ...]] = facts.store.setdefault("parallel batteries", {})
    if item.name not in held:
        if item.name in facts.network.units:
            held[item.name] = (item,)
        else:
            near = joined(facts.network, [f"{item.name}:+"], always_joined)
            members = [one for one in facts.design.equipment.values() if one.kind in KINDS and f"{one.name}:+" in near]
            found = tuple(members) or (item,)
            held.update(dict.fromkeys((item.name, *(one.name for one in found)), found))
    return held[item.name]


def perhaps_apart(facts: Facts, item: Equipment) -> Unknown | None:
    """Why batteries that seem always in parallel may not be: what joins them was seen in part, a switch may hide there.

    None where every stretch between them was seen, or none seems joined.
    """
    seen = joined(
        facts.network, [f"{item.name}:+"], lambda edge: always_joined(edge) and getattr(edge, "gap", None) is None
    )
    others = [one.name for one in parallel(facts, item) if f"{one.name}:+" not in seen and one is not item]
    return (
        Unknown(f"part of what joins it to {', '.join(others)} was not seen and may hide a switch") if others else None
    )


def series_parallel(s: Subject, item: Equipment) -> tuple[Number, Number]:
    """Units in series, strings in parallel."""
    if item.kind != "bank":
        return 1.0, 1.0
    arrangement = s.read(item, "arrangement")
    if isinstance(arrangement, tuple):
        return float(arrangement[0]), float(arrangement[1])
    return UNKNOWN, UNKNOWN


def summed(s: Subject, key: str) -> Number:
    """What the strings of everything in parallel give together; each string as much as one unit."""
    return total([multiply(of_unit(s, item, key), series_parallel(s, item)[1]) for item in parallel(s.facts, s.item)])


@fact("bank", "chemistry", words=CHEMISTRIES, says="What its cells are made of.")
def chemistry(s: Subject) -> Any:
    return of_unit(s, s.item, "chemistry")


@fact("bank", "is_lithium", type="yes/no", says="Its cells are lithium cells.", method="chemistry")
def is_lithium(s: Subject) -> Any:
    word = s.chemistry
    return word.startswith("lithium") if isinstance(word, str) else word


@fact(
    "bank",
    "purpose",
    words=("starting", "house", "traction", "device"),
    says="What it is for.",
    method="given; else a battery that no alternator reaches is a house battery",
)
def purpose(s: Subject) -> Any:
    stated = of_unit(s, s.item, "purpose")
    written = any(one.has("purpose") for one in (s.item, unit(s.item)))
    if written or not isinstance(stated, Unknown):
        return stated
    network = s.facts.network
    near = joined(network, [home(s.facts, s.item)])
    if any(source.equipment.kind == "alternator" and source.live in near for source in network.sources):
        return Unknown(f"{s.id} does not say what it is for")
    s.note(lambda: "no alternator reaches it without a converter: a house battery")
    return "house"


@fact("bank", "own", words=("factory", "fitter", "owner"), says="Whose work it is.")
def own(s: Subject) -> Any:
    return s.read(s.item, "own")


@fact("bank", "units", unit="each", says="Batteries it is made of.")
def units(s: Subject) -> Any:
    if s.item.kind != "bank":
        apart = perhaps_apart(s.facts, s.item)
        return float(len(parallel(s.facts, s.item))) if apart is None else apart
    return s.read(s.item, "units")


@fact("bank", "in_parallel", unit="each", says="Strings that are always in parallel, batteries written out together.",
      method="arrangement of each bank that wires, fuses and bars join")  # fmt: skip
def in_parallel(s: Subject) -> Any:
    apart = None if s.item.name in s.facts.network.units else perhaps_apart(s.facts, s.item)
    if apart is not None:
        return apart
    return total([series_parallel(s, item)[1] for item in parallel(s.facts, s.item)])


@fact("bank", "most_in_parallel", unit="each", says="How many in parallel the maker of the battery allows.")
def most_in_parallel(s: Subject) -> Any:
    return of_unit(s, s.item, "most in parallel")


@fact("bank", "most_in_series", unit="each", says="How many in series the maker of the battery allows.")
def most_in_series(s: Subject) -> Any:
    return of_unit(s, s.item, "most in series")


@fact("bank", "arrangement_fits_units", type="yes/no", says="Series times parallel is the number of units.")
def arrangement_fits_units(s: Subject) -> Any:
    return equal(multiply(*series_parallel(s, s.item)), s.read(s.item, "units") if s.item.kind == "bank" else 1.0)


@fact("bank", "nominal_voltage", unit="V", says="Nominal voltage.", method="unit times units in series")
def nominal_voltage(s: Subject) -> Any:
    of_unit(s, s.item, "nominal")
    return nominal_of(s.facts.network, s.item, "")


@fact(
    "bank",
    "highest_voltage",
    unit="V",
    says="Voltage when full.",
    method="where its management stops charging, else by chemistry and cells",
    source=TABLE_SOURCE,
)
def highest_voltage(s: Subject) -> Any:
    return highest_of(s.facts.network, s.item, "")


@fact("bank", "stacked_voltage", unit="V", says="Voltage at its positive when full, with batteries in series below it.",
      method="its own and that of each battery whose positive a circuit joins to its negative")  # fmt: skip
def stacked(s: Subject) -> Any:
    return stacked_voltage(s.facts.network, s.item)


@fact("bank", "capacity", unit="Ah", says="Rated capacity.", method="unit times strings in parallel")
def capacity(s: Subject) -> Any:
    return summed(s, "capacity")


USABLE = {"lithium": 0.8, "lead": 0.5}


@fact(
    "bank",
    "usable_energy",
    unit="Wh",
    says="Energy that can be drawn every day.",
    method="rated capacity times nominal voltage times depth: 80 % for lithium, 50 % for lead-acid",
    source="common practice, no source",
)
def usable_energy(s: Subject) -> Any:
    word = s.chemistry
    if not isinstance(word, str):
        return Unknown(f"the chemistry of {s.id} is not known")
    depth = next((share for name, share in USABLE.items() if name in word), None)
    if depth is None:
        return Unknown(f"no depth of discharge is held for {word}")
    return multiply(multiply(s.capacity, s.nominal_voltage), depth)


@fact(
    "bank",
    "cells",
    unit="each",
    says="Cells in series in one unit.",
    method="given, else the numbers of cells that its nominal voltage can stand for",
    source=TABLE_SOURCE,
)
def cells(s: Subject) -> Any:
    stated = of_unit(s, s.item, "cells")
    if not isinstance(stated, Unknown):
        return stated
    word, volts = s.chemistry, of_unit(s, s.item, "nominal")
    if not isinstance(word, str) or not isinstance(volts, float):
        return Unknown(f"the number of cells of {s.id} is not known")
    fewest = corners(lambda nominal: float(cells_for(word, nominal)[0]), volts)
    most = corners(lambda nominal: float(cells_for(word, nominal)[1]), volts)
    return between(fewest, most) if isinstance(fewest, float) and isinstance(most, float) else fewest


@fact(
    "bank",
    "charge_voltage_limit",
    unit="V",
    says="Greatest voltage it may see while charging.",
    method="highest cell voltage of the chemistry times cells in series; lower when its management stops lower, and "
    "where nobody knows where that of a lithium bank stops, anything down to the rested voltage of full cells",
    source=TABLE_SOURCE,
)
def charge_voltage_limit(s: Subject) -> Any:
    series = series_parallel(s, s.item)[0]
    stop = of_unit(s, s.item, "bms.over voltage")
    by_cells = voltage_by_cells(s, series, 1)
    if isinstance(stop, float | Range):
        by_stop = multiply(stop, series)
        if isinstance(by_cells, Unknown):
            # Cells of which nobody knows what they are may stand less than their management lets through.
            return perhaps(by_stop)
        return least(by_stop, by_cells)
    if stop is None or s.is_lithium is False or isinstance(by_cells, Unknown):
        return by_cells
    # A management of which nobody knows where it stops: not below the rested voltage of full cells.
    return corners(
        lambda low, high, way: low + way * (high - low), voltage_by_cells(s, series, 0), by_cells, Range(0.0, 1.0)
    )


def voltage_by_cells(s: Subject, series: Number, end: int) -> Number:
    """Rested voltage when full (0), or greatest charging voltage (1), of cells in series."""
    word = s.chemistry
    if not isinstance(word, str):
        return Unknown(f"the chemistry of {s.id} is not known")
    return corners(lambda n, one: one * charge_window(word, n)[end], s.cells, series)


@fact(
    "bank",
    "full_voltage",
    unit="V",
    says="Rested voltage when full; a charger below it never fills it.",
    method="full cell voltage of the chemistry times cells in series",
    source=TABLE_SOURCE,
)
def full_voltage(s: Subject) -> Any:
    return voltage_by_cells(s, series_parallel(s, s.item)[0], 0)


@fact("bank", "restrained", type="yes/no", says="It is held against a crash and rough roads.")
def restrained(s: Subject) -> Any:
    stated = of_unit(s, s.item, "restraint")
    return False if stated is None else stated


@fact("bank", "movement", unit="mm", says="How far it can still move in its hold.")
def movement(s: Subject) -> Any:
    return of_unit(s, s.item, "restraint.movement")


@fact("bank", "terminal_covers", type="yes/no", says="Each of its live studs is covered.")
def terminal_covers(s: Subject) -> Truth:
    one = unit(s.item)
    found = [
        s.read(one.terminals[pole], "cover") if pole in one.terminals else _no_terminal(s, one, pole)
        for pole in ("+", "-")
    ]
    return every(False if cover is None else cover for cover in found)


def _no_terminal(s: Subject, one: Equipment, pole: str) -> Unknown:
    """A terminal of which the file says nothing, as an entry that would settle the question."""
    missing = Unknown(f"the cover of {s.id} {pole} is not told")
    s.use(f"{one.path}.terminals.{pole}.cover", Given(missing, one.where, MISSING))
    return missing


@fact(
    "bank",
    "safety_standard",
    words=(*SAFETY_STANDARDS, "other"),
    says="The widest recognised safety standard for cells or batteries it is said to meet; none when none is.",
    method="the first of the list IEC 62619, IEC 62620, IEC 63056, UL, SAE that is among those told",
)
def safety_standard(s: Subject) -> Any:
    stated = of_unit(s, s.item, "standard")
    if not isinstance(stated, tuple):
        return stated
    for known in SAFETY_STANDARDS:  # those that most codes take come first
        if any(isinstance(text, str) and known in text for text in stated):
            return known
    return "other" if stated else None


@fact("bank", "place", of="place", type="subject", says="Where it stands.")
def place(s: Subject) -> Any:
    name = s.read(s.item, "place")
    return s.facts.subject("place", name) if isinstance(name, str) else name


@fact(
    "bank",
    "coldest_air",
    unit="°C",
    says="Coldest air around it.",
    method="lowest temperature of its place, else the lowest air the vehicle is used in",
)
def coldest_air(s: Subject) -> Any:
    name = s.read(s.item, "place")
    where = s.facts.design.places.get(name) if isinstance(name, str) else None
    if where is not None:
        inside = s.read(where, "temperature")
        if isinstance(inside, Window):
            return inside.low
    outside = s.read(s.facts.design.vehicle, "ambient.low")
    untold = isinstance(name, Unknown) and s.item.has("place")
    if (untold or (where is not None and where.has("temperature"))) and isinstance(outside, float):
        return Range(outside, inf)  # stated as not known: it may be warmer there than the air around the vehicle
    return outside


@fact("bank", "window_charge", type="window", unit="°C", says="Cell temperatures at which it may be charged.")
def window_charge(s: Subject) -> Any:
    return of_unit(s, s.item, "window.charge")


@fact("bank", "window_discharge", type="window", unit="°C", says="Cell temperatures at which it may be discharged.")
def window_discharge(s: Subject) -> Any:
    return of_unit(s, s.item, "window.discharge")
