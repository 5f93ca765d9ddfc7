"""Cables: the reels, a cable written in place, and the cores a circuit takes of one."""

from __future__ import annotations

from collections.abc import Mapping as ReadOnly

from checker.design.given import STATED, Given, Where
from checker.design.item import Item
from checker.reading.context import Context, form, kind_in, where
from checker.reading.values import all_of, check_required, read_keys, with_basis
from checker.source.tree import Mapping, Node, Scalar, Sequence

_UNKNOWN = frozenset(("unknown", "?"))


def _cable(ctx: Context, name: str, at: Node, entry: Mapping, path: str, usual: ReadOnly[str, Given]) -> Item:
    vocabulary = kind_in("cables", "cable")
    written = read_keys(ctx, entry.entries, vocabulary, "a cable")
    given = {each: value for each, value in usual.items() if each in vocabulary.keys}
    given.update(written)
    check_required(ctx, at, vocabulary, given, name)
    return Item(name, vocabulary, where(at), path, given)


def read_reels(ctx: Context, usual: ReadOnly[str, Given]) -> None:
    """All of `cables`. What is usual stands where a reel does not say otherwise."""
    node = ctx.tree.get("cables")
    if type(node) is not Mapping:
        return
    for name, (key, value) in node.entries.items():
        if type(value) is Scalar and value.text in _UNKNOWN:
            vocabulary = kind_in("cables", "cable")
            ctx.cables[name] = Item(name, vocabulary, where(key), f"cables.{name}", all_of(vocabulary, value))
        elif (entry := ctx.mapping(value, "cable", name)) is not None:
            ctx.cables[name] = _cable(ctx, name, key, entry, f"cables.{name}", usual)


def read_cable(
    ctx: Context, circuit: str, key: Node, node: Node | None, usual: ReadOnly[str, Given]
) -> tuple[Item | None, Where]:
    """The cable of a circuit, None when it is not known, and the place where it was named."""
    if node is None:
        return None, where(key)
    if type(node) is Mapping and "is" in node.entries:
        node, _ = with_basis(ctx, node, STATED)
    if type(node) is Mapping:
        path = f"circuits.{circuit}.cable"
        return _cable(ctx, f"{circuit} cable", node, node, path, usual), where(node)
    scalar = ctx.expect_scalar(node, "`cable`")
    if scalar is None or scalar.text in _UNKNOWN:
        return None, where(node)
    if scalar.text == "none":
        ctx.problems.add(scalar, "a circuit without a cable is no circuit", "name the cable, or `unknown`")
    else:
        ctx.check_name("cables", scalar, scalar.text)
    return ctx.cables.get(scalar.text), where(node)


def cores_taken(ctx: Context, node: Node | None, cable: Item | None) -> tuple[int, ...] | None:
    """The cores of a shared cable that a circuit uses, counted from 1; None for all of them."""
    if node is None or (type(node) is Scalar and node.text in _UNKNOWN):
        return None
    if type(node) is not Sequence or not node.items:
        ctx.problems.add(node, f"`cores` is {form(node)}", "number the cores from 1: `cores: [1, 2]`")
        return None
    there = cable.value("cores") if cable is not None else None
    most = int(there) if isinstance(there, float) else None
    cores: list[int] = []
    for item in node.items:
        text = item.text if type(item) is Scalar else ""
        if not (text.isascii() and text.isdigit() and len(text) < 4 and int(text) > 0):
            ctx.problems.add(item, f"a core is {form(item)}", "number the cores from 1: `cores: [1, 2]`")
        elif int(text) in cores:
            ctx.problems.add(item, f"core {text} stands twice", "name each core once")
        elif most is not None and int(text) > most:
            ctx.problems.add(item, f"the cable has no core {text}", f"it has {most}")
        else:
            cores.append(int(text))
    return tuple(cores) or None
