"""What the properties compare: the verdict of every rule on every subject, unexplained, and the values of a file."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from typing import NamedTuple

from checker.design.model import Design
from checker.facts.subject import Facts
from checker.review.run import code_of
from checker.rulebook import Broken, Rulebook, judge, load_rulebook
from checker.source.problems import Problems
from checker.source.tree import Mapping, Node, Scalar, parse_tree

Pair = tuple[str, str, str]
"""Rule, kind of subject, id of subject."""


@cache
def rulebook() -> Rulebook:
    """The shipped rules, loaded once."""
    return load_rulebook()


def verdicts(design: Design) -> dict[Pair, str]:
    """The verdict of every pair. What breaks is an error here: a property holds for what is computed."""
    facts = Facts(design)
    book = rulebook()
    limits = dict(book.limits_for(code_of(design)))
    whole = facts.subjects("design")[0]
    broken: list[Broken] = []
    found: dict[Pair, str] = {}
    for rule in book.rules:
        subjects = facts.subjects(rule.about)
        for subject, verdict in zip(subjects, judge(rule, subjects, whole, limits, broken), strict=True):
            found[rule.id, subject.kind, subject.id] = verdict
    assert not broken, broken[0]
    return found


class Leaf(NamedTuple):
    """A value written in a design file: dotted path and text."""

    path: str
    text: str


def leaves(text: str) -> list[Leaf]:
    """Every scalar of a design file, in file order, head lines left out."""
    tree = parse_tree(text, Problems("<text>"))
    assert tree is not None
    return [leaf for leaf in _walk(tree, ()) if leaf.path.split(".")[0] not in ("fitout", "title", "date")]


def _walk(node: Node, path: Sequence[str]) -> Iterator[Leaf]:
    if isinstance(node, Scalar):
        yield Leaf(".".join(path), node.text)
    elif isinstance(node, Mapping):
        for key, (_, value) in node.entries.items():
            yield from _walk(value, (*path, key))
    else:
        for number, item in enumerate(getattr(node, "items", ())):
            yield from _walk(item, (*path, str(number)))


QUANTITY = re.compile(r"(-?\d+(?:\.\d+)?)( ?[^\d\s.].*)?")


def exact(text: str) -> tuple[float, str] | None:
    """Number and unit of a text that is one plain quantity, else None."""
    found = QUANTITY.fullmatch(text)
    if found is None or ".." in text or "±" in text:
        return None
    return float(found.group(1)), found.group(2) or ""
