"""The low end of a voltage away from batteries: at the plug of a towing vehicle, and behind a monitor that opens."""

from __future__ import annotations

from typing import NamedTuple

from checker.circuit.elements import Link, Source, Wire
from checker.circuit.supply import is_live
from checker.design.model import Equipment
from checker.facts.subject import Facts, Subject
from checker.outofrange import OutOfRange
from checker.physics.conductor_resistance import copper_resistance_per_metre, table_resistance_per_metre
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Unknown,
    Window,
    corners,
    divide,
    greatest,
    least,
    multiply,
    subtract,
    total,
)
from checker.quantities.values import or_more

CABLE_C = 70.0
"""Temperature taken for the cable within a towing vehicle; common practice, no source."""


def at_plug(facts: Facts, source: Source) -> tuple[Number, Number]:
    """Lowest voltage at a contact of the plug in use (V), and there-and-back resistance before it (ohm).

    From the cable within the towing vehicle, else from the least short-circuit current at the plug, which counts the
    battery there as well and so may make the resistance too great: then anything down from none is possible.
    """
    item = source.equipment
    window = item.value("source end.voltage")
    if not isinstance(window, Window):
        missing = Unknown(f"the voltage at the towing vehicle before {source.name} is not told")
        return missing, missing
    ohms = multiply(multiply(item.value("source end.length"), 2.0), corners(_per_metre, item.value("source end.size")))
    if isinstance(ohms, Unknown):
        amps = item.value("source end.fault current")
        worst = divide(window.low, amps.low) if isinstance(amps, Window) else UNKNOWN
        top = worst.high if isinstance(worst, Range) else worst
        ohms = Range(0.0, top) if isinstance(top, float) else Unknown(f"the cable before {source.name} is not told")
    return subtract(window.low, multiply(_drawn(facts, source), ohms)), ohms


def _per_metre(area: float) -> float:
    try:
        return table_resistance_per_metre(area, "class 5", CABLE_C)
    except OutOfRange:
        return copper_resistance_per_metre(area, CABLE_C)


def _drawn(facts: Facts, source: Source) -> Number:
    """Current in use through a contact: of every circuit that starts at it, A."""
    found = [
        circuit.load_current
        for circuit in facts.subjects("circuit")
        if circuit.item.start.equipment == source.equipment.name and circuit.item.start.port == source.port
    ]
    return total(found)


class Part(NamedTuple):
    """Live nodes joined up to the monitors that open: the monitors met, whether some stretch was not seen, whether a
    source stands among them."""

    monitors: tuple[Equipment, ...]
    hidden: bool
    fed: bool


def with_monitor(s: Subject, node: str, volts: Number) -> Number:
    """The least lasting voltage of a part, V: not below where the monitors on every way from its sources open.

    A monitor of which the setting is not told, or one that may hide where nobody looked, leaves the voltage open
    upwards.
    """
    monitors, hidden, fed = _part_of(s.facts, node)
    settings = [s.read(one, "trips below") for one in monitors]
    trips = [one for one in settings if one is not None]
    if not hidden and (fed or not trips):
        return volts
    stop = UNKNOWN if hidden else least(trips)
    if isinstance(stop, Unknown):
        return or_more(volts)
    return volts if isinstance(volts, Unknown) else greatest(volts, stop)


def _part_of(facts: Facts, node: str) -> Part:
    """The part a node lies in; walked once for all its nodes."""
    kept: dict[str, Part] = facts.store.setdefault("parts between monitors", {})
    found = kept.get(node)
    if found is None:
        found, nodes = _walk(facts, node)
        # A recorder shall see the monitors as they are met from each node.
        kept.update(dict.fromkeys(nodes if facts.recorder is None else (), found))
    return found


def _walk(facts: Facts, node: str) -> tuple[Part, set[str]]:
    seen, todo = {node}, [node]
    monitors: list[Equipment] = []
    hidden = False
    while todo:
        here = todo.pop()
        for edge, far in facts.network.near.get(here, ()):
            if not is_live(edge):
                continue
            hidden = hidden or (isinstance(edge, Wire) and edge.gap is not None)
            if isinstance(edge, Link) and edge.equipment.kind == "voltage monitor":
                monitors.append(edge.equipment)
                if edge.equipment.value("trips below") is not None:
                    continue
            if far not in seen:
                seen.add(far)
                todo.append(far)
    return Part(tuple(monitors), hidden, any(one.live in seen for one in facts.network.sources)), seen
