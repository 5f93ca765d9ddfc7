"""What a short circuit along a mains circuit brings into its conductors before it ends, against what they stand."""

from __future__ import annotations

import math
from typing import Any

from checker.circuit.elements import EARTH, RETURN, Edge, Wire
from checker.facts.catalogue import fact
from checker.facts.clearing import SOURCE, characteristics
from checker.facts.conductor import cold_wire_resistance
from checker.facts.mains import tell
from checker.facts.mains_fault import LEAD_C
from checker.facts.mains_short import (
    LEAST_OHM,
    devices_of,
    held_time,
    lead_resistances,
    own_current,
    strong_site,
    volts_of,
    way_of,
)
from checker.facts.subject import Subject
from checker.outofrange import OutOfRange
from checker.physics.clearing import Characteristic, energy_at, opening
from checker.quantities import (
    Number,
    Range,
    Unknown,
    between,
    every,
    greatest,
    least,
    less_equal,
    multiply,
    rounded,
    show,
    total,
)

HIGH_VOLTAGE_FACTOR = 1.1
"""Highest supply voltage over the nominal one, for the greatest current: IEC 60909-0, c max, 2016 (from memory)."""
COLD_OVER_HOT = 1.0 / (1.0 + 0.00393 * (LEAD_C - 20.0))


def ends_of(value: float | Range) -> tuple[float, ...]:
    """Both ends of a number."""
    return (value.low, value.high) if isinstance(value, Range) else (value,)


@fact(
    "short",
    "far_energy",
    unit="A2s",
    says="Energy into the conductor of a short at its far end until a device has opened or the source has given up.",
    method="I² t at short.least: the upper edge of the quickest device on the way, or the time that a source which "
    "limits itself keeps giving; no limit without either",
    source=SOURCE,
)
def far_energy(s: Subject) -> Any:
    current, held = s.least, held_time(s)
    if not isinstance(current, float | Range):
        return current
    curves, doubt = _curves(devices_of(s, way_of(s))), False
    if isinstance(curves, Unknown):
        if not isinstance(held, float | Range):
            return curves
        curves, doubt = [], True
    found: list[float] = [0.0] if doubt or isinstance(held, Unknown) else []
    for amps in ends_of(current):
        times = ends_of(held) if isinstance(held, float | Range) else (math.inf,)
        for pick, time in ((min, min(times)), (max, max(times))):
            opened = min((pick(_energies(one, amps)) for one in curves), default=math.inf)
            if isinstance(held, Unknown) and opened == math.inf:
                return held
            found.append(min(opened, amps**2 * time))
    return _band(min(found), max(found))


def _band(low: float, high: float) -> Number:
    low, high = rounded(low), rounded(high)
    return low if low == high else between(low, high)


def _curves(devices: list[Subject]) -> list[list[Characteristic]] | Unknown:
    found = []
    for device in devices:
        held = characteristics(device)
        if isinstance(held, Unknown):
            return held
        found.append(held)
    return found


def _energies(held: list[Characteristic], amps: float) -> list[float]:
    """Upper bounds of what a device lets through at one current, one for each end of what is told of it. [A2 s]"""
    return [energy_at(one, max(amps, LEAST_OHM)) for one in held]


@fact(
    "short",
    "greatest_energy",
    unit="A2s",
    says="Bounds of the energy into the conductor of a short anywhere along it before a device has opened.",
    method="for each stretch behind a device: greatest I² t of the band from the least current at its far end to the "
    "greatest at its near end, conductors cold; a source that limits itself gives no more than its limit",
    source=f"{SOURCE}; IEC 60909-0, c max, 2016 (from memory)",
)
def greatest_energy(s: Subject) -> Any:
    low = s.least
    if not isinstance(low, float | Range):
        return low
    worst: Number = None
    before: list[Edge] = []
    for edge in way_of(s):
        if edge in s.item.conductor.wires and (devices := devices_of(s, before)):
            one = _along(s, devices, min(ends_of(low)), _greatest_at(s, before))
            if isinstance(one, Unknown):
                return one
            worst = one if worst is None else greatest(worst, one)
        before.append(edge)
    return worst


def _greatest_at(s: Subject, before: list[Edge]) -> Number:
    """Greatest current of a short behind some edges, A: the strongest site, the shortest lead, copper at 20 °C."""
    own = own_current(s)
    if own is not None:
        return own
    value: list[Number] = [multiply(least(lead_resistances(s)), COLD_OVER_HOT)]
    for edge in before:
        if isinstance(edge, Wire):
            there = cold_wire_resistance(s.facts, edge)
            value.append(there if edge.conductor is s.item.conductor else multiply(there, 2.0))
    ohms, site, volts = total(value), strong_site(s), volts_of(s)
    for one in (ohms, site, volts):
        if not isinstance(one, float | Range):
            return Unknown("what a short draws is not known") if one is None else one
    assert isinstance(ohms, float | Range) and isinstance(site, float | Range) and isinstance(volts, float | Range)
    found = [
        volts_end * HIGH_VOLTAGE_FACTOR / max(math.hypot(site_end, ohms_end), LEAST_OHM)
        for volts_end, site_end, ohms_end in ((max(ends_of(volts)), min(ends_of(site)), min(ends_of(ohms))),)
    ]
    return rounded(max(found))


def _along(s: Subject, devices: list[Subject], low: float, high: Number) -> Number:
    """Bounds of the greatest I² t between two currents, of the device that lets least through."""
    if not isinstance(high, float | Range):
        return Unknown("what a short draws is not known") if high is None else high
    top, curves = max(ends_of(high)), _curves(devices)
    if isinstance(curves, Unknown):
        return curves
    low = min(low, top)
    try:
        upper = min(max(max(_energies(held, amps)) for amps in _between(held, low, top)) for held in curves)
        lower = min(min(opening(one, max(low, LEAST_OHM)).min_s for one in held) for held in curves) * low**2
    except OutOfRange as problem:
        return Unknown(str(problem))
    time = held_time(s)
    if isinstance(time, float | Range):
        upper = min(upper, top**2 * max(ends_of(time)))
        lower = min(lower, low**2 * min(ends_of(time)))
    elif isinstance(time, Unknown):
        lower = 0.0
    tell(s, f"from {show(low, 'A')} to {show(top, 'A')}: at most {show(rounded(upper), 'A2s')}")
    return _band(min(lower, upper), upper)


def _between(held: list[Characteristic], low: float, high: float) -> list[float]:
    """Two currents and the points of the curves between them, where the energy turns."""
    points = {amps * one.unit_a for one in held for series in one.series for amps, _ in series.greatest}
    return [low, *sorted(point for point in points if low < point < high), high]


@fact(
    "short",
    "stood_energy",
    unit="A2s",
    says="Energy of a short circuit that the conductors of the circuit stand, line or neutral, the lesser.",
    method="conductor.short_time_limit of both",
    source="IEC 60364-4-43 434.5.2 (from memory)",
)
def stood_energy(s: Subject) -> Any:
    back = s.facts.network.conductor(s.item.conductor.circuit.name, RETURN)
    found = [s.facts.of("conductor", one) for one in (s.item.conductor, back) if one is not None]
    return least([one.short_time_limit for one in found if one is not None])


@fact(
    "short",
    "earth_energy",
    unit="A2s",
    says="Bounds of the energy into its protective conductor of a fault to earth anywhere along it before it ends.",
    method="as short.greatest_energy, from short.earth_current up; at most the greatest current for the time of the "
    "residual-current devices where those are quicker",
    source=f"{SOURCE}; IEC 60909-0, c max, 2016 (from memory)",
)
def earth_energy(s: Subject) -> Any:
    low, time = s.earth_current, s.earth_residual_time
    worst: Number = 0.0
    before: list[Edge] = []
    for edge in way_of(s):
        if edge in s.item.conductor.wires:
            top = _greatest_at(s, before)
            one = _shorter(_by_devices(s, before, low, top), multiply(multiply(top, top), time))
            if isinstance(one, Unknown) or one is None:
                return Unknown("what a fault to earth brings into it is not known") if one is None else one
            worst = greatest(worst, one)
        before.append(edge)
    return worst


def _by_devices(s: Subject, before: list[Edge], low: Number, top: Number) -> Number:
    devices = devices_of(s, before)
    if not devices or not isinstance(low, float | Range):
        return low if isinstance(low, Unknown) else float("inf")
    return _along(s, devices, min(ends_of(low)), top)


def _shorter(one: Number, other: Number) -> Number:
    """The lesser bound of two ways to end a fault; of one alone where the other is not known."""
    if not isinstance(one, float | Range):
        return other if isinstance(other, float | Range) else one
    return least(one, other) if isinstance(other, float | Range) else one


@fact(
    "circuit",
    "earth_stands_faults",
    type="yes/no",
    says="Its protective conductor stands every fault to earth along it until that ends, from each source.",
    method="short.earth_energy of each source at most k² S² of the earth conductor",
    source="IEC 60364-5-54, 543.1.2, adiabatic calculation, 2011 (from memory)",
)
def earth_stands_faults(s: Subject) -> Any:
    earth = s.facts.network.conductor(s.id, EARTH)
    stands = None if earth is None else s.facts.of("conductor", earth)
    mine = [one for one in s.facts.subjects("short") if one.item.conductor.circuit.name == s.id]
    if stands is None or not mine:
        return Unknown(f"no source surely feeds {s.id}, or its earth is not told")
    return every([less_equal(one.earth_energy, stands.short_time_limit) for one in mine])
