"""Reachable supply states of the mains side."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.feeding import joined_with, neutral_links, reaches_pins
from checker.circuit.states import State, Truth
from checker.design.given import Where
from checker.facts.catalogue import fact, subjects
from checker.facts.mains import (
    Count,
    answer,
    greatest,
    least,
    read_switching,
    states_of,
    tell_state,
    witness_words,
    worst,
)
from checker.facts.subject import Facts, Subject

METHOD = "every combination of shore, generators, inverters and changeovers, solved with coils and transfer relays"


@subjects("state", "One reachable supply state of the mains side.")
def states(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In the order of the free positions."""
    for state in states_of(facts).states:
        yield state.name, facts.design.vehicle.where, state


@fact("state", "is_certain", type="yes/no", says="It is reached; unknown where the file leaves it open.", method=METHOD)
def is_certain(s: Subject) -> Any:
    read_switching(s)
    state: State = s.item
    return answer(True if state.certain and state.stable else None, "whether these positions are reached is not known")


@fact(
    "state",
    "witness",
    type="text",
    says="Shortest sequence of operations that reaches it, from shore absent and everything at rest.",
    method="breadth first over single operations; what moves by itself follows each",
)
def witness(s: Subject) -> str:
    return witness_words(states_of(s.facts), s.id)


@fact("state", "is_fed", type="yes/no", says="At least one source feeds the mains side.", method=METHOD)
def is_fed(s: Subject) -> Any:
    feeding: list[Truth] = list(s.item.feeding.values())
    return answer(True if True in feeding else None if feeding else False, "whether a source feeds it is not known")


@fact("state", "on_shore", type="yes/no", says="A shore lead is in.", method=METHOD)
def on_shore(s: Subject) -> bool:
    return any(s.item.present.values())


@fact("state", "least_neutral_earth_links", unit="count", says="Fewest neutral-earth links of a source.", method=METHOD)
def least_neutral_earth_links(s: Subject) -> Any:
    return _links(s, least)


@fact("state", "most_neutral_earth_links", unit="count", says="Most neutral-earth links of any source.", method=METHOD)
def most_neutral_earth_links(s: Subject) -> Any:
    return _links(s, greatest)


def _links(s: Subject, pick: Any) -> Any:
    read_switching(s)
    state: State = s.item
    tell_state(s, state.name)
    counts = [Count(state.name, on is True, *neutral_links(state, feed)) for feed, on in state.feeding.items()]
    return worst(counts, pick)[0]


@fact("state", "sources_joined", type="yes/no", says="Two sources feed into each other.", method=METHOD)
def sources_joined(s: Subject) -> Any:
    read_switching(s)
    state: State = s.item
    tell_state(s, state.name)
    found: Truth = False
    for feed in state.feeding:
        sure, may = joined_with(state, feed, LIVE)
        if sure:
            return True
        found = None if may else found
    return answer(found, "whether two sources are joined is not known")


@fact("state", "inlet_pins_live", type="yes/no", says="The pins of an inlet without its lead are live.", method=METHOD)
def inlet_pins_live(s: Subject) -> Any:
    read_switching(s)
    state: State = s.item
    tell_state(s, state.name)
    found: Truth = False
    for inlet in state.mains.feeds:
        for feed in state.mains.feeds:
            if inlet.aboard or not feed.aboard:
                continue
            reached = reaches_pins(state, feed, inlet)
            if reached is True:
                return True
            found = None if reached is None else found
    return answer(found, "whether a source aboard reaches the inlet is not known")
