"""How a supply state is reached: the shortest sequence of operations, from the shore lead out and all at rest.

An operation changes one position; what acts by itself then follows, from what its sensors saw before. Breadth first,
in the order of the file, so that the same file gives the same sequence.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from math import inf

from checker.circuit.elements import Link
from checker.circuit.solver import Free
from checker.circuit.state import State

Choice = tuple[str, ...]
Settle = Callable[[Choice, State], State]
REST = {"present": "absent", "running": "stopped", "on": "off", "transfer closed": "transfer open", "closed": "open"}
"""First position of what is chosen -> the one it rests in."""


def at_rest(free: list[Free]) -> Choice:
    """Shore absent, generators stopped, inverters off, changeovers as they rest, else open, else at the first throw."""
    return tuple(_rest(one) for one in free)


def _rest(one: Free) -> str:
    if one.item.kind != "changeover":
        return REST.get(one.positions[0], one.positions[0])
    rest = one.item.value("rest")
    if isinstance(rest, str) and rest in one.positions:
        return rest
    return "open" if "open" in one.positions else one.positions[0]


class Ways:
    """The operations that lead from one state to another, and the shortest sequence to each.

    `settle` finds what becomes of a state when the positions change to those given; it is asked only where what was
    closed before could make a difference.
    """

    __slots__ = ("_before", "_far", "_free", "start")

    def __init__(self, free: list[Free], states: tuple[State, ...], settle: Settle) -> None:
        self._free = free
        by_choice: dict[Choice, list[State]] = {}
        for state in states:
            by_choice.setdefault(state.choice, []).append(state)
        rest = at_rest(free)
        self.start: State | None = by_choice[rest][0] if rest in by_choice else None
        self._before: dict[int, State | None] = {}
        self._far: dict[int, int] = {}
        if self.start is not None:
            self._walk(self.start, by_choice, settle)

    def _walk(self, start: State, by_choice: dict[Choice, list[State]], settle: Settle) -> None:
        self._before[id(start)] = None
        self._far[id(start)] = 0
        todo = [start]
        for state in todo:
            for choice in _one_operation(self._free, state.choice):
                found = by_choice.get(choice)
                if found is None:
                    continue
                far = found[0] if len(found) == 1 else _same(found, settle(choice, state))
                if far is not None and id(far) not in self._before:
                    self._before[id(far)] = state
                    self._far[id(far)] = self._far[id(state)] + 1
                    todo.append(far)

    def reaches(self, state: State) -> bool:
        """Whether some sequence of operations leads to a state."""
        return id(state) in self._before

    def distance(self, state: State) -> float:
        """How many operations lead to a state; infinite when none do."""
        return float(self._far.get(id(state), inf))

    def to(self, state: State) -> tuple[str, ...] | None:
        """The operations that reach a state, each followed by what moves by itself; None when none do."""
        if not self.reaches(state):
            return None
        way = [state]
        while (before := self._before[id(way[-1])]) is not None:
            way.append(before)
        words: list[str] = []
        for old, new in pairwise(reversed(way)):
            words.append(_operation(self._free, old.choice, new.choice))
            words.extend(moves(old, new))
        return tuple(words)


def _one_operation(free: list[Free], choice: Choice) -> list[Choice]:
    found = []
    for index, one in enumerate(free):
        for position in one.positions:
            if position != choice[index]:
                found.append((*choice[:index], position, *choice[index + 1 :]))
    return found


def _same(found: list[State], settled: State) -> State | None:
    mark = settled.mark()
    return next((state for state in found if state.mark() == mark), None)


def _operation(free: list[Free], old: Choice, new: Choice) -> str:
    index = next(number for number, position in enumerate(old) if new[number] != position)
    one, position = free[index], new[index]
    name = one.item.name
    at = "" if one.names == "shore" else f" at {name}"
    return {
        "present": f"plug in the shore lead{at}",
        "absent": f"unplug the shore lead{at}",
        "running": f"start {name}",
        "stopped": f"stop {name}",
        "on": f"switch {name} on",
        "off": f"switch {name} off",
        "transfer closed": f"close the transfer of {name}",
        "transfer open": f"open the transfer of {name}",
        "closed": f"close {name}",
        "unknown": f"work {name}",
    }.get(position, f"open {name}" if one.item.kind == "switch" else f"set {name} to {position}")


def moves(old: State, new: State) -> list[str]:
    """What moved by itself between two states: coil changeovers, relays, transfers and bonds."""
    words = []
    for name, position in new.positions.items():
        if name in new.coiled and position != old.positions.get(name):
            words.append(f"{name} moves to {position}" if position else f"{name} does not settle")
    was, now = _closed(old), _closed(new)
    for link in dict.fromkeys((*now, *was)):
        item = link.equipment
        if link.when == "coil" and (link in now) is not (link in was):
            words.append(f"{item.name} closes" if link in now else f"{item.name} opens")
        elif link.when == "transfer" and link in now and link not in was:
            words.append(f"{item.name} passes its input through")
    for bond, closed in new.bonds.items():
        if bond.link is not None and closed is True and old.bonds.get(bond) is not True:
            words.append(f"{bond.name} joins neutral to earth")
    return list(dict.fromkeys(words))


def _closed(state: State) -> dict[Link, None]:
    return dict.fromkeys(state.closed)
