"""The ways of a board: each a protective device of its own, named `board.way`."""

from __future__ import annotations

from checker.design.given import STATED, Given, RatedVoltage
from checker.design.model import Equipment
from checker.reading.context import Context, form, kind_in, where
from checker.reading.values import KeyReader
from checker.source.problems import shown
from checker.source.tree import Mapping, Node, Scalar

_GIVEN_BY_THE_BOARD = ("family", "voltage", "breaking capacity", "holder", "place", "own", "fitted", "poles")
_UNKNOWN = frozenset(("unknown", "?"))


def read_ways(ctx: Context, board: Equipment, node: Node | None, path: str) -> tuple[Equipment, ...]:
    """The devices of `board`, in file order. What a way does not say the board says for it."""
    if node is None or (type(node) is Scalar and node.text in _UNKNOWN):
        return ()
    if type(node) is not Mapping:
        ctx.problems.add(node, f"`ways` is {form(node)}", "write `{lights: 10 A, pump: 10 A}`")
        return ()
    inherited = {name: value for name, value in board.written() if name in _GIVEN_BY_THE_BOARD}
    usual = _usual_kind(board)
    ways = []
    own_ports = board.vocabulary.terminals()
    for name, (way_key, value) in node.entries.items():
        if name in own_ports or "." in name or "#" in name:
            ctx.problems.add(
                way_key, f"{shown(name)} cannot name a way", "take a name without dots that is no terminal"
            )
        way_path = f"{path}.ways.{name}"
        if type(value) is Mapping and "is" not in value.entries:
            way = _written_out(ctx, board, name, way_key, value, way_path, usual, inherited)
        else:
            way = _by_rating(ctx, board, name, way_key, value, way_path, usual, inherited)
        if way is not None:
            ways.append(way)
            ctx.ways[way.name] = way
    return tuple(ways)


def _usual_kind(board: Equipment) -> str:
    """The kind of device that the board's family says; else fuses, and breakers on the mains."""
    family = board.value("family")
    if isinstance(family, str):
        for name in ("fuse", "breaker"):
            if family in kind_in("equipment", name).keys["family"].words:
                return name
    voltage = board.value("voltage")
    is_mains = isinstance(voltage, RatedVoltage) and voltage.system == "ac"
    system = board.value("system") if board.has("system") else None
    return "breaker" if is_mains or (isinstance(system, str) and system == "mains") else "fuse"


def _written_out(
    ctx: Context,
    board: Equipment,
    name: str,
    key: Node,
    node: Mapping,
    path: str,
    usual: str,
    inherited: dict[str, Given],
) -> Equipment | None:
    from checker.reading.equipment import read_equipment

    return read_equipment(
        ctx, f"{board.name}.{name}", key, node, "equipment", path, usual_kind=usual, inherited=inherited
    )


def _by_rating(
    ctx: Context, board: Equipment, name: str, key: Node, node: Node, path: str, usual: str, inherited: dict[str, Given]
) -> Equipment | None:
    """A way of which only the rating is said: `lights: 10 A`."""
    vocabulary = kind_in("equipment", usual)
    rating = KeyReader(ctx, vocabulary, usual).value(vocabulary.keys["rating"], node, STATED)
    given = {"rating": rating}
    given.update((each, value) for each, value in inherited.items() if each in vocabulary.keys)
    return Equipment(f"{board.name}.{name}", vocabulary, where(key), path, given, terminals={})
