"""A fault to earth at the far end of a mains circuit that feeds no load: feeders, what passes mains on."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import EARTH, RETURN, Conductor
from checker.circuit.feeding import earth_path, neutral_links, residual_path, residual_works
from checker.facts.catalogue import fact
from checker.facts.clearing import SOURCE, as_number, over
from checker.facts.disconnection import SLOWEST_S, SURE_FACTOR, fed_from_tt
from checker.facts.mains import answer, states_of, tell
from checker.facts.mains_short import current_through, devices_of, held_time, way_of
from checker.facts.subject import Subject
from checker.physics.clearing import promised
from checker.quantities import Number, Range, Truth, Unknown, both, greater_equal, least, multiply, show

NEVER = float("inf")
USES_MAINS = ("inverter-charger", "charger", "transformer")
"""Kinds at the end of a circuit that use mains in a case; boards, bars and contacts hand it on."""


def _back(s: Subject, role: str) -> Conductor | None:
    return s.facts.network.conductor(s.item.conductor.circuit.name, role)


def _end_of(s: Subject, conductor: Conductor) -> str:
    """The end of the return or earth of the circuit that lies at the far end."""
    return conductor.end if s.item.end == s.item.conductor.end else conductor.start


@fact("short", "has_earth", type="yes/no", says="The circuit has a protective conductor.", method="graph")
def has_earth(s: Subject) -> Any:
    if s.item.conductor.circuit.earth.how == "unknown":
        return Unknown(f"whether {s.item.conductor.circuit.name} has a protective conductor is not known")
    return _back(s, EARTH) is not None


@fact(
    "short",
    "returns_by_earth",
    type="yes/no",
    says="A fault to earth there drives a current: earth conductors lead back to the source, and neutral meets earth.",
    method="graph of the state",
)
def returns_by_earth(s: Subject) -> Truth:
    state, earth = states_of(s.facts).named(s.item.state), _back(s, EARTH)
    if state is None or earth is None:
        told = s.has_earth
        return told if isinstance(told, Unknown) else False
    low, high = neutral_links(state, s.item.feed)
    linked = True if low else None if high else False
    joined = earth_path(state.mains, s.item.feed, _end_of(s, earth))
    return both(answer(linked, "where neutral meets earth is not known"), answer(joined, "whether its earth goes on"))


@fact("short", "feeds_on", type="yes/no", says="What it ends at hands the mains on and uses none itself: a board, a "
      "bar, a contact.", method="kind of the equipment at its far end")  # fmt: skip
def feeds_on(s: Subject) -> bool:
    item = s.facts.network.equipment.get(s.item.end.partition(":")[0])
    return item is None or item.kind not in USES_MAINS


@fact("short", "source_is_tt", type="yes/no", says="The shore feeds it, and its sites have no earth but an electrode.")
def source_is_tt(s: Subject) -> Any:
    return fed_from_tt(s)


@fact(
    "short",
    "earth_current",
    unit="A",
    says="Least current of a dead fault to earth at the far end.",
    method="0.95 of the voltage over the loop of site, lead, line and earth conductors hot; a source that limits "
    "itself gives its limit",
    source="Ohm's law; factor of BS 7671, 411.4.4, 18th ed. (from memory)",
)
def earth_current(s: Subject) -> Any:
    site: Number = None
    if s.item.feed.equipment.kind == "shore inlet":
        site = s.read(s.facts.design.vehicle, "supply.loop impedance")
        if isinstance(site, Unknown):
            return Unknown("the impedance of the earth-fault loop at the site is not stated")
    return current_through(s, site, EARTH)


@fact(
    "short",
    "earth_residual_time",
    unit="s",
    says="Time in which the quickest residual-current device that surely acts clears a fault to earth there; none "
    "where there is none.",
    method="stated time, else 150 ms far above five times its rating; aboard on the way, or at the site",
    source="IEC 61008-1 / 61009-1 (seen)",
)
def earth_residual_time(s: Subject) -> Any:
    times, doubt = _residual_times(s)
    return least(times) if times else doubt


@fact(
    "short",
    "earth_clears_by",
    unit="s",
    says="Time by which a dead fault to earth at the far end is cleared.",
    method="the quickest of: a residual-current device on the way that works, or that of the site (stated time, else "
    "150 ms far above five times its rating); the devices on the way at short.earth_current; a source that gives up",
    source=f"IEC 61008-1 / 61009-1 (seen); {SOURCE}",
)
def earth_clears_by(s: Subject) -> Any:
    by_residual, doubt = _residual_times(s)
    held, times = held_time(s), list(by_residual)
    if isinstance(held, float | Range):
        times.append(held)
    by_breaker = _breaker_time(s)
    if isinstance(by_breaker, Unknown):
        doubt = by_breaker if doubt is None else doubt
    else:
        times.append(by_breaker)
    if isinstance(held, Unknown):
        doubt = held if doubt is None else doubt
    found: Number = NEVER
    for one in times:
        found = least(found, one)
    if doubt is None:
        return found
    most = found.high if isinstance(found, Range) else found
    return Range(0.0, most) if isinstance(most, float) and most < NEVER else doubt


def _residual_times(s: Subject) -> tuple[list[Number], Unknown | None]:
    """Times of the residual-current devices that surely act, and a doubt where one perhaps does."""
    state, neutral = states_of(s.facts).named(s.item.state), _back(s, RETURN)
    if state is None or neutral is None:
        return [], None
    path = residual_path(state, s.item.feed, s.item.end)
    works = answer(residual_works(state, s.item.feed, _end_of(s, neutral)), "where neutral meets earth is not known")
    acts = both(answer(path.protected, "part of the run was not seen and may hide a device"), works)
    rated = [(s.read(one, "trips at"), s.read(one, "time")) for one in path.devices] if acts is not False else []
    doubt = acts if isinstance(acts, Unknown) else None
    if not s.item.feed.aboard:
        site = s.read(s.facts.design.vehicle, "site rcd.trips at")
        if isinstance(site, Unknown):
            doubt = Unknown("the residual-current device at the site outlet is not told") if doubt is None else doubt
        elif site is not None:
            rated.append((site, None))
    times: list[Number] = []
    for trips, time in rated:
        enough = _enough(s, trips)
        if enough is True and doubt is not acts:
            times.append(Range(0.0, SLOWEST_S) if time is None or isinstance(time, Unknown) else time)
        elif isinstance(enough, Unknown):
            doubt = enough if doubt is None else doubt
    return times, doubt


def _enough(s: Subject, trips: Number) -> Truth:
    """Whether the fault draws five times what a residual-current device opens at."""
    flows = s.earth_current
    if isinstance(flows, Unknown):
        return True if s.source_is_tt is False else Unknown("the loop impedance through the earth electrodes")
    return greater_equal(flows, multiply(SURE_FACTOR, trips))


def _breaker_time(s: Subject) -> Number:
    value: Number = NEVER
    for device in devices_of(s, way_of(s)):
        found = as_number(over(device, s.earth_current, promised))
        if isinstance(found, Unknown):
            return found
        tell(s, f"{device.id} at {show(s.earth_current, 'A')}: promised open by {show(found, 's')}")
        value = least(value, found)
    return value
