"""How much current can flow in each wire before something opens or its sources give no more.

Seen from a wire, each side can push what its sources give, and can swallow what hangs on it; a protective device in
between lets at most its rating through for long. The current that the wire must be able to carry is the larger of
the two directions. `ENDLESS` stands for no limit at all: a battery with no device before the wire.
"""

from __future__ import annotations

from itertools import product
from typing import Final

from checker.circuit.elements import LIVE, Edge, Link, Wire
from checker.circuit.inside import throws_of
from checker.circuit.network import Network
from checker.circuit.sweep import Forest, Near, Rules
from checker.quantities import Number, Range, Unknown, add, greatest, least

ENDLESS: Final = float("inf")
NOTHING: Final[Number] = 0.0
MOST_STATES = 64
FORESTS_KEPT = 4

Position = dict[str, str] | None
"""Equipment with contacts that exclude each other -> where it stands; None: all closed."""


def overload_currents(network: Network) -> dict[int, Number]:
    """id of wire -> greatest lasting current (A), `ENDLESS` where nothing limits it; live wires only.

    Positions that exclude each other (throws of a changeover, an inverter that passes or inverts) are taken one
    set at a time, at most `MOST_STATES` sets for each part of the graph that hangs together; beyond that all at once,
    which can only make the answer larger.
    """
    whole = live_graph(network, None)
    choices = _choices(network)
    found: dict[int, Number] = {}
    plain: list[Wire] = []
    for part in islands(whole):
        wires = [edge for node in part for edge, _ in whole[node] if isinstance(edge, Wire) and edge.a == node]
        inside = dict.fromkeys(
            edge.equipment.name for node in part for edge, _ in whole[node] if isinstance(edge, Link)
        )
        here = [choices[name] for name in inside if name in choices]
        if not here:
            plain.extend(wires)
            continue
        near = {node: whole[node] for node in part}
        for position, passing in _states(here):
            forest = Forest(_in_position(network, near, position))
            for wire_id, current in _one_state(network, forest, wires, passing).items():
                found[wire_id] = largest(found[wire_id], current) if wire_id in found else current
    found.update(_one_state(network, live_forest(network, None), plain, frozenset()))
    return found


def _choices(network: Network) -> dict[str, list[tuple[str, str]]]:
    """Name of equipment -> the positions of its contacts that exclude each other."""
    found: dict[str, list[tuple[str, str]]] = {}
    for item in network.equipment.values():
        if item.kind == "changeover" and len(throws_of(item)) > 1:
            found[item.name] = [(item.name, throw) for throw in throws_of(item)]
        elif item.kind == "inverter-charger":
            found[item.name] = [(item.name, "pass"), (item.name, "invert")]
    return found


def _states(exclusive: list[list[tuple[str, str]]]) -> list[tuple[Position, frozenset[str]]]:
    """Positions of what excludes each other, and the inverter-chargers that pass shore power on."""
    count = 1
    for positions in exclusive:
        count *= len(positions)
    if count > MOST_STATES:
        return [(None, frozenset())]
    found: list[tuple[Position, frozenset[str]]] = []
    for chosen in product(*exclusive):
        position = dict(chosen)
        passing = frozenset(name for name, at in position.items() if at == "pass")
        found.append((position, passing))
    return found


def islands(near: Near) -> list[list[str]]:
    """The nodes of a graph in groups that hang together, in the order built."""
    seen: set[str] = set()
    found = []
    for start in near:
        if start not in seen:
            seen.add(start)
            part = [start]
            for node in part:
                for _, far in near[node]:
                    if far not in seen:
                        seen.add(far)
                        part.append(far)
            found.append(part)
    return found


def live_forest(network: Network, position: Position) -> Forest:
    """The forest of the live graph in given positions; the first `FORESTS_KEPT` are kept for whoever asks again."""
    key = None if position is None else frozenset(position.items())
    found: Forest | None = network.live_forests.get(key)
    if found is None:
        found = Forest(live_graph(network, position))
        if len(network.live_forests) < FORESTS_KEPT:
            network.live_forests[key] = found
    return found


def live_graph(network: Network, position: Position) -> Near:
    """The live wires and links, with exclusive contacts in the given positions (None: all closed)."""
    return _in_position(network, network.near, position)


def _in_position(network: Network, whole: Near, position: Position) -> Near:
    near: Near = {}
    for node, edges in whole.items():
        kept = [(edge, far) for edge, far in edges if _is_live(edge) and _closed(edge, position)]
        if kept or network.sources_at.get(node):
            near[node] = kept
    if whole is network.near:
        for node, sources in network.sources_at.items():
            if sources:
                near.setdefault(node, [])
    return near


def _is_live(edge: Edge) -> bool:
    return edge.conductor.role == LIVE if isinstance(edge, Wire) else edge.pole == LIVE


def _closed(edge: Edge, position: Position) -> bool:
    if position is None or isinstance(edge, Wire):
        return True
    if edge.when in ("hand", "coil"):
        return position.get(edge.equipment.name) != "open"
    if edge.when == "throw":
        return position.get(edge.equipment.name, edge.throw) == edge.throw
    if edge.when == "transfer":
        return position.get(edge.equipment.name, "pass") == "pass"
    return True


def _one_state(network: Network, forest: Forest, wires: list[Wire], passing: frozenset[str]) -> dict[int, Number]:
    def pushes(node: str) -> Number:
        total: Number = NOTHING
        for source in network.sources_at.get(node, ()):
            if source.port == "ac-out" and source.equipment.name in passing:
                continue
            total = _both(total, source.most)
        return total

    def swallows(node: str) -> Number:
        return ENDLESS if node in network.sinks else NOTHING

    supply = forest.sweep(Rules[Number](NOTHING, pushes, _both, _push))
    demand = forest.sweep(Rules[Number](NOTHING, swallows, _both, _swallow))
    found: dict[int, Number] = {}
    for wire in wires:
        a, b = (id(wire), wire.a), (id(wire), wire.b)
        if a in supply:
            # What arrives at b through the wire is pushed by the side of a, and the other way round.
            forward = _smallest(supply[b], _behind(demand, wire, wire.b))
            backward = _smallest(supply[a], _behind(demand, wire, wire.a))
            found[id(wire)] = largest(forward, backward)
    return found


def _behind(demand: dict[tuple[int, str], Number], wire: Wire, node: str) -> Number:
    """What the side of `node` can swallow: what would arrive at the other end through the wire."""
    other = wire.a if node == wire.b else wire.b
    return demand[(id(wire), other)]


def _push(edge: Edge, node: str, flow: Number) -> Number:
    if isinstance(flow, float) and flow == 0.0:
        return 0.0
    if isinstance(edge, Link):
        if edge.one_way and node == edge.b:
            return NOTHING
        return _device(edge, flow)
    return _gap(flow) if edge.gap is not None else flow


def _swallow(edge: Edge, node: str, flow: Number) -> Number:
    if isinstance(flow, float) and flow == 0.0:
        return 0.0
    if isinstance(edge, Link):
        if edge.one_way and node == edge.a:
            return NOTHING
        return _device(edge, flow)
    return _gap(flow) if edge.gap is not None else flow


def _device(link: Link, flow: Number) -> Number:
    return _smallest(flow, link.equipment.value("rating")) if link.is_protective else flow


def _gap(flow: Number) -> Number:
    """A stretch nobody saw may hide a device that lets less through."""
    if flow is ENDLESS or not isinstance(flow, float):
        return Unknown("part of the run was not seen and may hide a device")
    return Range(0.0, flow) if flow > 0 else flow


def _both(a: Number, b: Number) -> Number:
    if endless(a) or endless(b):
        return ENDLESS
    return add(a, b)


def _smallest(a: Number, b: Number) -> Number:
    if endless(a):
        return b
    return a if endless(b) else least(a, b)


def largest(a: Number, b: Number) -> Number:
    """The larger of two currents, endless when one is."""
    return ENDLESS if endless(a) or endless(b) else greatest(a, b)


def endless(value: Number) -> bool:
    """Whether nothing limits a current."""
    return isinstance(value, float) and value == ENDLESS
