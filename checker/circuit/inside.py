"""Connections inside equipment: contacts of changeovers, ways of boards, transfer and bond of inverters."""

from __future__ import annotations

from checker.circuit.elements import EARTH, LIVE, RETURN, Link
from checker.circuit.network import Network
from checker.circuit.ports import CONTACTS, IN_LINE, POLE_OF_ROLE, SUPPLY_CONTACTS, port_nodes, takes_both
from checker.design.model import Equipment


def add_inside(network: Network) -> None:
    """Add the links that no run shows."""
    standing = {link.equipment.name for link in network.links}
    for item in network.equipment.values():
        if item.kind == "board":
            _board(network, item)
        elif item.kind == "changeover":
            if item.name not in standing:
                _changeover(network, item)
        elif item.kind == "inverter-charger":
            _inverter_charger(network, item)
        elif item.kind == "inverter":
            _bond(network, item, "ac")
            network.add_link(Link(item, f"{item.name}:acPE", f"{item.name}:case", EARTH))
        elif item.kind == "charger":
            network.add_link(Link(item, f"{item.name}:acPE", f"{item.name}:case", EARTH))
        elif item.kind == "generator":
            _generator(network, item)
        elif item.kind == "vehicle coupling":
            _coupling(network, item)
        elif item.kind in IN_LINE and item.name not in standing:
            _lone_device(network, item)


def _lone_device(network: Network, item: Equipment) -> None:
    """A device that circuits reach by its terminals without it standing in a run."""
    a, b = IN_LINE[item.kind]
    when = CONTACTS.get(item.kind, "always")
    network.add_link(Link(item, f"{item.name}:{a}", f"{item.name}:{b}", LIVE, when, one_way=item.kind == "diode"))
    back = "/return"
    if f"{item.name}:{a}{back}" in network.near or f"{item.name}:{b}{back}" in network.near:
        switched = when if takes_both(item) else "always"
        network.add_link(Link(item, f"{item.name}:{a}{back}", f"{item.name}:{b}{back}", RETURN, switched))


def _board(network: Network, board: Equipment) -> None:
    system = "ac" if board.says("system", "mains") or f"{board.name}:L" in network.near else "dc"
    poles = POLE_OF_ROLE[system]
    for way in board.ways:
        if way.kind not in IN_LINE:
            continue
        network.add_link(Link(way, f"{board.name}:{poles[LIVE]}", f"{way.name}:{poles[LIVE]}", LIVE))
        if takes_both(way):
            network.add_link(Link(way, f"{board.name}:{poles[RETURN]}", f"{way.name}:{poles[RETURN]}", RETURN))


def throws_of(item: Equipment) -> tuple[str, ...]:
    """The names of the positions of a changeover."""
    throws = item.value("throws")
    return throws if isinstance(throws, tuple) else ()


def _changeover(network: Network, item: Equipment) -> None:
    """Each throw joins the common; with one pole the neutrals of all throws stay joined."""
    poles = item.value("poles")
    one_pole = isinstance(poles, float) and poles == 1.0
    unseen = _perhaps_returning(network)
    for throw in throws_of(item):
        network.add_link(Link(item, f"{item.name}:common", f"{item.name}:{throw}", LIVE, "throw", throw))
        back = f"{item.name}:{throw}/return"
        if back in network.near or back in unseen:
            when = "always" if one_pole else "throw"
            network.add_link(Link(item, f"{item.name}:common/return", back, RETURN, when, throw))


def _perhaps_returning(network: Network) -> set[str]:
    """The terminals at which a circuit ends of which nobody knows whether it has a return."""
    ports = (
        (port, network.systems[circuit.name])
        for circuit in network.circuits
        if circuit.returns.how == "unknown"
        for port in (circuit.start, *circuit.ends)
    )
    ends = (port_nodes(network.equipment, port, system) for port, system in ports)
    return {nodes[RETURN] for nodes in ends if RETURN in nodes}


def _inverter_charger(network: Network, item: Equipment) -> None:
    name = item.name
    blocked = item.says("transfer.backfeed", "blocked")
    network.add_link(Link(item, f"{name}:ac-inL", f"{name}:ac-outL", LIVE, "transfer", one_way=blocked))
    poles = item.value("transfer.poles")
    when = "always" if isinstance(poles, float) and poles == 1.0 else "transfer"
    network.add_link(Link(item, f"{name}:ac-inN", f"{name}:ac-outN", RETURN, when))
    network.add_link(Link(item, f"{name}:ac-inPE", f"{name}:ac-outPE", EARTH))
    network.add_link(Link(item, f"{name}:ac-outPE", f"{name}:case", EARTH))
    _bond(network, item, "ac-out")


def _bond(network: Network, item: Equipment, port: str) -> None:
    """The link between neutral and earth inside an inverter, unless the file says there is none."""
    if item.value("bond.when") is None or item.says("bond.when", "never"):
        return
    network.add_link(Link(item, f"{item.name}:{port}N", f"{item.name}:{port}PE", EARTH, "bond"))


def _coupling(network: Network, item: Equipment) -> None:
    """The returns of the contacts meet on the chassis of the towing vehicle, and so at the chassis contact."""
    chassis = f"{item.name}:chassis"
    for port in SUPPLY_CONTACTS:
        if chassis in network.near and f"{item.name}:{port}-" in network.near:
            network.add_link(Link(item, f"{item.name}:{port}-", chassis, RETURN))


def _generator(network: Network, item: Equipment) -> None:
    if item.value("bond.when") is not None and not item.says("bond.when", "never"):
        network.add_link(Link(item, f"{item.name}:N", f"{item.name}:PE", EARTH, "bond"))
