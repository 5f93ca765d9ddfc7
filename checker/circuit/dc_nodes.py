"""Nodes of a direct-current network that are one: joined without resistance, or held apart by a fixed voltage.

A group of nodes has one potential; each node stands at a fixed offset (V) above it. So neither a join of no resistance
nor an ideal source needs an equation of its own.
"""

from __future__ import annotations

from collections.abc import Iterable

from checker.circuit.dc_elements import Branch, Element, Emf, Inductor

CONTRADICTION_V = 1e-9


class Contradiction(Exception):
    """Two ideal sources disagree: `names` are the elements that close the loop, `volts` what is left over."""

    def __init__(self, name: str, volts: float) -> None:
        super().__init__(name)
        self.name = name
        self.volts = volts


class Stiff:
    """One join without resistance: an element whose current the nodes alone do not tell."""

    __slots__ = ("a", "b", "in_loop", "name")

    def __init__(self, name: str, a: str, b: str, in_loop: bool) -> None:
        self.name = name
        self.a = a
        self.b = b
        self.in_loop = in_loop


class Nodes:
    """All nodes, in groups. `stiff` lists the joins without resistance; one that closes a loop is marked."""

    __slots__ = ("_above", "_offset", "names", "stiff")

    def __init__(self, elements: Iterable[Element]) -> None:
        """Raises Contradiction when ideal sources round a loop do not add up to nothing."""
        self._above: dict[str, str] = {}
        self._offset: dict[str, float] = {}
        self.names: dict[str, None] = {}
        self.stiff: list[Stiff] = []
        for element in elements:
            for node in element.ends:
                self.names.setdefault(node)
            if isinstance(element, Branch):
                if element.ohm == 0.0:
                    self._join(element.name, element.a, element.b, 0.0)
            elif isinstance(element, Emf):
                if element.ohm == 0.0:
                    self._join(element.name, element.plus, element.minus, element.emf_v)
            elif isinstance(element, Inductor):
                self._join(element.name, element.plus, element.minus, 0.0)

    def find(self, node: str) -> tuple[str, float]:
        """The node that stands for the group, and how far (V) `node` stands above it."""
        offset = 0.0
        above = self._above
        while node in above:
            offset += self._offset[node]
            node = above[node]
        return node, offset

    def _join(self, name: str, plus: str, minus: str, volts: float) -> None:
        high, over = self.find(plus)
        low, under = self.find(minus)
        if high == low:
            left = over - under - volts
            if abs(left) > CONTRADICTION_V:
                raise Contradiction(name, left)
            self.stiff.append(Stiff(name, plus, minus, True))
            return
        self._above[high] = low
        self._offset[high] = under + volts - over
        self.stiff.append(Stiff(name, plus, minus, False))

    def loops(self) -> frozenset[str]:
        """Names of the joins whose current cannot be told, because another join lies beside them in a loop."""
        near: dict[str, list[tuple[str, str]]] = {}
        for stiff in self.stiff:
            near.setdefault(stiff.a, []).append((stiff.b, stiff.name))
            near.setdefault(stiff.b, []).append((stiff.a, stiff.name))
        found: set[str] = set()
        for stiff in self.stiff:
            if stiff.in_loop:
                found.add(stiff.name)
                found.update(_path(near, stiff))
        return frozenset(found)


def _path(near: dict[str, list[tuple[str, str]]], stiff: Stiff) -> list[str]:
    """Names of the joins on the shortest way round a join that closes a loop."""
    came: dict[str, tuple[str, str]] = {stiff.a: ("", "")}
    todo = [stiff.a]
    for node in todo:
        for far, name in near[node]:
            if far not in came and name != stiff.name:
                came[far] = (node, name)
                todo.append(far)
    found = []
    node = stiff.b
    while node != stiff.a and node in came:
        node, name = came[node]
        found.append(name)
    return found
