"""Every supply state of the mains side that can be reached.

Free are: each shore inlet (lead in or out), each generator, each inverter (on or off), each changeover and interlocked
switch worked by hand. What acts by itself (transfer relays, coils, bond relays) is solved so that it agrees with what
is live. What the file leaves open is carried along: each state knows what is joined *for sure* and what *perhaps* is,
so that a doubt can never turn into a yes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import islice

from checker.circuit.mains import Mains
from checker.circuit.network import Network
from checker.circuit.positions import Choice, choices, free_positions, is_doubtful, one_at_a_time, parting_switches
from checker.circuit.solver import Free, Law, Solver, law_of
from checker.circuit.state import MAYBE, State, Truth
from checker.circuit.witness import Ways
from checker.design.model import Equipment

MOST_STATES = 1024
"""Combinations of free positions that are worked through; a design with more is answered with unknown."""


class States:
    """All reachable states. `complete` is False when there are more combinations than are worked through.

    `merged` says that there were more, and that changeovers behind which only loads stand vary one at a time. `opened`
    names equipment whose contacts stay open in every state.
    """

    __slots__ = ("_by_name", "_nearest", "_ways", "coils", "complete", "free", "mains", "merged", "states")

    def __init__(self, network: Network, opened: frozenset[str] = frozenset()) -> None:
        self.mains = Mains(network, opened)
        parting = parting_switches(self.mains)
        if parting:
            self.mains = Mains(network, opened, parting)
        self.free = free_positions(self.mains)
        self.coils = {item.name: law for item in _coiled(self.mains) if (law := law_of(self.mains, item)) is not None}
        self.states: tuple[State, ...] = ()
        self.complete, self.merged = True, False
        self._ways: Ways | None = None
        self._nearest: tuple[State, ...] | None = None
        self._by_name: dict[str, State] = {}
        if self.mains.feeds:
            found = _bounded(choices(self.free))
            if found is None:
                found, self.merged = _bounded(one_at_a_time(self.mains, self.free)), True
            self.complete = found is not None
            if found is not None:
                self.states = tuple(self._all(found))
                self._doubt_what_nothing_reaches()

    def _all(self, found: Iterable[Choice]) -> Iterator[State]:
        """Each combination, solved from all coils released and from all worked; a doubled state is given once."""
        names: dict[str, int] = {}
        for choice in found:
            seen: set[tuple[int, ...]] = set()
            solver = self._solver(choice)
            for start in (False, True):
                state = solver.solve(start)
                if state.mark() not in seen:
                    seen.add(state.mark())
                    names[state.name] = names.get(state.name, 0) + 1
                    if names[state.name] > 1:
                        state.name = f"{state.name} ({names[state.name]})"
                    yield state
                if not solver.remembers:
                    break

    def _solver(self, choice: Choice) -> Solver:
        return Solver(self.mains, self.free, choice, self.coils, doubtful=is_doubtful(self.free, choice))

    def _doubt_what_nothing_reaches(self) -> None:
        """A second state of one combination that no operation leads to, contacts being as they were, is not certain."""
        if len({state.choice for state in self.states}) == len(self.states):
            return
        for state in self.states:
            if not self.ways.reaches(state):
                state.certain = False

    @property
    def ways(self) -> Ways:
        """The operations from state to state, found once."""
        if self._ways is None:
            self._ways = Ways(self.free, self.states, lambda choice, state: self._solver(choice).solve(state.live))
        return self._ways

    @property
    def nearest(self) -> tuple[State, ...]:
        """All states, those first that the fewest operations reach; found once."""
        if self._nearest is None:
            self._nearest = tuple(sorted(self.states, key=self.ways.distance))
        return self._nearest

    def named(self, name: str) -> State | None:
        """The state of that name."""
        if not self._by_name:
            self._by_name = {state.name: state for state in self.states}
        return self._by_name.get(name)

    def witness(self, state: State) -> tuple[str, ...] | None:
        """The shortest sequence of operations that reaches a state from shore absent and all at rest; None without."""
        return self.ways.to(state)


def _bounded(found: Iterator[Choice]) -> list[Choice] | None:
    first = list(islice(found, MOST_STATES + 1))
    return first if len(first) <= MOST_STATES else None


def _coiled(mains: Mains) -> list[Equipment]:
    return list(dict.fromkeys(link.equipment for link in mains.switching if link.equipment.kind == "changeover"))


__all__ = ["MAYBE", "MOST_STATES", "Free", "Law", "State", "States", "Truth"]
