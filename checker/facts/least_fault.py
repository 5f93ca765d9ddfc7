"""Short circuits at the far end of what a device protects: from the weakest battery, and from what limits itself."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import BONDING, LIVE, RETURN, Link, Source, Wire
from checker.circuit.least_faults import LeastFaults, Path
from checker.circuit.zones import Zones
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.charging import rating_key
from checker.facts.conductor import resistance_per_metre
from checker.facts.conductor_given import wire_length
from checker.facts.converter_bus import alone, is_mains_charger
from checker.facts.levels import highest_of, nominal_of
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.physics.battery import lfp_cell_voltage
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    add,
    divide,
    greatest,
    least,
    multiply,
    show,
)
from checker.quantities.values import or_more

LOW_STATE = 0.1
"""State of charge of a low battery; common practice, no source."""
LEAD_LOW_SHARE = 11.8 / 12.0
"""Rested voltage of a low lead-acid battery over nominal; common practice, no source."""
OTHER_LOW_SHARE = 0.9
"""The same for a chemistry of which no curve is held; common practice, no source."""
BATTERY_KEYS = ("chemistry", "nominal", "cells", "internal resistance", "short circuit current")
WEAK_FACTOR = 1.5
"""Internal resistance of a battery that is low and old over that of the sheet; common practice, no source."""
ASSUMED = "assumed of the battery: 10 % charged, 1.5 times its stated resistance (common practice, no source)"
SHUTS_DOWN = ("hiccup", "latches off")


def zones_of(facts: Facts) -> Zones:
    """The zones of protection, found once."""
    found: Zones | None = facts.shared.get("zones")
    if found is None:
        found = facts.shared["zones"] = Zones(facts.network)
    return found


def least_faults_of(facts: Facts) -> LeastFaults:
    """The least faults of the whole graph, found once; what they rest on is noted by whoever asks for one."""
    found: LeastFaults | None = facts.shared.get("least faults")
    if found is None:
        recorder = facts.recorder
        if recorder is not None:
            recorder.frames.append(([], [], []))
        try:
            found = LeastFaults(
                facts.network,
                lambda source: weak_source(facts, source),
                lambda source: limited_current(facts, source),
                lambda wire: hot_loop_resistance(facts, wire),
            )
        finally:
            if recorder is not None:
                recorder.frames.pop()
        facts.shared["least faults"] = found
    return found


def weak_source(facts: Facts, source: Source) -> tuple[Number, Number] | None:
    """Least electromotive force (V) and greatest resistance (ohm) of a battery; None for what limits itself."""
    if not source.storage or source.system != "dc":
        return None
    item = source.equipment
    if item.kind == "vehicle coupling":
        return _weak_coupling(item)
    if item.kind not in ("battery", "bank"):
        return Unknown(f"the fault current of {source.name} is not known"), UNKNOWN
    one = item.base if item.kind == "bank" and item.base is not None else item
    inner = multiply(_inner_resistance(facts, item, one), WEAK_FACTOR)
    return low_voltage(facts, item), add(inner, _bond(facts, source))


def _weak_coupling(item: Equipment) -> tuple[Number, Number]:
    """The least voltage at a towing vehicle (V), over the least short-circuit current at its plug (ohm)."""
    volts, amps = item.value("source end.voltage"), item.value("source end.fault current")
    if not isinstance(volts, Window) or not isinstance(amps, Window):
        return Unknown(f"the least fault current of {item.name} is not stated"), UNKNOWN
    return volts.low, divide(volts.low, amps.low)


def _inner_resistance(facts: Facts, item: Equipment, one: Equipment) -> Number:
    """The larger of the stated resistance and full voltage over stated short-circuit current, strings counted."""
    if not one.allows("internal resistance"):
        return Unknown(f"what {item.name} is made of is not told")
    found: list[Number] = []
    series = divide(nominal_of(facts.network, item, ""), one.value("nominal"))
    strings: Number = 1.0
    if item.kind == "bank":
        arrangement = item.value("arrangement")
        strings = float(arrangement[1]) if isinstance(arrangement, tuple) else UNKNOWN
    ohms, amps = one.value("internal resistance"), one.value("short circuit current")
    if isinstance(ohms, float | Range):
        found.append(divide(multiply(ohms, series), strings))
    if isinstance(amps, float | Range):
        found.append(divide(highest_of(facts.network, item, ""), multiply(amps, strings)))
    known = [value for value in found if isinstance(value, float | Range)]
    if len(known) == 1 and one.has("internal resistance") and one.has("short circuit current"):
        return or_more(known[0])  # the other is written as unknown and may be the worse of the two
    return greatest(known) if known else Unknown(f"the internal resistance of {item.name} is not stated")


def low_voltage(facts: Facts, item: Equipment) -> Number:
    """Rested voltage of a battery that is low, V."""
    one = item.base if item.kind == "bank" and item.base is not None else item
    nominal = nominal_of(facts.network, item, "")
    chemistry = one.value("chemistry") if one.allows("chemistry") else UNKNOWN
    if not isinstance(chemistry, str):
        return Unknown(f"the chemistry of {item.name} is not known")
    if chemistry == "lithium iron phosphate":
        # A cell has 3.2 V nominal; 12 V and 48 V are the trade's names for 12.8 V and 51.2 V.
        cells = one.value("cells")
        series = divide(nominal, one.value("nominal"))
        counted = multiply(cells, series) if isinstance(cells, float) else divide(nominal, 3.2)
        return multiply(counted, lfp_cell_voltage(LOW_STATE)[0])
    return multiply(nominal, LEAD_LOW_SHARE if "lead" in chemistry else OTHER_LOW_SHARE)


def _bond(facts: Facts, source: Source) -> Number:
    """Hot resistance of the cable that bonds a battery negative to the chassis; 0 where there is none."""
    found: Number = 0.0
    for edge, _ in facts.network.near.get(source.returns, ()):
        if isinstance(edge, Wire) and edge.conductor.role == BONDING:
            s = facts.of("conductor", edge.conductor)
            one = UNKNOWN if s is None else s.resistance
            found = greatest(found, one)
    return found


def limited_current(facts: Facts, source: Source) -> Number:
    """What a converter that holds a bus up by itself keeps giving into a short at least (A); None for other sources.

    A charger counts only where it stands on a bus without a battery in some mode.
    """
    item = source.equipment
    if is_mains_charger(source):
        if not alone(facts, item):
            return None
    elif item.kind != "dc converter" or (source.port != "low" and item.value("both ways") is True):
        return None
    stated: Number = item.value(rating_key(source))
    if item.allows("at fault") and item.says("at fault", "limits"):
        return stated
    high = stated.high if isinstance(stated, Range) else stated
    return Range(0.0, high) if isinstance(high, float) and high > 0 else stated


def hot_loop_resistance(facts: Facts, wire: Wire) -> Number:
    """Resistance of one stretch and its share of the return, as hot as the insulation may be (ohm)."""
    conductor = wire.conductor
    s = facts.of("conductor", conductor)
    if s is None or any(one.gap is not None for one in conductor.wires):
        return Unknown(f"part of the run of {conductor.circuit.name} was not seen")
    metre = resistance_per_metre(s, s.insulation_limit)
    share, length = _share(s, wire)
    return add(multiply(metre, length), multiply(_return(facts, s), share))


def _share(s: Subject, wire: Wire) -> tuple[Number, Number]:
    """The part that a stretch is of its conductor, and its length; where all have no length, the first is all of it."""
    whole = s.length
    length = wire_length(s, wire)
    if isinstance(whole, float) and whole == 0.0:
        return (1.0 if wire.index == s.item.wires[0].index else 0.0), length
    if len(s.item.wires) == 1:
        return 1.0, length
    return divide(length, whole), length


def _return(facts: Facts, s: Subject) -> Number:
    """Hot resistance of the return of a conductor, the chassis counted where it is part of it."""
    circuit = s.item.circuit
    returns = circuit.returns
    if s.item.role != LIVE or returns.how == "none":
        return 0.0
    chassis: Number = facts.design.vehicle.value("chassis.resistance")
    if returns.how == "chassis":
        return chassis
    back = facts.network.conductor(circuit.name, RETURN)
    twin = facts.of("conductor", back) if back is not None else None
    if twin is None:
        return Unknown(f"how {circuit.name} returns is not known")
    by_chassis = returns.how == "run" and returns.to is not None and returns.to.equipment == "chassis"
    return add(twin.resistance, chassis) if by_chassis else twin.resistance


def live_links(s: Subject) -> list[Link]:
    """The live poles of a device."""
    by_name: dict[str, list[Link]] | None = s.facts.shared.get("live links by device")
    if by_name is None:
        by_name = s.facts.shared["live links by device"] = {}
        for link in s.facts.network.links:
            if link.pole == LIVE:
                by_name.setdefault(link.equipment.name, []).append(link)
    return by_name.get(s.item.name, [])


def sides(s: Subject) -> list[tuple[Link, str]]:
    """(live pole, its node on the side of the fault), one for each direction."""
    return [(link, node) for link in live_links(s) for node in (link.b, link.a)]


@fact(
    "device",
    "fed_by_storage",
    type="yes/no",
    says="A battery or a towing vehicle stands behind it, so that much more than its rating can flow.",
    method="graph",
)
@where_it_stands
def fed_by_storage(s: Subject) -> Truth:
    held = least_faults_of(s.facts)
    if any(held.weakest(link, node) is not None for link, node in sides(s)):
        return True
    loose = loose_bank(s.facts)
    return False if loose is None else loose


@fact(
    "device",
    "prospective_min",
    unit="A",
    says="Least short-circuit current through it: at the far end of its zone, from the weakest single battery; none "
    "where no battery stands behind it.",
    method="voltage of a low battery over its resistance, the conductors hot, there and back, up to the next devices",
    source="Ohm's law; battery 10 % charged with 1.5 times its stated resistance: common practice, no source",
)
@where_it_stands
def prospective_min(s: Subject) -> Any:
    held = least_faults_of(s.facts)
    found: list[Number] = []
    for link, node in sides(s):
        weak = held.weakest(link, node)
        if weak is None:
            continue
        reach = held.reach(link, node)
        current = divide(weak.emf, add(weak.ohms, reach.ohms))
        found.append(current)
        _tell(s, weak.source, weak.path, reach.path)
        line = (
            f"{'' if weak.source is None else weak.source.name}: {show(weak.emf, 'V')} over {show(weak.ohms, 'mΩ')} "
            f"up to here and {show(reach.ohms, 'mΩ')} beyond: {show(current, 'A')}"
        )
        s.note(line.__str__)
    if not found:
        return None
    s.note(ASSUMED.__str__)
    return least(found)


def _tell(s: Subject, source: Source | None, *paths: Path) -> None:
    """Note what a least fault current rests on: the battery, and the circuits on the way."""
    if s.facts.recorder is None or source is None:
        return
    item = source.equipment
    one = item.base if item.kind == "bank" and item.base is not None else item
    for key in (*BATTERY_KEYS, "source end.voltage", "source end.fault current"):
        if one.allows(key):
            s.read(one, key)
    for path in paths:
        left = path
        names: dict[str, None] = {}
        while left is not None:
            names.setdefault(left[0].conductor.circuit.name)
            left = left[1]
        for name in names:
            circuit = s.facts.subject("circuit", name)
            if circuit is not None:
                _ = circuit.loop_resistance


@fact(
    "device",
    "limiting_source",
    type="text",
    says="The converter that alone holds up the bus behind it; none where there is not.",
    method="graph",
)
@where_it_stands
def limiting_source(s: Subject) -> str | None:
    found = limiting(s)
    return None if found is None else found.name


def limiting(s: Subject) -> Source | None:
    """The source behind a device that limits itself to the least current."""
    held = least_faults_of(s.facts)
    for link, node in sides(s):
        found = held.limited(link, node)
        if found is not None and found.source is not None:
            return found.source
    return None


@fact(
    "device",
    "limited_current",
    unit="A",
    says="Current that the converter behind it keeps giving into a short; none where there is no such converter.",
    method="rated current of one that limits; down to nothing for one that shuts down or does not say what it does",
)
@where_it_stands
def limited_current_of(s: Subject) -> Any:
    source = limiting(s)
    if source is None:
        return None
    if source.equipment.allows("at fault"):
        s.read(source.equipment, "at fault")
    s.read(source.equipment, rating_key(source))
    return limited_current(s.facts, source)


@fact(
    "device",
    "limiting_source_shuts_down",
    type="yes/no",
    says="The converter behind it ends a short by shutting down.",
)
@where_it_stands
def limiting_source_shuts_down(s: Subject) -> Any:
    source = limiting(s)
    if source is None:
        return False
    if not source.equipment.allows("at fault"):
        return Unknown(f"what {source.name} does into a short circuit is not told")
    word = s.read(source.equipment, "at fault")
    return word in SHUTS_DOWN if isinstance(word, str) else word


__all__ = ["least_faults_of", "live_links", "sides", "zones_of"]
