"""What comes together in a return: the current of all that hangs on it, not only that of its own circuit."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import BONDING, LIVE, RETURN, Edge, Wire
from checker.circuit.limits import live_graph
from checker.circuit.sweep import Forest, Near
from checker.facts.catalogue import fact
from checker.facts.currents import doubtful, draws_alone, draws_in, flows, gives_always, gives_in
from checker.facts.space import lower, upper
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Number, Range, Truth, Unknown, add, between, greatest, less, same

Amounts = dict[str, Number]


def _return_graph(facts: Facts) -> Near:
    """Returns, negative poles joined within equipment, and bonds that bring a negative to the chassis."""
    network = facts.network

    def back(edge: Edge) -> bool:
        if not isinstance(edge, Wire):
            return edge.pole == RETURN
        if edge.conductor.role == RETURN:
            return network.systems[edge.conductor.circuit.name] == "dc"
        return edge.conductor.role == BONDING

    kept = {node: [(edge, far) for edge, far in edges if back(edge)] for node, edges in network.near.items()}
    return {node: edges for node, edges in kept.items() if edges}


def return_forest(facts: Facts) -> Forest:
    """The forest of that graph, made once."""
    found: Forest | None = facts.shared.get("return forest")
    if found is None:
        found = facts.shared["return forest"] = Forest(_return_graph(facts))
    return found


def _islands(facts: Facts) -> dict[str, int]:
    """Positive node -> the island of live nodes that wires and links join; a current closes within its own island."""
    near = live_graph(facts.network, None)
    found: dict[str, int] = {}
    for root in near:
        todo = [] if root in found else [root]
        while todo:
            node = todo.pop()
            found[node] = found.get(root, len(found))
            todo.extend(far for _, far in near.get(node, ()) if far not in found)
    return found


def _at_returns(facts: Facts, live: Amounts, islands: dict[str, int]) -> dict[int, Amounts]:
    """What is drawn or given at the positive poles of each island of the battery side, at the negative ones."""
    homes = {source.live: source.returns for source in facts.network.sources}
    found: dict[int, Amounts] = {}
    for node, current in live.items():
        if node.endswith("+"):
            home = homes.get(node, f"{node[:-1]}-")
            there = found.setdefault(islands.get(node, -1), {})
            there[home] = add(there[home], current) if home in there else current
    return found


def return_currents(facts: Facts) -> Amounts:
    """Id of a return conductor -> greatest current that comes together in it over all modes, A."""
    found: Amounts | None = facts.shared.get("return currents")
    if found is None:
        found = facts.shared["return currents"] = _all_modes(facts)
    return found


def _all_modes(facts: Facts) -> Amounts:
    forest = return_forest(facts)
    islands = _islands(facts)
    found: Amounts = {}

    def gather(draws: Amounts, gives: Amounts, join: Any, at: dict[str, str] | None, *, sure: bool) -> None:
        asked, there = _at_returns(facts, draws, islands), _at_returns(facts, gives, islands)
        parts = [flows(facts, asked[one], there.get(one, {}), join, at, RETURN, forest) for one in sorted(asked)]
        parts += [flows(facts, {}, there[one], join, at, RETURN, forest) for one in sorted(there) if one not in asked]
        for name in parts[0] if parts else ():
            most = _together([part[name] for part in parts], sure=sure)
            found[name] = greatest(found[name], most) if name in found else most

    for mode in facts.design.modes.values():
        gather(draws_in(facts, mode), gives_in(facts, mode), add, {}, sure=not doubtful(facts, mode))
    gather(draws_alone(facts), gives_always(facts), greatest, None, sure=True)
    return found


def _together(currents: list[Number], *, sure: bool) -> Number:
    """Currents of several islands in one conductor: at most their sum; the largest is at least what others leave."""
    if any(not isinstance(one, float | Range) for one in currents):
        return next(one for one in currents if not isinstance(one, float | Range))
    highs = [upper(one) for one in currents]
    most = sum(highs)
    low = max((lower(one) - (most - high) for one, high in zip(currents, highs, strict=True)), default=0.0)
    return between(min(max(0.0, low) if sure else 0.0, most), most)


@fact(
    "conductor",
    "gathered_current",
    unit="A",
    says="Greatest lasting current that comes together in a return, from its own circuit and from others.",
    method="what the loads on one side of it ask and the sources on the other can give, mode by mode, along the "
    "negatives; within a ring of returns anything up to all of it",
)
def gathered_current(s: Subject) -> Any:
    if s.item.role != RETURN:
        return None
    if any(wire.gap is not None for wire in s.item.wires):
        return Unknown(f"part of the return of {s.item.circuit.name} was not seen")
    return return_currents(s.facts).get(s.item.id, UNKNOWN)


@fact(
    "conductor",
    "gathers_more",
    type="yes/no",
    says="It is a return in which more comes together than its own live conductor carries, or one without such.",
    method="current gathered against the design current of the live conductor of its circuit; one that lies beside "
    "another way back, such as the chassis, is left out unless it has no live conductor",
)
def gathers_more(s: Subject) -> Truth:
    if s.item.role != RETURN or not any(wire.lengths or wire.gap is not None for wire in s.item.wires):
        return False
    live = s.facts.network.conductor(s.item.circuit.name, LIVE)
    twin = None if live is None else s.facts.of("conductor", live)
    if twin is None:
        return True
    ring = return_forest(s.facts).ring_edges
    if any(id(wire) in ring for wire in s.item.wires) or same(twin.design_current, s.gathered_current):
        return False
    return less(twin.design_current, s.gathered_current)
