"""Changes to the tree of a design before it is read: for examples of rules and for trying a mend."""

from __future__ import annotations

from collections.abc import Iterable
from collections.abc import Sequence as ListOf

from checker.source.problems import SourceErrors, listed, shown
from checker.source.tree import Mapping, Node, Scalar, Sequence, parse_fragment

REMOVE = "(remove)"
"""The text that takes a key or a list item away."""

Edits = Iterable[tuple[str, str]]


def apply_edits(root: Mapping, edits: Edits) -> None:
    """Change the tree: each edit is a dotted path and the YAML text to stand there.

    A step names a key, or an item of a list by its number from 0. A key that is not there is added (also the
    mappings on the way to it); the number one past the end adds to a list. Keys that hold dots are found too: the
    longest run of steps that is a key counts as one. Raises `ValueError` where a path cannot be reached or the
    text is no YAML.
    """
    for path, text in edits:
        steps = path.split(".")
        if not path or not all(steps):
            raise ValueError(f"edit {shown(path)}: a path is steps with dots between, such as `equipment.F1.rating`")
        node: Node | None = None
        if text.strip() != REMOVE:
            try:
                node = parse_fragment(text, f"edit {path}")
            except SourceErrors as errors:
                raise ValueError(str(errors)) from None
        _edit(root, path, steps, node)


def _edit(root: Mapping, path: str, steps: ListOf[str], value: Node | None) -> None:
    inside: Node = root
    rest = list(steps)
    while True:
        if isinstance(inside, Mapping):
            step = _longest_key(inside, rest)
            del rest[: step.count(".") + 1]
            if not rest:
                _set_key(inside, path, step, value)
                return
            found = inside.get(step)
            if found is None:
                if value is None:
                    raise ValueError(f"edit {shown(path)}: there is no {shown(step)} to remove from")
                found = Mapping(inside.line, inside.column)
                inside.entries[step] = (Scalar(step, inside.line, inside.column), found)
            inside = found
        elif isinstance(inside, Sequence):
            step = rest.pop(0)
            position = _position(inside, path, step, adding=not rest and value is not None)
            if not rest:
                _set_item(inside, position, value)
                return
            inside = inside.items[position]
        else:
            raise ValueError(f"edit {shown(path)}: {shown(rest[0])} cannot stand below one text")


def _longest_key(inside: Mapping, rest: ListOf[str]) -> str:
    """The key of `inside` that the next steps name; the next step alone when there is none."""
    for count in range(len(rest), 1, -1):
        key = ".".join(rest[:count])
        if key in inside.entries:
            return key
    return rest[0]


def _set_key(inside: Mapping, path: str, step: str, value: Node | None) -> None:
    old = inside.entries.get(step)
    if value is None:
        if old is None:
            there = listed(inside.entries) or "nothing"
            raise ValueError(f"edit {shown(path)}: there is no {shown(step)} to remove; there is {there}")
        del inside.entries[step]
        return
    key = old[0] if old is not None else Scalar(step, inside.line, inside.column)
    at = old[1] if old is not None else key
    _move(value, at.line, at.column)
    inside.entries[step] = (key, value)


def _set_item(inside: Sequence, position: int, value: Node | None) -> None:
    if value is None:
        del inside.items[position]
        return
    at = inside.items[position] if position < len(inside.items) else inside
    _move(value, at.line, at.column)
    inside.items[position : position + 1] = [value]


def _position(inside: Sequence, path: str, step: str, adding: bool) -> int:
    most = len(inside.items) if adding else len(inside.items) - 1
    if not (step.isascii() and step.isdigit()) or len(step) > 6 or int(step) > most:
        raise ValueError(f"edit {shown(path)}: {shown(step)} is no item of a list that runs from 0 to {most}")
    return int(step)


def _move(node: Node, line: int, column: int) -> None:
    """Give the new nodes the place of what they replace, so that errors point into the file."""
    node.line, node.column = line, column
    if isinstance(node, Mapping):
        for key, value in node.entries.values():
            key.line, key.column = line, column
            _move(value, line, column)
    elif isinstance(node, Sequence):
        for item in node.items:
            _move(item, line, column)
