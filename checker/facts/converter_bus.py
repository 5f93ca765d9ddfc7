"""A bus without a battery: what its converter must give alone, and the voltage that its loads still see."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from checker.circuit.elements import Source
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.contacts import contacts, has_battery, signal_state
from checker.facts.levels import level_at
from checker.facts.loads import rated_current
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    both,
    either,
    equal,
    every,
    greatest,
    less_equal,
    negate,
    show,
    some,
    total,
)

STARTING = ("motor", "fan", "fridge", "air conditioner")
"""Loads that take much more at the start than in use."""


class Alone(NamedTuple):
    """One output of a dc converter in one mode that has no battery on its bus; `sure` False when a contact decides."""

    source: Source
    mode: Item
    sure: bool


def alone(facts: Facts, item: Equipment) -> list[Alone]:
    """The modes in which a dc converter holds a bus up by itself, fed by a battery on its other side."""
    held: dict[str, list[Alone]] = facts.store.setdefault("alone on the bus", {})
    if item.name not in held:
        found = []
        for source in facts.network.sources:
            if source.equipment is item and item.kind == "dc converter":
                other = f"{item.name}:{'high' if source.port == 'low' else 'low'}+"
                for mode in facts.design.modes.values():
                    without = both(negate(has_battery(facts, source.live, mode)), has_battery(facts, other, mode))
                    without = both(without, _works(facts, item, mode))
                    if without is not False and _loads_on(facts, source.live, mode):
                        found.append(Alone(source, mode, without is True))
        held[item.name] = found
    return held[item.name]


def _works(facts: Facts, item: Equipment, mode: Item) -> Truth:
    """Whether the signal that a converter needs is given in a mode; it works when the file names none."""
    name = item.value("enabled by")
    return signal_state(facts, name, mode) if item.has("enabled by") and name is not None else True


def _loads_on(facts: Facts, node: str, mode: Item) -> list[tuple[Equipment, str]]:
    near = joined(facts.network, [node], contacts(facts, mode).perhaps)
    return [(item, at) for at in near for item in facts.network.sinks.get(at, ()) if item.kind in LOADS]


@fact(
    "converter",
    "bus_has_battery",
    type="yes/no",
    says="A battery stands on the bus it feeds in every mode in which it feeds loads there.",
    method="graph with the contacts of each mode; modes in which it has no supply itself are left out",
)
def bus_has_battery(s: Subject) -> Truth:
    found = alone(s.facts, s.item)
    for one in found:
        s.note(_said(f"no battery on the {one.source.port} side in mode {one.mode.name}"))
    if any(one.sure for one in found):
        return False
    return Unknown("a contact decides whether a battery stands on its bus") if found else True


def _said(text: str) -> Callable[[], str]:
    return lambda: text


@fact(
    "converter",
    "peak_bus_current",
    unit="A",
    says="Current that all loads of a bus without a battery ask when they start together.",
    method="start or stall current of motors and compressors, rated current of the rest, summed; the worst mode",
)
def peak_bus_current(s: Subject) -> Any:
    found: list[Number] = []
    for one in alone(s.facts, s.item):
        level = level_at(s.facts, one.source.live)
        volts: Number = UNKNOWN if level is None else level.nominal
        asked = []
        for item, _ in _loads_on(s.facts, one.source.live, one.mode):
            asked.append(_first_current(s, item, volts))
            s.note(_said(f"{item.name} in mode {one.mode.name}: {show(asked[-1], 'A')}"))
        found.append(total(asked))
    return greatest(found) if found else None


def _first_current(s: Subject, item: Equipment, volts: Number) -> Number:
    """Greatest short current of a load (A); unknown for a motor or compressor that does not tell it."""
    told: list[Number] = []
    for key in ("start.current", "stall"):
        if item.allows(key):
            value = s.read(item, key)
            if isinstance(value, float | Range):
                told.append(value)
    if told:
        return greatest(told)
    if item.kind in STARTING:
        return Unknown(f"the start current of {item.name} is not told")
    return rated_current(item, volts)


@fact(
    "converter",
    "peak_output",
    unit="A",
    says="Current it gives for a short time to a bus that it holds up alone; at least the continuous one.",
)
def peak_output(s: Subject) -> Any:
    ports = dict.fromkeys(one.source.port for one in alone(s.facts, s.item))
    found = []
    for port in ports:
        stated = s.read(s.item, f"sides.{port}.peak.current")
        if isinstance(stated, Unknown):
            lasting = s.read(s.item, f"sides.{port}.current")
            low = lasting.low if isinstance(lasting, Range) else lasting
            stated = Range(low, float("inf")) if isinstance(low, float) else stated
        found.append(stated)
    return found[0] if len(found) == 1 else (None if not found else UNKNOWN)


@fact("converter", "peak_time", unit="s", says="How long it gives the peak to a bus that it holds up alone.")
def peak_time(s: Subject) -> Any:
    ports = dict.fromkeys(one.source.port for one in alone(s.facts, s.item))
    found = [s.read(s.item, f"sides.{port}.peak.time") for port in ports]
    return found[0] if len(found) == 1 else (None if not found else UNKNOWN)


@fact(
    "converter",
    "longest_start",
    unit="s",
    says="Longest start of a load on a bus that it holds up alone.",
)
def longest_start(s: Subject) -> Any:
    found: dict[str, Any] = {}
    for one in alone(s.facts, s.item):
        for item, _ in _loads_on(s.facts, one.source.live, one.mode):
            if item.kind in STARTING:
                found[item.name] = s.read(item, "start.time")
    if not found:
        return 0.0 if alone(s.facts, s.item) else None
    return greatest(list(found.values()))


@fact(
    "converter",
    "lowest_bus_voltage",
    unit="V",
    says="Lowest voltage at its terminals on a bus that it holds up alone.",
    method="the voltage it is set to feed with, as long as the peak of its loads stays within its own peak",
)
def lowest_bus_voltage(s: Subject) -> Any:
    if not alone(s.facts, s.item):
        return None
    within = less_equal(s.peak_bus_current, s.peak_output)
    if within is not True:
        return Unknown("beyond its peak a converter lets the voltage fall, nobody says how far")
    setting = s.read(s.item, "settings.feed voltage")
    if isinstance(setting, Unknown):
        setting = s.read(s.item, "settings.charge voltage")
    return setting


@fact(
    "converter",
    "lowest_load_voltage",
    unit="V",
    says="Voltage below which the first load of that bus stops working.",
    method="highest of the lower ends of the voltage windows of its loads",
)
def lowest_load_voltage(s: Subject) -> Any:
    found: dict[str, Number] = {}
    for one in alone(s.facts, s.item):
        for item, _ in _loads_on(s.facts, one.source.live, one.mode):
            if item.kind != "outlet":
                window = s.read(item, "voltage")
                found[item.name] = window.low if isinstance(window, Window) else UNKNOWN
    return greatest(list(found.values())) if found else None


@fact(
    "converter",
    "only_source",
    type="yes/no",
    says="It is the only source of a bus with loads in some mode: no battery there and no other converter.",
    method="graph with the contacts of each mode; a charger counts where mains is there, a converter where a battery "
    "feeds it, sun never",
)
def only_source(s: Subject) -> Truth:
    answers: list[Truth] = []
    for one in alone(s.facts, s.item):
        near = joined(s.facts.network, [one.source.live], contacts(s.facts, one.mode).perhaps)
        others = [
            _gives(s.facts, source, one.mode)
            for node in near
            for source in s.facts.network.sources_at.get(node, ())
            if source.equipment is not s.item
        ]
        answers.append(both(True if one.sure else UNKNOWN, negate(some(others))))
    return some(answers)


def _gives(facts: Facts, source: Source, mode: Item) -> Truth:
    """Whether another source on a bus can hold it up in a mode."""
    kind = source.equipment.kind
    if kind in ("alternator", "solar controller"):
        return False
    if kind == "dc converter":
        other = f"{source.equipment.name}:{'high' if source.port == 'low' else 'low'}+"
        return both(has_battery(facts, other, mode), _works(facts, source.equipment, mode))
    if kind in ("charger", "inverter-charger"):
        shore, generator = mode.value("shore"), mode.value("generator")
        plugged: Truth = UNKNOWN if isinstance(shore, Unknown) else not (isinstance(shore, str) and shore == "absent")
        return either(plugged, equal(generator, "running"))
    return True


@fact(
    "converter",
    "leaves_essentials_dark",
    type="yes/no",
    says="When it fails, an essential load without a cell of its own goes dark.",
    method="essential loads on a bus of which it is the only source",
)
def leaves_essentials_dark(s: Subject) -> Truth:
    listed = s.facts.design.essential.value
    names = {name for name in listed if isinstance(name, str)} if isinstance(listed, tuple) else set()
    lone = s.only_source
    if lone is False:
        return False
    found: dict[str, Truth] = {}
    for one in alone(s.facts, s.item):
        for item, _ in _loads_on(s.facts, one.source.live, one.mode):
            found[item.name] = _lost(s, item, item.name in names)
    return both(lone, some(found.values()))


def _lost(s: Subject, item: Equipment, listed: bool) -> Truth:
    essential: Truth = True if listed else s.read(item, "essential") if item.allows("essential") else False
    told = s.facts.design.essential.value
    if isinstance(essential, Unknown) and isinstance(told, tuple) and all(isinstance(name, str) for name in told):
        # The list of essential loads is written: what is not on it and not marked is none.
        essential = False
    cell = s.read(item, "own cell") if item.allows("own cell") else None
    without: Truth = True if cell is None else (UNKNOWN if isinstance(cell, Unknown) else False)
    return both(essential, without)


@fact(
    "converter",
    "covers_starts",
    type="yes/no",
    says="Its peak covers the loads of its bus starting together, for as long as the longest start.",
    method="peak current and time against the loads",
)
def covers_starts(s: Subject) -> Truth:
    if not alone(s.facts, s.item):
        return True
    lasting = s.read(s.item, f"sides.{alone(s.facts, s.item)[0].source.port}.current")
    without_peak = less_equal(s.peak_bus_current, lasting)
    with_peak = every((less_equal(s.peak_bus_current, s.peak_output), less_equal(s.longest_start, s.peak_time)))
    return either(without_peak, with_peak)
