"""A dead fault to earth at a mains load: the current that its source drives round the loop, and what opens on it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import EARTH, LIVE, Conductor, Edge, Link
from checker.circuit.feeding import live_node
from checker.circuit.state import State
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.clearing import SOURCE, as_number, over
from checker.facts.mains import states_of, tell
from checker.facts.mains_fault import lead_resistance
from checker.facts.mains_voltage import site_voltage
from checker.facts.subject import Facts, Subject
from checker.facts.supply import Supply, supplies_of
from checker.physics.clearing import promised
from checker.quantities import Number, Unknown, add, divide, greatest, least, less_equal, multiply, show

LOW_VOLTAGE_FACTOR = 0.95
"""Lowest supply voltage over the nominal one, for the least fault current: BS 7671, 411.4.4, 18th ed. (from memory)."""
LIMITED = ("inverter", "inverter-charger", "generator")


def _way(facts: Facts, supply: Supply) -> list[Edge]:
    """Live edges from the source to the load in the first state of a supply, the fewest there are."""
    kept: dict[tuple[str, str, str], list[Edge]] = facts.shared.setdefault("mains ways", {})
    key = (supply.feed.name, supply.load.name, supply.states[0])
    if key not in kept:
        state = states_of(facts).named(supply.states[0])
        kept[key] = [] if state is None else list(edges_between(facts, state, supply.feed.live, live_node(supply.load)))
    return kept[key]


def edges_between(facts: Facts, state: State, start: str, end: str) -> Iterator[Edge]:
    """Live edges from one live node to another in a state, the fewest there are; none where they are not joined."""
    kept: dict[tuple[str, str], Tree] = facts.shared.setdefault("mains trees", {})
    key = (state.name, start)
    if key not in kept:
        kept[key] = _tree(facts, state, start)
    found: list[Edge] = []
    step = kept[key].get(end)
    while step is not None:
        found.append(step[1])
        step = kept[key][step[0]]
    yield from reversed(found)


Tree = dict[str, tuple[str, Edge] | None]


def _tree(facts: Facts, state: State, start: str) -> Tree:
    """Each live node that a source reaches in a state -> the node before it and the edge between; one walk for all."""
    movable = {id(link) for link in state.mains.switching}
    closed = {id(link) for link in (*state.closed, *state.perhaps)}
    before: Tree = {start: None}
    todo = [start]
    for node in todo:
        for edge, far in facts.network.near.get(node, ()):
            pole = edge.pole if isinstance(edge, Link) else edge.conductor.role
            if pole != LIVE or far in before or (id(edge) in movable and id(edge) not in closed):
                continue
            before[far] = (node, edge)
            todo.append(far)
    return before


def next_loads(facts: Facts, device: str) -> list[Equipment]:
    """What a device of the mains side feeds, from some source, with no further device between; in file order."""
    kept: dict[str, dict[str, Equipment]] | None = facts.store.get("next mains loads")
    if kept is None:
        kept = facts.store["next mains loads"] = {}
        for supply in supplies_of(facts):
            links = [edge for edge in _way(facts, supply) if isinstance(edge, Link) and edge.is_protective]
            if links:
                kept.setdefault(links[-1].equipment.name, {})[supply.load.name] = supply.load
    return list(kept.get(device, {}).values())


def _conductors(facts: Facts, supply: Supply) -> list[Conductor]:
    edges = (edge for edge in _way(facts, supply) if not isinstance(edge, Link))
    return list(dict.fromkeys(edge.conductor for edge in edges))


@fact(
    "supply",
    "loop_impedance_aboard",
    unit="mΩ",
    says="Resistance from the source to the load and back by the protective conductors, at most.",
    method="live and earth conductor of each circuit on the way, whole length, as hot as their insulation may be",
    source="Ohm's law; resistance as conductor.resistance",
)
def loop_impedance_aboard(s: Subject) -> Any:
    value: Number = 0.0
    for live in _conductors(s.facts, s.item):
        earth = s.facts.network.conductor(live.circuit.name, EARTH)
        if earth is None:
            return Unknown(f"the earth of {live.circuit.name} runs elsewhere, and its length is not worked out")
        for conductor in (live, earth):
            subject = s.facts.of("conductor", conductor)
            value = add(value, Unknown("") if subject is None else subject.resistance)
    return value


@fact(
    "supply",
    "loop_impedance",
    unit="Ω",
    says="Impedance of the earth-fault loop: the site and the shore lead, where the shore feeds, and what lies aboard.",
    method="loop impedance at the site outlet as stated, plus both ways of the lead, plus supply.loop_impedance_aboard",
    source="IEC 60364-4-41, 411.4.4, 2005 (from memory)",
)
def loop_impedance(s: Subject) -> Any:
    aboard = s.loop_impedance_aboard
    if s.item.feed.aboard:
        return aboard
    leads = [item for item in s.facts.network.equipment.values() if item.kind == "supply lead"]
    if not leads:
        return Unknown("the shore lead is not described")
    site = s.read(s.facts.design.vehicle, "supply.loop impedance")
    if isinstance(site, Unknown):
        return Unknown("the impedance of the earth-fault loop at the site is not stated")
    lead = greatest([lead_resistance(s, one) for one in leads])
    return add(add(site, lead), aboard)


@fact(
    "supply",
    "earth_fault_current",
    unit="A",
    says="What a dead fault from live to earth at the load draws.",
    method="0.95 of the mains voltage over supply.loop_impedance; an inverter or generator gives at most its own fault "
    "current",
    source="IEC 60364-4-41, 411.4.4, 2005; factor of BS 7671, 411.4.4, 18th ed. (both from memory)",
)
def earth_fault_current(s: Subject) -> Any:
    if less_equal(1.0, s.neutral_earth_links) is not True:
        return Unknown("without a link of neutral and earth no fault current is sure to flow")
    item = s.item.feed.equipment
    volts = site_voltage(s, 1.0)
    if item.allows("ac.voltage") and item.has("ac.voltage"):
        volts = s.read(item, "ac.voltage")
    loop = s.loop_impedance
    current = divide(multiply(volts, LOW_VOLTAGE_FACTOR), loop)
    if item.kind in LIMITED:
        own = s.read(item, "fault current" if item.kind == "generator" else "ac.fault current")
        if isinstance(own, Unknown) or own is None:
            return Unknown(f"what {item.name} gives into a fault is not known")
        current = least(current, own)
    elif item.kind == "transformer":
        return Unknown(f"what {item.name} lets through into a fault is not worked out")
    tell(s, f"loop {show(loop, 'Ω')}, fault current {show(current, 'A')}")
    return current


@fact(
    "supply",
    "breaker_clears_by",
    unit="s",
    says="Time by which a fuse or breaker on the way is promised to have opened on a dead fault to earth at the load.",
    method="upper edge of the time-current band of each at supply.earth_fault_current, the quickest; no limit without "
    "one, or when a source that limits its current gives up before",
    source=SOURCE,
)
def breaker_clears_by(s: Subject) -> Any:
    links = (edge for edge in _way(s.facts, s.item) if isinstance(edge, Link))
    names = dict.fromkeys(link.equipment.name for link in links if link.is_protective)
    value: Number = float("inf")
    current = s.earth_fault_current if names else None
    for name in names:
        device = s.facts.subject("device", name)
        if device is None:
            return Unknown(f"{name} is not known")
        found = as_number(over(device, current, promised))
        tell(s, f"{name} at {show(current, 'A')}: promised open by {show(found, 's')}")
        if isinstance(found, Unknown):
            return found
        value = least(value, found)
    return _while_it_lasts(s, value)


def _while_it_lasts(s: Subject, value: Number) -> Number:
    """A source that gives its fault current for a while only opens no device that needs longer."""
    item = s.item.feed.equipment
    if item.kind not in LIMITED:
        return value
    held = s.read(item, "fault time" if item.kind == "generator" else "ac.fault time")
    in_time = less_equal(value, held)
    if isinstance(in_time, Unknown):
        return value if value == float("inf") else in_time
    return value if in_time else float("inf")
