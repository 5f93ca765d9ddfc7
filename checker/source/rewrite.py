"""Values put into the text of a file, everything else in it left as it stands: comments, order, blanks, line ends."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Sequence
from typing import Any, Final, NamedTuple

import yaml

from checker.source.problems import shown

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_PLAIN_KEY = re.compile(r"[A-Za-z0-9_][\w .+/()-]*[\w+)-]|[A-Za-z0-9_]")


MORE: Final = None
"""The step to one more item of a list, behind those that are there; a single text, or nothing, becomes a list."""


class Put(NamedTuple):
    """A value for the text: the steps to it (keys, numbers of list items from 0, `MORE`) and the YAML to stand there.

    `text` has no line ends.
    """

    steps: tuple[str | None, ...]
    text: str


class _Change(NamedTuple):
    start: int
    end: int
    text: str


def rewrite(text: str, puts: Iterable[Put]) -> str:
    """`text`, a YAML mapping, with each value in its place; keys that are not there are added behind the others.

    The word `unknown` gives way to a mapping where keys are put below it. Raises `ValueError` where a value cannot be
    put, with the reason: below another text, where a list has no such item, or twice at one place.
    """
    body = text.removeprefix("\ufeff")
    root = yaml.compose(body, Loader=_LOADER)
    changes: list[_Change] = []
    _into(body, root, [(put.steps, put.text) for put in puts], (), changes)
    for change in sorted(changes, reverse=True):
        body = body[: change.start] + change.text + body[change.end :]
    return text[: len(text) - len(text.removeprefix("\ufeff"))] + body


_Held = list[tuple[tuple[str | None, ...], str]]


def _into(body: str, node: Any, puts: _Held, path: tuple[str | None, ...], changes: list[_Change]) -> None:
    """Note the changes for `puts` below `node`, each of which has a step left."""
    if isinstance(node, yaml.MappingNode):
        there = {key.value: value for key, value in node.value}
        colons = {key.value: body.index(":", key.end_mark.index) + 1 for key, _ in node.value}
        added = []
        for key, held in _by_first(puts, there):
            if key not in there:
                added.append(f"{_key(key)}: {_flow(held, (*path, key))}")
            else:
                _at(body, there[key], held, (*path, key), changes, colons[key])
        if added:
            changes.append(_added(body, node, added))
    elif isinstance(node, yaml.SequenceNode):
        added = [_flow([(steps[1:], text)], path) for steps, text in puts if steps[0] is MORE]
        for step, held in _by_first([put for put in puts if put[0][0] is not MORE], {}):
            place = int(step) if step.isascii() and step.isdigit() else len(node.value)
            if place >= len(node.value):
                raise ValueError(f"{_named(path)} is a list of {len(node.value)}; there is no item {step}")
            _at(body, node.value[place], held, (*path, step), changes)
        if added:
            changes.append(_added(body, node, added))
    elif node.value == "unknown" or all(steps[0] is MORE for steps, _ in puts):
        start, end = node.start_mark.index, _end(body, node)
        first = "" if node.value == "unknown" else f"[{body[start:end]}, "
        text = _flow(puts, path)
        changes.append(_Change(start, end, f"{first}{text[1:] if first else text}"))
    else:
        raise ValueError(f"{_named(path)} is {shown(node.value)}, which has no keys below it")


def _named(path: tuple[str | None, ...]) -> str:
    return shown(".".join(step or "" for step in path))


def _at(
    body: str, node: Any, held: _Held, path: tuple[str | None, ...], changes: list[_Change], colon: int | None = None
) -> None:
    """Put in place of `node` or below it; `colon` lies behind that of its key."""
    if all(steps for steps, _ in held):
        _into(body, node, held, path, changes)
        return
    text, end = _flow(held, path), _end(body, node)
    if colon is None or isinstance(node, yaml.ScalarNode) or node.flow_style:
        changes.append(_Change(node.start_mark.index, end, text))
    else:  # on lines of its own, perhaps no deeper than its key: the new value stands beside the key
        changes += [_Change(colon, colon, f" {text}"), _Change(_line_end(body, colon), end, "")]


def _by_first(puts: _Held, there: dict[str, Any]) -> list[tuple[str, _Held]]:
    """First key to what is put below it; the longest run of steps that is a key already counts as one."""
    found: dict[str, _Held] = {}
    for steps, text in puts:
        names = [step or "" for step in steps]
        count = next((count for count in range(len(steps), 1, -1) if ".".join(names[:count]) in there), 1)
        found.setdefault(".".join(names[:count]), []).append((steps[count:], text))
    return list(found.items())


def _flow(held: _Held, path: tuple[str | None, ...]) -> str:
    """What is put at one place: a value, items of a list, or keys with theirs."""
    if any(not steps for steps, _ in held):
        if len(held) > 1:
            raise ValueError(f"{_named(path)} is put twice, or put and put into")
        return held[0][1]
    if all(steps[0] is MORE for steps, _ in held):
        return f"[{', '.join(_flow([(steps[1:], text)], path) for steps, text in held)}]"
    inner = [f"{_key(key)}: {_flow(below, (*path, key))}" for key, below in _by_first(held, {})]
    return f"{{{', '.join(inner)}}}"


def _key(key: str) -> str:
    return key if _PLAIN_KEY.fullmatch(key) else json.dumps(key, ensure_ascii=False)


def _added(body: str, node: Any, entries: Sequence[str]) -> _Change:
    """New entries behind the last of a mapping or list: in its brackets, or on lines of their own."""
    last = node.value[-1][1] if node.value and isinstance(node, yaml.MappingNode) else None
    last = node.value[-1] if node.value and last is None else last
    if node.flow_style:
        if last is None:
            start = node.start_mark.index + 1
            return _Change(start, start, ", ".join(entries))
        start = _end(body, last)
        return _Change(start, start, "".join(f", {entry}" for entry in entries))
    at = _line_end(body, _end(body, last))
    newline = "\r\n" if body[at : at + 2] == "\r\n" else "\n"
    lead = " " * node.start_mark.column + ("- " if isinstance(node, yaml.SequenceNode) else "")
    return _Change(at, at, "".join(f"{newline}{lead}{entry}" for entry in entries))


def _line_end(body: str, at: int) -> int:
    found = re.compile(r"\r?\n|\Z").search(body, at)
    assert found is not None  # the end of the text is an end
    return found.start()


def _end(body: str, node: Any) -> int:
    """Just behind the last character of a node; the parser's own end of a block lies behind comments that follow."""
    if isinstance(node, yaml.ScalarNode):
        end: int = node.end_mark.index
        return len(body[:end].rstrip()) if node.style in ("|", ">") else end
    if node.flow_style:
        return int(node.end_mark.index)
    last = node.value[-1]
    return _end(body, last[1] if isinstance(last, tuple) else last)
