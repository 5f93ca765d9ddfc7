"""Joins of neutral and earth aboard: inside inverters and generators, at boards, by a wire."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.feeding import bonded_on_shore, links_with
from checker.circuit.mains import Bond
from checker.circuit.states import State, Truth
from checker.design.given import Where
from checker.facts.catalogue import fact, subjects
from checker.facts.mains import (
    TOO_MANY,
    Count,
    answer,
    ever,
    greatest,
    read_switching,
    shown_states,
    states_of,
    tell,
    tell_state,
    worst,
)
from checker.facts.state import METHOD
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown

MADE_BY = ("inverter", "generator", "board", "wire")


@subjects("bond", "A join of neutral and earth aboard, or a place where there may be one.")
def bonds(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order within each sort."""
    for bond in states_of(facts).mains.bonds:
        yield bond.name, bond.where, bond


@fact("bond", "made_by", words=MADE_BY, says="What makes the join.")
def made_by(s: Subject) -> str:
    kind = s.item.item.kind
    if kind in ("inverter", "inverter-charger"):
        return "inverter"
    return kind if kind in ("generator", "board") else "wire"


@fact("bond", "is_there", type="yes/no", says="There is such a join at all.", method="graph")
def is_there(s: Subject) -> Any:
    bond: Bond = s.item
    read_switching(s)
    if bond.link is None:
        return answer(None if bond.doubtful else True, f"whether neutral meets earth at {s.id} is not known")
    when = s.read(bond.item, "bond.when")
    if isinstance(when, Unknown):
        return Unknown(f"whether and when {s.id} joins neutral to earth is not known")
    return when is not None and when != "never"


@fact(
    "bond",
    "most_links",
    unit="count",
    says="Most neutral-earth links on its neutral while it is closed, itself and the one ashore included.",
    method=METHOD,
)
def most_links(s: Subject) -> Any:
    read_switching(s)
    if not states_of(s.facts).complete:
        return TOO_MANY
    bond: Bond = s.item
    counts = []
    for state in shown_states(s):
        closed = state.bonds.get(bond, False)
        if closed is not False and state.feeding:
            least, most = links_with(state, bond)
            counts.append(Count(state.name, state.certain, least if closed is True else 0, most))
    value, name = worst(counts, greatest)
    if not name:
        tell(s, "it is never closed while a source feeds")
    tell_state(s, name)
    return 0.0 if value is None else value


@fact("bond", "is_closed_on_shore", type="yes/no", says="It is closed on a neutral fed from the shore.", method=METHOD)
def is_closed_on_shore(s: Subject) -> Any:
    read_switching(s)
    if not states_of(s.facts).complete:
        return TOO_MANY

    def closed(state: State) -> Truth:
        return bonded_on_shore(state, s.item)

    found, name = ever(shown_states(s), closed)
    tell_state(s, name)
    return answer(found, "whether it is closed while the shore feeds is not known")
