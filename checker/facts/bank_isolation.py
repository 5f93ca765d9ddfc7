"""The ways out of a bank: the switch on each, how far away, what hangs ahead of it."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.circuit.elements import LIVE, Conductor, Edge, Link, Wire
from checker.circuit.supply import is_live, supplied
from checker.design.model import Equipment
from checker.design.run import Length
from checker.facts.bank import home, loose_bank, stands_unseen
from checker.facts.catalogue import fact
from checker.facts.darkness import live_node
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    add,
    either,
    every,
    greatest,
    least,
    multiply,
    some,
)
from checker.quantities.values import between

EXEMPT = ("safety", "sense", "control", "charge", "bonding")
"""Duties of circuits that need not pass the isolator: alarms, memory, management, chargers."""
ISOLATING_RELAYS = ("remote", "by hand")


class Way(NamedTuple):
    """One live conductor that leaves a bank.

    `isolator` is the first switch or isolating breaker on it, None without one, Unknown where a part was not seen;
    `stretches` lie before it. `reaches` says whether supply gets to some equipment without passing one.
    """

    conductor: Conductor
    isolator: Equipment | Unknown | None
    stretches: tuple[tuple[Conductor, Length], ...]
    reaches: bool
    hidden: bool


def ways(facts: Facts, bank: Equipment) -> list[Way]:
    """Every live conductor that leaves a bank, its own unit leads left out."""
    held: dict[str, list[Way]] = facts.store.setdefault("ways out", {})
    if bank.name not in held:
        start = home(facts, bank)
        own = {f"{bank.name}.lead-{number}" for number in range(1, len(facts.network.units.get(bank.name, ())) + 1)}
        held[bank.name] = [
            _follow(facts, edge, start, far)
            for edge, far in facts.network.near.get(start, ())
            if isinstance(edge, Wire) and edge.conductor.role == LIVE and edge.conductor.circuit.name not in own
        ]
    return held[bank.name]


def isolating(item: Equipment) -> Truth:
    """Whether a piece of equipment in a run serves as a battery switch."""
    if item.kind == "switch":
        return True
    if item.kind in ("breaker", "rcbo"):
        stated = item.value("isolates")
        return stated if isinstance(stated, bool | Unknown) else False
    if item.kind == "relay":
        worked = item.value("operated")
        return isinstance(worked, str) and worked in ISOLATING_RELAYS
    return False


def _follow(facts: Facts, first: Wire, start: str, far: str) -> Way:
    """Walk on until a switch; the first one met counts, and whatever is reached without one."""
    network = facts.network
    isolator: Equipment | Unknown | None = None
    before: tuple[tuple[Conductor, Length], ...] = ()
    reaches = hidden = False
    seen = {start}
    todo: list[tuple[Any, str, tuple[tuple[Conductor, Length], ...]]] = [(first, far, ())]
    while todo:
        edge, node, stretches = todo.pop(0)
        if isinstance(edge, Wire):
            stretches = stretches + tuple((edge.conductor, one) for one in edge.lengths)
            hidden = hidden or edge.gap is not None
        else:
            found = isolating(edge.equipment)
            if found is True:
                if not isinstance(isolator, Equipment):
                    isolator, before = edge.equipment, stretches
                continue
            if isinstance(found, Unknown) and isolator is None:
                isolator = Unknown(f"whether {edge.equipment.name} isolates is not told")
        if node in seen:
            continue
        seen.add(node)
        if node in network.sinks:
            reaches = True
        for after, end in network.near.get(node, ()):
            back = isinstance(after, Link) and after.one_way and node == after.b
            if after is edge or not is_live(after) or back:
                continue
            branch = _exempt_branch(after, first)
            hidden = hidden or isinstance(branch, Unknown)
            if branch is not True:
                todo.append((after, end, stretches))
    return Way(first.conductor, isolator, before, reaches, hidden)


def _exempt_branch(edge: Edge, first: Wire) -> Truth:
    """Whether an edge begins a branch, beyond the first conductor, that may leave ahead of the switch."""
    if not isinstance(edge, Wire) or edge.conductor is first.conductor:
        return False
    duty = edge.conductor.circuit.value("duty")
    return duty if isinstance(duty, Unknown) else duty in EXEMPT


def main_ways(s: Subject) -> list[Way]:
    """The ways of a bank that need a switch: loads, not safety, sensing or charging."""
    found = []
    for way in ways(s.facts, s.item):
        duty = s.read(way.conductor.circuit, "duty")
        if not (isinstance(duty, str) and duty in EXEMPT):
            found.append(way)
    return found


@fact(
    "bank",
    "has_isolator",
    type="yes/no",
    says="Every way from it to loads passes a switch or an isolating breaker.",
    method="walk along each live conductor to the first switch; safety and charging circuits left out",
)
def has_isolator(s: Subject) -> Any:
    found = main_ways(s)
    if not found:
        # Only exempt circuits leave it, or none at all: there is no way that a switch is missing from.
        return Unknown(f"no circuit to loads starts at {s.id}") if not ways(s.facts, s.item) else True
    return every(either(_switched(way), _perhaps_exempt(way)) for way in found)


def _perhaps_exempt(way: Way) -> Truth:
    """A circuit whose duty is not known may be one that needs no switch."""
    duty = way.conductor.circuit.value("duty")
    return duty if isinstance(duty, Unknown) else False


def _switched(way: Way) -> Truth:
    if isinstance(way.isolator, Equipment) and not way.reaches:
        return True
    if way.hidden:
        return Unknown("part of the way was not seen and may hide a switch")
    return way.isolator if isinstance(way.isolator, Unknown) else False


@fact(
    "bank",
    "isolator",
    of="switch",
    type="subject",
    says="The first switch on its way to loads; none where there is no such switch.",
    method="walk from its terminal along each live conductor",
)
def isolator(s: Subject) -> Any:
    hidden: Any = loose_bank(s.facts)
    for way in main_ways(s):
        exempt = _perhaps_exempt(way)
        if isinstance(way.isolator, Equipment):
            if exempt is False:
                return s.facts.subject("switch", way.isolator.name)
            hidden = Unknown(f"what {way.conductor.circuit.name} is for is not told")
        elif way.hidden or isinstance(way.isolator, Unknown):
            hidden = Unknown("part of the way was not seen and may hide a switch")
    return hidden


@fact(
    "bank",
    "isolator_distance",
    unit="m",
    says="Length of conductor between it and the switch; the longest way counts.",
    method="lengths of the run before the first switch",
)
def isolator_distance(s: Subject) -> Any:
    longest: Number = None
    for way in sorted(main_ways(s), key=lambda one: _perhaps_exempt(one) is not False):
        if not isinstance(way.isolator, Equipment):
            continue
        length: Number = Range(0.0, float("inf")) if way.hidden else 0.0
        for conductor, stretch in way.stretches:
            length = add(length, s.use(f"{conductor.circuit.path}.run", stretch.length, "m"))
        if _perhaps_exempt(way) is not False:  # the longest way without it, with it, or none at all
            most = UNKNOWN if longest is None else greatest(longest, length)
            top = most.high if isinstance(most, Range) else most
            low = longest.low if isinstance(longest, Range) else longest
            longest = between(low, top) if isinstance(low, float) and isinstance(top, float) else UNKNOWN
        else:
            longest = length if longest is None else greatest(longest, length)
    return longest


@fact(
    "bank",
    "ahead_of_isolator",
    of="circuit",
    type="list",
    says="The circuits that leave it and reach something without passing a switch.",
    method="walk from its terminal along each live conductor to the first switch",
)
def ahead_of_isolator(s: Subject) -> Any:
    found = []
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    for way in ways(s.facts, s.item):
        if way.reaches:
            if way.hidden:
                return Unknown("part of a way was not seen and may hide a switch")
            found.append(s.facts.of("circuit", way.conductor.circuit))
    return tuple(one for one in found if one is not None)


@fact(
    "circuit",
    "may_pass_isolator",
    type="yes/no",
    says="Its duty lets it leave a bank ahead of the switch.",
    method="sensing, control and charging circuits may, and safety circuits for what guards people, "
    "is essential, or serves gas or radio",
    source="ABYC E-11 11.7.1, 2021 (from memory)",
)
def may_pass_isolator(s: Subject) -> Any:
    duty = s.read(s.item, "duty")
    if not isinstance(duty, str):
        return UNKNOWN
    return every(_guards(load) for load in _behind(s)) if duty == "safety" else duty in EXEMPT


GUARDING = ("gas system", "communication")
"""Purposes, beside those that guard people, for which a load may stay live: gas valves, radio and its memory."""


def _behind(s: Subject) -> list[Subject]:
    """The loads that a circuit feeds, through converters too, not back through itself."""
    live = [one for one in s.facts.network.by_circuit.get(s.id, ()) if one.role == LIVE]
    ends = [wire.b for one in live for wire in one.wires]

    def passes(edge: Edge) -> bool:
        return not (isinstance(edge, Wire) and edge.conductor.circuit is s.item)

    found = supplied(s.facts.network, ends, passes)
    return [load for load in s.facts.subjects("load") if live_node(s.facts, load.item) in found]


def _guards(load: Subject) -> Truth:
    """Whether a load may stay live when the battery is switched off; unknown where its purpose is not told."""
    surely = some((load.guards_people, load.is_essential))
    if surely is True or not load.item.allows("purpose"):
        return surely
    purpose = load.read(load.item, "purpose")
    return purpose if isinstance(purpose, Unknown) else purpose in GUARDING


def bank_of(facts: Facts, switch: Equipment) -> Any:
    """The bank that a switch isolates, None when it isolates none; unknown where the duty of its way is."""
    doubt: Unknown | None = None
    for bank in facts.subjects("bank"):
        for way in main_ways(bank):
            if isinstance(way.isolator, Equipment) and way.isolator is switch:
                if _perhaps_exempt(way) is False:
                    return bank
                doubt = Unknown(f"what {way.conductor.circuit.name} is for is not told")
    return doubt


@fact("switch", "isolates_bank", of="bank", type="subject", says="The bank it isolates; none when it isolates none.",
      method="the first switch on a way from a bank to loads")  # fmt: skip
@where_it_stands
def isolates_bank(s: Subject) -> Any:
    found = bank_of(s.facts, s.item)
    if found is None:
        loose = loose_bank(s.facts)
        if loose is not None:
            return loose
        if stands_unseen(s.facts, s.item):
            return Unknown(f"{s.id} stands in no run that was seen")
    return found


@fact(
    "switch",
    "current_to_break",
    unit="A",
    says="Greatest lasting current that a battery switch carries and must be able to open.",
    method="what all that the bank feeds can ask at once, or all its chargers give; no more than the fuse in its run",
)
def current_to_break(s: Subject) -> Any:
    bank = s.isolates_bank
    if bank is None or isinstance(bank, Unknown):
        return bank
    out, back = bank.load_sum, bank.charge_sum
    asked = greatest(out, back) if not isinstance(out, Unknown) and not isinstance(back, Unknown) else UNKNOWN
    fuses: list[Number] = [s.read(device, "rating") for device in _in_series(s)]
    known = [one for one in fuses if isinstance(one, float | Range)]
    if isinstance(asked, Unknown):
        if not known:
            return Unknown(f"what {bank.id} can be asked for is not known")
        return between(0.0, min(one.high if isinstance(one, Range) else one for one in known))
    most = least([asked, *known])
    return most if len(known) == len(fuses) else multiply(most, Range(0.0, 1.0))


def _in_series(s: Subject) -> list[Equipment]:
    """The protective devices that stand in the same run as the switch."""
    for link in s.facts.network.links:
        if link.equipment is s.item and link.pole == LIVE:
            run = s.facts.network.by_link.get(id(link))
            if run is not None:
                return [one.equipment for one in run.links if one.is_protective]
    return []
