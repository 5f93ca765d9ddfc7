"""The way from a node home to the source that feeds it: the one with the fewest circuits.

One walk from all sources together finds the next step of every node, so that asking for every circuit costs no more
than asking for one.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.circuit.elements import LIVE, Conductor, Edge, Link, Source
from checker.circuit.network import Network


class Home(NamedTuple):
    """The next step from a node towards the nearest source that feeds alone: the edge to take, where it leads."""

    edge: Edge
    node: str


Homes = dict[str, Home | None]
"""Every live node that such a source reaches -> its next step; None at the source."""


def feeds_alone(source: Source) -> bool:
    """Whether a source holds up a voltage by itself; chargers, arrays and alternators only add to one that does."""
    item = source.equipment
    if source.storage or source.system == "ac":
        return True
    return item.kind == "dc converter" and (source.port == "low" or item.value("both ways") is not True)


def homes(network: Network) -> Homes:
    """The next step home of every live node, by the fewest circuits; ties go to what was built first."""
    found: Homes = {}
    layer: list[tuple[str, str, Home | None]] = [
        (source.live, "", None) for source in network.sources if feeds_alone(source)
    ]
    while layer:
        beyond: list[tuple[str, str, Home | None]] = []
        for node, circuit, home in layer:  # grows while it is walked, by what takes no further circuit
            if node in found:
                continue
            found[node] = home
            for edge, far in network.near.get(node, ()):
                if far in found or not _carries(edge, node):
                    continue
                name = circuit if isinstance(edge, Link) else edge.conductor.circuit.name
                (layer if name == circuit else beyond).append((far, name, Home(edge, node)))
        layer = beyond
    return found


def way_home(network: Network, found: Homes, conductor: Conductor) -> list[str]:
    """Names of the circuits from the start of a conductor to the source that feeds it, nearest first."""
    names: dict[str, None] = {}
    step = found.get(conductor.start)
    while step is not None:
        if not isinstance(step.edge, Link):
            if step.edge.conductor is conductor:
                return _way_around(network, conductor)
            names[step.edge.conductor.circuit.name] = None
        step = found[step.node]
    return list(names)


def _way_around(network: Network, conductor: Conductor) -> list[str]:
    """The same where the nearest source lies beyond the conductor itself: a walk that leaves it out."""
    settled: set[str] = set()
    layer: list[tuple[str, str, tuple[str, ...]]] = [(conductor.start, "", ())]
    while layer:
        beyond: list[tuple[str, str, tuple[str, ...]]] = []
        for node, circuit, names in layer:
            if node in settled:
                continue
            settled.add(node)
            if any(feeds_alone(source) for source in network.sources_at.get(node, ())):
                return list(names)
            for edge, far in network.near.get(node, ()):
                if far in settled or not _carries(edge, far):
                    continue
                if isinstance(edge, Link):
                    layer.append((far, circuit, names))
                elif edge.conductor is not conductor:
                    name = edge.conductor.circuit.name
                    onward = names if name in names else (*names, name)
                    (layer if name == circuit else beyond).append((far, name, onward))
        layer = beyond
    return []


def _carries(edge: Edge, node: str) -> bool:
    """Whether supply may pass a live edge, away from `node`. An inverter that could feed back is no way home."""
    if isinstance(edge, Link):
        return edge.pole == LIVE and not (node == edge.b and (edge.one_way or edge.when == "transfer"))
    return edge.conductor.role == LIVE
