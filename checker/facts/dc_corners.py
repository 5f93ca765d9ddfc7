"""The lowest and the highest a reading can be over all values of the uncertain numbers: worst corners of their box.

In a network of resistances and sources every reading moves one way with each number alone, so its ends lie in corners,
where every number is at one of its ends. Which corner, the slopes of the reading tell: from the nearer of the two usual
cases, all numbers that could still push the reading further are turned to their other end, the network is solved there,
and the slopes are asked again, until little is left to gain. That little is added as the slopes tell. What switches
itself off by its voltage is taken both ways, each for itself.

This is exact where a reading is monotone in each number and the slopes keep their signs. Regulated sources that come
on to their limits bend that: the search also begins where each of them does. How many corners are solved is bounded by
the size of the network, never by a clock; what is left then is added as the slopes tell, twice. It is no proof. Tests
draw values within the ranges: none lay outside in the example coach and in a large one, and fewer than one end in a
hundred is missed in random networks.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence
from typing import NamedTuple

from checker.circuit.dc_elements import Branch, Converter, Element, Side, Storage, Supply
from checker.circuit.dc_frame import Frame
from checker.circuit.dc_moves import Change, Moves, Reading, change_between
from checker.circuit.dc_nodes import Contradiction
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import contradicted, solve_frame, starved
from checker.circuit.elements import CHASSIS
from checker.circuit.groups import Groups
from checker.facts.dc_amounts import Amount, Case, Choice
from checker.facts.dc_plan import Heat, Maker

MOST_TURNS = 6
LEFT = 0.1  # share of the width that may be left to the slopes instead of being solved for
FINE = 0.005  # the same for a corner to begin at, which shall be worse
MARGIN = 2.0  # times what the slopes tell of that rest, since they bend
MOST_DROPPED = 3  # how many numbers that promised most may turn out to gain nothing
STARTS = 22_000  # how many elements may be put into corners to begin at: the larger the network, the fewer corners
OWN = 25_000  # the same for corners that single readings ask for
THRIFTY = 200  # how many elements let one time more of what is little be left to the slopes before a corner is solved
NEAR = 1e-3  # share of its range by which a number is moved to find a slope

Ends = tuple[bool, ...]
"""For each uncertain number whether it stands at its higher end."""
Off = frozenset[str]
"""What switched itself off."""


class Corner(Choice):
    """Every uncertain number at one of its ends; one of them, where asked for, part of the way to the other."""

    __slots__ = ("_ends", "_on_the_way", "_places", "_way")

    def __init__(self, places: Mapping[int, int], ends: Ends, on_the_way: int = -1, way: float = 0.0) -> None:
        self._places = places
        self._ends = ends
        self._on_the_way = on_the_way
        self._way = way

    def of(self, amount: Amount, *, raises: bool) -> float:
        place = self._places.get(id(amount))
        if place is None:
            return amount.likely
        here, there = (amount.high, amount.low) if self._ends[place] else (amount.low, amount.high)
        return here + self._way * (there - here) if place == self._on_the_way else here


class Collector(Choice):
    """Notes which uncertain numbers are asked for, and by whom."""

    __slots__ = ("found", "raises", "turn", "users")

    def __init__(self) -> None:
        self.found: dict[int, Amount] = {}
        self.raises: dict[int, bool] = {}
        self.users: dict[int, dict[int, None]] = {}
        self.turn = 0

    def of(self, amount: Amount, *, raises: bool) -> float:
        if amount.known and amount.low < amount.high:
            self.found.setdefault(id(amount), amount)
            self.raises.setdefault(id(amount), raises)
            self.users.setdefault(id(amount), {}).setdefault(self.turn)
        return amount.likely


class Solved(NamedTuple):
    """One corner: its solution, the element of each maker, and the currents its conductors are warmed by."""

    found: Solution
    made: Sequence[Element | None]
    heat: Heat


class Slopes(NamedTuple):
    """How readings move at one corner, and what each uncertain number changes when it is turned to its other end.

    `inputs` are such changes as number, amperes, and unknowns at the terminals; `outputs` the same for the outputs of
    converters; `named` the numbers that change an element, with amperes into and out of it.
    """

    moves: Moves
    inputs: Sequence[tuple[int, float, int, int]]
    outputs: Sequence[tuple[int, float, int, int]]
    named: Mapping[str, Sequence[tuple[int, float, float]]]

    def gains(self, reading: Reading, sign: float) -> list[tuple[float, int]]:
        """By how much each number would still push a reading further; the most first."""
        pull = self.moves.pull(reading)
        if pull is None:
            return []
        held = pull.held
        moved: dict[int, float] = {}
        for place, amps, plus, minus in self.inputs:
            moved[place] = moved.get(place, 0.0) + amps * (held[minus] - held[plus])
        for place, amps, plus, minus in self.outputs:
            moved[place] += amps * (held[plus] - held[minus])
        for name in dict.fromkeys((*pull.ins, *pull.outs)):
            into, out = pull.ins.get(name, 0.0), pull.outs.get(name, 0.0)
            for place, amps_in, amps_out in self.named.get(name, ()):
                moved[place] += amps_in * into + amps_out * out
        gains = [(sign * by, place) for place, by in moved.items() if sign * by > 0.0]
        return sorted(gains, key=lambda one: (-one[0], one[1]))


class Corners:
    """The corners of one network, each solved once; `makers` make its elements, `wires` names those of conductors."""

    __slots__ = (
        "_begin", "_frames", "_likely", "_makers", "_own", "_places", "_slopes", "_solved", "_sources", "_spent",
        "_starts", "_users", "_wires", "short",
    )  # fmt: skip

    def __init__(
        self,
        makers: Sequence[Maker],
        wires: Mapping[str, Sequence[str]],
        likely: Solution,
        cases: tuple[Solution, Solution],
    ) -> None:
        """`cases` are the solutions with all numbers at the end that lowers, and raises, the voltage."""
        seen = Collector()
        sources: list[tuple[int, Storage | Supply | Converter]] = []
        for seen.turn, maker in enumerate(makers):
            element = maker(seen, {})
            if isinstance(element, Storage | Supply | Converter):
                sources.append((seen.turn, element))
        self._makers = makers
        self._wires = wires
        self._places = {key: place for place, key in enumerate(seen.found)}
        self._users = [tuple(seen.users[key]) for key in seen.found]
        low: Ends = tuple(not seen.raises[key] for key in seen.found)
        high: Ends = tuple(seen.raises[key] for key in seen.found)
        self._begin = {low: cases[0], high: cases[1]}
        self._starts: dict[Off, dict[Ends, Ends]] = {}
        # Converters first: whether they draw decides on which side of its limit a source stands.
        self._sources = self._numbers_of(sorted(sources, key=lambda one: isinstance(one[1], Supply)))
        self._likely = likely
        self._frames: dict[tuple[Off, bytes], Frame] = {}
        self._solved: dict[tuple[Ends, Off], Solved | NoSolution] = {}
        self._slopes: dict[tuple[Ends, Off], Slopes] = {}
        self._own: dict[Off, dict[Ends, Ends]] = {}
        self._spent: dict[tuple[Off, bool], int] = {}
        self.short = False
        """Whether there were more corners to solve than are allowed, so that slopes had to tell more."""

    def _numbers_of(
        self, sources: Sequence[tuple[int, Storage | Supply | Converter]]
    ) -> list[tuple[frozenset[int], tuple[Side, ...]]]:
        """The numbers and terminals of each source; sources that share a number, as units of a bank, count as one."""
        joined = Groups()
        for users in self._users:
            for user in users:
                joined.join(str(users[0]), str(user))
        found: dict[str, tuple[frozenset[int], tuple[Side, ...]]] = {}
        for turn, element in sources:
            head = joined.find(str(turn))
            places = [at for at, users in enumerate(self._users) if joined.find(str(users[0])) == head]
            sides: tuple[Side, ...] = ()
            if isinstance(element, Converter):
                sides = element.into, element.out
            elif isinstance(element, Supply):
                sides = (Side(*element.ends),)
            found.setdefault(head, (frozenset(places), sides))
        return list(found.values())

    def _starts_with(self, off: Off) -> Mapping[Ends, Ends]:
        """Corners to begin at, each with one beside it.

        The usual cases; those in which one source stands against all others; and for each regulated source the corners
        in which its voltage is pushed down while it stands high, and up while it stands low: there it comes on to a
        limit or leaves it, which no slope foretells.
        """
        if off not in self._starts:
            low, high = self._begin
            found = self._starts[off] = {low: low, high: high}
            for places, _ in self._sources:
                for usual, other in ((low, high), (high, low)):
                    if self._allowed(_with(usual, places, other), off, own=False):
                        found.setdefault(_with(usual, places, other), usual)
            for places, sides in self._sources:
                for side in sides:
                    for sign, other in ((-1.0, high), (1.0, low)):
                        near = self._worst(_across(side), off, sign)
                        if near is not None and self._allowed(_with(near, places, other), off, own=False):
                            found.setdefault(_with(near, places, other), near)
        return self._starts[off]

    def _allowed(self, ends: Ends, off: Off, *, own: bool) -> bool:
        """Whether a corner is solved or may be: a large network would be too slow otherwise."""
        if (ends, off) in self._solved or (not own and ends in self._starts[off]):
            return True
        spent = self._spent.get((off, own), 0)
        if spent >= most_corners(len(self._makers), own=own):
            self.short = True
            return False
        self._spent[off, own] = spent + 1
        return True

    def _worst(self, reading: Reading, off: Off, sign: float) -> Ends | None:
        """The corner where a reading ends, sought from the corners that are there so far."""
        usual = self._usual(reading, off)
        return self._end(reading, off, sign, usual, None)[1] if isinstance(usual, list) else None

    def range_of(self, reading: Reading, off: Off, small: float) -> tuple[float, float] | NoSolution | None:
        """The lowest and the highest of a reading with `off` switched off; None where it cannot be taken.

        Ends are told to within `small` (V, A or W): what gains no more is added and not solved for.
        """
        usual = self._usual(reading, off)
        if not isinstance(usual, list):
            return usual
        low, high = (self._end(reading, off, sign, usual, small)[0] for sign in (-1.0, 1.0))
        return (low - small, high + small) if low < high else (low, high)

    def _usual(self, reading: Reading, off: Off) -> list[tuple[float, Ends]] | NoSolution | None:
        """A reading at all corners to begin at; why it cannot be taken at one of the usual cases."""
        usual = []
        starts = self._starts_with(off)
        if not self._may_own(off):  # then what others have found has to do
            starts = {**starts, **self._own.get(off, {})}
        for ends, near in starts.items():
            found = self.at(ends, off, near)
            value = None if isinstance(found, NoSolution) else reading(found)
            if value is not None:
                usual.append((value, ends))
            elif ends in self._begin:
                return found if isinstance(found, NoSolution) else None
        return usual

    def _may_own(self, off: Off) -> bool:
        return self._spent.get((off, True), 0) < most_corners(len(self._makers), own=True)

    def _end(
        self, reading: Reading, off: Off, sign: float, usual: Sequence[tuple[float, Ends]], small: float | None
    ) -> tuple[float, Ends]:
        """One end of a reading, with the little that slopes would still gain, and the worst corner that is found."""
        width = max(value for value, _ in usual) - min(value for value, _ in usual)
        little = FINE * width if small is None else max(LEFT * width, small)
        best = max(usual, key=lambda one: sign * one[0])
        value, ends, slack = self._climb(reading, off, sign, best, little, own=small is not None)
        return value + sign * MARGIN * slack, ends

    def _climb(
        self, reading: Reading, off: Off, sign: float, start: tuple[float, Ends], little: float, *, own: bool
    ) -> tuple[float, Ends, float]:
        """From one corner to the worst that is found: its value, the corner, and what slopes still promise."""
        best = start
        for _ in range(MOST_TURNS):
            gains = self._slopes_at(best[1], off).gains(reading, sign)
            turned, slack = _worth_turning(gains, little)
            promised = sum(gain for gain, _ in gains[: len(turned)])
            if own and 0.0 < promised <= little * (len(self._makers) // THRIFTY):
                self.short = True
                return *best, slack + promised
            better = self._turn(reading, off, sign, best, turned, own=own)
            if better is None:
                # A promise that no solved corner keeps counts as far as it is little; one that was not tried, wholly.
                return *best, slack + (min(little, promised) if not own or self._may_own(off) else promised)
            best = better
        return *best, little

    def _turn(
        self, reading: Reading, off: Off, sign: float, best: tuple[float, Ends], turned: Sequence[int], *, own: bool
    ) -> tuple[float, Ends] | None:
        """Turn numbers to their other ends; None where that gains nothing.

        Where all together do not, fewer and fewer of the foremost are turned, and then those behind the foremost, which
        may have promised too much (a source that comes on to its limit).
        """
        for first in range(min(MOST_DROPPED, len(turned))):
            some = turned[first:]
            while some:
                ends = list(best[1])
                for place in some:
                    ends[place] = not ends[place]
                if not self._allowed(tuple(ends), off, own=own):
                    return None
                found = self.at(tuple(ends), off, best[1])
                value = None if isinstance(found, NoSolution) else reading(found)
                if value is not None and sign * (value - best[0]) > 0.0:
                    if own:
                        self._own.setdefault(off, {}).setdefault(tuple(ends), best[1])
                    return value, tuple(ends)
                some = some[: len(some) // 2]
        return None

    def at(self, ends: Ends, off: Off, near: Ends | None = None) -> Solution | NoSolution:
        """The solution of one corner, begun at that of another; nothing switches itself off besides `off`."""
        solved = self._solve(ends, off, near)
        return solved if isinstance(solved, NoSolution) else solved.found

    def _solve(self, ends: Ends, off: Off, near: Ends | None = None) -> Solved | NoSolution:
        key = ends, off
        if key not in self._solved:
            case = Corner(self._places, ends)
            beside = None if near is None else self._solved.get((near, off))
            begin = beside.found if isinstance(beside, Solved) else self._begin.get(ends, self._likely)
            first = self._solve_at(case, begin, off)
            self._solved[key] = self._solve_at(case, first.found, off) if isinstance(first, Solved) else first
        return self._solved[key]

    def _solve_at(self, case: Case, begin: Solution, off: Off) -> Solved | NoSolution:
        """Begun at another solution, with each conductor as warm as that makes it."""
        heat = heat_of(self._wires, begin)
        try:
            made = [maker(case, heat) for maker in self._makers]
        except ValueError as error:
            return NoSolution(f"the file tells something that cannot be: {error}")
        try:
            frame = self._frame(made, off)
        except Contradiction as error:
            return contradicted(error)
        found = solve_frame(frame, begin.volts)
        if isinstance(found, NoSolution):
            return found
        short = starved(frame.alive, found)
        if short is not None:
            return short
        return Solved(Solution(found.volts, found.flows, found.dead, tuple(sorted(off)), found.steps), made, heat)

    def _frame(self, made: Sequence[Element | None], off: Off) -> Frame:
        """The frame for the elements of all makers, with these in it."""
        key = off, bytes(map(_place_taken, made))
        working = [one for one in made if one is not None and one.name not in off]
        if key not in self._frames:
            self._frames[key] = Frame(working, CHASSIS)
        else:
            self._frames[key].put(working)
        return self._frames[key]

    def _slopes_at(self, ends: Ends, off: Off) -> Slopes:
        key = ends, off
        if key not in self._slopes:
            solved = self._solve(ends, off)
            assert isinstance(solved, Solved)
            moves = Moves(self._frame(solved.made, off), solved.found)
            inputs, outputs = [], []
            named: dict[str, list[tuple[int, float, float]]] = {}
            for place in range(len(self._users)):
                for change in self._changes(place, ends, solved):
                    plus, minus, out_plus, out_minus = moves.terminals(change.name)
                    inputs.append((place, change.amps_in, plus, minus))
                    if change.amps_out:
                        outputs.append((place, change.amps_out, out_plus, out_minus))
                    named.setdefault(change.name, []).append((place, change.amps_in, change.amps_out))
            self._slopes[key] = Slopes(moves, inputs, outputs, named)
        return self._slopes[key]

    def _changes(self, place: int, ends: Ends, solved: Solved) -> Iterator[Change]:
        """What one number changes at the elements it makes when it is turned.

        What a resistance does lies between what its slope tells and what the whole turn does at fixed voltages; the
        larger of the two counts, and at a limit the slope tells nothing.
        """
        near = Corner(self._places, ends, place, NEAR)
        far = Corner(self._places, ends, place, 1.0)
        for user in self._users[place]:
            element = solved.made[user]
            flow = None if element is None else solved.found.flows.get(element.name)
            if element is None or flow is None or (isinstance(element, Branch) and not flow.volts):
                continue
            whole = self._makers[user](far, solved.heat)
            if whole is None:
                continue
            changes = [change_between(element, whole, flow)]
            if isinstance(element, Branch) and isinstance(whole, Branch):
                slope = flow.volts / element.ohm * (1.0 - whole.ohm / element.ohm) if element.ohm > 0.0 else 0.0
                changes.append(Change(element.name, slope))
            else:
                part = self._makers[user](near, solved.heat)
                if part is not None:
                    changes.append(change_between(element, part, flow).times(1.0 / NEAR))
            largest = max(changes, key=lambda one: abs(one.amps_in) + abs(one.amps_out))
            if largest.amps_in or largest.amps_out:
                yield largest


def most_corners(elements: int, *, own: bool) -> int:
    """How many corners of a network may be solved: to begin at, and besides for single readings (`own`)."""
    return (OWN if own else STARTS) // max(1, elements)


def _with(ends: Ends, places: Container[int], other: Ends) -> Ends:
    """The numbers at `places` as in another corner."""
    return tuple(other[at] if at in places else end for at, end in enumerate(ends))


def _across(side: Side) -> Reading:
    return lambda found: found.between(side.plus, side.minus)


def _place_taken(element: Element | None) -> int:
    """What decides the layout of a network: whether an element is there, and whether it joins its nodes."""
    return 0 if element is None else 1 if isinstance(element, Branch) and element.ohm == 0.0 else 2


def _worth_turning(gains: Sequence[tuple[float, int]], little: float) -> tuple[list[int], float]:
    """The numbers to be turned, and what the rest would gain together: at most `little`."""
    slack, count = 0.0, len(gains)
    while count and slack + gains[count - 1][0] <= little:
        count -= 1
        slack += gains[count][0]
    return [place for _, place in gains[:count]], slack


def heat_of(wires: Mapping[str, Sequence[str]], found: Solution) -> dict[str, float]:
    """The current of each conductor (A), for its temperature."""
    heat = {}
    for conductor, names in wires.items():
        flows = [found.flows[name].amps or 0.0 for name in names if name in found.flows]
        heat[conductor] = max((abs(amps) for amps in flows), default=0.0)
    return heat
