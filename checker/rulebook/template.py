"""Sentences with places to fill in: `{{ conductor.area }}`, `{{ limits.voltage_drop }}`, `{{ device.rating }}`.

A placeholder names a fact of the subject, of the design or of what a loop of the rule is at, or a limit, or the
subject itself. It is checked like an expression. Nothing else is filled in and nothing is executed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, NamedTuple

from checker.rulebook.check import Checker
from checker.rulebook.nodes import Fact, Gather, Limit, Node, Variable
from checker.rulebook.syntax import ExpressionError, parse_expression

_PLACE = re.compile(r"\{\{(.*?)\}\}", re.DOTALL)

Loop = tuple[Gather, ...]
"""A loop and, before it, those it stands in, outermost first."""


class Slot(NamedTuple):
    """A placeholder: what it names, and the loop whose subjects it is about (empty for the rule's own subject)."""

    node: Node
    loop: Loop


Template = tuple[str | Slot, ...]


def loops_in(node: Node, outer: Loop = ()) -> dict[str, Loop]:
    """The first loop over each kind of subject in an expression."""
    found: dict[str, Loop] = {}
    inner = outer
    if isinstance(node, Gather) and node.variable is not None:
        inner = (*outer, node)
        found[node.variable.name] = inner
    for child in node.children():
        below = loops_in(child, outer if isinstance(node, Gather) and child is node.items else inner)
        for name, loop in below.items():
            found.setdefault(name, loop)
    return found


def read_template(
    text: str, about: str, catalogue: Any, limits: Mapping[str, Any], loops: Mapping[str, Loop]
) -> Template:
    """The text with its placeholders checked. Raises ExpressionError, its offset counted in `text`."""
    parts: list[str | Slot] = []
    end = 0
    for match in _PLACE.finditer(text):
        parts.append(text[end : match.start()])
        parts.append(_slot(match[1], match.start(1), about, catalogue, limits, loops))
        end = match.end()
    rest = text[end:]
    for mark in ("{{", "}}"):
        if mark in rest:
            raise ExpressionError(end + rest.index(mark), f"`{mark}` stands alone", "write `{{ subject.fact }}`")
    return tuple(part for part in (*parts, rest) if part != "")


def _slot(
    text: str, start: int, about: str, catalogue: Any, limits: Mapping[str, Any], loops: Mapping[str, Loop]
) -> Slot:
    try:
        tree, source = parse_expression(text)
        checker = Checker(source, about, catalogue, limits)
        for name, loop in loops.items():
            variable = loop[-1].variable
            if name not in checker.scope and variable is not None:
                checker.scope[name] = variable
        node = checker.visit(tree)
    except ExpressionError as error:
        raise ExpressionError(start + error.offset, error.what, error.right) from None
    if not isinstance(node, (Fact, Limit, Variable)):
        raise ExpressionError(start, "only a fact, a limit or a subject can be filled in", "write `{{ subject.fact }}`")
    root = _root(node)
    if root is not None and root.slot > 1:
        return Slot(node, loops[root.name])
    return Slot(node, ())


def _root(node: Node) -> Variable | None:
    while isinstance(node, Fact):
        node = node.base
    return node if isinstance(node, Variable) else None


__all__ = ["Loop", "Slot", "Template", "loops_in", "read_template"]
