"""The tree of a file: texts, mappings and lists, each with its line and column.

Built from the events of the YAML parser. Every scalar stays the text that was written, so nothing turns into
true, 750 or a date. What another YAML reader would read differently, and what could make a reader hang or exhaust
its memory (aliases, depth, numbers of nodes), is refused.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, NamedTuple

import yaml

from checker.source.problems import Problems, SourceErrors, shown

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_ODD_KEYS = frozenset(("", "<<"))
_BEFORE_A_KEY = ("", " ", "[", "{", ",")
_FOREIGN_NULLS = frozenset(("~", "null", "Null", "NULL"))
# Control characters, lone surrogates, and characters that only YAML takes for the end of a line.
_UNPRINTABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_LINE_END = re.compile("\r\n|\r|\n")


class Manner(NamedTuple):
    """What is expected of one sort of file, for its bounds and for what a problem says would be right.

    `one_file` follows on a file that is too large or holds two documents, `starts` on an empty one, `elsewhere` on
    an anchor or alias. With `raw`, every text keeps how it stands in the file.
    """

    starts: str = "start with `key: value`"
    one_file: str = "split it"
    elsewhere: str = "write the value out"
    deepest: int = 30
    most_nodes: int = 100_000
    raw: bool = False


PLAIN = Manner()


class Node:
    """A node and the place of its first character, counted from 1."""

    __slots__ = ("column", "line")

    def __init__(self, line: int, column: int) -> None:
        self.line = line
        self.column = column


class Scalar(Node):
    """A text. `plain` is whether it stood without quotes; `raw`, where asked for, is how it stands in the file."""

    __slots__ = ("plain", "raw", "text")

    raw: str

    def __init__(self, text: str, line: int, column: int, plain: bool = True) -> None:
        self.text = text
        self.line = line
        self.column = column
        self.plain = plain


class Mapping(Node):
    """Keys in file order: text of the key to (key, value)."""

    __slots__ = ("entries",)

    def __init__(self, line: int, column: int) -> None:
        self.line = line
        self.column = column
        self.entries: dict[str, tuple[Scalar, Node]] = {}

    def get(self, key: str) -> Node | None:
        """The value of `key`, None when it was not written."""
        entry = self.entries.get(key)
        return None if entry is None else entry[1]


class Sequence(Node):
    """A list."""

    __slots__ = ("items",)

    def __init__(self, line: int, column: int) -> None:
        self.line = line
        self.column = column
        self.items: list[Node] = []


class _Stop(Exception):
    """What was found makes reading on senseless; it is noted already."""


class _Builder:
    """Puts the events together, without recursion."""

    def __init__(self, problems: Problems, text: str, manner: Manner) -> None:
        self.problems = problems
        self.text = text
        self.manner = manner
        self.root: Node | None = None
        self.open: list[Node] = []
        self.documents = 0

    def take(self, next_event: Callable[[], Any]) -> None:
        """Build from the events until there is none. The loop over scalars is written out: a file is mostly scalars."""
        handlers = {yaml.AliasEvent: self._alias, yaml.DocumentStartEvent: self._document}
        scalar_event, mapping_start, sequence_start = yaml.ScalarEvent, yaml.MappingStartEvent, yaml.SequenceStartEvent
        ends = (yaml.MappingEndEvent, yaml.SequenceEndEvent)
        open_nodes, nodes, most, raw = self.open, 0, self.manner.most_nodes, self.manner.raw
        entries: dict[str, tuple[Scalar, Node]] | None = None  # of the open mapping
        items: list[Node] | None = None  # of the open list
        key: Scalar | None = None  # waiting for its value
        node: Node
        while (event := next_event()) is not None:
            kind = type(event)
            if kind is scalar_event:
                mark = event.start_mark
                text = event.value
                node = Scalar(text, mark.line + 1, mark.column + 1, event.implicit[0])
                if raw:
                    node.raw = self.text[mark.index : event.end_mark.index]
                if event.tag is not None or event.anchor is not None:
                    self._refuse_marks(event, node)
                if key is None and entries is not None:
                    if text in entries or text in _ODD_KEYS:
                        self._odd_key(node)
                    key = node
                    continue
                if text in _FOREIGN_NULLS and node.plain:
                    self._refuse_null(node)
            elif kind is mapping_start or kind is sequence_start:
                mark = event.start_mark
                node = (Mapping if kind is mapping_start else Sequence)(mark.line + 1, mark.column + 1)
                self._check_start(event, node, key is None and entries is not None)
            elif kind in ends:
                open_nodes.pop()
                entries, items = _inside(open_nodes[-1]) if open_nodes else (None, None)
                continue
            else:
                handle = handlers.get(kind)
                if handle is not None:
                    handle(event)
                continue
            nodes += 1
            if nodes > most:
                self._refuse_number(node)
            if key is not None and entries is not None:
                if key.text not in entries:
                    entries[key.text] = (key, node)
                key = None
            elif items is not None:
                items.append(node)
            else:
                self.root = node
            if kind is not scalar_event:
                open_nodes.append(node)
                entries, items = _inside(node)

    def _odd_key(self, key: Scalar) -> None:
        inside = self.open[-1]
        assert type(inside) is Mapping  # the loop asks only inside one
        first = inside.entries.get(key.text)
        if not key.text and key.plain:
            self._refuse_empty_key(inside, key)
        elif first is not None:
            self.problems.add(
                key,
                f"the key {shown(key.text)} stands twice, first at {first[0].line}:{first[0].column}",
                "keep one of the two, or give one another name",
            )
        elif key.text == "<<" and key.plain:
            self.problems.add(key, "`<<` merges mappings in other readers and does not here", self.manner.elsewhere)

    def _refuse_null(self, node: Scalar) -> None:
        self.problems.add(
            node, f"{shown(node.text)} is no value here", "write `none` for a decided absence, else `unknown`"
        )

    def _refuse_number(self, node: Node) -> None:
        self.problems.add(node, f"the file holds more than {self.manner.most_nodes:,} values", self.manner.one_file)
        raise _Stop

    def _refuse_empty_key(self, inside: Mapping, key: Scalar) -> None:
        lines = _LINE_END.split(self.text)
        for at in (key, inside):  # the parser points behind the `?`, or to it as the start of a mapping
            before = lines[at.line - 1][: at.column].rstrip(" :,]}")
            if before.endswith("?") and before[-2:-1] in _BEFORE_A_KEY:
                refuse_question(self.problems, at.line, len(before))
                raise _Stop
        self.problems.add(key, "a key is missing before the colon", "write `key: value`")
        raise _Stop

    def _check_start(self, event: Any, node: Node, is_key: bool) -> None:
        if event.tag is not None or event.anchor is not None:
            self._refuse_marks(event, node)
        if is_key:
            self.problems.add(node, "a list or mapping stands where a key belongs", "a key is a plain name")
            raise _Stop
        if len(self.open) >= self.manner.deepest:
            refuse_depth(self.problems, node.line, node.column, self.manner.deepest)
            raise _Stop

    def _alias(self, event: Any) -> None:
        node = Scalar("unknown", event.start_mark.line + 1, event.start_mark.column + 1)
        self.problems.add(node, f"{shown('*' + event.anchor)} is an alias, which is not read", self.manner.elsewhere)
        raise _Stop

    def _document(self, event: Any) -> None:
        self.documents += 1
        if self.documents > 1:
            at = Node(event.start_mark.line + 1, event.start_mark.column + 1)
            self.problems.add(at, "a second document starts here", f"drop the `---`; {self.manner.one_file}")
            raise _Stop

    def _refuse_marks(self, event: Any, node: Node) -> None:
        if event.anchor is not None:
            self.problems.add(
                node, f"{shown('&' + event.anchor)} is an anchor, which is not read", self.manner.elsewhere
            )
        if event.tag is not None:
            self.problems.add(
                node, f"{shown(event.tag)} is a tag, which is not read", "write the bare value; the key says its type"
            )


def _inside(node: Node) -> tuple[dict[str, tuple[Scalar, Node]] | None, list[Node] | None]:
    """The entries of a mapping, or the items of a list."""
    if type(node) is Mapping:
        return node.entries, None
    return None, node.items if type(node) is Sequence else None


def refuse_question(problems: Problems, line: int, column: int) -> None:
    """Note a bare `?`, which YAML takes for the start of a key."""
    problems.add(
        Node(line, column), "a bare `?` means something else in YAML", "write the word `unknown` (or '?' in quotes)"
    )


def refuse_depth(problems: Problems, line: int, column: int, deepest: int) -> None:
    """Note that the nesting goes too deep."""
    problems.add(
        Node(line, column), f"brackets or indents are nested more than {deepest} deep", "no entry needs more than eight"
    )


def parse_tree(text: str, problems: Problems, manner: Manner = PLAIN) -> Mapping | None:
    """The tree of `text`. What is wrong with its form goes to `problems`; None when nothing can be read of it."""
    builder = _build(text, problems, manner)
    if builder is None:
        return None
    root = builder.root
    if root is None or (type(root) is Scalar and not root.text and not problems.found):
        problems.add(Node(1, 1), "the file is empty", manner.starts)
        return None
    if type(root) is not Mapping:
        found = "a list" if type(root) is Sequence else "one text"
        problems.add(root, f"the file is {found}", f"it should hold keys and values: {manner.starts}")
        return None
    return root


def parse_fragment(text: str, where: str) -> Node:
    """The tree of a small piece of YAML, such as the value of an edit. Raises `SourceErrors`."""
    problems = Problems(where)
    builder = _build(text, problems, PLAIN)
    root = None if builder is None else builder.root
    if not problems.found and (root is None or (type(root) is Scalar and root.plain and not root.text)):
        problems.add(Node(1, 1), "there is no value here", "write the value, or `unknown`")
    if root is None or problems.found:
        raise SourceErrors(problems.found)
    return root


def _build(text: str, problems: Problems, manner: Manner) -> _Builder | None:
    """What the parser's events amount to, None when the text breaks off."""
    if not _printable(text, problems):
        return None
    builder = _Builder(problems, text, manner)
    try:
        builder.take(_LOADER(text).get_event)
    except _Stop:
        return None
    except yaml.YAMLError as error:
        from checker.source.syntax import note_syntax_error

        opened = builder.open[-1] if builder.open else None
        note_syntax_error(error, _LINE_END.split(text), problems, opened, manner.deepest)
        return None
    return builder


def _printable(text: str, problems: Problems) -> bool:
    found = _UNPRINTABLE.search(text)
    if found is None:
        return True
    lines = _LINE_END.split(text[: found.start()])
    problems.add(
        Node(len(lines), len(lines[-1]) + 1),
        f"the character U+{ord(found.group()):04X} does not belong in a text",
        "delete it and type the line again",
    )
    return False
