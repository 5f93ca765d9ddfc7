"""Short-circuit currents at every node of a network of resistances, all from one factorisation.

The current into a dead short is the open voltage of the node over the resistance seen there (Thévenin). The matrix of
the network is factorised once; the open voltages are one solution, and the resistances seen are the diagonal of its
inverse, which costs as much again. Between a node and one battery alone, the resistance is that of the network between
two points, for which each battery takes one more solution. Rings are exact: no way round is taken for another.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from checker.circuit.groups import Groups
from checker.circuit.sparse_ldl import Factor, Pattern

Stretch = tuple[str, str, float]
"""Two nodes and the resistance between them (ohm); one of no resistance joins them."""


class Battery(NamedTuple):
    """An electromotive force (V) behind a resistance (ohm, above 0) at a node."""

    node: str
    emf_v: float
    ohm: float


class Weakest(NamedTuple):
    """The least current that one battery alone brings to a node (A), and its index among the batteries."""

    amps: float
    battery: int


class Resistances:
    """The network, its nodes joined and numbered."""

    __slots__ = ("_ends", "_groups", "_index", "_parts", "nodes")

    def __init__(self, stretches: Sequence[Stretch], nodes: Sequence[str]) -> None:
        """`nodes` are those asked about; those of the stretches are known besides. Raises ValueError below 0 ohm."""
        self._groups = Groups()
        for a, b, ohm in stretches:
            if not ohm >= 0.0:
                raise ValueError(f"resistance between {a} and {b}, ohm, is {ohm:g}; expected 0 or more")
            if ohm == 0.0:
                self._groups.join(a, b)
        self.nodes = tuple(dict.fromkeys([*nodes, *(node for a, b, _ in stretches for node in (a, b))]))
        self._index: dict[str, int] = {}
        for node in self.nodes:
            self._index.setdefault(self._groups.find(node), len(self._index))
        ends = [(self.at(a), self.at(b), 1.0 / ohm) for a, b, ohm in stretches if ohm > 0.0]
        self._ends = [end for end in ends if end[0] != end[1]]
        self._parts = Groups()
        for i, j, _ in self._ends:
            self._parts.join(str(i), str(j))

    def at(self, node: str) -> int:
        """The number of the joined node."""
        return self._index[self._groups.find(node)]

    def part(self, node: str) -> str:
        """What hangs together with a node has one name."""
        return self._parts.find(str(self.at(node)))

    def factor(self, grounds: Mapping[int, float]) -> Factor:
        """The factorised matrix with conductances (S) from some joined nodes to the reference."""
        pattern = Pattern(len(self._index), [(i, j) for i, j, _ in self._ends])
        values = [0.0] * pattern.slots
        for i, j, siemens in self._ends:
            values[i] += siemens
            values[j] += siemens
            values[pattern.slot(i, j)] -= siemens
        for i, siemens in grounds.items():
            values[i] += siemens
        return pattern.factor(values)

    def level(self, batteries: Sequence[Battery], choose: Callable[[float, float], float]) -> list[Battery]:
        """The same batteries, in each part all at the voltage that `choose` (min or max) picks.

        At one voltage none of them takes charge during a short, so that the current rises with every conductance: the
        ends of ranges then bound all that lies between.
        """
        found: dict[str, float] = {}
        for one in batteries:
            part = self.part(one.node)
            found[part] = choose(found.get(part, one.emf_v), one.emf_v)
        return [one._replace(emf_v=found[self.part(one.node)]) for one in batteries]

    def greatest(self, batteries: Sequence[Battery], limited: Sequence[tuple[str, float]]) -> dict[str, float]:
        """Current into a dead short at each node, all batteries together, and beside them what limits itself (A).

        A source that limits itself adds its whole limit wherever it is joined, so the answer errs upwards only.
        """
        beside: dict[str, float] = {}
        for node, amps in limited:
            beside[self.part(node)] = beside.get(self.part(node), 0.0) + amps
        size = len(self._index)
        grounds: dict[int, float] = {}
        pushed = [0.0] * size
        fed = {self.part(one.node) for one in batteries}
        for one in batteries:
            i = self.at(one.node)
            grounds[i] = grounds.get(i, 0.0) + 1.0 / one.ohm
            pushed[i] += one.emf_v / one.ohm
        for node in self.nodes:  # a part without a battery is held by one node, which carries nothing
            if self.part(node) not in fed:
                fed.add(self.part(node))
                grounds[self.at(node)] = 1.0
        factor = self.factor(grounds)
        volts, seen = factor.solve(pushed), factor.inverse_diagonal()
        return {
            node: volts[self.at(node)] / seen[self.at(node)] + beside.get(self.part(node), 0.0) for node in self.nodes
        }

    def weakest(self, batteries: Sequence[Battery]) -> dict[str, Weakest]:
        """The least of what each battery alone brings into a dead short at each node; those that none reaches miss."""
        if not batteries:
            return {}
        grounds: dict[int, float] = {}
        held: set[str] = set()
        for node in self.nodes:
            if self.part(node) not in held:
                held.add(self.part(node))
                grounds[self.at(node)] = 1.0
        factor = self.factor(grounds)
        seen = factor.inverse_diagonal()
        found: dict[str, Weakest] = {}
        for number, one in enumerate(batteries):
            source, part = self.at(one.node), self.part(one.node)
            right = [0.0] * len(self._index)
            right[source] = 1.0
            column = factor.solve(right)
            for node in self.nodes:
                if self.part(node) != part:
                    continue
                i = self.at(node)
                between = max(0.0, seen[source] + seen[i] - 2.0 * column[i])
                amps = one.emf_v / (one.ohm + between)
                if node not in found or amps < found[node].amps:
                    found[node] = Weakest(amps, number)
        return found
