"""Inverters on their battery: power and surge asked, loads that need a sine."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.catalogue import CATALOGUE, fact
from checker.facts.charging import charge_current, highest_setting, rating_key
from checker.facts.contacts import contacts, is_word
from checker.facts.converter import INVERTERS, charging_outputs
from checker.facts.converter_load import fed_power, fed_rating
from checker.facts.levels import level_at
from checker.facts.loads import rated_current, running_current
from checker.facts.subject import Facts, Subject
from checker.outofrange import OutOfRange
from checker.physics.converter import loss
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    add,
    corners,
    greatest,
    multiply,
    perhaps,
    some,
    total,
)
from checker.quantities.values import or_more

SENSITIVE = ("motor", "fan", "fridge", "air conditioner")
"""Loads that run hot, or not at all, on a stepped voltage."""


def _output(item: Equipment) -> str:
    return f"{item.name}:{'ac-out' if item.kind == 'inverter-charger' else 'ac'}L"


def _mains_loads(facts: Facts, item: Equipment, mode: Item | None) -> list[tuple[Equipment, str]]:
    """The loads an inverter feeds, with every contact closed or those of a mode."""
    passes = contacts(facts, mode).perhaps if mode is not None else _not_backwards
    near = joined(facts.network, [_output(item)], passes)
    return [(load, node) for node in near for load in facts.network.sinks.get(node, ()) if load.kind in LOADS]


def _not_backwards(edge: Edge) -> bool:
    return not (isinstance(edge, Link) and edge.when == "transfer")


def _running(s: Subject, mode: Item) -> dict[str, Any]:
    running = s.read(mode, "running")
    return dict(running) if isinstance(running, tuple) else {}


@fact(
    "converter",
    "asked_power",
    unit="W",
    says="Greatest power asked of it in any mode: what runs behind an inverter or on a bus that it holds up alone, or "
    "the charging of its battery.",
    method="loads running in each mode in which an inverter inverts, or in which no battery stands on the bus of a "
    "converter, alarms always; charging current times voltage",
)
def asked_power(s: Subject) -> Any:
    if s.item.kind in INVERTERS:
        found = [_asked_in(s, mode) for mode in s.facts.design.modes.values()]
        return greatest(found) if found else UNKNOWN
    if s.item.kind == "alternator":
        return None
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    asked = [multiply(charge_current(s, one), highest_setting(s, one)) for one in charging_outputs(s)]
    fed = fed_power(s)
    asked += [] if fed is None else [fed]
    return greatest(asked) if asked else None


def _asked_in(s: Subject, mode: Item) -> Number:
    inverting = is_word(s.read(mode, "inverter"), "inverting")
    if inverting is False:
        return 0.0
    running = _running(s, mode)
    found: list[Number] = []
    for item, node in _mains_loads(s.facts, s.item, mode):
        if item.name in running:
            level = level_at(s.facts, node)
            volts: Number = UNKNOWN if level is None else level.nominal
            entry = running[item.name]
            unit = "W" if entry.text.rstrip().endswith("W") else "A"
            found.append(multiply(running_current(entry, unit, volts), volts))
    asked = total(found)
    return asked if inverting is True else perhaps(asked)


@fact(
    "converter",
    "surge_asked",
    unit="W",
    says="Power that the hardest start behind an inverter asks while the rest runs.",
    method="in each mode: start current of one load connected times voltage, and what else runs then; the greatest. "
    "Where no mode lets it invert, each load connected by itself",
)
def surge_asked(s: Subject) -> Any:
    if s.item.kind not in INVERTERS:
        return None
    found: list[Number] = []
    for mode in s.facts.design.modes.values():
        inverting = is_word(s.read(mode, "inverter"), "inverting")
        if inverting is False:
            continue
        running = _running(s, mode)
        reached = _mains_loads(s.facts, s.item, mode)
        loads = [(item, node) for item, node in reached if item.name in running]
        # What is connected may start at any time, whether or not the mode has it running.
        for starter, node in (*loads, *(one for one in reached if one not in loads and one[0].kind in SENSITIVE)):
            asked = add(_start_power(s, starter, node), _rest(s, loads, starter, running))
            found.append(asked if inverting is True else perhaps(asked))
    if not found:  # no mode lets it invert; what is connected starts all the same when it does
        found = [_start_power(s, *one) for one in _mains_loads(s.facts, s.item, None) if one[0].kind in SENSITIVE]
    return greatest(found) if found else 0.0


def _start_power(s: Subject, item: Equipment, node: str) -> Number:
    level = level_at(s.facts, node)
    volts: Number = UNKNOWN if level is None else level.nominal
    if item.allows("start.current"):
        stated = s.read(item, "start.current")
        if isinstance(stated, float | Range):
            return multiply(stated, volts)
        if item.kind in SENSITIVE:
            return Unknown(f"the start current of {item.name} is not told")
    return multiply(rated_current(item, volts), volts)


def _rest(s: Subject, loads: list[tuple[Equipment, str]], starter: Equipment, running: dict[str, Any]) -> Number:
    found: list[Number] = []
    for item, node in loads:
        if item is not starter:
            level = level_at(s.facts, node)
            volts: Number = UNKNOWN if level is None else level.nominal
            entry = running[item.name]
            unit = "W" if entry.text.rstrip().endswith("W") else "A"
            found.append(multiply(running_current(entry, unit, volts), volts))
    return total(found)


@fact(
    "converter",
    "feeds_sine_loads",
    type="yes/no",
    says="Motors, compressors, chargers or outlets hang on an inverter, or a residual-current device does.",
    method="graph from its output; a load of which a start is told holds a motor",
)
def feeds_sine_loads(s: Subject) -> Truth:
    if s.item.kind not in INVERTERS:
        return False
    near = joined(s.facts.network, [_output(s.item)], _not_backwards)
    loads = {load.name: load for node in near for load in s.facts.network.sinks.get(node, ())}
    devices = {node.split(":", 1)[0] for node in near}
    residual = any(
        item.kind in ("rcd", "rcbo") for name in devices if (item := s.facts.network.equipment.get(name)) is not None
    )
    return some([residual, *(_needs_sine(s, load) for load in loads.values())])


def _needs_sine(s: Subject, load: Equipment) -> Truth:
    if load.kind in (*SENSITIVE, "outlet", "charger", "inverter-charger"):
        return True
    if not load.allows("start.current") or not load.has("start.current"):
        return False
    start = s.read(load, "start.current")  # a motor turns in it
    return start if isinstance(start, Unknown) else start is not None


@fact("converter", "loss", unit="W", says="Heat it makes at the greatest power asked of it.",
      method="P (1/efficiency - 1)", source="power balance of a converter")  # fmt: skip
def heat_loss(s: Subject) -> Any:
    asked = s.asked_power
    if asked is None:
        return None
    return corners(loss, asked, s.efficiency)


@fact(
    "converter",
    "air_temperature",
    unit="°C",
    says="Hottest air around it.",
    method="that of its place, else at least the hottest air the vehicle is used in",
)
def air_temperature(s: Subject) -> Any:
    name = s.read(s.item, "place") if s.item.allows("place") else UNKNOWN
    where = s.facts.design.places.get(name) if isinstance(name, str) else None
    if where is None:
        return Unknown(f"where {s.id} stands is not told")
    if CATALOGUE.find("place", "air_temperature") is not None:
        return s.facts.subject("place", where.name).air_temperature  # type: ignore[union-attr]
    outside = s.read(s.facts.design.vehicle, "ambient.high")
    return or_more(outside)


@fact(
    "converter",
    "derated_share",
    unit="%",
    says="Share of its rating that is left at the temperature of its place.",
    method="straight line from full output to none, as its maker says",
)
def derated_share(s: Subject) -> Any:
    if not s.item.allows("derates.above"):
        return None
    above, zero = s.read(s.item, "derates.above"), s.read(s.item, "derates.to zero at")
    if above is None:
        return 1.0

    def share(air: float, full: float, none: float) -> float:
        if none <= full:
            raise OutOfRange("temperature of no output, °C,", none, f"above {full:g}", "derating as stated")
        return min(1.0, max(0.0, (none - air) / (none - full)))

    return corners(share, s.air_temperature, above, zero)


@fact(
    "converter",
    "derated_output",
    unit="W",
    says="Power it still gives at the temperature of its place.",
    method="rating times derated share",
)
def derated_output(s: Subject) -> Any:
    rated: Number
    if s.item.kind in INVERTERS:
        rated = s.power
    else:
        found = [multiply(charge_rating(s, one), highest_setting(s, one)) for one in charging_outputs(s)]
        feeding = fed_rating(s)
        found += [] if feeding is None else [feeding]
        rated = greatest(found) if found else None
    return multiply(rated, s.derated_share)


def charge_rating(s: Subject, output: Any) -> Number:
    """Rated current of a charging output, its setting left out (A)."""
    if s.item.kind == "alternator":
        return UNKNOWN
    stated: Number = s.read(s.item, rating_key(output.source))
    return stated


@fact("converter", "is_loaded", type="yes/no", says="Some mode asks power of it.", method="modes")
def is_loaded(s: Subject) -> Truth:
    asked = s.asked_power
    if asked is None:
        return False
    return some(
        [UNKNOWN if isinstance(asked, Unknown) else (asked.high > 0 if isinstance(asked, Range) else asked > 0)]
    )
