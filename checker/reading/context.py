"""What the parts of the reader share while one file is read."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from checker.design.given import Where
from checker.design.item import Item
from checker.design.model import Equipment
from checker.design.vocabulary import kind
from checker.design.vocabulary.key import Kind
from checker.source.problems import Problems, listed, shown
from checker.source.tree import Mapping, Node, Scalar, Sequence

ANYTHING = "anything"
NAMED = (
    "equipment",
    "places",
    "passes",
    "moving",
    "circuits",
    "cables",
    "parts",
    "looms",
    "modes",
    "people",
    "services",
)


_new = tuple.__new__


def kind_in(section: str, name: str) -> Kind:
    """The kind called `name` that stands in `section`. Raises `KeyError` when the vocabulary has none."""
    found = kind(name, section)
    if found is None:
        raise KeyError(f"the vocabulary has no kind `{name}` in `{section}`")
    return found


def where(node: Node) -> Where:
    """The place of `node`. Made without the checks of a call to `Where`, for every value has one."""
    return _new(Where, (node.line, node.column))


class Context:
    """The tree, the problems found so far, the names in each section, and what has been read already.

    `equipment` grows while equipment is read; checks of ports wait in `later` until all of it is known.
    """

    def __init__(self, file: str, tree: Mapping, problems: Problems) -> None:
        self.file = file
        self.tree = tree
        self.problems = problems
        self.names: dict[str, dict[str, Scalar]] = {section: self._names(section) for section in NAMED}
        self.names["equipment"].update(self._names("joints"))
        self.equipment: dict[str, Equipment] = {}
        self.parts: dict[str, Equipment] = {}
        self.cables: dict[str, Item] = {}
        self.ways: dict[str, Equipment] = {}
        self.ports: dict[str, dict[str, tuple[str, ...]]] = {}  # of equipment, as far as asked for
        self.later: list[Callable[[], None]] = []

    def _names(self, section: str) -> dict[str, Scalar]:
        node = self.tree.get(section)
        return {name: key for name, (key, _) in node.entries.items()} if type(node) is Mapping else {}

    def check_name(self, section: str, node: Node, name: str, words: Iterable[str] = ()) -> bool:
        """Whether `name` stands in `section`; notes a problem at `node` when it does not."""
        known = self.names.get(section)
        if known is None:
            raise KeyError(f"the vocabulary names a section that has no names: {section}")
        if name in known:
            return True
        options = (*known, *words)
        self.problems.add(
            node, f"there is no {shown(name)} in {section}", self.problems.meant(name, options, _there(section, known))
        )
        return False

    def mapping(self, node: Node, kind: str, name: str = "") -> Mapping | None:
        """`node` as a mapping; notes a problem and gives None when it is something else."""
        if type(node) is Mapping:
            return node
        what = f"{kind} {shown(name)}".strip() if name else kind
        self.problems.add(node, f"{what} is {form(node)}", "write keys and values: `{key: value, ...}`")
        return None

    def expect_scalar(self, node: Node, what: str) -> Scalar | None:
        """`node` as a text; notes a problem and gives None when it is something else or empty."""
        if type(node) is Scalar:
            if node.text or not node.plain:
                return node
            self.problems.add(node, f"{what} has no value", "write the value, or `unknown`")
            return None
        self.problems.add(node, f"{what} is {form(node)}", "write one value")
        return None


def _there(section: str, known: Iterable[str]) -> str:
    some = listed(known, 12)
    return f"there is {some}" if some else f"name it under `{section}:`"


def form(node: Node) -> str:
    """What `node` is, in words."""
    if type(node) is Mapping:
        return "a mapping"
    if type(node) is Sequence:
        return "a list"
    text: Any = node.text if type(node) is Scalar else ""
    return f"the text {shown(text)}" if text else "empty"
