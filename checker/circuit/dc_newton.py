"""Newton's method on the node voltages of a direct-current network.

Every current is known as a function of voltages, with its slope. The slopes form a sparse matrix, symmetric but for
the few terms by which the output voltage of a converter acts on its input current. Steps are damped, and the number of
steps is bounded.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import inf, sqrt

from checker.circuit.dc_elements import Branch, Converter, Element, Emf, Inductor, TwoPole
from checker.circuit.dc_nodes import Nodes
from checker.circuit.sparse_ldl import Pattern

MOST_STEPS = 60
ROUNDING = 1e-15
FIRM = 1.0  # S
FAR = 1e3
FARTHEST = 0.1  # of the largest voltage: how far one step may move a node
Pin = tuple[int, float]  # index of the unknown (-1: a reference), offset in volts
Matrix = tuple[list[float], list[float] | None]  # diagonal and below; above, None: symmetric


class Equations:
    """The equations of one network: as many unknowns as there are groups of nodes without a reference."""

    __slots__ = (
        "_base", "_links", "_poles", "_slot_pairs", "_transfers", "pattern", "pin", "size", "volts_scale",
    )  # fmt: skip

    def __init__(self, elements: Sequence[Element], nodes: Nodes, references: Mapping[str, float]) -> None:
        heads: dict[str, int] = {}
        fixed = {nodes.find(node)[0]: volts - nodes.find(node)[1] for node, volts in references.items()}
        self.pin: dict[str, Pin] = {}
        for node in nodes.names:
            head, offset = nodes.find(node)
            if head in fixed:
                self.pin[node] = (-1, fixed[head] + offset)
            else:
                self.pin[node] = (heads.setdefault(head, len(heads)), offset)
        self.size = len(heads)
        self._links: list[tuple[int, int, float, float]] = []  # unknowns of the ends, offset, conductance
        self._poles: list[tuple[TwoPole, int, int, float]] = []
        self._transfers: list[tuple[Converter, tuple[int, int, float], tuple[int, int, float]]] = []
        for element in elements:
            self._take(element)
        ends = [link[:2] for link in self._links] + [pole[1:3] for pole in self._poles]
        for _, into, out in self._transfers:
            ends += [into[:2], out[:2], *((i, j) for i in into[:2] for j in out[:2])]
        self.pattern = Pattern(self.size, [(i, j) for i, j in ends if i >= 0 and j >= 0])
        self._base = [0.0] * self.pattern.slots
        for i, j, _, siemens in self._links:
            self._stamp(self._base, i, j, siemens)
        self.volts_scale = max([1.0, *(abs(volts) for _, volts in self.pin.values()), *map(_told_volts, elements)])

    def _take(self, element: Element) -> None:
        if isinstance(element, Branch):
            if element.ohm > 0.0:
                i, j, offset = self._across(element.a, element.b)
                self._links.append((i, j, offset, 1.0 / element.ohm))
        elif isinstance(element, Converter):
            self._transfers.append((element, self._across(*element.into), self._across(*element.out)))
        elif isinstance(element, Emf):
            if element.ohm > 0.0:
                i, j, offset = self._across(element.plus, element.minus)
                self._links.append((i, j, offset - element.emf_v, 1.0 / element.ohm))
        elif not isinstance(element, Inductor):
            self._poles.append((element, *self._across(element.plus, element.minus)))

    def _across(self, plus: str, minus: str) -> tuple[int, int, float]:
        (i, high), (j, low) = self.pin[plus], self.pin[minus]
        return i, j, high - low

    def _stamp(self, values: list[float], i: int, j: int, siemens: float) -> None:
        if i == j:
            return
        if i >= 0:
            values[i] += siemens
        if j >= 0:
            values[j] += siemens
            if i >= 0:
                values[self.pattern.slot(i, j)] -= siemens

    def residual(self, x: list[float], share: float) -> tuple[list[float], list[float]]:
        """Sum of the currents that leave each unknown (A), and how much of it can be rounding (A)."""
        total, size = [0.0] * self.size, [0.0] * self.size

        def leave(i: int, j: int, amps: float, doubt: float) -> None:
            if i >= 0:
                total[i] += amps
                size[i] += doubt
            if j >= 0:
                total[j] -= amps
                size[j] += doubt

        for i, j, offset, siemens in self._links:  # most of a network: written out, since it is asked at every step
            high, low = (x[i] if i >= 0 else 0.0), (x[j] if j >= 0 else 0.0)
            if i == j:
                continue
            amps = (high - low + offset) * siemens
            doubt = (abs(high) + abs(low) + abs(offset)) * siemens
            if i >= 0:
                total[i] += amps
                size[i] += doubt
            if j >= 0:
                total[j] -= amps
                size[j] += doubt
        for element, i, j, offset in self._poles:
            volts = (x[i] if i >= 0 else 0.0) - (x[j] if j >= 0 else 0.0) + offset
            amps, slope = element.flow(volts, share)
            leave(i, j, amps, abs(amps) + abs(slope) * self.volts_scale)
        for converter, into, out in self._transfers:
            found = converter.transfer(_volts(x, into), _volts(x, out), share)
            slope = abs(found.in_by_in) + abs(found.in_by_out)
            leave(into[0], into[1], found.amps_in, abs(found.amps_in) + slope * self.volts_scale)
            slope = abs(found.out_by_out) + abs(found.out_by_in)
            leave(out[0], out[1], -found.amps_out, abs(found.amps_out) + slope * self.volts_scale)
        return total, [ROUNDING * one * 8.0 + 1e-10 for one in size]

    def slopes(self, x: list[float], share: float, extra: float = 0.0, least: float = -inf) -> Matrix:
        """Values of the matrix: its diagonal with what lies below, and what lies above where that differs.

        `extra` (S) is added to the diagonal; no slope of an element counts as less than `least` (S).
        """
        values = list(self._base)
        couplings: list[tuple[tuple[int, int], tuple[int, int], float]] = []
        for element, i, j, offset in self._poles:
            volts = (x[i] if i >= 0 else 0.0) - (x[j] if j >= 0 else 0.0) + offset
            self._stamp(values, i, j, max(element.flow(volts, share)[1], least))
        for converter, into, out in self._transfers:
            found = converter.transfer(_volts(x, into), _volts(x, out), share)
            self._stamp(values, into[0], into[1], max(found.in_by_in, least))
            self._stamp(values, out[0], out[1], max(-found.out_by_out, least))
            if found.in_by_out:
                couplings.append((into[:2], out[:2], found.in_by_out))
            if found.out_by_in:
                couplings.append((out[:2], into[:2], -found.out_by_in))
        if extra:
            for i in range(self.size):
                values[i] += extra
        above = list(values) if couplings else None
        for rows, columns, slope in couplings:
            self._couple(values, above or values, rows, columns, slope)
        return values, above

    def _couple(
        self, values: list[float], above: list[float], rows: tuple[int, int], columns: tuple[int, int], slope: float
    ) -> None:
        """Let the voltage between two unknowns act on the current between two others."""
        for row, by_row in zip(rows, (slope, -slope), strict=True):
            for column, by in zip(columns, (by_row, -by_row), strict=True):
                if row >= 0 and column >= 0:
                    side = above if row != column and self.pattern.first(row, column) else values
                    side[self.pattern.slot(row, column)] += by

    def step(self, x: list[float], share: float, wrong: list[float], extra: float = 0.0) -> list[float]:
        """The step (V) that would bring the residual `wrong` to nothing were the slopes constant.

        Where the slopes would lead away from it (loads of constant power weigh heavier than all that holds the
        voltage), such loads count as constant currents, held by `FIRM` at each node.
        """
        right = [-one for one in wrong]
        factor = self.pattern.factor(*self.slopes(x, share, extra))
        found = factor.solve(right)
        # A pivot that vanished belongs to a node that nothing holds; that does no harm while nothing pulls at it.
        if factor.negative or (factor.weak and max(map(abs, found)) > FAR * self.volts_scale):
            return self.pattern.factor(*self.slopes(x, share, extra + FIRM, 0.0)).solve(right)
        return found

    def holds(self, x: list[float]) -> bool:
        """Whether the solution is one that a small disturbance dies out at: no pivot below zero."""
        return not self.pattern.factor(*self.slopes(x, 1.0)).negative


def _told_volts(element: Element) -> float:
    """The largest voltage an element names."""
    return max((abs(getattr(element, key, None) or 0.0) for key in ("emf_v", "set_v", "initial_v")), default=0.0)


def _volts(x: list[float], across: tuple[int, int, float]) -> float:
    i, j, offset = across
    return (x[i] if i >= 0 else 0.0) - (x[j] if j >= 0 else 0.0) + offset


def newton(
    equations: Equations, x: list[float], share: float, most: int = MOST_STEPS, held: float = 0.0
) -> tuple[list[float], bool, int]:
    """Damped steps from `x`; where they ended, whether that is a solution, and how many it took.

    With `held` (S) every node is held back to where it began, as by a capacitor over one step in time.
    """
    past = x

    def wrong_at(there: list[float]) -> tuple[list[float], list[float]]:
        total, doubts = equations.residual(there, share)
        if held:
            total = [one + held * (now - then) for one, now, then in zip(total, there, past, strict=True)]
        return total, doubts

    wrong, doubt = wrong_at(x)
    size = _norm(wrong)
    farthest = FARTHEST * equations.volts_scale
    idle = 0
    for count in range(most):
        if settled(wrong, doubt):
            return x, True, count
        step = equations.step(x, share, wrong, held)
        if any(one != one for one in step):
            return x, False, count
        longest = max((abs(one) for one in step), default=0.0)
        part = min(1.0, farthest / longest) if longest > 0.0 else 1.0
        best: tuple[float, list[float], list[float], list[float]] | None = None
        for _ in range(12):
            there = [a + part * b for a, b in zip(x, step, strict=True)]
            found, doubts = wrong_at(there)
            norm = _norm(found)
            if best is None or norm < best[0]:
                best = (norm, there, found, doubts)
            if norm < size * (1.0 - 0.1 * part):
                break
            part *= 0.4
        assert best is not None
        idle = idle + 1 if best[0] > 0.9 * size else 0
        if idle > 5 and not settled(best[2], best[3]):
            return best[1], False, count + 1
        size, x, wrong, doubt = best
    return x, settled(wrong, doubt), most


def settled(wrong: list[float], doubt: list[float]) -> bool:
    """Whether the currents balance at every node, as far as rounding lets one see."""
    return all(abs(one) <= limit for one, limit in zip(wrong, doubt, strict=True))


def _norm(vector: list[float]) -> float:
    return sqrt(sum(one * one for one in vector))
