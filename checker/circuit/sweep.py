"""What each side of every live edge can push through it, found for the whole graph in two passes.

A part of the graph without rings is a tree: what arrives through an edge is what the far side gathers, let through
by whatever stands in the edge. Rings are taken as one node, so that no device inside a ring is counted as limiting;
that can only make the answer larger.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, NamedTuple, TypeVar

from checker.circuit.elements import Edge

Flow = TypeVar("Flow")


class Rules(Generic[Flow]):
    """How a quantity gathers: `nothing`, what a node adds (`own`), how two join (`join`), what an edge passes
    from one of its nodes to the other (`through(edge, from node, flow)`).

    Nothing joined to a flow leaves it as it is, and nothing passes an edge as nothing; the object `nothing` itself is
    never handed to `join` or `through` where that can be spared, since most of a graph carries nothing.
    """

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
Arrivals = dict[tuple[int, str], Flow]
"""(id of edge, node it is seen from) to what arrives there through the edge."""


class Branch(NamedTuple):
    """An edge of the forest from `near`, above, to `far`, below; `head` stands for the ring of `far`."""

    edge: Edge
    near: str
    far: str
    head: str
    seen_near: tuple[int, str]
    seen_far: tuple[int, str]


class Forest:
    """A spanning forest of a graph, with rings merged: `head[node]` is the node that stands for its ring."""

    __slots__ = ("children", "head", "head_of", "heads", "memo", "near", "order", "parent", "ring_edges")

    def __init__(self, near: Near) -> None:
        self.near = near
        self.order: list[str] = []
        self.parent: dict[str, tuple[Edge, str] | None] = {}
        self.head: dict[str, str] = {node: node for node in near}
        self.ring_edges: set[int] = set()
        self.children: dict[str, list[Branch]] = {}
        self.heads: list[str] = []
        self.head_of: list[tuple[str, str]] = []
        self.memo: dict[Any, Any] = {}  # sweeps over this forest that somebody may ask for again
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
        self.heads = [node for node in self.order if self._find(node) == node]
        self.head_of = [(node, self._find(node)) for node in self.order]
        for node, head in self.head_of:
            up = self.parent[node]
            if up is not None and id(up[0]) not in self.ring_edges:
                edge, near = up
                branch = Branch(edge, near, node, head, (id(edge), near), (id(edge), node))
                self.children.setdefault(self._find(near), []).append(branch)

    def sweep(self, rules: Rules[Flow]) -> Arrivals[Flow]:
        """(id of edge, node it is seen from) to what arrives at that node through the edge.

        An edge inside a ring answers with all that its part of the graph gathers.
        """
        own = self._own(rules)
        arrives: Arrivals[Flow] = {}
        gathered = self._gather(rules, own, arrives)
        self._spread(rules, own, arrives, gathered)
        self._rings(rules, gathered, arrives)
        return arrives

    def _own(self, rules: Rules[Flow]) -> dict[str, Flow]:
        """What each ring or node adds by itself, where it adds something."""
        own: dict[str, Flow] = {}
        nothing = rules.nothing
        for node, head in self.head_of:
            mine = rules.own(node)
            if mine is not nothing:
                own[head] = rules.join(own[head], mine) if head in own else mine
        return own

    def _gather(self, rules: Rules[Flow], own: dict[str, Flow], arrives: Arrivals[Flow]) -> dict[str, Flow]:
        """From the leaves to the roots: what each node and all below it gather."""
        nothing, join, through = rules.nothing, rules.join, rules.through
        gathered: dict[str, Flow] = {}
        for head in reversed(self.heads):
            flow = own.get(head, nothing)
            for branch in self.children.get(head, ()):
                inward = gathered[branch.head]
                if inward is not nothing:
                    inward = through(branch.edge, branch.far, inward)
                    if inward is not nothing:
                        flow = inward if flow is nothing else join(flow, inward)
                arrives[branch.seen_near] = inward
            gathered[head] = flow
        return gathered

    def _spread(
        self, rules: Rules[Flow], own: dict[str, Flow], arrives: Arrivals[Flow], gathered: dict[str, Flow]
    ) -> None:
        """From the roots to the leaves: what each branch is given by all that does not hang on it."""
        nothing, join, through = rules.nothing, rules.join, rules.through
        above: dict[str, Flow] = {}
        for head in self.heads:
            base = own.get(head, nothing)
            if head in above:
                base = above[head] if base is nothing else join(base, above[head])
                gathered[head] = join(gathered[head], above[head])
            branches = self.children.get(head)
            if branches is None:
                continue
            flows = [arrives[branch.seen_near] for branch in branches]
            for branch, rest in zip(branches, _without_each(base, flows, rules), strict=True):
                outward = rest if rest is nothing else through(branch.edge, branch.near, rest)
                arrives[branch.seen_far] = outward
                if outward is not nothing:
                    above[branch.head] = outward

    def _rings(self, rules: Rules[Flow], gathered: dict[str, Flow], arrives: Arrivals[Flow]) -> None:
        if not self.ring_edges:
            return
        for node in self.order:
            for edge, _ in self.near[node]:
                if id(edge) in self.ring_edges:
                    arrives[(id(edge), node)] = gathered[self._find(node)]


def _without_each(base: Flow, flows: list[Flow], rules: Rules[Flow]) -> list[Flow]:
    """For each flow, `base` joined with all the others; those that are nothing cost nothing."""
    nothing, join = rules.nothing, rules.join
    bearing = [index for index, flow in enumerate(flows) if flow is not nothing]
    if not bearing:
        return [base] * len(flows)
    after = [nothing]
    for index in reversed(bearing[1:]):
        after.append(join(after[-1], flows[index]))
    before = base
    rests: dict[int, Flow] = {}
    for index in bearing:
        rest = after.pop()
        rests[index] = before if rest is nothing else join(before, rest)
        before = join(before, flows[index])
    return [rests.get(index, before) for index in range(len(flows))]
