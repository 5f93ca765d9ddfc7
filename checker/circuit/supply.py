"""Where supply reaches: a walk over live wires and links that also passes through what converts one supply to another.

Taking a piece of equipment away and walking again tells what goes dark without it.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable

from checker.circuit.elements import CHASSIS, LIVE, Edge, Link, Wire
from checker.circuit.network import Network

Passes = Callable[[Edge], bool]
NOTHING: frozenset[str] = frozenset()

AROUND = {
    "inverter": (("dc+", "acL"),),
    "inverter-charger": (("dc+", "ac-outL"), ("ac-inL", "dc+")),
    "charger": (("acL", "dc+"),),
    "solar controller": (("pv+", "battery+"),),
    "transformer": (("primaryL", "secondaryL"),),
}
"""Terminals between which equipment passes supply on in another form. A dc converter depends on its direction."""


def is_live(edge: Edge) -> bool:
    """Whether an edge stands in the supply conductor."""
    return edge.conductor.role == LIVE if isinstance(edge, Wire) else edge.pole == LIVE


def crossings(network: Network) -> dict[str, list[tuple[str, str]]]:
    """Node on the input side -> (name of the equipment, node on the output side)."""
    found: dict[str, list[tuple[str, str]]] = {}
    for item in network.equipment.values():
        for enter, leave in AROUND.get(item.kind, ()):
            found.setdefault(f"{item.name}:{enter}", []).append((item.name, f"{item.name}:{leave}"))
    for source in network.sources:
        if source.equipment.kind == "dc converter":
            enter = "high+" if source.port == "low" else "low+"
            found.setdefault(f"{source.equipment.name}:{enter}", []).append((source.equipment.name, source.live))
    return found


def joined(network: Network, starts: Iterable[str], passes: Passes | None = None) -> dict[str, None]:
    """Nodes that supply from `starts` reaches without being converted, in the order met."""
    return _walk(network, starts, passes, {}, NOTHING)


def metal(network: Network, start: str) -> set[str]:
    """Nodes joined to one by conductors of whatever role and by contacts, not beyond the chassis, where all returns
    meet: what stands in series meets here."""
    seen, todo = {start}, [start]
    while todo:
        node = todo.pop()
        for edge, far in network.near.get(node, ()) if node != CHASSIS else ():
            if far not in seen and not (isinstance(edge, Link) and edge.one_way and node == edge.b):
                seen.add(far)
                todo.append(far)
    return seen


def leading_to(network: Network, goals: Iterable[str], passes: Passes | None = None) -> set[str]:
    """Nodes from which `joined` would reach one of the goals: the walk backwards."""
    seen = set(goals)
    todo = list(seen)
    while todo:
        node = todo.pop()
        for edge, far in network.near.get(node, ()):
            if far not in seen and _open_to(edge, far, passes, NOTHING):
                seen.add(far)
                todo.append(far)
    return seen


def supplied(
    network: Network, starts: Iterable[str], passes: Passes | None = None, without: Collection[str] = NOTHING
) -> dict[str, None]:
    """Nodes that supply from `starts` reaches, converters passed through; `without` names equipment taken away."""
    return _walk(network, starts, passes, crossings(network), without)


def _walk(
    network: Network,
    starts: Iterable[str],
    passes: Passes | None,
    across: dict[str, list[tuple[str, str]]],
    without: Collection[str],
) -> dict[str, None]:
    todo = [node for node in starts if node.split(":", 1)[0] not in without]
    seen: dict[str, None] = dict.fromkeys(todo)
    while todo:
        node = todo.pop()
        ahead = [far for edge, far in network.near.get(node, ()) if _open_to(edge, node, passes, without)]
        ahead.extend(far for name, far in across.get(node, ()) if name not in without)
        for far in ahead:
            if far not in seen and not (without and _owner(far) in without):
                seen[far] = None
                todo.append(far)
    return seen


def _owner(node: str) -> str:
    """The equipment whose terminal a node is; a bar or a block that is gone joins nothing any more."""
    return node.split(":", 1)[0]


def _open_to(edge: Edge, node: str, passes: Passes | None, without: Collection[str]) -> bool:
    if not is_live(edge) or (passes is not None and not passes(edge)):
        return False
    if isinstance(edge, Link):
        return edge.equipment.name not in without and not (edge.one_way and node == edge.b)
    return True


def ways(
    network: Network, starts: Iterable[str], passes: Passes | None = None, without: Collection[str] = NOTHING
) -> dict[str, tuple[str, str]]:
    """A way with few steps to every node that `supplied` finds: node -> (node before it, equipment passed in between).

    Before a start stands nothing, passed is the equipment it belongs to; between two ends of a wire nothing is passed.
    """
    across = crossings(network)
    found: dict[str, tuple[str, str]] = {}
    for node in starts:
        name = node.split(":", 1)[0]
        if name not in without:
            found.setdefault(node, ("", name))
    todo = list(found)
    for node in todo:
        ahead = [
            (far, edge.equipment.name if isinstance(edge, Link) else "")
            for edge, far in network.near.get(node, ())
            if _open_to(edge, node, passes, without)
        ]
        ahead.extend((far, name) for name, far in across.get(node, ()) if name not in without)
        for far, name in ahead:
            if far not in found and not (without and _owner(far) in without):
                found[far] = (node, name)
                todo.append(far)
    return found


def passed(found: dict[str, tuple[str, str]], node: str) -> set[str]:
    """Names of the equipment on the way to a node, bars, blocks and its own included.

    Only one of these can, missing, leave it dark.
    """
    names = set()
    while node:
        names.add(_owner(node))
        node, name = found[node]
        names.add(name)
    names.discard("")
    return names


def storage_nodes(network: Network) -> list[str]:
    """Live terminals of batteries and of a towing vehicle."""
    return [source.live for source in network.sources if source.storage]
