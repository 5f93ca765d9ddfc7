"""What may explain readings that lie outside of what was to be expected.

Each likely fault is put into the network of the likely case, one at a time and in a few sizes, between which the best
is fitted; the network is solved again and set beside *all* readings of that mode, those that agreed as well. What the
uncertain numbers may move together counts little, a difference that none of them explains counts much (`dc_spread`). A
fault ranks by how little is left unexplained. What tells two faults apart is looked for among everything that could be
read besides.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from checker.circuit.dc_elements import Element
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import solve
from checker.circuit.elements import CHASSIS
from checker.facts.dc_corners import heat_of
from checker.facts.dc_spread import Scale, spreads
from checker.facts.fault_kinds import Kind, kinds
from checker.facts.instruments import UNITS, VOLTAGE, Spot, drop_spot, names_on, spots_at, tolerance
from checker.facts.operating_point import OperatingPoint
from checker.facts.subject import Subject
from checker.quantities import Range, Unknown

WORTH = 0.7  # a cause must leave less than this share of the misfit
MOST_SHOWN = 5
ALIKE = 1.0  # squares of what is allowed: closer than that, two faults explain alike
WORTH_FITTING = 0.1  # of that: what a new size must promise to be solved for
REFINED = 3  # how often a size is fitted anew between its neighbours
TWICE = 2.0  # how clearly another reading must differ to tell two causes apart, in tolerances


class Read(NamedTuple):
    """One reading: where, what was shown, what is allowed as error of the instrument."""

    spot: Spot
    shown: float
    allowed: float


class Fault(NamedTuple):
    """One fault in one size: its sort and where; what it is, in words; how it is found."""

    sort: str
    where: str
    what: str
    tell: str


class Cause(NamedTuple):
    """A fault that would explain readings: how much of the misfit is left (0: nothing), and what would show it.

    `also` names other places where a fault of the same sort explains the readings as well.
    """

    fault: Fault
    left: float
    signs: tuple[str, ...]
    also: tuple[str, ...]


class Tried(NamedTuple):
    """A fault with its solution: the misfit it leaves, and its turn."""

    misfit: float
    turn: int
    fault: Fault
    found: Solution


def reads_of(readings: Sequence[Subject], point: OperatingPoint) -> list[Read]:
    """The readings of one mode that can be compared."""
    from checker.facts.instruments import predicted, spot

    found = []
    for s in readings:
        at = s.item.item.value("at")
        one = spot(point, at, s.item.quantity) if isinstance(at, str) else at
        shown = s.item.item.value(s.item.quantity)
        if not isinstance(one, Spot) or isinstance(shown, Range) or not isinstance(shown, float):
            continue
        value = predicted(point, one, usual=True)
        if not isinstance(value, Unknown):
            found.append(Read(one, shown, tolerance(one.quantity, value.likely)))
    return found


class Judge:
    """How far solutions lie from all readings of a mode, on one scale (`Scale`)."""

    __slots__ = ("_reads", "_scale")

    def __init__(self, point: OperatingPoint, reads: Sequence[Read], sound: Solution) -> None:
        self._reads = reads
        self._scale = Scale([one.allowed for one in reads], spreads(point, sound, [one.spot.ask for one in reads]))

    def values(self, found: Solution) -> list[float]:
        """What a solution has at the place of each reading; what lies dead reads nothing."""
        return [one.spot.ask(found) or 0.0 for one in self._reads]

    def left(self, values: Sequence[float], ways: Sequence[float]) -> list[float]:
        """What values leave of the readings; a clamp tells no direction, so that `ways` has one for each of them."""
        apart = []
        for read, value, way in zip(self._reads, values, ways, strict=True):
            shown = read.shown if read.spot.quantity == VOLTAGE else abs(read.shown) * (-1.0 if way < 0.0 else 1.0)
            apart.append(shown - value)
        return self._scale.of(apart)

    def misfit(self, found: Solution) -> float:
        """How unlikely the readings are where a solution is true: up to about their number where it fits."""
        values = self.values(found)
        return squares(self.left(values, values))


def squares(left: Sequence[float]) -> float:
    """The sum of the squares."""
    return sum([one * one for one in left])


def causes(point: OperatingPoint, reads: Sequence[Read]) -> list[Cause]:
    """The faults that would explain the readings of a mode, the likeliest first."""
    sound = point.likely
    if sound is None or not reads:
        return []
    judge = Judge(point, reads, sound)
    before = judge.misfit(sound)
    ranked = _ranked(_tried(point, judge, sound))
    spots = _further(point, reads)
    found = []
    for tried, also in ranked:
        others = [one.found for one, _ in ranked if one is not tried]
        signs = tuple(_signs(spots, tried.found, sound, others))
        found.append(Cause(tried.fault, tried.misfit / before, signs, also))
    return found


def _tried(point: OperatingPoint, judge: Judge, sound: Solution) -> list[Tried]:
    """The best size of every fault that explains something, the best fault first."""
    before = judge.misfit(sound)
    elements = point.plan.elements("likely", heat_of(point.plan.wires, sound))
    tried = []
    for turn, kind in enumerate(kinds(point, sound)):
        fitted = _fitted(kind, elements, judge, sound)
        if fitted is not None and before > ALIKE and fitted.misfit < WORTH * before:
            fault = Fault(kind.sort, kind.where, kind.what(fitted.size), kind.tell)
            tried.append(Tried(fitted.misfit, turn, fault, fitted.found))
    least = min((one.misfit for one in tried), default=0.0)
    return sorted(tried, key=lambda one: ((one.misfit - least) // ALIKE, one.turn))


class _Sized(NamedTuple):
    """A fault in one size: the values where readings were taken, and the misfit."""

    size: float
    values: list[float]
    misfit: float
    found: Solution


def _fitted(kind: Kind, elements: Sequence[Element], judge: Judge, sound: Solution) -> _Sized | None:
    """The size of a fault that leaves least; between two sizes the values are taken to move evenly."""

    def sized(size: float) -> _Sized | None:
        change = kind.change(size)
        changed = [new for element in elements if (new := change(element)) is not None]
        found = solve(changed, ground=CHASSIS, start=sound.volts)
        return None if isinstance(found, NoSolution) else _Sized(size, judge.values(found), judge.misfit(found), found)

    points = [one for size in kind.sizes if (one := sized(size)) is not None]
    if kind.sound is None:
        return min(points, key=lambda one: one.misfit, default=None)
    points.append(_Sized(kind.sound, judge.values(sound), judge.misfit(sound), sound))
    for _ in range(REFINED):
        points.sort(key=lambda one: one.size)
        best = min(one.misfit for one in points)
        pairs = pairwise(points)
        least, size = min((_between(a, b, judge) for a, b in pairs), default=(best, kind.sound))
        new = sized(size) if least < best - WORTH_FITTING * ALIKE else None
        if new is None:
            break
        points.append(new)
    return min((one for one in points if one.found is not sound), key=lambda one: one.misfit, default=None)


def _between(a: _Sized, b: _Sized, judge: Judge) -> tuple[float, float]:
    """The least misfit on the way from one size to the next, and the size where it is."""
    found = []
    for ways in (a.values, b.values):
        start, end = judge.left(a.values, ways), judge.left(b.values, ways)
        way = [y - x for x, y in zip(start, end, strict=True)]
        length = squares(way)
        along = -sum([x * y for x, y in zip(start, way, strict=True)]) / length if length > 0.0 else 0.0
        part = min(1.0, max(0.0, along))
        least = squares([x + part * y for x, y in zip(start, way, strict=True)])
        found.append((least, a.size + part * (b.size - a.size)))
    return min(found)


def _ranked(tried: Sequence[Tried]) -> list[tuple[Tried, tuple[str, ...]]]:
    """The best of each sort with the places where another of its sort does as well; then the second best."""
    first: list[Tried] = []
    also: dict[str, list[str]] = {}
    for one in tried:
        head = next((other for other in first if other.fault.sort == one.fault.sort), None)
        like = sum(other.fault.sort == one.fault.sort for other in first)
        if head is None or (head.misfit + ALIKE < one.misfit and like < 2):
            first.append(one)
        elif one.misfit <= head.misfit + ALIKE:
            also.setdefault(one.fault.sort, []).append(one.fault.where)
    seen: set[str] = set()
    found = []
    for one in first[:MOST_SHOWN]:
        places = () if one.fault.sort in seen else tuple(also.get(one.fault.sort, ()))
        seen.add(one.fault.sort)
        found.append((one, places))
    return found


def _further(point: OperatingPoint, reads: Sequence[Read]) -> list[tuple[str, Spot]]:
    """What else could be read, each with the words for it."""
    taken = {(read.spot.at, read.spot.quantity) for read in reads}
    found = []
    for name in names_on(point):
        for one in spots_at(point, name):
            if (name, one.quantity) not in taken and one.quantity != "power":
                found.append((f"{one.quantity} at {name}", one))
    for circuit in point.plan.facts.network.by_circuit:
        drop = drop_spot(point, circuit)
        if drop is not None:
            found.append((f"loss along {circuit}", drop))
    return found


def _signs(
    spots: Sequence[tuple[str, Spot]], here: Solution, sound: Solution, others: Sequence[Solution]
) -> Iterator[str]:
    """Up to two further readings that this fault moves and the others leave, the clearest first."""
    ranked = []
    for at, (words, one) in enumerate(spots):
        value, usual = one.ask(here), one.ask(sound)
        if value is None or usual is None:
            continue
        allowed = tolerance(one.quantity, usual)
        rest = [found for other in (sound, *others) if (found := one.ask(other)) is not None]
        apart = min((abs(value - other) / allowed for other in rest), default=0.0)
        if apart > TWICE:
            now, before = (_said(number, one.quantity) for number in (value, usual))
            text = f"{words} ({one.between}): {now} with this fault, {before} without"
            ranked.append((-apart, at, text))
    for _, _, text in sorted(ranked)[:2]:
        yield text


def _said(value: float, quantity: str) -> str:
    return f"{value if quantity == VOLTAGE else abs(value):.4g} {UNITS[quantity]}"
