"""How the uncertain numbers of a mode move its readings together.

A voltage that a regulator may set high moves all readings behind it alike: two of them that disagree tell more than
each alone. The slopes of the likely case tell by how much each number moves each reading (the adjoint method of
`dc_moves`).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

from checker.circuit.dc_elements import Branch, Element
from checker.circuit.dc_frame import Frame
from checker.circuit.dc_moves import Change, Moves, Pull, Reading, change_between
from checker.circuit.dc_solution import Flow, Solution
from checker.circuit.elements import CHASSIS
from checker.facts.dc_amounts import Amount, Choice
from checker.facts.dc_corners import NEAR, Collector, heat_of
from checker.facts.operating_point import OperatingPoint

Rows = list[list[float]]


class _Nudged(Choice):
    """The likely numbers, one of them moved a little."""

    __slots__ = ("_amount", "_by")

    def __init__(self, amount: Amount, by: float) -> None:
        self._amount = amount
        self._by = by

    def of(self, amount: Amount, *, raises: bool) -> float:
        return amount.likely + self._by if amount is self._amount else amount.likely


def spreads(point: OperatingPoint, sound: Solution, readings: Sequence[Reading]) -> Rows:
    """For each uncertain number, by how much half its range moves each reading (V, A, W); `sound` is the likely case.

    A number whose slope cannot be told at the likely case (a source on its limit) moves nothing.
    """
    makers = point.plan.makers
    seen = Collector()
    heat = heat_of(point.plan.wires, sound)
    made: list[Element | None] = []
    for seen.turn, maker in enumerate(makers):
        maker(seen, {})
        made.append(maker("likely", heat))
    moves = Moves(Frame([one for one in made if one is not None and one.name not in sound.off], CHASSIS), sound)
    pulls = [moves.pull(reading) for reading in readings]
    found = []
    for key, amount in seen.found.items():
        half = 0.5 * (amount.high - amount.low)
        by = NEAR * half if amount.likely < amount.high else -NEAR * half
        case = _Nudged(amount, by)
        row = [0.0] * len(readings)
        for user in seen.users[key]:
            element = made[user]
            flow = None if element is None else sound.flows.get(element.name)
            other = makers[user](case, heat)
            if element is None or other is None or flow is None or element.name in sound.off:
                continue
            change = _slope(element, other, flow).times(half / by)
            for at, pull in enumerate(pulls):
                row[at] += 0.0 if pull is None else _moved(moves, pull, change)
        if any(row):
            found.append(row)
    return found


def _moved(moves: Moves, pull: Pull, change: Change) -> float:
    """By how much a change moves a reading."""
    plus, minus, out_plus, out_minus = moves.terminals(change.name)
    held = pull.held
    moved = change.amps_in * (held[minus] - held[plus] + pull.ins.get(change.name, 0.0))
    if change.amps_out:
        moved += change.amps_out * (held[out_plus] - held[out_minus] + pull.outs.get(change.name, 0.0))
    return moved


def _slope(element: Element, other: Element, flow: Flow) -> Change:
    if isinstance(element, Branch) and isinstance(other, Branch):  # at a fixed voltage a small resistance bends much
        return Change(
            element.name, flow.volts * (element.ohm - other.ohm) / element.ohm**2 if element.ohm > 0.0 else 0.0
        )
    return change_between(element, other, flow)


class Scale:
    """Deviations of several readings on one scale: in units of what instruments and uncertain numbers allow together.

    The textbook Mahalanobis distance: deviations that the uncertain numbers explain together count little.
    """

    __slots__ = ("_lower",)

    def __init__(self, allowed: Sequence[float], spread: Rows) -> None:
        """`allowed` is what each instrument may be off, `spread` the rows of `spreads`."""
        size = len(allowed)
        shared = [[sum([row[i] * row[j] for row in spread]) for j in range(i + 1)] for i in range(size)]
        for at, one in enumerate(allowed):
            shared[at][at] += one * one
        self._lower = _root(shared)

    def of(self, deviations: Sequence[float]) -> list[float]:
        """The deviations freed from what they have in common; their squares add up to how unlikely they are."""
        found: list[float] = []
        for row, value in zip(self._lower, deviations, strict=True):
            rest = value - sum([a * b for a, b in zip(row, found, strict=False)])
            found.append(rest / row[-1])
        return found


def _root(square: Rows) -> Rows:
    """Lower triangle whose product with its transpose is `square` (Cholesky), which must be positive definite."""
    found: Rows = []
    for i, told in enumerate(square):
        row: list[float] = []
        for j in range(i):
            row.append((told[j] - sum([a * b for a, b in zip(row, found[j], strict=False)])) / found[j][j])
        row.append(sqrt(told[i] - sum([a * a for a in row])))
        found.append(row)
    return found
