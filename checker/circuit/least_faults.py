"""The least short-circuit current through each device: one source alone, weak, the fault at the far end of the zone.

Seen from one side of a device, the sources behind it gather as the least electromotive force and the greatest
resistance that any one of them has, so the answer is never above what the weakest gives. What lies beyond the device
gathers as the greatest resistance to the end of its zone. Both are sweeps, linear in the graph. A ring is passed by
its whole length, which is never less than any way through it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from checker.circuit.elements import Edge, Link, Source, Wire
from checker.circuit.limits import live_forest
from checker.circuit.network import Network
from checker.circuit.sweep import Arrivals, Forest, Rules
from checker.quantities import Number, Range, Unknown, add, greatest, least

Path = tuple[Wire, Any] | None
"""The stretches of a way, the last first: (stretch, rest of the path)."""


class Weak(NamedTuple):
    """The weakest of the sources of one side: electromotive force (V), resistance (ohm), who, along which stretches."""

    emf: Number
    ohms: Number
    source: Source | None
    path: Path


class Reach(NamedTuple):
    """Greatest resistance to the end of a zone (ohm) and the way there; `cut` is what the device just passed hides."""

    ohms: Number
    path: Path
    cut: Any = None


class Limited(NamedTuple):
    """The source of one side that limits itself to the least current (A)."""

    current: Number
    source: Source | None


NO_SOURCE = Weak(None, None, None, None)
NO_LIMITED = Limited(None, None)
NO_WAY = Reach(None, None)
HERE = Reach(0.0, None)


class LeastFaults:
    """What each side of every live edge gives at least, and how far a zone goes beyond a device."""

    __slots__ = ("_forest", "_limited", "_reach", "_rings", "_weak")

    def __init__(
        self,
        network: Network,
        sources: Callable[[Source], tuple[Number, Number] | None],
        limited: Callable[[Source], Number],
        resistance: Callable[[Wire], Number],
    ) -> None:
        """`sources` gives least electromotive force and greatest resistance of a source, None to pass it by.

        `limited` gives the current of a source that limits itself, None to pass it by; `resistance` that of a stretch
        with its return (ohm, hot).
        """
        forest = live_forest(network, None)
        rings = _rings(forest, resistance)
        self._forest = forest
        self._rings = rings

        def own(node: str) -> Weak:
            found = NO_SOURCE
            for source in network.sources_at.get(node, ()):
                pair = sources(source)
                if pair is not None:
                    one = Weak(pair[0], add(pair[1], rings[node]) if node in rings else pair[1], source, None)
                    found = one if found is NO_SOURCE else _weaker(found, one)
            return found

        def held(node: str) -> Limited:
            found = NO_LIMITED
            for source in network.sources_at.get(node, ()):
                current = limited(source)
                if current is not None:
                    found = _lesser(found, Limited(current, source))
            return found

        self._weak = forest.sweep(Rules(NO_SOURCE, own, _weaker, lambda e, n, flow: _through(e, n, flow, resistance)))
        self._limited = forest.sweep(Rules(NO_LIMITED, held, _lesser, _limited_through))
        self._reach: Arrivals[Reach] = forest.sweep(
            Rules(NO_WAY, lambda node: HERE, _farther, lambda e, n, flow: _onward(e, n, flow, resistance))
        )

    def weakest(self, link: Link, inside: str) -> Weak | None:
        """The weakest source behind a device, seen from its node `inside` the faulty zone; None where there is none."""
        found = self._weak.get((id(link), inside), NO_SOURCE)
        return None if found is NO_SOURCE else found

    def limited(self, link: Link, inside: str) -> Limited | None:
        """The source behind a device that limits itself to the least current; None where there is none."""
        found = self._limited.get((id(link), inside), NO_LIMITED)
        return None if found is NO_LIMITED else found

    def reach(self, link: Link, inside: str) -> Reach:
        """The greatest resistance from a device to the end of the zone on the side of its node `inside`."""
        outside = link.other(inside)
        found = self._reach.get((id(link), outside), HERE)
        if id(link) in self._forest.ring_edges:
            return found._replace(ohms=add(found.ohms, self._rings.get(inside, 0.0)))
        return found.cut if isinstance(found.cut, Reach) else HERE


def _through(edge: Edge, node: str, flow: Weak, resistance: Callable[[Wire], Number]) -> Weak:
    if isinstance(edge, Link):
        return NO_SOURCE if edge.one_way and node == edge.b else flow
    return flow._replace(ohms=add(flow.ohms, resistance(edge)), path=(edge, flow.path))


def _limited_through(edge: Edge, node: str, flow: Limited) -> Limited:
    return NO_LIMITED if isinstance(edge, Link) and edge.one_way and node == edge.b else flow


def _onward(edge: Edge, node: str, flow: Reach, resistance: Callable[[Wire], Number]) -> Reach:
    if isinstance(edge, Wire):
        return Reach(add(flow.ohms, resistance(edge)), (edge, flow.path))
    if edge.is_protective:
        return Reach(0.0, None, Reach(flow.ohms, flow.path))
    return HERE if edge.one_way and node == edge.a else Reach(flow.ohms, flow.path)


def _weaker(a: Weak, b: Weak) -> Weak:
    if a is NO_SOURCE or b is NO_SOURCE:
        return b if a is NO_SOURCE else a
    worst = a if _top(a.ohms) >= _top(b.ohms) else b
    return Weak(least(a.emf, b.emf), greatest(a.ohms, b.ohms), worst.source, worst.path)


def _farther(a: Reach, b: Reach) -> Reach:
    if a is NO_WAY or b is NO_WAY:
        return b if a is NO_WAY else a
    worst = a if _top(a.ohms) >= _top(b.ohms) else b
    return Reach(greatest(a.ohms, b.ohms), worst.path)


def _lesser(a: Limited, b: Limited) -> Limited:
    if a.source is None or b.source is None:
        return b if a.source is None else a
    weaker = a if _bottom(a.current) <= _bottom(b.current) else b
    return Limited(least(a.current, b.current), weaker.source)


def _top(value: Number) -> float:
    if isinstance(value, Unknown):
        return float("inf")
    return value.high if isinstance(value, Range) else value or 0.0


def _bottom(value: Number) -> float:
    if isinstance(value, Unknown):
        return 0.0
    return value.low if isinstance(value, Range) else value or 0.0


def _rings(forest: Forest, resistance: Callable[[Wire], Number]) -> dict[str, Number]:
    """Node -> resistance of all rings in its part of the graph together; nothing where there are none."""
    if not forest.ring_edges:
        return {}
    root: dict[str, str] = {}
    for node in forest.order:
        up = forest.parent[node]
        root[node] = node if up is None else root[up[1]]
    whole: dict[str, Number] = {}
    seen: set[int] = set()
    for node in forest.order:
        for edge, _ in forest.near[node]:
            if id(edge) in forest.ring_edges and id(edge) not in seen and isinstance(edge, Wire):
                seen.add(id(edge))
                whole[root[node]] = add(whole.get(root[node], 0.0), resistance(edge))
    return {node: whole[root[node]] for node in forest.order if root[node] in whole}
