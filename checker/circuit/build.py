"""From a design to its one graph."""

from __future__ import annotations

from itertools import pairwise

from checker.circuit.elements import BONDING, EARTH, LIVE, RETURN, Conductor, Edge, Link, Wire
from checker.circuit.expand import Expansion, expand
from checker.circuit.inside import add_inside
from checker.circuit.network import Network
from checker.circuit.ports import CONTACTS, IN_LINE, first_system, port_nodes
from checker.circuit.sources import add_sources
from checker.design.fitted import fitted_now
from checker.design.model import Circuit, Design, Equipment
from checker.design.run import Gap, Length, Step, Through

EARTHY = ("PE", "earth", "case", "chassis")
"""Ports that are earth, or the chassis of the towing vehicle."""


def build(design: Design) -> Network:
    """The graph of a design as it is fitted now, with every bank written out."""
    design = fitted_now(design)
    expansion = expand(design)
    network = Network(design, expansion, circuit_systems(expansion))
    for circuit in expansion.circuits:
        _add_circuit(network, circuit)
    add_inside(network)
    add_sources(network)
    return network


def circuit_systems(expansion: Expansion) -> dict[str, str]:
    """`dc` or `ac` for each circuit: told by a port, else by a neighbour, else by the number of cores."""
    view = expansion.equipment
    known: dict[str, str] = {}
    around: dict[str, list[str]] = {}
    for circuit in expansion.circuits:
        ports = (circuit.start, *circuit.ends)
        told = [first_system(view, port) for port in ports]
        if "ac" in told or "dc" in told:
            known[circuit.name] = "ac" if "ac" in told else "dc"
        touched = [port.equipment for port in ports] + [s.equipment for s in circuit.run if isinstance(s, Through)]
        for name in touched:
            around.setdefault(name, []).append(circuit.name)
    spread = True
    while spread:
        spread = False
        for name, names in around.items():
            if name == "chassis":
                continue
            systems = {known[one] for one in names if one in known}
            if len(systems) == 1 and not _has_two_systems(expansion.equipment[name]):
                (system,) = systems
                for one in names:
                    if one not in known:
                        known[one] = system
                        spread = True
    for circuit in expansion.circuits:
        if circuit.name not in known:
            cores = circuit.cable.value("cores") if circuit.cable is not None else 1.0
            known[circuit.name] = "ac" if isinstance(cores, float) and cores >= 3 and not circuit.cores else "dc"
    return known


def _has_two_systems(item: Equipment) -> bool:
    return item.kind in ("inverter", "inverter-charger", "charger", "dc converter", "solar controller", "transformer")


def _add_circuit(network: Network, circuit: Circuit) -> None:
    system = network.systems[circuit.name]
    view = network.equipment
    starts = port_nodes(view, circuit.start, system)
    ends = [port_nodes(view, port, system) for port in circuit.ends]
    bonding = circuit.says("duty", BONDING) or _joins_earths(network, circuit, system)
    single = bonding or len(starts) == 1 or len(ends[0]) == 1
    role = BONDING if bonding else _single_role(starts, ends[0]) if single else LIVE
    start = _node(starts, role)
    nodes = [_node(end, role) for end in ends]
    _conduct(network, circuit, role, start, nodes, circuit.run, both=False)
    if role != LIVE:
        return
    _add_return(network, circuit, starts, ends)
    if circuit.earth.how == "in cable" and EARTH in starts and EARTH in ends[0]:
        lengths = tuple(step for step in circuit.run if isinstance(step, Length | Gap))
        _conduct(network, circuit, EARTH, starts[EARTH], [end[EARTH] for end in ends], lengths, both=False)
    elif circuit.earth.how == "run" and EARTH in ends[0]:
        far = circuit.earth.to
        home = port_nodes(view, far, system)[EARTH] if far is not None else starts.get(EARTH)
        if home is not None:
            _conduct(network, circuit, EARTH, home, [ends[0][EARTH]], circuit.earth.run, both=False)


def _joins_earths(network: Network, circuit: Circuit, system: str) -> bool:
    """Whether what a circuit joins is earth, or earth and a lone return: that bonds, whatever it was meant for."""
    earths = False
    for port in (circuit.start, *circuit.ends):
        nodes = port_nodes(network.equipment, port, system)
        item = network.equipment.get(port.equipment)
        earthy = item is None or item.kind in ("earth bar", "metal part") or port.port in EARTHY
        earths = earths or earthy
        if not earthy and set(nodes) != {RETURN}:
            return False
    return earths


def _single_role(starts: dict[str, str], ends: dict[str, str]) -> str:
    """The role of a lone conductor: that of the end which has only one, a live one when both could be."""
    for nodes in (starts, ends):
        if len(nodes) == 1:
            (role,) = nodes
            return role
    return LIVE


def _node(nodes: dict[str, str], role: str) -> str:
    if role == BONDING:
        if len(nodes) == 1:
            return next(iter(nodes.values()))
        return nodes.get(EARTH) or nodes.get(RETURN) or nodes[LIVE]
    return nodes.get(role) or next(iter(nodes.values()))


def _add_return(network: Network, circuit: Circuit, starts: dict[str, str], ends: list[dict[str, str]]) -> None:
    """The return conductor, written from the load back to the source."""
    how = circuit.returns.how
    if RETURN not in ends[0]:
        return
    if how in ("in cable", "same"):
        if RETURN not in starts:
            return
        back = [end[RETURN] for end in ends]
        _conduct(network, circuit, RETURN, starts[RETURN], back, circuit.run, both=True)
    elif how == "chassis":
        _conduct(network, circuit, RETURN, "chassis", [end[RETURN] for end in ends], (), both=False)
        start = network.equipment.get(circuit.start.equipment)
        if start is not None and start.kind in ("alternator", "vehicle coupling") and RETURN in starts:
            network.add_link(Link(start, starts[RETURN], "chassis", RETURN))
    elif how == "run":
        view = network.equipment
        far = circuit.returns.to
        system = network.systems[circuit.name]
        home = _node(port_nodes(view, far, system), RETURN) if far is not None else starts.get(RETURN)
        if home is not None:
            back_run = tuple(reversed(circuit.returns.run))
            _conduct(network, circuit, RETURN, home, [end[RETURN] for end in ends], back_run, both=False)


def _conduct(
    network: Network, circuit: Circuit, role: str, start: str, ends: list[str], run: tuple[Step, ...], *, both: bool
) -> None:
    """Lay one conductor. With `both`, only devices that open two poles stand in it, with their second pole."""
    parts: list[Edge] = []
    node = start
    lengths: list[Length] = []
    gap: Gap | None = None
    for step in run:
        if isinstance(step, Length):
            lengths.append(step)
        elif isinstance(step, Gap):
            gap = step
        elif isinstance(step, Through):
            link = device_link(network.equipment[step.equipment], step, role, second=both)
            if link is None:
                continue
            enter, leave = link.a, link.b
            if step.enter is not None and link.b.split(":", 1)[1].split("/")[0] == step.enter:
                enter, leave = leave, enter
            parts.append(Wire(node, enter, tuple(lengths), gap, len(parts)))
            parts.append(link)
            node, lengths, gap = leave, [], None
    parts.append(Wire(node, ends[0], tuple(lengths), gap, len(parts)))
    for near, far in pairwise(ends):
        parts.append(Wire(near, far, (), None, len(parts)))
    network.add_conductor(Conductor(circuit, role, tuple(parts), start, ends[-1]))


def device_link(item: Equipment, step: Through, role: str, *, second: bool) -> Link | None:
    """The link a device puts into a run; with `second`, its second pole, None where it has none."""
    if item.kind == "changeover":
        a, b = step.enter or "common", step.leave or "common"
    elif item.kind in IN_LINE:
        a, b = IN_LINE[item.kind]
    else:
        return None
    if second and not has_return_pole(item):
        return None
    tail = "/return" if second else ""
    when = CONTACTS.get(item.kind, "throw" if item.kind == "changeover" else "always")
    throw = next((end for end in (a, b) if end != "common"), None) if item.kind == "changeover" else None
    return Link(item, f"{item.name}:{a}{tail}", f"{item.name}:{b}{tail}", role, when, throw, item.kind == "diode")


def has_return_pole(item: Equipment) -> bool:
    """Whether the return conductor passes through the device: two poles, or a residual-current device."""
    if item.kind in ("rcd", "rcbo"):
        return True  # it compares both conductors, also where it opens only one
    poles = item.value("poles") if item.allows("poles") else 1.0
    if isinstance(poles, float):
        return poles >= 2
    return item.kind in ("rcd", "rcbo")
