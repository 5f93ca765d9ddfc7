"""Starts and stalls against the devices before them: a device must hold the one and open on the other."""

from __future__ import annotations

from collections.abc import Callable
from math import inf
from typing import Any

from checker.circuit.feeding import live_node
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.bank_limits import inverter_current
from checker.facts.catalogue import fact
from checker.facts.clearing import SOURCE, as_number, over, slowest
from checker.facts.earth_fault import next_loads
from checker.facts.least_fault import zones_of
from checker.facts.levels import level_at
from checker.facts.loads import rated_current
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.facts.zone_loads import fed_zones, loads_behind, supplying
from checker.physics.clearing import held_for, promised
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    add,
    either,
    equal,
    every,
    greatest,
    less_equal,
    negate,
    show,
    subtract,
)
from checker.quantities.values import perhaps

MOTORS = ("motor", "fan")
STARTING = ("motor", "fan", "fridge", "air conditioner")


def _said(text: str) -> Callable[[], str]:
    return lambda: text


@fact("load", "is_motor", type="yes/no", says="It is a motor, or a fan.", method="kind")
def is_motor(s: Subject) -> bool:
    return s.item.kind in MOTORS


@fact("load", "may_stall", type="yes/no",
      says="A motor turns in it that may be held still for long: a motor, a fan, a compressor.",
      method="kind, and how a refrigerator works; not what starts the engine, which stops with the key")  # fmt: skip
def may_stall(s: Subject) -> Truth:
    if s.item.kind == "fridge":
        works = s.read(s.item, "works by")
        return works if isinstance(works, Unknown) else works == "compressor"
    if s.item.kind not in (*MOTORS, "air conditioner"):
        return False
    starter = equal(s.read(s.item, "purpose"), "engine") if s.item.kind == "motor" else False
    return negate(starter) if isinstance(starter, bool) or s.item.has("purpose") else True


@fact("load", "stall_current", unit="A", says="Current when held still; none for what is no motor.")
def stall_current(s: Subject) -> Any:
    return s.read(s.item, "stall") if s.item.allows("stall") else None


@fact("load", "thermal_cut_out", type="yes/no", says="It has a thermal cut-out of its own.")
def thermal_cut_out(s: Subject) -> Any:
    return s.read(s.item, "thermal cut-out") if s.item.allows("thermal cut-out") else False


@fact("load", "own", words=("factory", "fitter", "owner"), says="Whose work it is.")
def own(s: Subject) -> Any:
    return s.read(s.item, "own")


@fact(
    "load",
    "protected_by",
    of="device",
    type="list",
    says="The devices through which it is fed with no other between, on the battery side.",
    method="graph: the devices at the edge of its zone behind which a source stands",
)
def protected_by(s: Subject) -> tuple[Any, ...]:
    node = f"{s.id}:+"
    if node not in s.facts.network.near:
        return ()
    borders = supplying(s.facts, zones_of(s.facts).of(node))
    found = (s.facts.subject("device", one.link.equipment.name) for one in borders)
    return tuple(one for one in found if one is not None)


@fact(
    "load",
    "stall_clears_by",
    unit="s",
    says="Time by which its device is promised to have opened when it is held still; no limit where one of its sources "
    "reaches it without a device.",
    method="upper edge of the time-current band at the stall current; the slowest of the devices of its sources",
    source=SOURCE,
)
def stall_clears_by(s: Subject) -> Any:
    devices = _of_mains(s) if equal(s.system, "ac") is True else _of_each_source(s)
    if isinstance(devices, Unknown):
        return devices
    if not devices:
        return inf
    current = s.stall_current
    found = []
    for device in devices:
        time = as_number(over(device, current, promised)) if current is not None else UNKNOWN
        ratio = f"{device.id} ({show(device.rating, 'A')}) at {show(current, 'A')}: promised open by {show(time, 's')}"
        s.note(_said(ratio))
        found.append(time)
    return slowest(found)


def _of_each_source(s: Subject) -> Any:
    """The devices between a load and each of its sources; none of them where one source reaches it without."""
    node, zones, network = f"{s.id}:+", zones_of(s.facts), s.facts.network
    zone = zones.of(node)
    found = list(s.protected_by)
    within = [one for one in network.sources if one.system == "dc" and zones.of(one.live) == zone]
    if within or not found:
        s.note(lambda: f"no device between {s.id} and {', '.join(one.name for one in within) or 'any source'}")
        return Unknown(f"a device before {s.id} may stand where nobody saw") if zones.hides(zone) else []
    for border in zones.borders(zone):
        device = s.facts.subject("device", border.link.equipment.name)
        beyond = joined(network, [border.outside], lambda edge, link=border.link: edge is not link)  # type: ignore[misc]
        if device is not None and device not in found and any(network.sources_at.get(one) for one in beyond):
            found.append(device)
    return tuple(found)


def _of_mains(s: Subject) -> Any:
    """The breakers of the mains circuits that end at a load; one that others share is not counted on."""
    found: dict[str, Subject] = {}
    for circuit in s.facts.subjects("circuit"):
        if s.id not in {port.equipment for port in circuit.item.ends}:
            continue
        own = circuit.own_device
        if own is None or isinstance(own, Unknown):
            return Unknown(f"which device {s.id} has for itself is not known")
        found[own.id] = own
    return tuple(found.values())


class Start:
    """One start behind a device: who, the current through the device (A), how long (s), how long it surely holds."""

    __slots__ = ("current", "holds", "item", "time")

    def __init__(self, item: Equipment, current: Number, time: Number, holds: Number) -> None:
        self.item = item
        self.current = current
        self.time = time
        self.holds = holds


def starts(s: Subject) -> list[Start]:
    """The starts and surges of what a device feeds, each with what else runs through it."""
    kept: dict[str, list[Start]] = s.facts.store.setdefault("starts", {})
    if s.id in kept and s.facts.recorder is None:
        return kept[s.id]
    found = []
    for item, node in _behind(s):
        pair = _surge(s, item) if not item.allows("start.current") and item.kind.startswith("inverter") else None
        if pair is None and item.allows("start.current"):
            pair = _start(s, item, node)
        if pair is None:
            continue
        current, time = pair
        holds = as_number(over(s, current, held_for))
        line = f"{item.name}: {show(current, 'A')} for {show(time, 's')}; surely held for {show(holds, 's')}"
        s.note(_said(line))
        found.append(Start(item, current, time, holds))
    kept[s.id] = found
    return found


def _behind(s: Subject) -> list[tuple[Equipment, str]]:
    """What it feeds with no further device between, with the node at which each draws.

    All that an inverter takes passes the main device of its bank as well as its own.
    """
    if equal(s.system, "ac") is not True:
        near = loads_behind(s)
        known = {item.name for item, _ in near}
        return near + [(item, f"{item.name}:dc+") for item in _through(s) if item.name not in known]
    return [(item, live_node(item)) for item in next_loads(s.facts, s.id)]


def _through(s: Subject) -> list[Equipment]:
    """The inverters that no battery reaches but through the device."""
    found = []
    for converter in s.facts.subjects("converter"):
        way = converter.way_devices
        if not isinstance(way, Unknown) and any(device.id == s.id for device in way):
            found.append(converter.item)
    return found


def _start(s: Subject, item: Equipment, node: str) -> tuple[Number, Number] | None:
    """Current through the device and time of a start, None for a load without one."""
    stated, time = s.read(item, "start.current"), s.read(item, "start.time")
    if not isinstance(stated, float | Range):
        told = item.has("start.current") or item.has("start.time")
        if item.kind in STARTING or (told and stated is not None):
            return Unknown(f"the start current of {item.name} is not told"), time
        return None
    level = level_at(s.facts, node)
    own_current = rated_current(item, UNKNOWN if level is None else level.nominal)
    others = subtract(s.load_current, own_current)
    if isinstance(others, Unknown):  # what it takes in running is not known: all the rest runs, or nothing
        load = s.load_current
        others = perhaps(load) if isinstance(load, float | Range) else Range(0.0, inf)
    return add(stated, greatest(others, 0.0)), time


def _surge(s: Subject, item: Equipment) -> tuple[Number, Number] | None:
    return inverter_current(s, item, peak=True), s.read(item, "surge.time")


@fact(
    "device",
    "greatest_start",
    unit="A",
    says="Greatest short current of a start or surge through it; none when nothing behind it starts.",
    method="start current, or surge of an inverter at its lowest voltage, with what else runs",
)
@where_it_stands
def greatest_start(s: Subject) -> Any:
    found = [one.current for one in starts(s)]
    return greatest(found) if found else None


@fact(
    "device",
    "has_starts",
    type="yes/no",
    says="Motors, compressors or inverters draw through it with no other device between; or all that an inverter "
    "takes from its batteries.",
    method="graph",
)
@where_it_stands
def has_starts(s: Subject) -> Truth:
    found = bool(starts(s))
    loose = None if found else loose_bank(s.facts)
    return found if loose is None else loose


@fact(
    "device",
    "holds_starts",
    type="yes/no",
    says="It surely stays closed while what it feeds starts.",
    method="time of each start at most the lower edge of the time-current band at its current",
    source=SOURCE,
)
@where_it_stands
def holds_starts(s: Subject) -> Truth:
    loose = loose_bank(s.facts)
    answers: list[Truth] = [] if loose is None else [loose]
    for one in starts(s):
        below = less_equal(one.current, s.rating)  # what is not above the rating is held however long it lasts
        answers.append(either(below, less_equal(one.time, one.holds)))
    answer = every(answers)
    zones = zones_of(s.facts)
    if answer is False and any(zones.hides(zones.of(node)) for _, node in fed_zones(s)):
        return Unknown("part of what it feeds was not seen, and a device may stand before what starts")
    return answer
