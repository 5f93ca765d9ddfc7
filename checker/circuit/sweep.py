"""What each side of every live edge can push through it, found for the whole graph in two passes.

A part of the graph without rings is a tree: what arrives through an edge is what the far side gathers, let through
by whatever stands in the edge. Rings are taken as one node, so that no device inside a ring is counted as limiting;
that can only make the answer larger.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Generic, TypeVar

from checker.circuit.elements import Edge

Flow = TypeVar("Flow")


class Rules(Generic[Flow]):
    """How a quantity gathers: `nothing`, what a node adds (`own`), how two join (`join`), what an edge passes
    from one of its nodes to the other (`through(edge, from node, flow)`)."""

    __slots__ = ("join", "nothing", "own", "through")

    def __init__(
        self,
        nothing: Flow,
        own: Callable[[str], Flow],
        join: Callable[[Flow, Flow], Flow],
        through: Callable[[Edge, str, Flow], Flow],
    ) -> None:
        self.nothing = nothing
        self.own = own
        self.join = join
        self.through = through


Near = dict[str, list[tuple[Edge, str]]]


class Forest:
    """A spanning forest of a graph, with rings merged: `head[node]` is the node that stands for its ring."""

    __slots__ = ("children", "head", "near", "order", "parent", "ring_edges")

    def __init__(self, near: Near) -> None:
        self.near = near
        self.order: list[str] = []
        self.parent: dict[str, tuple[Edge, str] | None] = {}
        self.head: dict[str, str] = {node: node for node in near}
        self.ring_edges: set[int] = set()
        self.children: dict[str, list[tuple[Edge, str, str]]] = {}
        closing = self._walk()
        depth = self._depths()
        for edge, node, far in closing:
            self._merge(edge, node, far, depth)
        self._hang()

    def _walk(self) -> list[tuple[Edge, str, str]]:
        closing: list[tuple[Edge, str, str]] = []
        seen_edges: set[int] = set()
        for root in self.near:
            if root in self.parent:
                continue
            self.parent[root] = None
            todo = [root]
            while todo:
                node = todo.pop()
                self.order.append(node)
                for edge, far in self.near[node]:
                    if id(edge) in seen_edges:
                        continue
                    seen_edges.add(id(edge))
                    if far in self.parent:
                        closing.append((edge, node, far))
                    else:
                        self.parent[far] = (edge, node)
                        todo.append(far)
        return closing

    def _depths(self) -> dict[str, int]:
        depth: dict[str, int] = {}
        for node in self.order:
            up = self.parent[node]
            depth[node] = 0 if up is None else depth[up[1]] + 1
        return depth

    def _find(self, node: str) -> str:
        head = self.head
        while head[node] != node:
            head[node] = head[head[node]]
            node = head[node]
        return node

    def _merge(self, edge: Edge, node: str, far: str, depth: dict[str, int]) -> None:
        self.ring_edges.add(id(edge))
        a, b = self._find(node), self._find(far)
        while a != b:
            if depth[a] < depth[b]:
                a, b = b, a
            up = self.parent[a]
            if up is None:
                break
            self.ring_edges.add(id(up[0]))
            above = self._find(up[1])
            self.head[a] = above
            a = above

    def _hang(self) -> None:
        for node in self.order:
            up = self.parent[node]
            if up is not None and id(up[0]) not in self.ring_edges:
                self.children.setdefault(self._find(up[1]), []).append((up[0], up[1], node))

    def sweep(self, rules: Rules[Flow]) -> dict[tuple[int, str], Flow]:
        """(id of edge, node it is seen from) to what arrives at that node through the edge.

        An edge inside a ring answers with all that its part of the graph gathers.
        """
        own: dict[str, Flow] = {}
        for node in self.order:
            head = self._find(node)
            mine = rules.own(node)
            own[head] = rules.join(own[head], mine) if head in own else mine
        arrives: dict[tuple[int, str], Flow] = {}
        heads = [node for node in self.order if self._find(node) == node]
        gathered: dict[str, Flow] = {}
        for head in reversed(heads):
            flow = own[head]
            for edge, near_node, far_node in self.children.get(head, ()):
                inward = rules.through(edge, far_node, gathered[self._find(far_node)])
                arrives[(id(edge), near_node)] = inward
                flow = rules.join(flow, inward)
            gathered[head] = flow
        above: dict[str, Flow] = {}
        for head in heads:
            kids = self.children.get(head, [])
            base = rules.join(own[head], above[head]) if head in above else own[head]
            before = _running(base, (arrives[(id(e), n)] for e, n, _ in kids), rules.join)
            after = _running(
                rules.nothing, (arrives[(id(e), n)] for e, n, _ in reversed(kids)), rules.join
            )
            for index, (edge, near_node, far_node) in enumerate(kids):
                rest = rules.join(before[index], after[len(kids) - 1 - index])
                outward = rules.through(edge, near_node, rest)
                arrives[(id(edge), far_node)] = outward
                above[self._find(far_node)] = outward
            gathered[head] = rules.join(gathered[head], above[head]) if head in above else gathered[head]
        self._rings(rules, gathered, arrives)
        return arrives

    def _rings(self, rules: Rules[Flow], gathered: dict[str, Flow], arrives: dict[tuple[int, str], Flow]) -> None:
        if not self.ring_edges:
            return
        for node in self.order:
            for edge, _ in self.near[node]:
                if id(edge) in self.ring_edges:
                    arrives[(id(edge), node)] = gathered[self._find(node)]


def _running(start: Flow, flows: Iterable[Flow], join: Callable[[Flow, Flow], Flow]) -> list[Flow]:
    found = [start]
    for flow in flows:
        found.append(join(found[-1], flow))
    return found
