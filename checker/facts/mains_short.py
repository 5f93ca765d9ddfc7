"""A short circuit of line and neutral at the far end of a mains circuit on one source: what flows, what ends it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from checker.circuit.elements import LIVE, RETURN, Conductor, Edge, Link, Wire
from checker.circuit.feeding import consumers
from checker.circuit.mains import Feed
from checker.circuit.states import State
from checker.design.given import Where
from checker.facts.catalogue import fact, subjects
from checker.facts.changeover import current_of
from checker.facts.earth_fault import LIMITED, LOW_VOLTAGE_FACTOR, edges_between
from checker.facts.mains import answer, read_switching, states_of, tell, tell_state
from checker.facts.mains_fault import lead_resistance
from checker.facts.mains_voltage import site_voltage
from checker.facts.state import METHOD
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    Number,
    Range,
    Unknown,
    add,
    between,
    divide,
    equal,
    greatest,
    least,
    multiply,
    show,
    some,
    total,
)

SITE_DROP = 0.05
"""Voltage lost up to a site outlet at its rated current, at most: IEC 60364-5-52, annex G, 2009 (from memory)."""
TN = ("TN-S", "TN-C-S", "TN-C")
LEAST_OHM = 1e-4


class Short(NamedTuple):
    """The far end of a live conductor on a feed, in the first state that shows it; `certain` when that surely is so."""

    conductor: Conductor
    feed: Feed
    end: str
    state: str
    certain: bool


@subjects("short", "A fault at the far end of one mains circuit while one source feeds it.")
def shorts(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Circuit by circuit in file order, and for each the sources that reach it."""
    states = states_of(facts)
    for conductor in facts.network.conductors:
        if conductor.role != LIVE or facts.network.systems.get(conductor.circuit.name) != "ac":
            continue
        found: dict[str, tuple[Feed, State, bool]] = {}
        for state in states.states:
            sure, may = state.feeds_of(conductor.end)
            for feed in (*sure, *may):
                certain = feed in sure and state.certain
                if feed.name not in found or (certain and not found[feed.name][2]):
                    found[feed.name] = feed, state, certain
            if len(found) == len(states.mains.feeds) and all(one[2] for one in found.values()):
                break
        for feed, state, certain in found.values():
            end = _far_end(facts, state, feed, conductor)
            yield f"{conductor.id} on {feed.name}", conductor.where, Short(conductor, feed, end, state.name, certain)


def _far_end(facts: Facts, state: State, feed: Feed, conductor: Conductor) -> str:
    """The end of a conductor that lies behind it, seen from a feed."""
    for end in (conductor.end, conductor.start):
        if any(edge in conductor.wires for edge in edges_between(facts, state, feed.live, end)):
            return end
    return conductor.end


def way_of(s: Subject) -> list[Edge]:
    """Live edges from the source to the far end."""
    state = states_of(s.facts).named(s.item.state)
    return [] if state is None else list(edges_between(s.facts, state, s.item.feed.live, s.item.end))


def devices_of(s: Subject, edges: list[Edge]) -> list[Subject]:
    """The overcurrent devices among some edges, each once."""
    names = dict.fromkeys(one.equipment.name for one in edges if isinstance(one, Link) and one.is_protective)
    found = (s.facts.subject("device", name) for name in names)
    return [one for one in found if one is not None]


@fact("short", "circuit", of="circuit", type="subject", says="The circuit at whose far end it lies.", method="graph")
def circuit(s: Subject) -> Any:
    return s.facts.of("circuit", s.item.conductor.circuit)


@fact("short", "source_name", type="text", says="The name of what feeds it.", method=METHOD)
def source_name(s: Subject) -> str:
    return str(s.item.feed.name)


@fact("short", "is_certain", type="yes/no", says="The source surely feeds the circuit in some state.", method=METHOD)
def is_certain(s: Subject) -> Any:
    read_switching(s)
    tell_state(s, s.item.state)
    return answer(s.item.certain or None, f"whether {s.item.feed.name} feeds {s.item.conductor.id} is not known")


@fact(
    "short",
    "source_limits",
    type="yes/no",
    says="Its source gives a limited current for a limited time: an inverter or a generator.",
    method="its kind",
)
def source_limits(s: Subject) -> bool:
    return s.item.feed.equipment.kind in LIMITED


@fact(
    "short",
    "has_device",
    type="yes/no",
    says="A fuse or breaker aboard stands between the source and the far end.",
    method="graph of the state",
)
def has_device(s: Subject) -> Any:
    edges = way_of(s)
    if devices_of(s, edges):
        return True
    hidden = any(isinstance(one, Wire) and one.gap is not None for one in edges)
    return Unknown("part of the run was not seen and may hide a device") if hidden else False


@fact("short", "ends_at_load", type="yes/no", says="A load, an outlet or a charger hangs on its end.", method="graph")
def ends_at_load(s: Subject) -> bool:
    ends = {port.equipment for port in s.item.conductor.circuit.ends}
    return any(item.name in ends for item in consumers(s.facts.network))


def volts_of(s: Subject) -> Number:
    """Nominal voltage of the source, V."""
    item = s.item.feed.equipment
    if item.kind == "transformer":
        rated = s.read(item, "secondary.voltage")
        return rated if isinstance(rated, Unknown) else rated.volts
    if item.allows("ac.voltage") and item.has("ac.voltage"):
        return s.read(item, "ac.voltage")  # type: ignore[no-any-return]
    return site_voltage(s, 1.0)


def own_current(s: Subject) -> Number:
    """What a source that limits itself, or a transformer, gives into a fault, A; None for the shore."""
    item = s.item.feed.equipment
    key = {"generator": "fault current", "transformer": "secondary.fault current", "shore inlet": None}
    told = key.get(item.kind, "ac.fault current")
    return None if told is None else s.read(item, told)


def held_time(s: Subject) -> Number:
    """How long a source that limits itself keeps giving, s; None for others."""
    item = s.item.feed.equipment
    if item.kind not in LIMITED:
        return None
    return s.read(item, "fault time" if item.kind == "generator" else "ac.fault time")  # type: ignore[no-any-return]


def strong_site(s: Subject) -> Number:
    """Impedance of a site that gives its greatest fault current, Ω."""
    return divide(volts_of(s), s.read(s.facts.design.vehicle, "supply.fault current"))


def _site(s: Subject) -> Number:
    """Impedance of line and neutral of the site: as told, else from a strong site to one that just keeps its drop."""
    vehicle = s.facts.design.vehicle
    told: Number = s.read(vehicle, "supply.loop impedance") if vehicle.has("supply.loop impedance") else None
    by_neutral = False if told is None else some(equal(s.read(vehicle, "supply.earthing"), one) for one in TN)
    if isinstance(by_neutral, Unknown):
        return Unknown("whether the loop told is that of line and neutral is not known")
    if by_neutral:
        return told
    strong, weak = strong_site(s), divide(multiply(volts_of(s), SITE_DROP), current_of(s, s.item.feed.equipment))
    if isinstance(strong, Unknown) or isinstance(weak, Unknown):
        return weak if isinstance(weak, Unknown) else strong
    tell(s, "assumed of the site: it loses at most 5 % of its voltage up to the outlet at its rated current")
    low = strong.low if isinstance(strong, Range) else strong
    high = weak.high if isinstance(weak, Range) else weak
    return None if low is None or high is None else between(low, max(low, high))


def lead_resistances(s: Subject) -> list[Number]:
    """Resistance of each shore lead, there and back, hot, Ω."""
    leads = [item for item in s.facts.network.equipment.values() if item.kind == "supply lead"]
    return [lead_resistance(s, one) for one in leads] or [Unknown("the shore lead is not described")]


def _aboard(s: Subject, edges: list[Edge], role: str) -> Number:
    """Hot resistance of the live conductors on a way and of the return or earth of each."""
    value: list[Number] = []
    for live in dict.fromkeys(edge.conductor for edge in edges if isinstance(edge, Wire)):
        back = s.facts.network.conductor(live.circuit.name, role)
        if back is None:
            return Unknown(f"the way back of {live.circuit.name} runs elsewhere, and its length is not worked out")
        subjects_of = (s.facts.of("conductor", one) for one in (live, back))
        value.extend(Unknown("") if one is None else one.resistance for one in subjects_of)
    return total(value)


def current_through(s: Subject, site: Number, role: str) -> Number:
    """Least current round a loop by one conductor back, from the weakest to the strongest that the file leaves open."""
    loop = _aboard(s, way_of(s), role)
    if s.item.feed.equipment.kind == "shore inlet":
        loop = add(loop, add(site, greatest(lead_resistances(s))))
    current = divide(multiply(volts_of(s), LOW_VOLTAGE_FACTOR), greatest(loop, LEAST_OHM))
    own = own_current(s)
    return current if own is None else least(current, own)


@fact(
    "short",
    "least",
    unit="A",
    says="Least current that a dead short of line and neutral at the far end draws from this source.",
    method="0.95 of its voltage over site, lead and both conductors hot; a source that limits itself gives its limit. "
    "A site that does not tell its impedance lies between its greatest fault current and 5 % drop at its outlet",
    source="Ohm's law; factor of BS 7671, 411.4.4, 18th ed.; IEC 60364-5-52, annex G (both from memory)",
)
def least_current(s: Subject) -> Any:
    found = current_through(s, _site(s) if s.item.feed.equipment.kind == "shore inlet" else None, RETURN)
    tell(s, f"at the far end of {s.item.conductor.id}: {show(found, 'A')}")
    return found
