"""The keys of one thing: each value by the shape of its key, nested keys flattened with dots."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from functools import cache
from typing import Any

from checker.design.given import BASES, STATED, Given
from checker.design.shapes import LISTS, STRUCTURED, UNKNOWN_WORDS, ShapeError, parse_shape
from checker.design.vocabulary.key import Key, Kind
from checker.quantities import UNKNOWN, Unknown
from checker.reading.context import Context, form, where
from checker.reading.references import check_reference
from checker.source.problems import listed, shown
from checker.source.tree import Mapping, Node, Scalar, Sequence

Entries = dict[str, tuple[Scalar, Node]]

_REFERENCES = frozenset(("name", "names", "port", "signal"))
_STANDING_FOR_ALL = frozenset((*UNKNOWN_WORDS, "none"))
_ALWAYS_THERE = frozenset(("mass", "masses.before.ball", "chemistry", "units", "modules"))
"""What nothing is without: `none` would be a slip of the pen."""
_SIGNED_KINDS = frozenset(("reading",))
"""Kinds whose quantities may lie below zero: what an instrument said has a direction."""


@cache
def groups_of(kind: Kind) -> dict[str, tuple[str, ...]]:
    """Each record of `kind` (`bms`, `bms.peak`) with the full names of the keys below it."""
    groups: dict[str, list[str]] = {}
    for name in kind.keys:
        steps = name.split(".")
        for count in range(1, len(steps)):
            groups.setdefault(".".join(steps[:count]), []).append(name)
    return {record: tuple(names) for record, names in groups.items()}


def read_keys(ctx: Context, entries: Entries, kind: Kind, what: str, skip: Collection[str] = ()) -> dict[str, Given]:
    """What was written for the keys of `kind`, in file order. Keys in `skip` are read elsewhere."""
    return KeyReader(ctx, kind, what, skip).read(entries)


class KeyReader:
    """Reads the entries of one thing; `what` names it in messages, such as `fuse`."""

    def __init__(self, ctx: Context, kind: Kind, what: str, skip: Collection[str] = ()) -> None:
        self.ctx = ctx
        self.kind = kind
        self.what = what
        self.skip = skip
        self.signed = kind.name in _SIGNED_KINDS
        self.groups = groups_of(kind)
        self.given: dict[str, Given] = {}

    def read(self, entries: Entries) -> dict[str, Given]:
        """All entries at the top level of the thing."""
        keys, groups, skip, given = self.kind.keys, self.groups, self.skip, self.given
        for name, (key, node) in entries.items():
            if name in skip:
                continue
            spec = keys.get(name)
            if spec is not None and type(node) is Scalar and name not in groups:
                given[name] = self._scalar(spec, node, STATED)
            else:
                self._entry(name, key, node, STATED)
        return given

    def _entry(self, name: str, key: Scalar, node: Node, basis: str) -> None:
        """One entry of any form; `name` is its full name."""
        spec, below = self.kind.keys.get(name), self.groups.get(name)
        if spec is None and below is None:
            self._refuse_key(name, key)
            return
        if type(node) is Mapping and "is" in node.entries:
            node, basis = with_basis(self.ctx, node, basis)
        if below is not None and type(node) is Mapping:
            self._record(name, spec, node, basis)
            return
        if below is not None and type(node) is Scalar and stands_for_all(node):
            self.given.update(_standing_for(below, node, basis))
        elif spec is None:
            nested = listed(_next_steps(self.kind, f"{name}."))
            self.ctx.problems.add(
                node, f"{shown(name)} is {form(node)}", f"write a mapping of its keys ({nested}), `unknown` or `none`"
            )
        if spec is not None:
            self.given[name] = self.value(spec, node, basis)

    def _record(self, name: str, spec: Key | None, node: Mapping, basis: str) -> None:
        if spec is not None and spec.shape == "yes/no":
            self.given[name] = Given(True, where(node), basis, "true")
        said = node.get("basis")
        if said is not None and f"{name}.basis" not in self.kind.keys:
            basis = read_basis(self.ctx, said)
        for step, (key, value) in node.entries.items():
            full = f"{name}.{step}"
            if step != "basis" or full in self.kind.keys:
                self._entry(full, key, value, basis)

    def _refuse_key(self, name: str, key: Scalar) -> None:
        record = name[: len(name) - len(key.text)]
        options = _next_steps(self.kind, record)
        if not record:
            options = (*options, *self.skip)
        options = options[::-1]  # what all equipment has in common stands first in the vocabulary
        inside = f"{shown(record[:-1])} of " if record else ""
        self.ctx.problems.add(
            key,
            f"{inside}{self.what} has no key {shown(key.text)}",
            self.ctx.problems.meant(key.text, options, f"it has {listed(options)}"),
        )

    def value(self, spec: Key, node: Node, basis: str) -> Given:
        """The value of one key that has no keys below it."""
        if type(node) is Scalar:
            return self._scalar(spec, node, basis)
        if type(node) is Mapping and "is" in node.entries:
            inner, basis = with_basis(self.ctx, node, basis)
            return self.value(spec, inner, basis)
        at = where(node)
        if spec.shape in STRUCTURED:
            from checker.reading.structures import read_structure  # few keys need it

            return Given(read_structure(self, spec, node, basis), at, basis)
        if type(node) is Sequence and spec.shape in LISTS:
            return self._list(spec, node, basis)
        right = "write one value or a list" if spec.shape in LISTS else "write one value"
        self.ctx.problems.add(node, f"{shown(spec.name)} is {form(node)}", right)
        return Given(UNKNOWN, at, basis)

    def _list(self, spec: Key, node: Sequence, basis: str) -> Given:
        values: list[Any] = []
        texts = []
        for item in node.items:
            inner = item
            if type(item) is Mapping and "is" in item.entries:
                inner, basis = with_basis(self.ctx, item, basis)
            scalar = self.ctx.expect_scalar(inner, f"an item of {shown(spec.name)}")
            if scalar is None:
                continue
            one = self._scalar(spec, scalar, basis).value
            if one is None:
                self.ctx.problems.add(scalar, f"`none` stands in the list of {shown(spec.name)}", "leave it out")
                continue
            values.extend(one if isinstance(one, tuple) else (one,))
            texts.append(scalar.text)
        text = ", ".join(texts)
        if spec.shape != "quantities" and any(isinstance(value, Unknown) for value in values):
            # What else stands in the list is not known, so neither is what does not.
            return Given(Unknown(f"part of {spec.name} is not known"), where(node), basis, text)
        return Given(tuple(values), where(node), basis, text)

    def _scalar(self, spec: Key, node: Scalar, basis: str) -> Given:
        text = node.text
        at = where(node)
        if not text and node.plain:
            self.ctx.problems.add(node, f"{shown(spec.name)} has no value", "write the value, or `unknown`")
            return Given(UNKNOWN, at, basis, text)
        try:
            value = parse_shape(spec, text, self.signed)
        except ShapeError as error:
            self.ctx.problems.add(node, f"{shown(spec.name)}: {error.message}", self._right(spec, text, error))
            return Given(UNKNOWN, at, basis, text)
        if value is None and spec.name in _ALWAYS_THERE:
            self.ctx.problems.add(node, f"{shown(spec.name)} cannot be `none`", "write what it is, or `unknown`")
            return Given(UNKNOWN, at, basis, text)
        if spec.shape in _REFERENCES:
            for name in value if isinstance(value, tuple) else (value,):
                if isinstance(name, str) and name not in spec.words:
                    check_reference(self.ctx, spec, node, name)
        return Given(value, at, basis, text)

    def _right(self, spec: Key, text: str, error: ShapeError) -> str:
        """What would be right instead of `text`: the nearest word and all of them, or the quantity that fits."""
        if not spec.words:
            return error.right
        meant = self.ctx.problems.meant(text, spec.words, "")
        if spec.shape in ("word", "words"):
            return f"{meant} the words are {listed(spec.words)}".strip()
        return meant or f"{error.right}, or {listed(spec.words)}"


def _next_steps(kind: Kind, record: str) -> tuple[str, ...]:
    """The keys that may follow `record` (with its dot; '' for the top level)."""
    start = len(record)
    return tuple(dict.fromkeys(name[start:].split(".")[0] for name in kind.keys if name.startswith(record)))


def stands_for_all(node: Scalar) -> bool:
    """Whether `node` says `unknown` or `none` of a whole thing or record."""
    return node.text in _STANDING_FOR_ALL


def all_of(kind: Kind, node: Scalar) -> dict[str, Given]:
    """Every key of `kind` as `node` says: unknown, or none. Not the defaults: the writer looked and said so."""
    return _standing_for(kind.keys, node, STATED)


def _standing_for(names: Iterable[str], node: Scalar, basis: str) -> dict[str, Given]:
    value = None if node.text == "none" else UNKNOWN
    return {name: Given(value, where(node), basis, node.text) for name in names}


def with_basis(ctx: Context, node: Mapping, basis: str) -> tuple[Node, str]:
    """The value and the basis of `{is: VALUE, basis: WORD}`."""
    for step, (key, value) in node.entries.items():
        if step == "basis":
            basis = read_basis(ctx, value)
        elif step != "is":
            ctx.problems.add(key, f"{shown(step)} stands beside `is`", "write `{is: VALUE, basis: WORD}` and no more")
    if "basis" not in node.entries:
        ctx.problems.add(node, "`is` stands without a basis", f"write the bare value, or add basis: {listed(BASES)}")
    return node.entries["is"][1], basis


def read_basis(ctx: Context, node: Node) -> str:
    """The word after `basis:`."""
    scalar = ctx.expect_scalar(node, "`basis`")
    if scalar is None:
        return STATED
    if scalar.text not in BASES:
        right = ctx.problems.meant(scalar.text, BASES, "")
        ctx.problems.add(scalar, f"{shown(scalar.text)} is no basis", f"{right} write {listed(BASES)}".strip())
        return STATED
    return scalar.text


@cache
def _required(kind: Kind) -> tuple[Key, ...]:
    return tuple(key for key in kind.keys.values() if key.required)


def check_required(ctx: Context, at: Node, kind: Kind, given: dict[str, Given], name: str) -> None:
    """Note each key of `kind` that must be written and is not; `unknown` and `none` do not count."""
    for key in _required(kind):
        if key.name not in given or given[key.name].text in _STANDING_FOR_ALL:
            thing = shown(name) if name == kind.name else f"{kind.name} {shown(name)}"
            what = f"{thing} lacks {shown(key.name)}"
            ctx.problems.add(at, what, f"write `{key.name}: ...` ({key.says.rstrip('.')})")
