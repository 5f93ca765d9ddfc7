"""Every supply state of the mains side that can be reached.

Free are: each shore inlet (lead in or out), each generator, each inverter (on or off), each changeover and interlocked
switch worked by hand. What acts by itself (transfer relays, coils, bond relays) is solved so that it agrees with what
is live. What the file leaves open is carried along: each state knows what is joined *for sure* and what *perhaps* is,
so that a doubt can never turn into a yes.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from checker.circuit.inside import throws_of
from checker.circuit.mains import Mains, interlocked, word
from checker.circuit.network import Network
from checker.circuit.solver import Free, Law, Solver, law_of
from checker.circuit.state import MAYBE, State, Truth
from checker.design.model import Equipment

MOST_STATES = 512
"""Combinations of free positions that are worked through; a design with more is answered with unknown."""


class States:
    """All reachable states. `complete` is False when there are more combinations than are worked through."""

    __slots__ = ("complete", "mains", "states")

    def __init__(self, network: Network) -> None:
        self.mains = Mains(network)
        free = _free(self.mains)
        count = 1
        for one in free:
            count *= len(one.positions)
        self.complete = count <= MOST_STATES
        self.states: tuple[State, ...] = ()
        if self.complete and self.mains.feeds:
            self.states = tuple(_all(self.mains, free))


def _free(mains: Mains) -> list[Free]:
    """What can be chosen, in file order within each sort."""
    found: list[Free] = []
    for feed in mains.feeds:
        item = feed.equipment
        if item.kind == "shore inlet":
            found.append(Free(item, ("present", "absent"), names="shore"))
        elif item.kind == "generator":
            found.append(Free(item, ("running", "stopped")))
        elif item.kind in ("inverter", "inverter-charger"):
            found.append(Free(item, ("on", "off")))
            if word(item, "transfer.when") == "by hand":
                found.append(Free(item, ("transfer closed", "transfer open")))
    inlets = [free for free in found if free.names == "shore"]
    if len(inlets) > 1:
        for free in inlets:
            free.names = f"shore at {free.item.name}"
    switched = dict.fromkeys(link.equipment for link in mains.switching)
    for item in switched:
        if item.kind == "changeover" and law_of(mains, item) is None:
            throws = throws_of(item)
            certain = word(item, "operated") not in (None, "coil", "signal")
            found.append(Free(item, throws or ("unknown",), certain=certain and bool(throws)))
        elif item.kind == "switch" and item.name in interlocked(mains.network):
            found.append(Free(item, ("closed", "open")))
    return found


def _all(mains: Mains, free: list[Free]) -> Iterator[State]:
    """Each combination, solved from all coils released and from all worked; a doubled state is given once."""
    coils = {item.name: law for item in _coiled(mains) if (law := law_of(mains, item)) is not None}
    names: dict[str, int] = {}
    for choice in product(*(one.positions for one in free)):
        if _refused(mains, free, choice):
            continue
        solver = Solver(mains, free, choice, coils)
        seen: set[tuple[int, ...]] = set()
        for start in (False, True):
            state = solver.solve(start)
            mark = (*sorted(map(id, state.closed)), -1, *sorted(map(id, state.perhaps)))
            if mark not in seen:
                seen.add(mark)
                names[state.name] = names.get(state.name, 0) + 1
                if names[state.name] > 1:
                    state.name = f"{state.name} ({names[state.name]})"
                yield state
            if not solver.remembers:
                break


def _coiled(mains: Mains) -> list[Equipment]:
    return list(dict.fromkeys(link.equipment for link in mains.switching if link.equipment.kind == "changeover"))


def _refused(mains: Mains, free: list[Free], choice: tuple[str, ...]) -> bool:
    """Whether an interlock forbids the combination."""
    on = {one.item.name for one, position in zip(free, choice, strict=True) if position in ("closed", "present")}
    for one, position in zip(free, choice, strict=True):
        if position in ("closed", "present") and one.item.allows("interlocked with"):
            others = one.item.value("interlocked with")
            if isinstance(others, tuple) and on.intersection(others):
                return True
    return False


__all__ = ["MAYBE", "MOST_STATES", "Law", "State", "States", "Truth"]
