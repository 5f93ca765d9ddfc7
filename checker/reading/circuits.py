"""Circuits: from where to where, the run, the cable, and how each end was made."""

from __future__ import annotations

from collections.abc import Mapping as ReadOnly
from types import MappingProxyType

from checker.design.given import STATED, Given
from checker.design.item import Item
from checker.design.model import Circuit
from checker.design.run import Port
from checker.design.vocabulary.key import Kind
from checker.reading.cables import cores_taken, read_cable
from checker.reading.context import Context, form, kind_in, where
from checker.reading.equipment import read_equipment
from checker.reading.paths import Ends, read_earth, read_return
from checker.reading.references import resolve_port
from checker.reading.runs import RunReader, mappings_in
from checker.reading.values import check_required, read_keys, with_basis
from checker.source.problems import article, shown
from checker.source.tree import Mapping, Node, Scalar, Sequence

STRUCTURE = dict.fromkeys(("from", "to", "run", "cable", "cores", "return", "earth", "ends"))
"""Keys of a circuit that are not values."""

_NOTHING: ReadOnly[str, Item] = MappingProxyType({})
_UNKNOWN = frozenset(("unknown", "?"))


def _entries(ctx: Context) -> list[tuple[str, Scalar, Node]]:
    node = ctx.tree.get("circuits")
    return [(name, key, value) for name, (key, value) in node.entries.items()] if type(node) is Mapping else []


def read_devices_in_place(ctx: Context) -> None:
    """The devices written in runs, as equipment named `<circuit>#<n>`: the run first, then return and earth."""
    for circuit, _, node in _entries(ctx):
        if type(node) is not Mapping:
            continue
        found = list(mappings_in(node.get("run")))
        for side in ("return", "earth"):
            path = node.get(side)
            if type(path) is Mapping:
                found.extend(mappings_in(path.get("run")))
        for number, device in enumerate(found, 1):
            name = f"{circuit}#{number}"
            path_name = f"circuits.{circuit}.run"
            equipment = read_equipment(ctx, name, device, device, "equipment", path_name, inline_of=circuit)
            if equipment is None:
                continue
            if equipment.vocabulary.through is None:
                ctx.problems.add(
                    device,
                    f"{article(equipment.kind)} stands in a run",
                    "declare it under `equipment:` and end the circuit there",
                )
            ctx.equipment[name] = equipment


def read_circuits(ctx: Context, usual: ReadOnly[str, Given]) -> dict[str, Circuit]:
    """All circuits; those that lack an end or a run are noted and left out."""
    vocabulary = kind_in("circuits", "circuit")
    common = {name: value for name, value in usual.items() if name in vocabulary.keys}
    reader = _CircuitReader(ctx, vocabulary, common, usual)
    circuits: dict[str, Circuit] = {}
    for name, key, node in _entries(ctx):
        circuit = reader.read(name, key, node)
        if circuit is not None:
            circuits[name] = circuit
    return circuits


class _CircuitReader:
    """What all circuits share."""

    def __init__(self, ctx: Context, vocabulary: Kind, common: dict[str, Given], usual: ReadOnly[str, Given]) -> None:
        self.ctx = ctx
        self.vocabulary = vocabulary
        self.common = common
        self.usual = usual
        self.in_runs: dict[str, str] = {}

    def read(self, name: str, key: Scalar, node: Node) -> Circuit | None:
        ctx = self.ctx
        entry = ctx.mapping(node, "circuit", name)
        if entry is None:
            return None
        written = read_keys(ctx, entry.entries, self.vocabulary, "a circuit", STRUCTURE)
        given = {**self.common, **written} if self.common else written
        check_required(ctx, key, self.vocabulary, given, name)
        start = self._start(entry, key, name)
        ends = self._ends(entry, key, name)
        runs = RunReader(ctx, name, self.in_runs)
        run_node = self._needed(entry, key, name, "run", "write what a hand meets: `[1.1 m via PLACE, F1]`")
        run = () if run_node is None else runs.read(run_node)
        cable, cable_where = read_cable(ctx, name, key, entry.get("cable"), self.usual)
        cores = cores_taken(ctx, entry.get("cores"), cable)
        if start is None or not ends:
            return None
        duty = given["duty"].value if "duty" in given else ""
        sides = Ends(ctx, name, key, start, ends, run, cable, cores, duty if isinstance(duty, str) else "")
        return Circuit(
            name, self.vocabulary, where(key), f"circuits.{name}", given, start=start, ends=ends, run=run, cable=cable,
            cable_where=cable_where, cores=cores, returns=read_return(sides, runs, entry.get("return")),
            earth=read_earth(sides, runs, entry.get("earth")), terminations=self._terminations(name, entry.get("ends")),
        )  # fmt: skip

    def _needed(self, entry: Mapping, key: Scalar, name: str, step: str, right: str) -> Node | None:
        node = entry.get(step)
        if node is None:
            self.ctx.problems.add(key, f"circuit {shown(name)} lacks `{step}`", right)
        elif type(node) is Mapping and "is" in node.entries:
            return with_basis(self.ctx, node, STATED)[0]
        return node

    def _start(self, entry: Mapping, key: Scalar, name: str) -> Port | None:
        node = self._needed(entry, key, name, "from", "name the equipment that feeds it")
        scalar = None if node is None else self.ctx.expect_scalar(node, "`from`")
        return None if scalar is None else resolve_port(self.ctx, scalar, scalar.text, leaving=True)

    def _ends(self, entry: Mapping, key: Scalar, name: str) -> tuple[Port, ...]:
        node = self._needed(entry, key, name, "to", "name the equipment that it feeds")
        if node is None:
            return ()
        items = node.items if type(node) is Sequence else [node]
        if not items:
            self.ctx.problems.add(node, "`to` is an empty list", "name the equipment that it feeds")
        ends = []
        for item in items:
            scalar = self.ctx.expect_scalar(item, "`to`")
            port = None if scalar is None else resolve_port(self.ctx, scalar, scalar.text, leaving=False)
            if port is not None:
                ends.append(port)
        return tuple(ends)

    def _terminations(self, name: str, node: Node | None) -> ReadOnly[str, Item]:
        if node is None or (type(node) is Scalar and node.text in _UNKNOWN):
            return _NOTHING
        ctx = self.ctx
        vocabulary = kind_in("ends", "termination")
        if type(node) is not Mapping:
            ctx.problems.add(node, f"`ends` is {form(node)}", "write `{from: {lug: 70-8}, to: {lug: 70-10}}`")
            return _NOTHING
        made: dict[str, Item] = {}
        for side, (key, value) in node.entries.items():
            if side not in ("from", "to"):
                ctx.problems.add(key, f"a circuit has no end {shown(side)}", "its ends are `from` and `to`")
            elif type(value) is Scalar and value.text in _UNKNOWN:
                made[side] = Item(side, vocabulary, where(key), f"circuits.{name}.ends.{side}", {})
            elif (entry := ctx.mapping(value, "the end", side)) is not None:
                given = read_keys(ctx, entry.entries, vocabulary, "an end")
                made[side] = Item(side, vocabulary, where(key), f"circuits.{name}.ends.{side}", given)
        return MappingProxyType(made)
