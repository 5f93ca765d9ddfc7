"""How the return and the earth of a circuit go: as written, else as the cores of the cable say."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.design.given import STATED, Given, RatedVoltage, Where
from checker.design.item import Item
from checker.design.run import Path, Port, Step, Through
from checker.design.shapes import ShapeError, parse_shape
from checker.design.vocabulary.key import Key
from checker.quantities import UNKNOWN, Window
from checker.reading.context import Context, form, where
from checker.reading.references import CHASSIS, ports_at, resolve_port
from checker.reading.runs import RunReader
from checker.reading.values import with_basis
from checker.source.problems import listed, shown
from checker.source.tree import Mapping, Node, Scalar

RETURNS = ("in cable", "same", "chassis", "none", "unknown")
EARTHS = ("in cable", "same", "chassis", "none", "unknown")
RETURNLESS_DUTIES = frozenset(("bonding", "control", "sense"))
"""Duties whose single core goes one way; the way back is the chassis or the circuit it serves."""

_SIZE = Key("size", "quantity", "Conductor of the return.", unit="mm2")
_RETURNLESS_POLES = frozenset(("-", "N", "PE"))
_LEAST_MAINS_VOLTS = 90.0  # no extra-low voltage supply aboard comes near, no mains supply lies below


class Ends(NamedTuple):
    """What a circuit is, as far as it tells how its return and its earth go."""

    ctx: Context
    name: str
    key: Node
    start: Port
    ends: tuple[Port, ...]
    run: tuple[Step, ...]
    cable: Item | None
    cores: tuple[int, ...] | None
    duty: str


def read_return(circuit: Ends, runs: RunReader, node: Node | None) -> Path:
    """The return: as written, else in a cable of two cores or more. A single core must state it."""
    if node is not None:
        return _written(circuit, runs, node, "return", RETURNS)
    at = where(circuit.key)
    cores = _cores(circuit)
    if cores is not None and cores > 1:
        return _plain("in cable", at)
    if circuit.duty in RETURNLESS_DUTIES or any(_is_returnless(circuit, port) for port in _ports(circuit)):
        return _plain("none", at)
    if cores is None:
        return _plain("unknown", at)
    circuit.ctx.problems.add(
        circuit.key,
        f"circuit {shown(circuit.name)} runs in a single core and does not say how its current returns",
        "write `return: same`, `return: chassis`, or `return: {run: [...], to: ...}`",
    )
    return _plain("unknown", at)


def read_earth(circuit: Ends, runs: RunReader, node: Node | None) -> Path:
    """The earth: as written, else the third core of a mains cable, else none."""
    if node is not None:
        return _written(circuit, runs, node, "earth", EARTHS)
    at = where(circuit.key)
    cores = _cores(circuit)
    if circuit.duty in RETURNLESS_DUTIES or (cores is not None and cores < 3):
        return _plain("none", at)
    mains = _is_mains(circuit)
    if mains is False:
        return _plain("none", at)
    return _plain("unknown" if mains is None or cores is None else "in cable", at)


def _plain(how: str, at: Where) -> Path:
    return Path(how, (), None, None, at)


def _cores(circuit: Ends) -> float | None:
    """The cores that the circuit has, None when not known."""
    if circuit.cores is not None:
        return float(len(circuit.cores))
    cores = None if circuit.cable is None else circuit.cable.value("cores")
    return cores if isinstance(cores, float) else None


def _ports(circuit: Ends) -> tuple[Port, ...]:
    return (circuit.start, *circuit.ends)


def _poles(circuit: Ends, port: Port) -> tuple[str, ...]:
    equipment = circuit.ctx.equipment.get(port.equipment)
    return () if equipment is None else ports_at(circuit.ctx, equipment).get(port.port or "", ())


def _is_returnless(circuit: Ends, port: Port) -> bool:
    """Whether the port is one pole that has no partner: a negative, an earth, a case, a signal."""
    equipment = circuit.ctx.equipment.get(port.equipment)
    if equipment is None or port.port in (equipment.vocabulary.through or ()):
        return False
    poles = _poles(circuit, port)
    return len(poles) == 1 and (poles[0] in _RETURNLESS_POLES or not poles[0])


def _is_mains(circuit: Ends) -> bool | None:
    """Whether the circuit carries mains: by its ports, else by what its equipment says; None when nothing tells."""
    said: list[bool] = []
    for port in _ports(circuit):
        poles = _poles(circuit, port)
        if "L" in poles and "+" not in poles:
            return True
        if poles and "L" not in poles and poles != ("",):
            return False
        said.extend(_says_mains(circuit, port.equipment))
    for step in circuit.run:
        if isinstance(step, Through):
            said.extend(_says_mains(circuit, step.equipment))
    if not said:
        return None
    return any(said)


def _says_mains(circuit: Ends, name: str) -> list[bool]:
    equipment = circuit.ctx.equipment.get(name)
    if equipment is None:
        return []
    if equipment.has("system"):
        system = equipment.value("system")
        return [system == "mains"] if isinstance(system, str) else []
    if not equipment.has("voltage"):
        return []
    return _volts_say(equipment.value("voltage"))


def _volts_say(value: Any) -> list[bool]:
    if isinstance(value, RatedVoltage):
        return [value.system == "ac"] if value.system is not None else _volts_say(value.volts)
    if isinstance(value, Window):
        return _volts_say(value.high)
    return [value >= _LEAST_MAINS_VOLTS] if isinstance(value, float) else []


def _written(circuit: Ends, runs: RunReader, node: Node, side: str, words: tuple[str, ...]) -> Path:
    ctx = circuit.ctx
    at = where(node)
    if type(node) is Mapping and "is" in node.entries:
        node, _ = with_basis(ctx, node, STATED)
    if type(node) is Mapping:
        return _own_run(circuit, runs, node, side)
    scalar = ctx.expect_scalar(node, f"`{side}`")
    if scalar is None:
        return _plain("unknown", at)
    text = "unknown" if scalar.text == "?" else scalar.text
    if text.startswith(f"{CHASSIS}."):
        return Path("chassis", (), Port(CHASSIS, text.partition(".")[2], at), None, at)
    if text not in words:
        right = ctx.problems.meant(text, words, f"write {listed(words)} or `{{run: [...], to: ...}}`")
        ctx.problems.add(scalar, f"`{side}` cannot be {shown(text)}", right)
        return _plain("unknown", at)
    cores = _cores(circuit)
    least = 2 if side == "return" else 3
    if text == "in cable" and cores is not None and cores < least:
        ctx.problems.add(scalar, f"the cable has no core for the {side}", f"it has {cores:g}; say how the {side} goes")
    return _plain(text, at)


def _own_run(circuit: Ends, runs: RunReader, node: Mapping, side: str) -> Path:
    """A return or an earth with a run of its own."""
    ctx = circuit.ctx
    for step, (key, _) in node.entries.items():
        if step not in ("run", "to", "size"):
            right = ctx.problems.meant(step, ("run", "to", "size"), "its keys are `run`, `to` and `size`")
            ctx.problems.add(key, f"a {side} has no key {shown(step)}", right)
    run_node, to_node, size_node = node.get("run"), node.get("to"), node.get("size")
    to = None
    if to_node is not None:
        scalar = ctx.expect_scalar(to_node, "`to`")
        to = None if scalar is None else resolve_port(ctx, scalar, scalar.text, leaving=False)
    size = None if size_node is None else _size(ctx, size_node)
    at = where(node)
    if run_node is not None:
        return Path("run", runs.read(run_node), to, size, at)
    if to is not None and to.equipment == CHASSIS:
        return Path(CHASSIS, (), to, size, at)
    if side == "return" or size is None:
        ctx.problems.add(node, f"a {side} of its own lacks `run`", "write what a hand meets, from the load back")
        return _plain("unknown", at)
    return Path("in cable", (), to, size, at)


def _size(ctx: Context, node: Node) -> Given:
    basis = STATED
    if type(node) is Mapping and "is" in node.entries:
        node, basis = with_basis(ctx, node, STATED)
    scalar = node if type(node) is Scalar else None
    if scalar is None or not scalar.text:
        ctx.problems.add(node, f"`size` is {form(node)}", "write a conductor size, such as `16 mm2`")
        return Given(UNKNOWN, where(node), basis)
    try:
        return Given(parse_shape(_SIZE, scalar.text), where(node), basis, scalar.text)
    except ShapeError as error:
        ctx.problems.add(scalar, error.message, error.right)
        return Given(UNKNOWN, where(node), basis, scalar.text)
