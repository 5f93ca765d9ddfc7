"""Which nodes are joined: groups that grow by joining, and groups laid over others."""

from __future__ import annotations

from collections.abc import Iterable


class Groups:
    """Nodes joined into groups. `find` names the group of a node; a node never joined is a group of its own."""

    __slots__ = ("_flat", "_head")

    def __init__(self) -> None:
        self._head: dict[str, str] = {}
        self._flat: dict[str, str] | None = None

    def find(self, node: str) -> str:
        """The node that stands for the group of `node`."""
        head = self._head
        top = node
        while (above := head.get(top, top)) != top:
            top = above
        while node != top:
            above = head[node]
            head[node] = top
            node = above
        return top

    def join(self, a: str, b: str) -> None:
        """Put the groups of two nodes together."""
        self._flat = None
        self._head[self.find(a)] = self.find(b)

    def flat(self) -> dict[str, str]:
        """Every node that was joined -> the node that stands for its group; made anew after a join."""
        if self._flat is None:
            self._flat = {node: self.find(node) for node in list(self._head)}
        return self._flat

    def joined(self, a: str, b: str) -> bool:
        """Whether two nodes are in one group."""
        return self.find(a) == self.find(b)


class Over(Groups):
    """Groups laid over `base`: what is joined there stays joined, what is joined here leaves the base as it is."""

    __slots__ = ("_below",)

    def __init__(self, base: Groups, joins: Iterable[tuple[str, str]]) -> None:
        super().__init__()
        self._below = base.flat()
        for a, b in joins:
            self.join(a, b)

    def find(self, node: str) -> str:
        """The node that stands for the group of `node`."""
        head = self._head
        top = self._below.get(node, node)
        while (above := head.get(top, top)) != top:
            top = above
        return top
