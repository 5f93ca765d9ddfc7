"""Values as a fitter writes them, and facts as one speaks of them."""

from __future__ import annotations

from typing import Any

from checker.quantities import Range, Unknown, Window, show
from checker.rulebook.nodes import Arithmetic, Comparison, Const, Fact, Gather, Limit, Member, Negative, Node, Variable
from checker.rulebook.types import LIST, NUMBER, WINDOW, Type
from checker.rulebook.walk import Scene, evaluate

MOST_LISTED = 8


def value_text(value: Any, kind: Type) -> str:
    """The value in words; the same value gives the same words everywhere."""
    if value is None:
        return "none"
    if type(value) is Unknown:
        return "unknown"
    if kind.name in (NUMBER, WINDOW):
        return show(value, kind.unit) if kind.unit else _bare(value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return _list(value, kind)
    if isinstance(value, str):
        return value
    return str(getattr(value, "id", value))


def _bare(value: Any) -> str:
    """A number whose dimension has no unit in the table."""
    if type(value) in (Range, Window):
        return f"{value.low:.4g}..{value.high:.4g} (SI)"
    return f"{value:.4g} (SI)"


def _list(items: tuple[Any, ...], kind: Type) -> str:
    if not items:
        return "nothing" if kind.name == LIST else "none of the words"
    names = [item if isinstance(item, str) else str(getattr(item, "id", item)) for item in items]
    more = len(names) - MOST_LISTED
    return ", ".join(names[:MOST_LISTED]) + (f" and {more} more" if more > 0 else "")


def plain_name(name: str) -> str:
    """A fact or limit as words: `carrying_capacity` is `carrying capacity`."""
    return name.replace("_", " ")


def spoken(node: Node, scene: Scene, text: str) -> str:
    """What the node stands for, without its value: `carrying capacity of galley-feed`."""
    if isinstance(node, Fact):
        base = evaluate(node.base, scene)
        if base is None or type(base) is Unknown:
            return f"{plain_name(node.name)} of the {spoken(node.base, scene, text)}"
        return f"{plain_name(node.name)} of {value_text(base, node.base.type)}"
    if isinstance(node, Limit):
        return f"limit for {plain_name(node.name)}"
    if isinstance(node, Variable):
        return value_text(scene.subjects[node.slot], node.type)
    return text[node.span[0] : node.span[1]]


def with_values(node: Node, scene: Scene, text: str) -> str:
    """The expression as written, every fact and limit followed by its value in brackets."""
    if isinstance(node, Const):
        return text[node.span[0] : node.span[1]]
    if isinstance(node, Comparison):
        return f"{with_values(node.left, scene, text)} {node.op} {with_values(node.right, scene, text)}"
    if isinstance(node, Member):
        return f"{with_values(node.item, scene, text)} in {with_values(node.group, scene, text)}"
    if isinstance(node, Arithmetic):
        left, right = with_values(node.left, scene, text), with_values(node.right, scene, text)
        return f"({left} {node.op} {right} = {value_text(evaluate(node, scene), node.type)})"
    if isinstance(node, Negative):
        return f"-{with_values(node.part, scene, text)}"
    if isinstance(node, (Fact, Limit, Variable, Gather)):
        return f"{text[node.span[0] : node.span[1]]} ({value_text(evaluate(node, scene), node.type)})"
    return text[node.span[0] : node.span[1]]


def answer(value: Any) -> str:
    """yes, no or undecided."""
    if type(value) is Unknown:
        return "undecided"
    return "yes" if value else "no"
