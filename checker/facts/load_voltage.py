"""The voltages a battery-side load sees: highest, lowest over all modes, and while it starts itself."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from checker.circuit.elements import LIVE, Source
from checker.circuit.groups import Groups
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.charging import rating_key
from checker.facts.contacts import contacts, engine_runs
from checker.facts.converter_bus import alone, gives, is_mains_charger, peak_key
from checker.facts.least_fault import ASSUMED, low_voltage, weak_source
from checker.facts.levels import level_at, read_level
from checker.facts.low_end import at_plug, with_monitor
from checker.facts.subject import Facts, Subject
from checker.physics.motor import voltage_at_limit
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Unknown,
    Window,
    add,
    corners,
    greatest,
    least,
    less_equal,
    multiply,
    show,
    subtract,
)


class Held(NamedTuple):
    """Who holds up a part in one mode: the lowest voltage (V), that of a low battery at rest, its resistance (ohm)."""

    mode: str
    volts: Number
    low: Number
    ohms: Number
    sources: tuple[Source, ...]
    peak: Number

    def by_others(self, item: Item) -> bool:
        """Whether something else than this equipment holds it up."""
        return any(source.equipment is not item for source in self.sources)


TOLD = (
    "set voltage", "chemistry", "nominal", "cells", "bms.under voltage", "settings.feed voltage",
    "source end.voltage", "source end.length", "source end.size", "source end.fault current",
)  # fmt: skip
"""What a held voltage may rest on."""


def _said(text: str) -> Callable[[], str]:
    return lambda: text


def node_of(s: Subject) -> str | None:
    """The battery-side terminal at which a load is connected."""
    node = f"{s.id}:+"
    return node if node in s.facts.network.near else None


def held_in_modes(facts: Facts, node: str) -> list[Held]:
    """What holds up the part of a node in each mode in which something does; found once for all its loads."""
    found = []
    for mode in facts.design.modes.values():
        groups, held = parts_of(facts, mode)
        one = held.get(groups.find(node))
        if one is not None:
            found.append(one)
    return found


def parts_of(facts: Facts, mode: Item) -> tuple[Groups, dict[str, Held]]:
    """The live nodes joined in a mode, contacts that may be closed taken as closed, and what holds up each part."""
    kept: dict[str, tuple[Groups, dict[str, Held]]] = facts.store.setdefault("held in modes", {})
    if mode.name not in kept:
        state, groups = contacts(facts, mode), Groups()
        for conductor in facts.network.conductors:
            if conductor.role == LIVE:
                for wire in conductor.wires:
                    groups.join(wire.a, wire.b)
        for link in facts.network.links:
            if link.pole == LIVE and state.perhaps(link):
                groups.join(link.a, link.b)
        at: dict[str, list[Source]] = {}
        for source in facts.network.sources:
            if source.system == "dc":
                at.setdefault(groups.find(source.live), []).append(source)
        held = {name: one for name, sources in at.items() if (one := _held(facts, sources, mode)) is not None}
        kept[mode.name] = groups, held
    return kept[mode.name]


def _held(facts: Facts, sources: list[Source], mode: Item) -> Held | None:
    if engine_runs(mode) is True:
        for source in sources:
            if source.equipment.kind == "alternator":
                window = source.equipment.value("set voltage")
                volts = window.low if isinstance(window, Window) else UNKNOWN
                return Held(mode.name, volts, volts, 0.0, (source,), float("inf"))
    found = [held for source in sources if (held := _by_source(facts, source, mode)) is not None]
    if not found:
        return None
    worst = least([one.volts for one in found])
    batteries = [one for one in found if any(source.storage for source in one.sources)]
    ohms = least([one.ohms for one in batteries]) if batteries else 0.0
    peak = float("inf") if batteries else least([one.peak for one in found])
    holding = tuple(source for one in found for source in one.sources)
    return Held(mode.name, worst, least([one.low for one in found]), ohms, holding, peak)


def _by_source(facts: Facts, source: Source, mode: Item) -> Held | None:
    item = source.equipment
    if source.storage:
        if item.kind == "vehicle coupling":
            volts, ohms = at_plug(facts, source)
            window = item.value("source end.voltage")
            low = window.low if isinstance(window, Window) else UNKNOWN
            return Held(mode.name, volts, low, ohms, (source,), float("inf"))
        pair = weak_source(facts, source)
        known = item.kind in ("battery", "bank")
        volts = _discharged(facts, item) if known else UNKNOWN
        low = low_voltage(facts, item) if known else UNKNOWN
        return Held(mode.name, volts, low, UNKNOWN if pair is None else pair[1], (source,), float("inf"))
    if item.kind == "dc converter" and (source.port == "low" or item.value("both ways") is not True):
        setting = item.value("settings.feed voltage")
        if source.port == "high" and isinstance(item.value("both ways"), Unknown):
            setting = Unknown(f"which way {item.name} works is not told")
        elif isinstance(setting, Unknown):
            setting = item.value("settings.charge voltage")
        peak = item.value(f"sides.{source.port}.peak.current")
        if not isinstance(peak, float | Range):
            peak = item.value(f"sides.{source.port}.current")
        return Held(mode.name, setting, setting, 0.0, (source,), peak)
    if is_mains_charger(source) and alone(facts, item) and gives(facts, source, mode) is not False:
        setting = item.value("settings.charge voltage")
        peak = item.value(key) if item.allows(key := peak_key(source, "current")) else UNKNOWN
        return Held(
            mode.name,
            setting,
            setting,
            0.0,
            (source,),
            item.value(rating_key(source)) if isinstance(peak, Unknown) else peak,
        )
    return None


def _discharged(facts: Facts, item: Equipment) -> Number:
    """Where the management stops discharging, else the rested voltage of a low battery, V."""
    one = item.base if item.kind == "bank" and item.base is not None else item
    stop = one.value("bms.under voltage") if one.allows("bms.under voltage") else UNKNOWN
    if isinstance(stop, Unknown) and one.has("bms.under voltage"):
        return Unknown(f"where the management of {item.name} stops discharging is written as unknown")
    low = low_voltage(facts, item)
    if not isinstance(stop, float | Range):
        return low
    arrangement = item.value("arrangement") if item.kind == "bank" else None
    base = item.base if item.kind == "battery" else None
    if base is not None and base.kind == "bank":
        arrangement = base.value("arrangement")
    return multiply(stop, float(arrangement[0])) if isinstance(arrangement, tuple) else stop


@fact(
    "load",
    "highest_voltage",
    unit="V",
    says="Highest voltage on its part of the battery side.",
    method="highest of the settings of chargers and the full battery there",
)
def highest_voltage(s: Subject) -> Any:
    node = node_of(s)
    level = None if node is None else level_at(s.facts, node)
    read_level(s, level)
    return Unknown(f"{s.id} is connected to no battery-side circuit") if level is None else level.highest


@fact(
    "load",
    "supply_nominal",
    unit="V",
    says="Nominal voltage of its part of the battery side.",
    method="equipment on the same part of the graph",
)
def supply_nominal(s: Subject) -> Any:
    node = node_of(s)
    level = None if node is None else level_at(s.facts, node)
    read_level(s, level)
    return Unknown(f"{s.id} is connected to no battery-side circuit") if level is None else level.nominal


@fact(
    "load",
    "lowest_voltage",
    unit="V",
    says="Lowest voltage at its terminals while it runs, over all modes that supply it.",
    method="alternator at its lowest setting, else the battery where its management stops or 10 % charged, else the "
    "converter as set, else the plug of a towing vehicle behind the cable over there; not below where a monitor on "
    "every way opens; less the drop of the circuit",
    source="Ohm's law; a low battery by common practice, no source",
)
def lowest_voltage(s: Subject) -> Any:
    node = node_of(s)
    if node is None:
        return Unknown(f"{s.id} is connected to no battery-side circuit")
    held = held_in_modes(s.facts, node)
    loose = loose_bank(s.facts)
    if not held or loose is not None:
        return Unknown(f"no mode supplies {s.id}") if loose is None else loose
    for one in held:
        tell(s, one)
        who = " and ".join(source.name for source in one.sources)
        s.note(_said(f"mode {one.mode}: {who} holds {show(one.volts, 'V')}"))
    lost = circuits_of(s)
    if isinstance(lost, Unknown):
        return lost
    volts = with_monitor(s, node, least([one.volts for one in held]))
    left = subtract(volts, greatest([one.drop for one in lost]) if lost else 0.0)
    return greatest(left, 0.0)  # what asks for more than its source can bring pulls it down to nothing, not beyond


def tell(s: Subject, held: Held) -> None:
    """Note what a held voltage rests on."""
    if s.facts.recorder is None:
        return
    for source in held.sources:
        item = source.equipment
        one = item.base if item.kind == "bank" and item.base is not None else item
        for key in TOLD:
            if one.allows(key):
                s.read(one, key)
    if any(source.storage for source in held.sources):
        s.note(ASSUMED.__str__)


def circuits_of(s: Subject) -> list[Subject] | Unknown:
    """The circuits that end at a load."""
    by_load: dict[str, list[Subject]] | None = s.facts.store.get("circuits by load")
    if by_load is None:
        by_load = s.facts.store["circuits by load"] = {}
        for circuit in s.facts.subjects("circuit"):
            for port in circuit.item.ends:
                by_load.setdefault(port.equipment, []).append(circuit)
    found = [one for one in by_load.get(s.id, []) if one.system == "dc"]
    return found or Unknown(f"no circuit ends at {s.id}")


@fact(
    "load",
    "start_voltage",
    unit="V",
    says="Lowest voltage at its terminals while it starts; none for what has no start current.",
    method="held voltage less start current times battery and loop resistance, less the drop of the feeders; a "
    "converter holds its setting up to its peak and limits beyond it",
    source="Ohm's law; battery 10 % charged with 1.5 times its stated resistance: common practice, no source",
)
def start_voltage(s: Subject) -> Any:
    if not s.item.allows("start.current"):
        return None
    current = s.read(s.item, "start.current")
    if isinstance(current, Unknown):
        return Unknown(f"the start current of {s.id} is not told") if _has_motor(s) else None
    node = node_of(s)
    lost = circuits_of(s)
    if node is None or isinstance(lost, Unknown):
        return Unknown(f"no battery-side circuit ends at {s.id}")
    found = []
    for one in held_in_modes(s.facts, node):
        tell(s, one)
        ready = held_for_start(one, current)
        if isinstance(ready, Unknown):
            return ready
        one = ready
        for circuit in lost:
            found.append(_at_start(circuit, one, current))
            s.note(_said(f"mode {one.mode}: {show(one.low, 'V')} held, {show(found[-1], 'V')} at its terminals"))
    return least(found) if found else Unknown(f"no mode supplies {s.id}")


def start_or_stall(s: Subject, item: Equipment) -> Number:
    """The greatest current of a load that starts or is held still, as its neighbours meet it (A).

    A motor starts from standstill, so that the one stands for the other where the file leaves it out. Held still it
    does no work itself, at whatever voltage.
    """
    start = s.read(item, "start.current")
    stall = s.read(item, "stall") if item.allows("stall") else None
    if isinstance(stall, float | Range):
        told = isinstance(start, float | Range)
        return greatest(start, stall) if told or item.has("start.current") else stall
    return stall if isinstance(stall, Unknown) and item.has("stall") else start


def held_for_start(held: Held, current: Number) -> Held | Unknown:
    """What is held up while a start current flows; unknown where a converter may shut down."""
    if less_equal(current, held.peak) is True:
        return held
    items = [source.equipment for source in held.sources]
    if not all(item.allows("at fault") and item.says("at fault", "limits") for item in items):
        return Unknown("beyond its peak a converter may shut down")
    # Until it turns a motor is a resistance, which takes its share of the voltage.
    return held._replace(low=corners(voltage_at_limit, held.low, held.peak, current))


STARTS = ("motor", "fan", "fridge", "air conditioner")


def _has_motor(s: Subject) -> bool:
    """Whether it perhaps starts a motor: not a fridge of which the file says that it cools by heat or by current."""
    works_by = s.read(s.item, "works by") if s.item.kind == "fridge" else None
    return s.item.kind in STARTS and not (isinstance(works_by, str) and works_by != "compressor")


def _at_start(circuit: Subject, held: Held, current: Number) -> Number:
    ohms = add(held.ohms, circuit.loop_resistance)
    feeders: Number = 0.0
    for feeder in circuit.fed_by:
        ohms = add(ohms, feeder.loop_resistance)
        feeders = add(feeders, feeder.own_drop)
    left = subtract(subtract(held.low, multiply(current, ohms)), feeders)
    return corners(_none_below, left)


def _none_below(volts: float) -> float:
    """Where the loop cannot bring the current, no voltage is left at all."""
    return max(0.0, volts)


@fact(
    "load",
    "least_voltage",
    unit="V",
    says="Lower end of the voltages it works at.",
)
def least_voltage(s: Subject) -> Any:
    window = s.voltage_window
    return window.low if isinstance(window, Window) else UNKNOWN


@fact("load", "most_voltage", unit="V", says="Upper end of the voltages it works at.")
def most_voltage(s: Subject) -> Any:
    window = s.voltage_window
    return window.high if isinstance(window, Window) else UNKNOWN
