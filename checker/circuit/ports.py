"""Which nodes of the graph a port of a piece of equipment stands for."""

from __future__ import annotations

from collections.abc import Mapping

from checker.circuit.elements import CHASSIS, EARTH, LIVE, RETURN
from checker.design.model import Equipment
from checker.design.run import Port

IN_LINE = {
    "fuse": ("a", "b"),
    "breaker": ("line", "load"),
    "rcbo": ("line", "load"),
    "rcd": ("line", "load"),
    "voltage monitor": ("line", "load"),
    "switch": ("a", "b"),
    "relay": ("a", "b"),
    "combiner": ("a", "b"),
    "diode": ("a", "b"),
    "shunt": ("a", "b"),
    "galvanic isolator": ("a", "b"),
    "clamp": ("a", "b"),
    "connector": ("a", "b"),
    "joint": ("a", "b"),
}
"""Kinds that stand in a run, with the terminal entered first and the one left."""

NODES = frozenset({"bar", "board", "earth bar", "terminal block", "metal part"})
"""Kinds that join circuits without being in line."""

SUPPLY_CONTACTS = ("charge", "brakes", "lamps", "fridge")
"""What the plug to a towing vehicle supplies; its chassis contact supplies nothing."""

CONTACTS = {"switch": "hand", "relay": "coil", "combiner": "coil"}
"""Kinds of in-line equipment that open and close in use."""

ROLE_OF_POLE = {"+": LIVE, "L": LIVE, "-": RETURN, "N": RETURN, "PE": EARTH}
POLE_OF_ROLE = {
    "dc": {LIVE: "+", RETURN: "-", EARTH: "PE"},
    "ac": {LIVE: "L", RETURN: "N", EARTH: "PE"},
}
MAINS_PORTS = frozenset({"ac", "ac-in", "ac-out", "primary", "secondary"})


def port_nodes(equipment: Mapping[str, Equipment], port: Port, system: str) -> dict[str, str]:
    """Role (live, return, earth) to node for the end of a circuit of a system, `dc` or `ac`.

    A port that is one bare pole (`start-battery.-`, `inlet.PE`, `alternator.b+`) answers for that pole alone.
    """
    if port.equipment == CHASSIS:
        return {LIVE: CHASSIS, RETURN: CHASSIS, EARTH: CHASSIS}
    name = port.equipment
    item = equipment[name]
    poles = POLE_OF_ROLE[system]
    if item.kind in IN_LINE:
        return device_nodes(name, port.port or IN_LINE[item.kind][1])
    if item.kind == "changeover":
        return device_nodes(name, port.port or "common")
    if port.port is None:
        return {role: f"{name}:{pole}" for role, pole in poles.items()}
    if item.kind == "board":
        return board_nodes(item, port.port, system)
    if port.port in ROLE_OF_POLE:
        return {ROLE_OF_POLE[port.port]: f"{name}:{port.port}"}
    if item.kind == "alternator" and port.port in ("b+", "b"):
        return {LIVE: f"{name}:+", RETURN: f"{name}:-"}
    for one in item.vocabulary.ports:
        for pole in one.poles if len(one.poles) > 1 else ():
            if one.name + pole == port.port:
                return {ROLE_OF_POLE[pole]: f"{name}:{one.name}{pole}"}
    spec = next((one for one in item.vocabulary.ports if one.name == port.port), None)
    if spec is not None and len(spec.poles) < 2:
        return {LIVE: f"{name}:{port.port}"}
    return {role: f"{name}:{port.port}{pole}" for role, pole in poles.items()}


def device_nodes(name: str, terminal: str) -> dict[str, str]:
    """The nodes of one side of a device that stands in a run; its earth, if any, passes by."""
    return {LIVE: f"{name}:{terminal}", RETURN: f"{name}:{terminal}/return", EARTH: f"{name}:earth"}


def board_nodes(board: Equipment, port: str, system: str) -> dict[str, str]:
    """The nodes of a way of a board, of its earth, or of its neutral."""
    poles = POLE_OF_ROLE[system]
    if port == "earth":
        return {EARTH: f"{board.name}:PE", LIVE: f"{board.name}:PE"}
    if port in ROLE_OF_POLE:
        return {ROLE_OF_POLE[port]: f"{board.name}:{port}"}
    way = next(way for way in board.ways if way.name == f"{board.name}.{port}")
    neutral = f"{way.name}:{poles[RETURN]}" if takes_both(way) else f"{board.name}:{poles[RETURN]}"
    return {LIVE: f"{way.name}:{poles[LIVE]}", RETURN: neutral, EARTH: f"{board.name}:PE"}


def takes_both(device: Equipment) -> bool:
    """Whether live and return pass through a device: it opens both, or compares them."""
    return device.kind in ("rcd", "rcbo") or opens_both(device)


def opens_both(device: Equipment) -> bool:
    """Whether a device is known to open the live and the return conductor together."""
    if not device.allows("poles"):
        return False
    poles = device.value("poles")
    return isinstance(poles, float) and poles >= 2


def first_system(equipment: Mapping[str, Equipment], port: Port) -> str | None:
    """`ac` or `dc` where the port itself tells, None where only its circuits do (a device, a load)."""
    if port.equipment == CHASSIS:
        return None
    item = equipment[port.equipment]
    if item.kind in ("shore inlet", "generator", "supply lead"):
        return "ac"
    if port.port in MAINS_PORTS:
        return "ac"
    if port.port in ("L", "N", "PE", "case"):
        return "ac"
    if item.kind in NODES:
        return "ac" if item.allows("system") and item.says("system", "mains") else None
    if item.kind in IN_LINE or item.kind == "changeover":
        volts = item.value("voltage") if item.allows("voltage") else None
        return getattr(volts, "system", None)
    if item.kind in ("battery", "bank", "alternator", "vehicle coupling", "solar array"):
        return "dc"
    spec = next((one for one in item.vocabulary.ports if one.name == (port.port or "")), None)
    if spec is not None and "+" in spec.poles:
        return "dc" if "L" not in spec.poles else None
    return "dc" if port.port is not None else None
