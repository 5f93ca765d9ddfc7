"""A condition of a rule in words, for people who read no expressions."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.rulebook.nodes import (
    Arithmetic,
    Comparison,
    Const,
    Fact,
    Gather,
    Limit,
    Logic,
    Member,
    Negative,
    Node,
    Not,
    Variable,
)
from checker.rulebook.types import SUBJECT, WINDOW, YES_NO

COMPARED = {
    "<": "is below", "<=": "is at most", ">": "is above", ">=": "is at least", "==": "is", "!=": "is not",
}  # fmt: skip
COMPUTED = {"+": "plus", "-": "minus", "*": "times", "/": "over"}
GATHERED = {"every": "for every", "some": "for at least one", "none": "for no"}
RECKONED = {"count": "the number of", "sum": "the sum", "min": "the least", "max": "the greatest"}
VERBS = frozenset(
    (
        "is", "has", "can", "may", "opens", "isolates", "stands", "works", "feeds", "holds", "keeps", "reaches",
        "needs", "agrees", "bonds", "breaks", "carries", "charges", "equalises", "endures", "fits", "gives", "goes",
        "guards", "hangs", "inhibits", "joins", "leaves", "limits", "makes", "meets", "parts", "passes", "runs",
        "senses", "serves", "shares", "shows", "spares", "sparks", "stays", "steps", "stops", "survives", "takes",
        "withstands", "divides", "blocks", "covers", "drains",
    )
)  # fmt: skip
"""First words of names of yes/no facts that follow a subject as they are, such as `charges lithium`."""
NOUNS = frozenset(("covers inspected", "drains inspected", "parts inspected"))
STATES = frozenset(
    (
        "approved", "beside", "chambered", "charged", "clamped", "covered", "crimped", "described", "detected",
        "enclosed", "fed", "from", "fused", "harmed", "in", "inside", "insulated", "keyed", "licensed", "like",
        "listed", "marked", "off", "on", "open", "opened", "outdoors", "outside", "over", "polarised", "powered",
        "reached", "restrained", "sealed", "shared", "sharp", "sheathed", "shielded", "smart", "splashed", "to",
        "under", "upright", "well", "woken",
    )
)  # fmt: skip
"""First words that follow a subject and `is`, such as `sealed from living`."""


def in_words(node: Node) -> str:
    """The node as part of an English sentence; names of facts with their underscores taken out."""
    return _WORDS[type(node)](node)


def spoken(name: str) -> str:
    """A name without underscores."""
    return name.replace("_", " ")


def _part(node: Node) -> str:
    """In brackets where it would run into its neighbour."""
    text = in_words(node)
    return f"({text})" if isinstance(node, (Logic, Gather)) and node.type.name == YES_NO else text


def _variable(node: Variable) -> str:
    return f"the {spoken(node.name)}"


def _fact(node: Fact) -> str:
    words, base = spoken(node.name), in_words(node.base)
    if node.type.name != YES_NO:
        return f"the {words} of {base}"
    first = words.split()[0]
    if first in STATES:
        return f"{base} is {words}"
    return f"{base} {words}" if first in VERBS and words not in NOUNS else f"{base}: {words}"


def _limit(node: Limit) -> str:
    return f"the limit *{spoken(node.name)}*"


def _const(node: Const) -> str:
    if node.value is None:
        return "none"
    if isinstance(node.value, bool):
        return "yes" if node.value else "no"
    if isinstance(node.value, tuple):
        words = [str(word) for word in node.value]
        return " or ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else "".join(words)
    return node.text.strip("'\"")


def _logic(node: Logic) -> str:
    return f", {node.op} ".join(_part(part) for part in node.parts)


def _not(node: Not) -> str:
    return f"it is not so that {_part(node.part)}"


def _negative(node: Negative) -> str:
    return f"minus {in_words(node.part)}"


def _arithmetic(node: Arithmetic) -> str:
    return f"{_side(node.left)} {COMPUTED[node.op]} {_side(node.right)}"


def _side(node: Node) -> str:
    return f"({in_words(node)})" if isinstance(node, Arithmetic) else in_words(node)


def _comparison(node: Comparison) -> str:
    return f"{in_words(node.left)} {COMPARED[node.op]} {in_words(node.right)}"


def _member(node: Member) -> str:
    if node.group.type.name == WINDOW:
        joint = "lies within"
    else:
        joint = "is among" if node.item.type.name == SUBJECT or not isinstance(node.group, Const) else "is"
    return f"{in_words(node.item)} {joint} {in_words(node.group)}"


def _gather(node: Gather) -> str:
    items = in_words(node.items)
    if node.variable is None:
        return f"{RECKONED[node.function]} {items}"
    where = f" where {_part(node.condition)}" if node.condition is not None else ""
    among = f"{spoken(node.variable.name)} among {items}{where}"
    if node.function in GATHERED:
        holds = in_words(node.element) if node.element is not None else "there is one"
        return f"{GATHERED[node.function]} {among}: {holds}"
    if node.function == "count":
        kept = f" for which {_part(node.element)}" if node.element is not None else ""
        return f"the number of each {among}{kept}"
    of = in_words(node.element) if node.element is not None else "one"
    return f"{RECKONED[node.function]} of {of} over each {among}"


_WORDS: dict[type[Node], Callable[[Any], str]] = {
    Variable: _variable, Fact: _fact, Limit: _limit, Const: _const, Logic: _logic, Not: _not, Negative: _negative,
    Arithmetic: _arithmetic, Comparison: _comparison, Member: _member, Gather: _gather,
}  # fmt: skip
