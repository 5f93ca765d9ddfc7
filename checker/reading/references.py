"""Names that point to other things: checked, with the nearest right name where one is wrong."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from checker.design.model import Equipment
from checker.design.run import Port
from checker.design.vocabulary.key import Key, Kind
from checker.reading.context import ANYTHING, Context, where
from checker.source.problems import article, listed, shown
from checker.source.tree import Node

CHASSIS = "chassis"


def check_reference(ctx: Context, spec: Key, node: Node, name: str) -> None:
    """Note a problem at `node` when `name`, the value of a key like `spec`, points to nothing.

    What depends on equipment (ports, ways, signals) is checked when all of it has been read.
    """
    if spec.shape == "port":
        ctx.later.append(lambda: _check_port(ctx, node, name))
    elif spec.shape == "signal":
        ctx.later.append(lambda: _check_signal(ctx, node, name))
    elif spec.section == ANYTHING:
        ctx.later.append(lambda: _check_anything(ctx, node, name))
    elif spec.section == "equipment" and "." in name:
        ctx.later.append(lambda: _check_way(ctx, node, name))
    elif spec.section and spec.section != "throws":  # throws are checked with their changeover
        ctx.check_name(spec.section, node, name, spec.words)


def ports_of(kind: Kind, more: Iterable[str] = ()) -> dict[str, tuple[str, ...]]:
    """Every name by which a circuit may end at a thing of `kind`, with its poles, live first.

    A port by its name ('' the main one), one terminal of it by port and pole, and `more`: its ways or throws.
    """
    ports: dict[str, tuple[str, ...]] = {}
    for port in kind.ports:
        ports[port.name] = port.poles
        for pole in port.poles:
            ports.setdefault(port.name + pole, (pole,))
    if kind.ports:
        for name in more:
            ports.setdefault(name, kind.ports[0].poles)
    return ports


def ports_at(ctx: Context, equipment: Equipment) -> dict[str, tuple[str, ...]]:
    """The ports of one piece of equipment, its ways and throws included."""
    ports = ctx.ports.get(equipment.name)
    if ports is None:
        ports = ctx.ports[equipment.name] = _all_ports(equipment)
    return ports


def _all_ports(equipment: Equipment) -> dict[str, tuple[str, ...]]:
    if equipment.vocabulary.more_ports == "ways":
        start = len(equipment.name) + 1
        return ports_of(equipment.vocabulary, (way.name[start:] for way in equipment.ways))
    if equipment.vocabulary.more_ports == "throws":
        throws = equipment.value("throws")
        told = throws if isinstance(throws, tuple) else ()
        return ports_of(equipment.vocabulary, (throw for throw in told if isinstance(throw, str)))
    return _own_ports(equipment.vocabulary)


@cache
def _own_ports(kind: Kind) -> dict[str, tuple[str, ...]]:
    return ports_of(kind)


def find_equipment(ctx: Context, node: Node, name: str) -> Equipment | None:
    """The equipment or joint called `name`; None when there is none (a problem is noted) or it could not be read."""
    found = ctx.equipment.get(name)
    if found is None and name not in ctx.names["equipment"]:
        ctx.check_name("equipment", node, name, (CHASSIS, *ctx.equipment))
    return found


def resolve_port(ctx: Context, node: Node, text: str, leaving: bool) -> Port | None:
    """The port that `text` names, as one end of a circuit that leaves it or arrives there.

    A device is left at its second terminal and reached at its first when the writer does not say which.
    Gives None when it resolves to nothing; the problem is noted.
    """
    name, _, port = text.partition(".")
    if name == CHASSIS:
        return Port(CHASSIS, port or None, where(node))
    equipment = find_equipment(ctx, node, name)
    if equipment is None:
        return None
    ports = ports_at(ctx, equipment)
    if port:
        if port in ports:
            return Port(name, port, where(node))
        _refuse_port(ctx, node, equipment, port, ports)
        return None
    if "" in ports:
        return Port(name, None, where(node))
    through = equipment.vocabulary.through
    if through is not None and through[0]:
        return Port(name, through[1] if leaving else through[0], where(node))
    if through is not None or len(equipment.vocabulary.ports) == 1:
        return Port(name, equipment.vocabulary.ports[0].name, where(node))
    ctx.problems.add(
        node, f"{shown(name)} has {'several ports' if ports else 'no port'}", _name_one(name, equipment, ports)
    )
    return None


def _name_one(name: str, equipment: Equipment, ports: dict[str, tuple[str, ...]]) -> str:
    if not ports:
        return f"{article(equipment.kind)} is not wired; name what it belongs to"
    return "name one: " + listed(f"{name}.{port}" for port in ports)


def _refuse_port(ctx: Context, node: Node, equipment: Equipment, port: str, ports: dict[str, tuple[str, ...]]) -> None:
    there = [name for name in ports if name]
    kind = "way" if equipment.vocabulary.more_ports == "ways" else "port"
    otherwise = f"it has {listed(there)}" if there else f"{article(equipment.kind)} has none"
    ctx.problems.add(
        node, f"{shown(equipment.name)} has no {kind} {shown(port)}", ctx.problems.meant(port, there, otherwise)
    )


def _check_port(ctx: Context, node: Node, name: str) -> None:
    resolve_port(ctx, node, name, leaving=True)


def _check_signal(ctx: Context, node: Node, name: str) -> None:
    if "." in name:
        _check_port(ctx, node, name)
        return
    equipment = find_equipment(ctx, node, name)
    if equipment is not None and equipment.kind != "signal":
        signals = [other.name for other in ctx.equipment.values() if other.kind == "signal"]
        right = f"name a signal ({listed(signals)}) or a port" if signals else "name a port, such as `alternator.d+`"
        ctx.problems.add(node, f"{shown(name)} is {article(equipment.kind)}, not a signal", right)


def _check_way(ctx: Context, node: Node, name: str) -> None:
    board, _, way = name.partition(".")
    equipment = find_equipment(ctx, node, board)
    if equipment is not None and name not in ctx.ways:
        _refuse_port(ctx, node, equipment, way, ports_at(ctx, equipment))


def _check_anything(ctx: Context, node: Node, name: str) -> None:
    sections = ("equipment", "circuits", "places", "moving", "passes", "looms", "modes", "services")
    if name == CHASSIS or name in ctx.equipment or any(name in ctx.names[section] for section in sections):
        return
    head = name.partition(".")[0]
    if "." in name and (head == CHASSIS or head in ctx.names["equipment"]):
        resolve_port(ctx, node, name, leaving=True)
        return
    known = [known for section in sections for known in ctx.names[section]]
    right = ctx.problems.meant(name, known, "name equipment, a port, a circuit, a place, a pass or a moving part")
    ctx.problems.add(node, f"there is no {shown(name)} in this file", right)
