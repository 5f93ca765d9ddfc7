"""One supply state of the mains side: what is closed in it for sure, what perhaps, and what is live."""

from __future__ import annotations

from collections.abc import Iterator

from checker.circuit.elements import LIVE, Link
from checker.circuit.groups import Groups, Over
from checker.circuit.mains import Bond, Feed, Mains
from checker.design.model import Equipment

MAYBE = None
Truth = bool | None
"""True, False, or MAYBE where the file leaves it open."""


class State:
    """One reachable state. `feeding` maps a feed to True or MAYBE; `closed` and `perhaps` are links and bonds.

    `choice` holds the positions chosen, in the order of what is free; `live` what each sensor sees; `coiled` names the
    changeovers that a coil works.
    """

    __slots__ = (
        "_levels", "_ways", "bonds", "certain", "choice", "closed", "coiled", "feeding", "live", "mains", "may", "name",
        "perhaps", "positions", "present", "stable", "sure",
    )  # fmt: skip

    def __init__(
        self, mains: Mains, name: str, closed: list[Link], perhaps: list[Link], *, certain: bool, stable: bool
    ) -> None:
        self.mains = mains
        self.name = name
        self.closed = closed
        self.perhaps = perhaps
        self.certain = certain
        self.stable = stable
        self.sure: Groups = Over(mains.fixed, _ends(closed))
        self.may: Groups = Over(mains.fixed, _ends(closed, perhaps)) if perhaps else self.sure
        self.feeding: dict[Feed, Truth] = {}
        self.present: dict[str, Truth] = {}
        self.positions: dict[str, str | None] = {}
        self.bonds: dict[Bond, Truth] = {}
        self.choice: tuple[str, ...] = ()
        self.live: dict[str, Truth] = {}
        self.coiled: frozenset[str] = frozenset()
        self._levels: dict[tuple[str, bool], Groups] = {}
        self._ways: dict[str, list[tuple[Link, str]]] | None = None

    def groups(self, base: str, *, perhaps: bool) -> Groups:
        """What is joined in this state over one of the bases of `Mains`: `fixed`, `open_residual` or `seen`."""
        if base == "fixed":
            return self.may if perhaps else self.sure
        found = self._levels.get((base, perhaps))
        if found is None:
            links = (self.closed, self.perhaps) if perhaps else (self.closed,)
            found = self._levels[(base, perhaps)] = Over(getattr(self.mains, base), _ends(*links))
        return found

    def residual_ways(self) -> dict[str, list[tuple[Link, str]]]:
        """Residual-current devices between the groups that are perhaps joined without them, and where each leads."""
        if self._ways is None:
            level = self.groups("open_residual", perhaps=True)
            self._ways = {}
            for link in self.mains.residual:
                if link.pole == LIVE:
                    a, b = level.find(link.a), level.find(link.b)
                    self._ways.setdefault(a, []).append((link, b))
                    self._ways.setdefault(b, []).append((link, a))
        return self._ways

    def feeds_of(self, node: str, but: str = "") -> tuple[list[Feed], list[Feed]]:
        """The feeds that make a live node live: those that surely do, and those that perhaps do as well."""
        sure, may = [], []
        for feed, on in self.feeding.items():
            if feed.name == but:
                continue
            if on is True and self.sure.joined(feed.live, node):
                sure.append(feed)
            elif self.may.joined(feed.live, node):
                may.append(feed)
        return sure, may

    def feeds_without(self, item: Equipment, nodes: dict[str, str]) -> dict[str, tuple[set[str], set[str]]]:
        """Names of the feeds that reach each of some live nodes with the contacts of one piece of equipment open.

        For sure, and those that perhaps do as well. Few links are closed in a state, so they are walked.
        """
        find = self.mains.fixed.find
        closed = [(find(link.a), find(link.b)) for link in self.closed if link.equipment is not item]
        perhaps = [(find(link.a), find(link.b)) for link in self.perhaps if link.equipment is not item]
        found = {}
        for name, node in nodes.items():
            near = _walked(find(node), closed)
            far = _walked(find(node), closed + perhaps) if perhaps else near
            sure = {feed.name for feed, on in self.feeding.items() if on is True and find(feed.live) in near}
            may = {feed.name for feed in self.feeding if find(feed.live) in far}
            found[name] = sure, may - sure
        return found

    def with_welded(self, item: Equipment) -> State:
        """The same state with the contacts of one piece of equipment closed that should be open."""
        closed = [*self.closed, *(link for link in self.mains.switching if link.equipment is item)]
        perhaps = [link for link in self.perhaps if link.equipment is not item]
        state = State(self.mains, self.name, closed, perhaps, certain=self.certain, stable=self.stable)
        state.feeding = self.feeding
        return state

    def mark(self) -> tuple[int, ...]:
        """What is closed and what perhaps is: the same in two states that do not differ."""
        return (*sorted(map(id, self.closed)), -1, *sorted(map(id, self.perhaps)))

    def is_live(self, node: str, but: str = "") -> Truth:
        """Whether a node is live from any feed except the one named."""
        sure, may = self.feeds_of(node, but)
        return True if sure else MAYBE if may else False

    def __repr__(self) -> str:
        return f"<state {self.name}>"


def _walked(start: str, joins: list[tuple[str, str]]) -> set[str]:
    reached = {start}
    grows = True
    while grows:
        grows = False
        for a, b in joins:
            if (a in reached) is not (b in reached):
                reached.update((a, b))
                grows = True
    return reached


def _ends(*groups: list[Link]) -> Iterator[tuple[str, str]]:
    return ((link.a, link.b) for links in groups for link in links)
