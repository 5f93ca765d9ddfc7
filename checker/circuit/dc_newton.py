"""Newton's method on the node voltages of a direct-current network.

Every current is known as a function of voltages, with its slope. The slopes form a sparse matrix, symmetric but for
the few terms by which the output voltage of a converter acts on its input current. Steps are damped, and the number of
steps is bounded.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import inf, isnan, sqrt

from checker.circuit.dc_elements import Branch, Converter, Element, Emf, Inductor, TwoPole
from checker.circuit.dc_nodes import Nodes
from checker.circuit.sparse_ldl import Pattern

MOST_STEPS = 60
ROUNDING = 8e-15
SMALLEST_A = 1e-10
FIRM = 1.0  # S
FAR = 1e3
FARTHEST = 0.1  # of the largest voltage: how far one step may move a node
Pin = tuple[int, float]  # index of the unknown (-1: a reference), offset in volts
Across = tuple[int, int, float]  # the unknowns at both ends, and how far the voltage between them is above theirs
Slots = tuple[int, int, int]
Matrix = tuple[list[float], list[float] | None]  # diagonal and below; above, None: symmetric


Sorted = tuple[
    list[tuple[Across, float]], list[tuple[TwoPole, Across]], list[tuple[Converter, Across, Across]]
]  # conductances, what lies between two nodes, what has an input and an output


class Equations:
    """The equations of one network: as many unknowns as there are groups of nodes without a reference.

    The index -1 stands for the references: voltages, currents and values of the matrix have a last place of their own
    for it, which is 0 V and never read.
    """

    __slots__ = (
        "_base", "_doubt", "_links", "_offset", "_poles", "_transfers", "pattern", "pin", "size", "volts_scale",
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
        links, poles, transfers = self._sorted(elements)
        ends = [across[:2] for across, _ in links] + [across[:2] for _, across in poles]
        for _, into, out in transfers:
            ends += [into[:2], out[:2], *((i, j) for i in into[:2] for j in out[:2])]
        self.pattern = Pattern(self.size, [(i, j) for i, j in ends if i >= 0 and j >= 0])
        self._offset = max((abs(at) for _, at in self.pin.values()), default=0.0)
        self.take(elements)

    def _sorted(self, elements: Sequence[Element]) -> Sorted:
        links: list[tuple[Across, float]] = []
        poles: list[tuple[TwoPole, Across]] = []
        transfers: list[tuple[Converter, Across, Across]] = []
        for element in elements:
            if isinstance(element, Branch):
                if element.ohm > 0.0:
                    links.append((self._across(element.ends), 1.0 / element.ohm))
            elif isinstance(element, Converter):
                transfers.append((element, self._across(element.into), self._across(element.out)))
            elif isinstance(element, Emf):
                if element.ohm > 0.0:
                    i, j, offset = self._across(element.ends)
                    links.append(((i, j, offset - element.emf_v), 1.0 / element.ohm))
            elif not isinstance(element, Inductor):
                poles.append((element, self._across(element.ends)))
        return links, poles, transfers

    def take(self, elements: Sequence[Element]) -> None:
        """Other numbers for the same elements between the same nodes."""
        links, poles, self._transfers = self._sorted(elements)
        self.volts_scale = max(1.0, self._offset, max((abs(one.nominal_v) for one in elements), default=0.0))
        self._links = [(*across, siemens) for across, siemens in links if across[0] != across[1]]
        self._poles = [(element, *across, self._slots(across)) for element, across in poles]
        self._base = [0.0] * (self.pattern.slots + 1)
        self._doubt = [SMALLEST_A] * (self.size + 1)
        for across, siemens in links:
            _stamp(self._base, self._slots(across), siemens)
            for i in across[:2]:
                self._doubt[i] += 3.0 * ROUNDING * siemens * self.volts_scale

    def unknowns(self, volts: Mapping[str, float]) -> list[float]:
        """The unknowns at which the nodes stand at `volts`."""
        x = [0.0] * self.size
        for node, (i, offset) in self.pin.items():
            if i >= 0:
                x[i] = volts[node] - offset
        return x

    def _across(self, ends: Sequence[str]) -> Across:
        (i, high), (j, low) = self.pin[ends[0]], self.pin[ends[1]]
        return i, j, high - low

    def _slots(self, across: Across) -> Slots:
        """Where a conductance between two unknowns stands in the matrix: twice on its diagonal, once off it."""
        i, j, _ = across
        if i == j:
            return -1, -1, -1
        return i, j, self.pattern.slot(i, j) if i >= 0 and j >= 0 else -1

    def residual(self, x: list[float], share: float) -> tuple[list[float], list[float]]:
        """Sum of the currents that leave each unknown (A), and how much of it can be rounding (A)."""
        there = [*x, 0.0]
        total, doubts = [0.0] * len(there), list(self._doubt)
        scale = self.volts_scale
        for i, j, offset, siemens in self._links:
            amps = (there[i] - there[j] + offset) * siemens
            total[i] += amps
            total[j] -= amps
        for element, i, j, offset, _ in self._poles:
            amps, slope = element.flow(there[i] - there[j] + offset, share)
            doubt = ROUNDING * (abs(amps) + abs(slope) * scale)
            total[i] += amps
            total[j] -= amps
            doubts[i] += doubt
            doubts[j] += doubt
        for converter, into, out in self._transfers:
            found = converter.transfer(_volts(there, into), _volts(there, out), share)
            for (i, j, _), amps, a, b in (
                (into, found.amps_in, found.in_by_in, found.in_by_out),
                (out, -found.amps_out, found.out_by_out, found.out_by_in),
            ):
                doubt = ROUNDING * (abs(amps) + (abs(a) + abs(b)) * scale)
                total[i] += amps
                total[j] -= amps
                doubts[i] += doubt
                doubts[j] += doubt
        total.pop()
        doubts.pop()
        return total, doubts

    def slopes(self, x: list[float], share: float, extra: float = 0.0, least: float = -inf) -> Matrix:
        """Values of the matrix: its diagonal with what lies below, and what lies above where that differs.

        `extra` (S) is added to the diagonal; no slope of an element counts as less than `least` (S).
        """
        there = [*x, 0.0]
        values = list(self._base)
        for element, i, j, offset, slots in self._poles:
            slope = element.flow(there[i] - there[j] + offset, share)[1]
            _stamp(values, slots, slope if slope > least else least)
        couplings: list[tuple[Across, Across, float]] = []
        for converter, into, out in self._transfers:
            found = converter.transfer(_volts(there, into), _volts(there, out), share)
            _stamp(values, self._slots(into), max(found.in_by_in, least))
            _stamp(values, self._slots(out), max(-found.out_by_out, least))
            if found.in_by_out:
                couplings.append((into, out, found.in_by_out))
            if found.out_by_in:
                couplings.append((out, into, -found.out_by_in))
        if extra:
            for i in range(self.size):
                values[i] += extra
        if not couplings:
            return values, None
        above = list(values)
        for rows, columns, slope in couplings:
            self._couple(values, above, rows, columns, slope)
        return values, above

    def _couple(self, values: list[float], above: list[float], rows: Across, columns: Across, slope: float) -> None:
        """Let the voltage between two unknowns act on the current between two others."""
        for row, by_row in zip(rows[:2], (slope, -slope), strict=True):
            for column, by in zip(columns[:2], (by_row, -by_row), strict=True):
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

    def adjoint(self, x: list[float]) -> Callable[[list[float]], list[float]] | None:
        """Solver of the transposed equations of the slopes at `x`; None where a pivot is not above 0.

        With the answer y to weights w of the unknowns, a current d (A) more that leaves unknown i changes the sum of
        the weighted unknowns by -y[i] d.
        """
        values, above = self.slopes(x, 1.0)
        if above is not None:
            above[: self.size] = values[: self.size]
        factor = self.pattern.factor(values) if above is None else self.pattern.factor(above, values)
        return None if factor.negative or factor.weak else factor.solve

    def holds(self, x: list[float]) -> bool:
        """Whether the solution is one that a small disturbance dies out at: no pivot below zero."""
        return not self.pattern.factor(*self.slopes(x, 1.0)).negative


def _stamp(values: list[float], slots: Slots, siemens: float) -> None:
    i, j, between = slots
    values[i] += siemens
    values[j] += siemens
    values[between] -= siemens


def _volts(there: list[float], across: Across) -> float:
    i, j, offset = across
    return there[i] - there[j] + offset


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
        if isnan(sum(step)):
            return x, False, count
        longest = max(map(abs, step), default=0.0)
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
    for one, limit in zip(wrong, doubt, strict=True):  # noqa: SIM110 - asked at every step; a generator costs more
        if not -limit <= one <= limit:
            return False
    return True


def _norm(vector: list[float]) -> float:
    return sqrt(sum([one * one for one in vector]))
