"""How long a fault to earth lasts, and how far the shore runs before a residual-current device watches it."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Link, Wire
from checker.circuit.mains import RESIDUAL
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.mains import feed_named
from checker.facts.subject import Subject
from checker.facts.supply import Supply, own_residual
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    add,
    between,
    both,
    equal,
    greater_equal,
    greatest,
    least,
    multiply,
)

SURE_FACTOR = 5.0
SLOWEST_S = 0.15
"""Longest time (s) to open at five times the rated residual current, selective devices included: IEC 61008-1 (seen)."""


@fact("supply", "source_is_tt", type="yes/no", says="The shore feeds it, and its sites have no earth but an electrode.")
def source_is_tt(s: Subject) -> Any:
    return fed_from_tt(s)


def fed_from_tt(s: Subject) -> Any:
    """Whether a supply, or a fault on it, is fed by sites whose only earth is an electrode; what is aboard is none."""
    if s.item.feed.aboard:
        return False
    return equal(s.read(s.facts.design.vehicle, "supply.earthing"), "TT")


@fact(
    "supply",
    "disconnection_time",
    unit="ms",
    says="Time in which a dead fault to earth at the load is cleared.",
    method="the quickest residual-current device on the way: its stated time, else at most 150 ms, as the fault is far "
    "above five times its rated residual current; where none is known to work, supply.breaker_clears_by",
    source="IEC 61008-1 / 61009-1, limits at five times the rated residual current (seen)",
)
def disconnection_time(s: Subject) -> Any:
    supply: Supply = s.item
    if s.earth_is_continuous is not True:
        return Unknown("whether its earth is continuous")
    opens = both(s.has_residual_device, s.residual_works)
    if opens is True:
        opens = _enough_flows(s)
    if opens is not True:
        return s.breaker_clears_by if opens is False else _at_most(s.breaker_clears_by, opens)
    times: list[Number] = []
    for device in supply.path.devices:
        told = s.read(device, "time")
        times.append(Range(0.0, SLOWEST_S) if isinstance(told, Unknown) or told is None else told)
    if own_residual(s, supply.load) is not None:
        times.append(Range(0.0, SLOWEST_S))
    value = times[0]
    for one in times[1:]:
        value = least(value, one)
    return value


def _enough_flows(s: Subject) -> Truth:
    """Whether the fault draws five times what the residual-current devices open at, so that their times hold.

    Where the sites have a protective conductor the fault current is far above that. Through earth electrodes the loop
    impedance has to be told; a fault too weak for the devices is left to the breaker.
    """
    flows = s.earth_fault_current
    if isinstance(flows, Unknown):
        tt = s.source_is_tt
        return True if tt is False else Unknown("the loop impedance through the earth electrodes is not told")
    return greater_equal(flows, multiply(SURE_FACTOR, s.residual_current))


def _at_most(by_breaker: Number, why: Unknown) -> Number:
    """The time of the breaker, or less where a residual-current device that perhaps works comes first."""
    if isinstance(by_breaker, Range):
        return between(0.0, by_breaker.high)
    return between(0.0, by_breaker) if isinstance(by_breaker, float) and by_breaker < float("inf") else why


@fact(
    "inlet",
    "length_to_residual",
    unit="m",
    says="Longest run from the inlet to the first residual-current device; none where a branch meets none.",
    method="walk along live conductors from the inlet",
)
def length_to_residual(s: Subject) -> Any:
    walked = _first_devices(s)
    return walked[0] if isinstance(walked, tuple) else walked


@fact(
    "inlet",
    "first_residual_current",
    unit="mA",
    says="Highest rated residual current of the first devices behind the inlet; none where a branch meets none.",
    method="walk along live conductors from the inlet",
)
def first_residual_current(s: Subject) -> Any:
    walked = _first_devices(s)
    if not isinstance(walked, tuple):
        return walked
    found: Number = None
    for device in walked[1].values():
        rated = s.read(device, "trips at")
        found = rated if found is None else greatest(found, rated)
    return found


def _first_devices(s: Subject) -> tuple[Number, dict[str, Equipment]] | Unknown | None:
    """Longest run to the first residual-current devices, and those devices; None where a branch meets none."""
    feed = feed_named(s.facts, s.id)
    if feed is None:
        return Unknown(f"{s.id} is connected to no circuit")
    longest: Number = 0.0
    devices: dict[str, Equipment] = {}
    todo: list[tuple[str, Number, bool]] = [(feed.live, 0.0, False)]
    seen = {feed.live}
    doubt = False  # a device may stand where a run was not seen, ahead of what is met behind it
    while todo:
        node, length, hidden = todo.pop()
        onward = []
        for edge, far in s.facts.network.near.get(node, ()):
            pole = edge.conductor.role if isinstance(edge, Wire) else edge.pole
            if pole != LIVE or far in seen:
                continue
            if isinstance(edge, Link) and edge.equipment.kind in RESIDUAL:
                longest = greatest(longest, length)
                devices[edge.equipment.name] = edge.equipment
                doubt = doubt or hidden
                continue
            seen.add(far)
            unseen = isinstance(edge, Wire) and edge.gap is not None
            onward.append((far, _onward(s, edge, length), hidden or unseen))
        if not onward and node in s.facts.network.sinks:
            if not hidden:
                return None
            doubt = True
        todo.extend(onward)
    return Unknown("part of the run was not seen and may hide the first device") if doubt else (longest, devices)


def _onward(s: Subject, edge: Wire | Link, length: Number) -> Number:
    if isinstance(edge, Link):
        return length
    for number, stretch in enumerate(edge.lengths):
        length = add(length, s.use(f"{edge.conductor.circuit.path}.run.{number}", stretch.length, "m"))
    return Unknown("part of the run was not seen") if edge.gap is not None else length
