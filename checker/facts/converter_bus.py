"""A bus without a battery: what its converter must give alone, and the voltage that its loads still see."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from checker.circuit.elements import Source
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank_limits import inverter_current
from checker.facts.catalogue import fact
from checker.facts.charging import rating_key
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
    corners,
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

INVERTERS = ("inverter", "inverter-charger")
STARTING = ("motor", "fan", "fridge", "air conditioner")
"""Loads that take much more at the start than in use."""


class Alone(NamedTuple):
    """One output of a dc converter in one mode that has no battery on its bus; `sure` False when a contact decides."""

    source: Source
    mode: Item
    sure: bool


def alone(facts: Facts, item: Equipment) -> list[Alone]:
    """The modes in which a converter holds a bus up by itself, fed by a battery on its other side or by the mains."""
    held: dict[str, list[Alone]] = facts.store.setdefault("alone on the bus", {})
    if item.name not in held:
        found = []
        for source in facts.network.sources:
            if source.equipment is item and (item.kind == "dc converter" or is_mains_charger(source)):
                for mode in facts.design.modes.values():
                    fed = [one for one, _ in _loads_on(facts, source.live, mode) if one is not item]
                    without = both(negate(has_battery(facts, source.live, mode)), gives(facts, source, mode))
                    if without is not False and fed:
                        found.append(Alone(source, mode, without is True))
        held[item.name] = found
    return held[item.name]


def is_mains_charger(source: Source) -> bool:
    """Whether it is the battery side of a charger, or of an inverter-charger."""
    return source.equipment.kind in ("charger", "inverter-charger") and source.port == "dc"


def _works(facts: Facts, item: Equipment, mode: Item) -> Truth:
    """Whether the signal that a converter needs is given in a mode; it works when the file names none."""
    name = item.value("enabled by")
    return signal_state(facts, name, mode) if item.has("enabled by") and name is not None else True


def _loads_on(facts: Facts, node: str, mode: Item) -> list[tuple[Equipment, str]]:
    """The loads and inverters that draw from a bus in a mode, with the node at which they do."""
    near = joined(facts.network, [node], contacts(facts, mode).perhaps)
    sinks = ((item, at) for at in near for item in facts.network.sinks.get(at, ()))
    return [(item, at) for item, at in sinks if item.kind in LOADS or (item.kind in INVERTERS and at.endswith("dc+"))]


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
    method="start or stall current of motors and compressors, surge of inverters, rated current of the rest, summed; "
    "of those that start by themselves only one starts while the others run; the worst mode",
)
def peak_bus_current(s: Subject) -> Any:
    found: list[Number] = []
    for one in alone(s.facts, s.item):
        level = level_at(s.facts, one.source.live)
        volts: Number = UNKNOWN if level is None else level.nominal
        asked = []
        for item, _ in _loads_on(s.facts, one.source.live, one.mode):
            if item is s.item:
                continue
            asked.append(_asked(s, item, volts))
            s.note(_said(f"{item.name} in mode {one.mode.name}: {show(asked[-1].start, 'A')}"))
        found.append(_together(asked))
    return greatest(found) if found else None


class Asked(NamedTuple):
    """What one load asks of a bus (A), and whether it never starts together with another."""

    start: Number
    running: Number
    by_itself: Truth


def _asked(s: Subject, item: Equipment, volts: Number) -> Asked:
    if item.kind in INVERTERS:
        start = inverter_current(s, item, peak=True)
        return Asked(start, start, False)
    by_itself = s.read(item, "start.alone") if item.allows("start.alone") else False
    return Asked(_first_current(s, item, volts), rated_current(item, volts), by_itself)


def _together(asked: list[Asked]) -> Number:
    """The greatest sum: all start but those that do so by themselves, of which one does while the others run."""
    surely = _in_turn(asked, [one for one in asked if one.by_itself is True])
    if not any(isinstance(one.by_itself, Unknown) for one in asked):
        return surely
    least_of_all = _in_turn(asked, [one for one in asked if one.by_itself is not False])
    return corners(lambda share, low, high: low + share * (high - low), Range(0.0, 1.0), least_of_all, surely)


def _in_turn(asked: list[Asked], single: list[Asked]) -> Number:
    rest = [one.start for one in asked if not any(one is other for other in single)]
    turns = [total([*rest, one.start, *(other.running for other in single if other is not one)]) for one in single]
    return greatest(turns) if turns else total(rest)


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


def peak_key(source: Source, what: str) -> str:
    """The key of the peak `current` of an output, or of its `time`."""
    side = "dc" if source.equipment.kind == "charger" else f"sides.{source.port}"
    return f"{side}.peak.{what}"


@fact(
    "converter",
    "peak_output",
    unit="A",
    says="Current it gives for a short time to a bus that it holds up alone; at least the continuous one.",
)
def peak_output(s: Subject) -> Any:
    found = []
    for source in {one.source.port: one.source for one in alone(s.facts, s.item)}.values():
        stated = s.read(s.item, key) if s.item.allows(key := peak_key(source, "current")) else UNKNOWN
        if isinstance(stated, Unknown):
            lasting = s.read(s.item, rating_key(source))
            low = lasting.low if isinstance(lasting, Range) else lasting
            stated = Range(low, float("inf")) if isinstance(low, float) else stated
        found.append(stated)
    return found[0] if len(found) == 1 else (None if not found else UNKNOWN)


@fact("converter", "peak_time", unit="s", says="How long it gives the peak to a bus that it holds up alone.")
def peak_time(s: Subject) -> Any:
    keys = dict.fromkeys(peak_key(one.source, "time") for one in alone(s.facts, s.item))
    found = [s.read(s.item, key) if s.item.allows(key) else UNKNOWN for key in keys]
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
            elif item.kind in INVERTERS and item is not s.item:
                found[item.name] = s.read(item, "surge.time")
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
            if item.kind != "outlet" and item is not s.item:
                window = s.read(item, "dc.voltage" if item.kind in INVERTERS else "voltage")
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
            gives(s.facts, source, one.mode)
            for node in near
            for source in s.facts.network.sources_at.get(node, ())
            if source.equipment is not s.item
        ]
        answers.append(both(True if one.sure else UNKNOWN, negate(some(others))))
    return some(answers)


def gives(facts: Facts, source: Source, mode: Item) -> Truth:
    """Whether another source on a bus can hold it up in a mode."""
    kind = source.equipment.kind
    if kind in ("alternator", "solar controller"):
        return False
    if kind == "dc converter":
        other = f"{source.equipment.name}:{'high' if source.port == 'low' else 'low'}+"
        fed = either(has_battery(facts, other, mode), _mains_feeds(facts, other, mode))
        return both(fed, _works(facts, source.equipment, mode))
    if kind in ("charger", "inverter-charger"):
        shore, generator = mode.value("shore"), mode.value("generator")
        plugged: Truth = UNKNOWN if isinstance(shore, Unknown) else not (isinstance(shore, str) and shore == "absent")
        return both(either(plugged, equal(generator, "running")), _works(facts, source.equipment, mode))
    return True


def _mains_feeds(facts: Facts, node: str, mode: Item) -> Truth:
    """Whether a charger on the mains feeds the bus of a node in a mode."""
    near = joined(facts.network, [node], contacts(facts, mode).perhaps)
    found = (one for at in near for one in facts.network.sources_at.get(at, ()) if is_mains_charger(one))
    answer = some(gives(facts, one, mode) for one in found)
    surely = joined(facts.network, [node], contacts(facts, mode).surely)
    return UNKNOWN if answer is True and len(surely) < len(near) else answer


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
    lasting = s.read(s.item, rating_key(alone(s.facts, s.item)[0].source))
    without_peak = less_equal(s.peak_bus_current, lasting)
    with_peak = every((less_equal(s.peak_bus_current, s.peak_output), less_equal(s.longest_start, s.peak_time)))
    return either(without_peak, with_peak)
