"""The greatest current a short circuit can draw, from every source together.

Each side of a device is a source of current with a conductance across it (Norton); a lead in series weakens both.
Only the live conductor counts, cold, so the answer is never below what can flow. A source that limits itself pushes its
limit, of which a part goes into the batteries beside it; `circuit.prospective` leaves that part out of account, and so
tells more. What motors that run down give back is not counted here.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from checker.circuit.elements import Edge, Link, Source, Wire
from checker.circuit.limits import live_forest
from checker.circuit.network import Network
from checker.circuit.sweep import Rules
from checker.quantities import Number, Range, Unknown, add, corners, greatest


class Norton(NamedTuple):
    """Short-circuit current (A) and conductance (S) of one side.

    Sources of alternating current are never joined, so of several on one side only the strongest counts.
    """

    current: Number
    conductance: Number
    alternating: bool = False


NOTHING = Norton(0.0, 0.0)


class Faults:
    """The current that arrives at each node of each live edge."""

    __slots__ = ("_arrives",)

    def __init__(
        self, network: Network, sources: Callable[[Source], Norton], resistance: Callable[[Wire], Number]
    ) -> None:
        """`sources` gives the Norton pair of a source, `resistance` that of a wire (ohm, cold)."""

        def own(node: str) -> Norton:
            flow = NOTHING
            for source in network.sources_at.get(node, ()):
                flow = _join(flow, sources(source))
            return flow

        def through(edge: Edge, node: str, flow: Norton) -> Norton:
            if isinstance(edge, Link):
                return NOTHING if edge.one_way and node == edge.b else flow
            return _weaken(flow, resistance(edge))

        self._arrives = live_forest(network, None).sweep(Rules(NOTHING, own, _join, through))

    def arriving(self, edge: Edge, node: str) -> Number:
        """The greatest current that arrives at `node` through `edge`, with a dead short there (A)."""
        found = self._arrives.get((id(edge), node))
        return 0.0 if found is None else found.current

    def through(self, edge: Edge) -> Number:
        """The greatest current through `edge` with a dead short on one side of it (A)."""
        a, b = (id(edge), edge.a), (id(edge), edge.b)
        if a not in self._arrives:
            return 0.0
        first, second = self._arrives[a].current, self._arrives[b].current
        return greatest(first, second)


def _join(a: Norton, b: Norton) -> Norton:
    if a is NOTHING:
        return b
    if b is NOTHING:
        return a
    if a.alternating or b.alternating:
        return Norton(greatest(a.current, b.current), greatest(a.conductance, b.conductance), True)
    return Norton(add(a.current, b.current), add(a.conductance, b.conductance))


def _weaken(flow: Norton, ohms: Number) -> Norton:
    if flow is NOTHING:
        return flow
    if isinstance(ohms, Unknown):
        # An unknown lead can only weaken the fault: between nothing and all of it.
        return flow._replace(current=_up_to(flow.current), conductance=_up_to(flow.conductance))
    current = corners(lambda i, g, r: i / (1 + g * r), flow.current, flow.conductance, ohms)
    return flow._replace(current=current, conductance=corners(lambda g, r: g / (1 + g * r), flow.conductance, ohms))


def _up_to(value: Number) -> Number:
    if isinstance(value, float):
        return Range(0.0, value) if value > 0 else value
    if isinstance(value, Range):
        return Range(0.0, value.high)
    return value
