"""The tree of a rule file: texts, mappings and lists, each with its line and column.

Built from the events of the YAML parser, so that every scalar stays the text that was written. Anchors, aliases, tags,
doubled keys and anything oversized are refused.
"""

from __future__ import annotations

from typing import Any

import yaml

from checker.rulebook.problems import Problems, shown

LARGEST = 128 * 1024
"""Bytes of the largest rule file that is read; an ordinary one has 3,000."""
DEEPEST = 12
MOST_NODES = 10_000

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class Place:
    """A place in a file, both counted from 1."""

    __slots__ = ("column", "line")

    def __init__(self, line: int, column: int) -> None:
        self.line = line
        self.column = column


class Text(Place):
    """A scalar. `raw` is how it stands in the file, quotes and indents included; `plain` when without quotes."""

    __slots__ = ("plain", "raw", "text")

    def __init__(self, text: str, line: int, column: int, raw: str, plain: bool) -> None:
        super().__init__(line, column)
        self.text = text
        self.raw = raw
        self.plain = plain

    def place(self, offset: int) -> Place:
        """Where in the file the character `offset` of the text stands."""
        raw, at = self.raw, 0
        if raw[:1] in "'\"":
            at = 1
        elif raw[:1] in ">|":
            at = raw.find("\n") + 1
        for letter in self.text[:offset]:
            at = _after(raw, at, letter)
        while at < len(raw) and raw[at].isspace() and not self.text[offset : offset + 1].isspace():
            at += 1
        before = raw[:at].split("\n")
        if len(before) == 1:
            return Place(self.line, self.column + at)
        return Place(self.line + len(before) - 1, len(before[-1]) + 1)


def _after(raw: str, at: int, letter: str) -> int:
    """The index in `raw` behind the sign that gave `letter`; a fold or indent is as wide as it stands."""
    if letter.isspace():
        while at < len(raw) and raw[at].isspace():
            at += 1
        return at
    while at < len(raw) and raw[at].isspace():
        at += 1
    return at + (2 if raw.startswith("''", at) and letter == "'" else 1)


class Map(Place):
    """Keys in file order: text of the key to (key, value)."""

    __slots__ = ("entries",)

    def __init__(self, line: int, column: int) -> None:
        super().__init__(line, column)
        self.entries: dict[str, tuple[Text, Text | Map | Items]] = {}

    def get(self, key: str) -> Text | Map | Items | None:
        """The value of `key`, None when it was not written."""
        entry = self.entries.get(key)
        return None if entry is None else entry[1]


class Items(Place):
    """A list."""

    __slots__ = ("items",)

    def __init__(self, line: int, column: int) -> None:
        super().__init__(line, column)
        self.items: list[Text | Map | Items] = []


Node = Text | Map | Items


class _Stop(Exception):
    """What was found makes reading on senseless; it is noted already."""


def load_tree(data: bytes, problems: Problems) -> Map | None:
    """The tree of the file's bytes; what is wrong goes to `problems`. None when it cannot be used at all."""
    text = _decoded(data, problems)
    if text is None:
        return None
    try:
        root = _build(text, problems)
    except _Stop:
        return None
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
        at = Place(mark.line + 1, mark.column + 1) if mark is not None else Place(1, 1)
        said = getattr(error, "problem", None) or getattr(error, "reason", None) or "it cannot be parsed"
        problems.add(at, f"this is not YAML: {said}", "write `key: value`, text with `: ` or `#` in quotes")
        return None
    if type(root) is Map:
        return root
    problems.add(Place(1, 1), "the file holds no keys and values", "start with a key such as `id: name-of-the-duty`")
    return None


def _decoded(data: bytes, problems: Problems) -> str | None:
    if len(data) > LARGEST:
        problems.add(Place(1, 1), f"the file is {len(data):,} bytes, more than {LARGEST:,}", "one file is one rule")
        return None
    try:
        return data.removeprefix(b"\xef\xbb\xbf").decode("utf-8").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        problems.add(Place(line, 1), f"the byte 0x{data[error.start]:02X} is not UTF-8", "save the file as UTF-8")
        return None


def _build(text: str, problems: Problems) -> Node | None:
    root: Node | None = None
    open_: list[tuple[Map | Items, Text | None]] = []
    inside: Map | Items | None = None
    key: Text | None = None
    nodes = documents = 0
    event: Any
    for event in yaml.parse(text, Loader=_LOADER):
        kind = type(event)
        if kind in (yaml.MappingEndEvent, yaml.SequenceEndEvent):
            open_.pop()
            inside, key = (open_[-1][0] if open_ else None), None
            continue
        if kind is yaml.DocumentStartEvent:
            documents += 1
            if documents > 1:
                _refuse(problems, event, "a second document starts here", "one file holds one rule; drop the `---`")
        if kind not in (yaml.ScalarEvent, yaml.MappingStartEvent, yaml.SequenceStartEvent, yaml.AliasEvent):
            continue
        if kind is yaml.AliasEvent or event.anchor is not None or event.tag is not None:
            _refuse(problems, event, "an anchor, alias or tag stands here, which is not read", "write the value out")
        nodes += 1
        if nodes > MOST_NODES or len(open_) > DEEPEST:
            _refuse(problems, event, "the file holds more or deeper entries than a rule has", "one file is one rule")
        start = event.start_mark
        node: Node
        if kind is yaml.ScalarEvent:
            raw = text[start.index : event.end_mark.index]
            node = Text(event.value, start.line + 1, start.column + 1, raw, event.implicit[0])
        else:
            node = (Map if kind is yaml.MappingStartEvent else Items)(start.line + 1, start.column + 1)
        if type(inside) is Map and key is None:
            key = _key(inside, node, problems)
            continue
        if type(inside) is Map and key is not None:
            inside.entries[key.text] = (key, node)
            key = None
        elif type(inside) is Items:
            inside.items.append(node)
        else:
            root = node
        if not isinstance(node, Text):
            open_.append((node, None))
            inside = node
    return root


def _key(inside: Map, node: Node, problems: Problems) -> Text:
    if not isinstance(node, Text):
        problems.add(node, "a list or mapping stands where a key belongs", "a key is a plain name")
        raise _Stop
    first = inside.entries.get(node.text)
    if first is not None:
        problems.add(
            node,
            f"the key {shown(node.text)} stands twice, first at {first[0].line}:{first[0].column}",
            "keep one of the two",
        )
        raise _Stop
    return node


def _refuse(problems: Problems, event: Any, what: str, right: str) -> None:
    problems.add(Place(event.start_mark.line + 1, event.start_mark.column + 1), what, right)
    raise _Stop
