"""Values that are lists or mappings themselves: boxes, points, curves, maps, choices, records."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from checker.design.given import Box, Given
from checker.design.shapes import EXAMPLES, ShapeError, parse_shape
from checker.design.vocabulary.key import Key, Kind
from checker.quantities import UNKNOWN, Unknown
from checker.reading.context import form
from checker.reading.references import check_reference
from checker.source.problems import shown
from checker.source.tree import Mapping, Node, Scalar, Sequence

if TYPE_CHECKING:
    from checker.reading.values import KeyReader

_LENGTH = Key("length", "quantity", "A length.", unit="m")
_WRONG = Unknown("wrong, and noted so")


def read_structure(reader: KeyReader, spec: Key, node: Node, basis: str) -> Any:
    """The value of a key of a structured shape; unknown when it is wrong (a problem is noted)."""
    if spec.shape == "box":
        return _box(reader, spec, node)
    if spec.shape == "point":
        return _point(reader, spec, node, signed=True)
    if spec.shape == "points":
        return _points(reader, spec, node)
    if spec.shape == "curve":
        return _curve(reader, spec, node)
    if spec.shape == "records":
        return _records(reader, spec, node)
    return _named(reader, spec, node, basis)


def _wrong(reader: KeyReader, spec: Key, node: Node) -> Any:
    reader.ctx.problems.add(node, f"{shown(spec.name)} is {form(node)}", EXAMPLES[spec.shape])
    return UNKNOWN


def _number(reader: KeyReader, spec: Key, node: Node, signed: bool = False) -> Any:
    """One quantity within a structure; its basis is not kept."""
    if type(node) is Mapping and "is" in node.entries:
        from checker.reading.values import with_basis

        node, _ = with_basis(reader.ctx, node, "")
    scalar = reader.ctx.expect_scalar(node, f"a part of {shown(spec.name)}")
    if scalar is None:
        return UNKNOWN
    try:
        value = parse_shape(spec, scalar.text, signed)
    except ShapeError as error:
        reader.ctx.problems.add(scalar, error.message, error.right)
        return _WRONG
    if value is None:
        reader.ctx.problems.add(scalar, "`none` is no part of this", "write what it is, or `unknown`")
        return _WRONG
    return value


def _point(reader: KeyReader, spec: Key, node: Node, signed: bool) -> Any:
    if type(node) is not Sequence or len(node.items) != 3:
        return _wrong(reader, spec, node)
    x, y, z = (_number(reader, _LENGTH, item, signed) for item in node.items)
    return x, y, z


def _points(reader: KeyReader, spec: Key, node: Node) -> Any:
    if type(node) is not Sequence or any(type(item) is not Sequence for item in node.items):
        return _wrong(reader, spec, node)
    return tuple(_point(reader, spec, item, signed=True) for item in node.items)


def _box(reader: KeyReader, spec: Key, node: Node) -> Any:
    if type(node) is not Mapping or set(node.entries) != {"at", "size"}:
        return _wrong(reader, spec, node)
    corners = []
    for step in ("at", "size"):
        side = node.entries[step][1]
        if type(side) is Scalar and side.text in ("unknown", "?"):
            corners.append((UNKNOWN, UNKNOWN, UNKNOWN))
            continue
        point = _point(reader, spec, side, signed=step == "at")
        corners.append(point if isinstance(point, tuple) else (UNKNOWN, UNKNOWN, UNKNOWN))
    return Box(corners[0], corners[1])


def _curve(reader: KeyReader, spec: Key, node: Node) -> Any:
    """Pairs in rising x. Each x must be one exact number, and stand once."""
    x_key, y_key = _axes(spec)
    pairs: list[tuple[Node, Any, Any]] = []
    if type(node) is Mapping:
        for key, value in node.entries.values():
            pairs.append((key, _number(reader, x_key, key), _number(reader, y_key, value)))
    elif type(node) is Sequence and all(type(item) is Sequence and len(item.items) == 2 for item in node.items):
        for item in node.items:
            if type(item) is Sequence:
                x, y = item.items
                pairs.append((x, _number(reader, x_key, x), _number(reader, y_key, y)))
    else:
        return _wrong(reader, spec, node)
    return _rising(reader, pairs)


def _rising(reader: KeyReader, pairs: list[tuple[Node, Any, Any]]) -> Any:
    points: dict[float, Any] = {}
    for node, x, y in pairs:
        if x is _WRONG:
            continue
        if not isinstance(x, float):
            reader.ctx.problems.add(
                node, "a curve needs exact steps", "write one number for each step, such as `750 rpm`"
            )
        elif x in points:
            reader.ctx.problems.add(node, "this step of the curve stands twice", "keep one of the two")
        else:
            points[x] = y
    return tuple(sorted(points.items(), key=lambda point: point[0]))


@cache
def _axes(spec: Key) -> tuple[Key, Key]:
    x_unit, y_unit = spec.unit
    return Key(spec.name, "quantity", spec.says, unit=x_unit), Key(spec.name, "quantity", spec.says, unit=y_unit)


@cache
def _named_value(spec: Key) -> Key:
    """What stands behind each name of a map or of choices."""
    if spec.shape == "map":
        return Key(spec.name, "quantity", spec.says, unit=spec.unit, words=spec.words)
    return Key(spec.name, "word" if spec.words else "text", spec.says, words=spec.words)


def _named(reader: KeyReader, spec: Key, node: Node, basis: str) -> Any:
    if type(node) is not Mapping:
        return _wrong(reader, spec, node)
    value_key = _named_value(spec)
    pairs: list[tuple[str, Given]] = []
    for name, (key, value) in node.entries.items():
        check_reference(reader.ctx, spec, key, name)
        pairs.append((name, reader.value(value_key, value, basis)))
    return tuple(pairs)


@cache
def _record_kind(spec: Key) -> Kind:
    return Kind(spec.name, spec.says, spec.fields)


def _records(reader: KeyReader, spec: Key, node: Node) -> Any:
    from checker.reading.values import read_keys

    items = node.items if type(node) is Sequence else [node]
    records = []
    for item in items:
        if type(item) is not Mapping:
            _wrong(reader, spec, item)
            continue
        given = read_keys(reader.ctx, item.entries, _record_kind(spec), f"an item of {shown(spec.name)}")
        records.append(tuple(given.items()))
    return tuple(records)
