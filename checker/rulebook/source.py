"""The tree of a rule file, and where in the file a character of one of its texts stands."""

from __future__ import annotations

from checker.rulebook.problems import Problems
from checker.source.tree import Manner, parse_tree
from checker.source.tree import Mapping as Map
from checker.source.tree import Node as Place
from checker.source.tree import Scalar as Text
from checker.source.tree import Sequence as Items

__all__ = ["Items", "Map", "Node", "Place", "Text", "load_tree", "place_in"]

Node = Place

LARGEST = 128 * 1024
"""Bytes of the largest rule file that is read; an ordinary one has 3,000."""

RULE = Manner(
    starts="start with a key such as `id: name-of-the-duty`",
    one_file="one file is one rule",
    deepest=12,
    most_nodes=10_000,
    raw=True,
)


def load_tree(data: bytes, problems: Problems) -> Map | None:
    """The tree of the file's bytes; what is wrong goes to `problems`. None when it cannot be used at all."""
    text = _decoded(data, problems)
    tree = None if text is None else parse_tree(text, problems, RULE)
    return None if problems.found else tree


def _decoded(data: bytes, problems: Problems) -> str | None:
    if len(data) > LARGEST:
        problems.add(Place(1, 1), f"the file is {len(data):,} bytes, more than {LARGEST:,}", RULE.one_file)
        return None
    try:
        return data.removeprefix(b"\xef\xbb\xbf").decode("utf-8").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        problems.add(Place(line, 1), f"the byte 0x{data[error.start]:02X} is not UTF-8", "save the file as UTF-8")
        return None


def place_in(text: Text, offset: int) -> Place:
    """Where in the file the character `offset` of a text stands, quotes, folds and indents counted."""
    raw, at = text.raw, 0
    if raw[:1] in "'\"":
        at = 1
    elif raw[:1] in ">|":
        at = raw.find("\n") + 1
    for letter in text.text[:offset]:
        at = _after(raw, at, letter)
    while at < len(raw) and raw[at].isspace() and not text.text[offset : offset + 1].isspace():
        at += 1
    before = raw[:at].split("\n")
    if len(before) == 1:
        return Place(text.line, text.column + at)
    return Place(text.line + len(before) - 1, len(before[-1]) + 1)


def _after(raw: str, at: int, letter: str) -> int:
    """The index in `raw` behind the sign that gave `letter`; a fold or indent is as wide as it stands."""
    if letter.isspace():
        while at < len(raw) and raw[at].isspace():
            at += 1
        return at
    while at < len(raw) and raw[at].isspace():
        at += 1
    return at + (2 if raw.startswith("''", at) and letter == "'" else 1)
