"""Sources of mains: the shore at an inlet, generators, inverters, transformers with a winding of their own."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.feeding import joined_with, neutral_links, reaches_pins
from checker.circuit.mains import Feed
from checker.circuit.states import State, Truth
from checker.design.given import Where
from checker.design.model import Equipment
from checker.facts.catalogue import fact, subjects
from checker.facts.mains import (
    TOO_MANY,
    Count,
    answer,
    ever,
    greatest,
    least,
    read_switching,
    shown_states,
    states_of,
    tell,
    tell_state,
    worst,
)
from checker.facts.state import METHOD
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth as Answer
from checker.quantities import Unknown, equal, every

KINDS = ("shore inlet", "generator", "inverter", "inverter-charger", "transformer")


@subjects("ac_source", "Something that can feed the mains side: shore inlet, generator, inverter, transformer.")
def ac_sources(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for feed in states_of(facts).mains.feeds:
        yield feed.name, feed.equipment.where, feed


def fed_states(s: Subject) -> list[State]:
    """The states in which the source feeds, or perhaps does."""
    return [state for state in shown_states(s) if s.item in state.feeding]


@fact("ac_source", "type_of_source", words=KINDS, says="What it is.")
def type_of_source(s: Subject) -> str:
    return str(s.item.equipment.kind)


@fact("ac_source", "is_aboard", type="yes/no", says="It stands in the vehicle.", method="kind of equipment")
def is_aboard(s: Subject) -> bool:
    feed: Feed = s.item
    return feed.aboard


@fact(
    "ac_source",
    "is_separated",
    type="yes/no",
    says="The circuits it feeds are declared electrically separated, or its site is insulated from earth.",
    method="`shock protection: separated` on each circuit that starts at it; `earthing: IT` of the site",
)
def is_separated(s: Subject) -> Any:
    feed: Feed = s.item
    if not feed.aboard:
        earthing = s.read(s.facts.design.vehicle, "supply.earthing")
        return earthing if isinstance(earthing, Unknown) else earthing == "IT"
    started = [c for c in s.facts.network.circuits if c.start.equipment == feed.name and c.start.port in _OUT]
    told: list[Answer] = []
    for circuit in started:
        if s.facts.network.systems[circuit.name] == "ac":
            measure = s.read(circuit, "shock protection")
            # What is declared nowhere is not declared; the word `unknown` leaves it open.
            told.append(equal(measure, "separated") if circuit.has("shock protection") else False)
    return every(told) if told else False


_OUT = (None, "ac", "ac-out", "secondary")


def _count(s: Subject, pick: Any) -> Any:
    read_switching(s)
    if not states_of(s.facts).complete:
        return TOO_MANY
    counts = [
        Count(state.name, state.certain and state.feeding[s.item] is True, *neutral_links(state, s.item))
        for state in fed_states(s)
    ]
    value, name = worst(counts, pick)
    if not name:
        tell(s, "it never feeds")
    tell_state(s, name)
    return value


@fact("ac_source", "least_links", unit="count", says="Fewest neutral-earth links while it feeds.", method=METHOD)
def least_links(s: Subject) -> Any:
    return _count(s, least)


@fact("ac_source", "most_links", unit="count", says="Most neutral-earth links while it feeds.", method=METHOD)
def most_links(s: Subject) -> Any:
    return _count(s, greatest)


def settled(s: Subject, asks: Any, reason: str) -> Any:
    """Whether something comes about in some supply state; `asks` is put to each."""
    read_switching(s)
    if not states_of(s.facts).complete:
        return TOO_MANY
    found, name = ever(shown_states(s), asks)
    tell_state(s, name)
    return answer(found, reason)


@fact(
    "ac_source",
    "is_joined_with_another",
    type="yes/no",
    says="In some state its live conductor is joined to that of another source which is not made to run with it.",
    method=METHOD,
)
def is_joined_with_another(s: Subject) -> Any:
    return settled(s, lambda state: _joined(s, state), "whether another source is joined to it is not known")


def _joined(s: Subject, state: State) -> Truth:
    """Whether it feeds together with a source that it is not made to run with."""
    if s.item not in state.feeding:
        return False
    sure, may = joined_with(state, s.item, LIVE)
    strangers = [_made_for_another(s, other) for other in sure]
    if any(one is False for one in strangers):
        return True
    doubts = [_made_for_another(s, other) for other in may]
    return None if any(one is not True for one in (*strangers, *doubts)) else False


def _made_for_another(s: Subject, other: Feed) -> Truth:
    """Whether one of two sources is made to run with the other; None where that is written as unknown."""
    if other.name in partners_of(s, s.item) or s.item.name in partners_of(s, other):
        return True
    return None if any(_partners_unknown(feed) for feed in (s.item, other)) else False


def _partners_unknown(feed: Feed) -> bool:
    item, key = feed.equipment, "synchronises with"
    return item.allows(key) and item.has(key) and isinstance(item.value(key), Unknown)


def partners_of(s: Subject, feed: Feed) -> tuple[str, ...]:
    """Names of the sources that a source is made to run beside."""
    if not feed.equipment.allows("synchronises with"):
        return ()
    names = feed.equipment.value("synchronises with")
    return names if isinstance(names, tuple) else ()


def beside_within(s: Subject, state: State, feed: Feed) -> tuple[list[Feed], list[Feed]]:
    """Partners of an inverter-charger that stand on its mains input in a state: surely, and perhaps."""
    partners = partners_of(s, feed)
    sure, may = state.feeds_of(f"{feed.name}:ac-inL", but=feed.name)
    return [one for one in sure if one.name in partners], [one for one in may if one.name in partners]


@fact(
    "ac_source",
    "shares_neutral",
    type="yes/no",
    says="In some state in which it feeds its neutral is joined to that of another source, and its live is not.",
    method=METHOD,
)
def shares_neutral(s: Subject) -> Any:
    def shared(state: State) -> Truth:
        if s.item not in state.feeding:
            return False
        found: Truth = False
        for other in states_of(s.facts).mains.feeds:
            if other is s.item or not state.may.joined(s.item.neutral, other.neutral):
                continue
            surely = state.feeding[s.item] is True and state.sure.joined(s.item.neutral, other.neutral)
            if surely and not state.may.joined(s.item.live, other.live):
                return True
            if not state.sure.joined(s.item.live, other.live):
                found = None
        return found

    return settled(s, shared, "whether its neutral is joined to another is not known")


@fact(
    "ac_source",
    "reaches_inlet_pins",
    type="yes/no",
    says="In some state it makes the pins of a shore inlet live while the lead is out.",
    method=METHOD + "; an inverter-charger that may feed back reaches its own input",
)
def reaches_inlet_pins(s: Subject) -> Any:
    item = s.item.equipment
    if item.kind == "inverter-charger":
        s.read(item, "transfer.backfeed")
    return settled(s, _to_an_inlet(s), "whether it can feed back to the inlet is not known")


def _to_an_inlet(s: Subject) -> Callable[[State], Truth]:
    """Whether the source makes the pins of some inlet live in a state."""
    inlets = [feed for feed in states_of(s.facts).mains.feeds if not feed.aboard]

    def reached(state: State) -> Truth:
        found: Truth = False
        for inlet in inlets:
            one = reaches_pins(state, s.item, inlet)
            if one is True:
                return True
            found = None if one is None else found
        return found

    return reached


@fact(
    "ac_source",
    "reaches_pins_by_one_weld",
    type="yes/no",
    says="In some state it would make the pins of an inlet live if the contacts of one relay were welded.",
    method=METHOD + "; each open relay in turn taken as closed, except where one that is interlocked with it is closed",
)
def reaches_pins_by_one_weld(s: Subject) -> Any:
    return _by_one_weld(s, _to_an_inlet(s), "whether a source aboard stays away from the inlet is not known")


@fact(
    "ac_source",
    "joined_by_one_weld",
    type="yes/no",
    says="In some state it would feed together with a source it is not made to run with if one relay were welded.",
    method=METHOD + "; each open relay in turn taken as closed, except where one that is interlocked with it is closed",
)
def joined_by_one_weld(s: Subject) -> Any:
    return _by_one_weld(s, lambda state: _joined(s, state), "whether a relay keeps another source away is not known")


def _by_one_weld(s: Subject, asks: Callable[[State], Truth], reason: str) -> Any:
    """Whether something comes about in some state with the contacts of one open relay closed."""
    mains = states_of(s.facts).mains
    relays = list(dict.fromkeys(link.equipment for link in mains.switching if link.when == "coil"))
    for relay in relays:
        s.read(relay, "interlocked with")

    def welded(state: State) -> Truth:
        found: Truth = False
        closed = {link.equipment.name for link in state.closed}
        for relay in relays:
            held = _held_open(relay, closed)
            if relay.name in closed or held is True:
                continue
            one = asks(state.with_welded(relay))
            if one is True and held is False:
                return True
            found = None if one is not False else found
        return found

    return settled(s, welded, reason)


def _held_open(relay: Equipment, closed: set[str]) -> Truth:
    """Whether a mechanical interlock with a closed relay keeps this one open."""
    others = relay.value("interlocked with")
    if isinstance(others, Unknown):
        return None
    return isinstance(others, tuple) and bool(closed.intersection(others))


@fact(
    "ac_source",
    "feeds_own_charger",
    type="yes/no",
    says="In some state an inverter feeds a battery charger, of whatever battery, that is not held off in that state.",
    method=METHOD + "; a charger runs with the shore present or the generator running while one of them feeds anything",
)
def feeds_own_charger(s: Subject) -> Any:
    feed: Feed = s.item
    if feed.equipment.kind not in ("inverter", "inverter-charger"):
        return False
    chargers = []
    for item in s.facts.network.equipment.values():
        port = {"charger": "ac", "inverter-charger": "ac-in"}.get(item.kind)
        if port is not None and item is not feed.equipment:
            node = f"{item.name}:{port}L"
            if node in s.facts.network.near:
                chargers.append((node, runs_with(s, item)))

    def loop(state: State) -> Truth:
        found: Truth = False
        for node, runs_with in chargers:
            sure, may = state.feeds_of(node)
            on = runs_with if not isinstance(runs_with, tuple) else _any_feeds(state, runs_with)
            if feed in sure and on is True:
                return True
            found = None if (feed in sure or feed in may) and on is not False else found
        return found

    return settled(s, loop, "whether the charger drops off while the inverter feeds is not known")


SIGNALLED = {"shore present": ("shore inlet",), "generator running": ("generator",)}
"""What a signal tells of the mains: kinds of source of which one feeds. A running engine tells nothing of it."""


def _any_feeds(state: State, kinds: tuple[str, ...]) -> Truth:
    """Whether a source of these kinds feeds in a state, wherever it leads."""
    on = [state.feeding[feed] for feed in state.feeding if feed.equipment.kind in kinds]
    return True if any(one is True for one in on) else None if on else False


def runs_with(s: Subject, charger: Any) -> Truth | tuple[str, ...]:
    """The kinds of source without which a charger stays off; else whether it runs: always, perhaps, never."""
    key = "charger.when" if charger.kind == "inverter-charger" else "enabled by"
    by = s.read(charger, key)
    if isinstance(by, Unknown):
        # In a design a wire that is not drawn is not there; in a survey it was perhaps not seen.
        return True if not charger.has(key) and equal(s.facts.design.purpose.value, "design") is True else None
    if charger.kind == "inverter-charger":
        return False if by is None or by == "never" else SIGNALLED.get(str(by), True)
    signal = s.facts.network.equipment.get(by) if isinstance(by, str) else None
    if signal is None or signal.kind != "signal":
        return None if by is not None else True
    means = s.read(signal, "means")
    if isinstance(means, Unknown):
        return None
    return True if means == "engine running" else SIGNALLED.get(str(means))


@fact("ac_source", "frame_is_bonded", type="yes/no", says="The frame of a generator is bonded; none for others.")
def frame_is_bonded(s: Subject) -> Any:
    item = s.item.equipment
    return s.read(item, "frame bond") if item.kind == "generator" else None
