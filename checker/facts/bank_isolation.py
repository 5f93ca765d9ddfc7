"""The ways out of a bank: the switch on each, how far away, what hangs ahead of it."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.circuit.elements import LIVE, Conductor, Edge, Link, Wire
from checker.circuit.supply import is_live, supplied
from checker.design.model import Equipment
from checker.design.run import Length
from checker.facts.bank import home, loose_bank
from checker.facts.catalogue import fact
from checker.facts.contacts import signal_item
from checker.facts.darkness import live_node
from checker.facts.subject import Facts, Subject
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
    some,
)
from checker.quantities.values import between

EXEMPT = ("safety", "sense", "control", "charge", "bonding")
"""Duties of circuits that need not pass the isolator: alarms, memory, management, chargers."""
ISOLATING_RELAYS = ("remote", "by hand")
BY_ITSELF = ("breakaway pin", "pressure", "float", "thermostat", "timer")
"""What works a switch that nobody opens in need."""

Stretches = tuple[tuple[Conductor, Length], ...]


class First(NamedTuple):
    """The first switch or isolating breaker on a branch of a way: what lies before it, and the node behind it."""

    item: Equipment
    stretches: Stretches
    link: Link
    behind: str


class Way(NamedTuple):
    """One live conductor that leaves a bank.

    `first` are the first switches or isolating breakers on its branches, `perhaps` what may be one before them.
    `reaches` says whether supply gets to some equipment without passing one; `hidden` that a part was not seen.
    """

    conductor: Conductor
    first: tuple[First, ...]
    perhaps: tuple[Equipment, ...]
    reaches: Truth
    hidden: bool

    @property
    def open(self) -> Unknown | None:
        """Why more switches may stand on it than were found; None when all is told."""
        if self.hidden:
            return Unknown("part of the way was not seen and may hide a switch")
        return self.reaches if isinstance(self.reaches, Unknown) else None


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


def isolating(facts: Facts, item: Equipment) -> Truth:
    """Whether a piece of equipment in a run serves as a battery switch."""
    if item.kind == "switch":
        worked = item.value("operated")
        if isinstance(worked, Unknown) and item.has("operated"):
            return Unknown(f"how {item.name} is worked is not told")
        return isinstance(worked, Unknown) or worked not in BY_ITSELF
    if item.kind in ("breaker", "rcbo"):
        stated = item.value("isolates")
        return stated if isinstance(stated, bool | Unknown) else False
    return _relay_isolates(facts, item) if item.kind == "relay" else False


def _relay_isolates(facts: Facts, item: Equipment) -> Truth:
    """A relay serves where a hand works it, there or from afar; one that something else drives does not."""
    worked = item.value("operated")
    control = control_of(facts, item)
    if control is not None:
        return isolating(facts, control)
    if isinstance(worked, Unknown) and not isinstance(item.value("driven by"), str):
        return Unknown(f"whether a hand works {item.name}, there or from afar, is not told")
    return not isinstance(worked, Unknown) and worked in ISOLATING_RELAYS


def control_of(facts: Facts, item: Equipment) -> Equipment | None:
    """The small switch that works a battery switch from afar: where its signal comes from, or in the line of its coil.

    None when neither is told.
    """
    named = item.value("driven by")
    signal = signal_item(facts, named)
    origin = named if signal is None else signal.value("from")
    owner = facts.network.equipment.get(origin.split(".", 1)[0]) if isinstance(origin, str) else None
    if owner is not None and owner.kind == "switch":
        return owner
    coil = f"{item.name}:coil"
    lines = (one for one in facts.network.conductors if coil in (one.start, one.end))
    return next((link.equipment for one in lines for link in one.links if link.equipment.kind == "switch"), None)


def _follow(facts: Facts, first: Wire, start: str, far: str) -> Way:
    """Walk on until a switch on each branch; what may be none is passed, and what lies behind it stays open."""
    network = facts.network
    found: list[First] = []
    unsure: list[Equipment] = []
    hidden, reaches = False, False
    perhaps: Unknown | None = None
    seen = {start}
    todo: list[tuple[Any, str, Stretches, Unknown | None]] = [(first, far, (), None)]
    later: list[tuple[Any, str, Stretches, Unknown | None]] = []
    while todo or later:
        edge, node, stretches, doubt = (todo or later).pop(0)
        if isinstance(edge, Wire):
            stretches = stretches + tuple((edge.conductor, one) for one in edge.lengths)
            hidden = hidden or edge.gap is not None
        else:
            serves = isolating(facts, edge.equipment)
            if serves is True:
                if all(one.item is not edge.equipment for one in found):
                    found.append(First(edge.equipment, stretches, edge, node))
                continue
            if isinstance(serves, Unknown) and doubt is None:  # what is reached without it comes first
                later.append((edge, node, stretches, serves))
                unsure.append(edge.equipment)
                continue
        if node in seen:
            continue
        seen.add(node)
        if node in network.sinks:
            reaches, perhaps = reaches or doubt is None, doubt if perhaps is None else perhaps
        for after, end in network.near.get(node, ()):
            back = isinstance(after, Link) and after.one_way and node == after.b
            if after is edge or not is_live(after) or back:
                continue
            branch = _exempt_branch(after, first)
            hidden = hidden or isinstance(branch, Unknown)
            if branch is not True:
                (todo if doubt is None else later).append((after, end, stretches, doubt))
    answer: Truth = True if reaches else False if perhaps is None else perhaps
    return Way(first.conductor, tuple(found), tuple(unsure), answer, hidden)


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
    return every(either(_switched(way), perhaps_exempt(way)) for way in found)


def perhaps_exempt(way: Way) -> Truth:
    """A circuit whose duty is not known may be one that needs no switch."""
    duty = way.conductor.circuit.value("duty")
    return duty if isinstance(duty, Unknown) else False


def _switched(way: Way) -> Truth:
    if way.first and way.reaches is False:
        return True
    return False if way.open is None else way.open


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
        exempt = perhaps_exempt(way)
        if way.first:
            if exempt is False:
                return s.facts.subject("switch", way.first[0].item.name)
            hidden = Unknown(f"what {way.conductor.circuit.name} is for is not told")
        elif way.open is not None:
            hidden = way.open
    return hidden


@fact(
    "bank",
    "isolator_distance",
    unit="m",
    says="Length of conductor between it and a switch or isolating breaker on its ways to loads, the longest way; none "
    "without one.",
    method="lengths of the run before the first switch of each branch",
)
def isolator_distance(s: Subject) -> Any:
    longest: Number = None
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    for way in sorted(main_ways(s), key=lambda one: perhaps_exempt(one) is not False):
        for first in way.first:
            longest = _longer(longest, _length_before(s, way, first), perhaps_exempt(way) is False)
        if not way.first and way.open is not None:
            return way.open
    return longest


def _length_before(s: Subject, way: Way, first: First) -> Number:
    length: Number = Range(0.0, float("inf")) if way.hidden else 0.0
    for conductor, stretch in first.stretches:
        length = add(length, s.use(f"{conductor.circuit.path}.run", stretch.length, "m"))
    return length


def _longer(longest: Number, length: Number, counts: bool) -> Number:
    """The longest way so far with one more, which may or may not count."""
    if counts:
        return length if longest is None else greatest(longest, length)
    most = UNKNOWN if longest is None else greatest(longest, length)
    top = most.high if isinstance(most, Range) else most
    low = longest.low if isinstance(longest, Range) else longest
    return between(low, top) if isinstance(low, float) and isinstance(top, float) else UNKNOWN


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
        if way.reaches is not False:
            if way.open is not None:
                return way.open
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
    return every(guards(load) for load in _behind(s)) if duty == "safety" else duty in EXEMPT


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


def guards(load: Subject) -> Truth:
    """Whether a load may stay live when the battery is switched off; unknown where its purpose is not told."""
    surely = some((load.guards_people, load.is_essential))
    if surely is True or not load.item.allows("purpose"):
        return surely
    purpose = load.read(load.item, "purpose")
    return purpose if isinstance(purpose, Unknown) else purpose in GUARDING
