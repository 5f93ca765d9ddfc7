"""Which facts of which subjects a rule looks at when it judges one subject."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.rulebook.judge import cause_of
from checker.rulebook.nodes import ABOUT_SLOT, DESIGN_SLOT, Fact, Gather, Limit, Node, Variable, walk

if TYPE_CHECKING:
    from checker.facts.subject import Step, Subject
    from checker.rulebook import Rule

Bound = Mapping[int, tuple[Any, ...]]
"""Variable slot to the subjects it stands for."""


class Broke(NamedTuple):
    """A fact that could not be computed, and why."""

    kind: str
    id: str
    name: str
    cause: str


def rule_steps(rule: Rule, subject: Subject, design: Any) -> tuple[Step | Broke, ...]:
    """How each fact that the rule names came about, in the order of its text, each once."""
    found: dict[tuple[str, str, str], Step | Broke] = {}
    bound: Bound = {ABOUT_SLOT: (subject,), DESIGN_SLOT: _only_subjects(design)}
    for tree in (rule.given_tree, rule.require_tree):
        for each, name in _facts(tree, bound):
            key = (each.kind, each.id, name)
            if key not in found:
                found[key] = _traced(each, name)
    return tuple(found.values())


def _traced(subject: Any, name: str) -> Step | Broke:
    from checker.facts.subject import trace

    try:
        return trace(subject, name)
    except Exception as error:  # noqa: BLE001 - a fact that breaks is shown as broken, the others still as they are
        return Broke(subject.kind, subject.id, name, cause_of(error))


def rule_limits(rule: Rule) -> tuple[str, ...]:
    """The names of the limits that the rule uses, in the order of its text."""
    nodes = [*walk(rule.given_tree), *walk(rule.require_tree)]
    return tuple(dict.fromkeys(node.name for node in nodes if isinstance(node, Limit)))


def _facts(node: Node, bound: Bound) -> Iterator[tuple[Any, str]]:
    if isinstance(node, Fact):
        yield from _facts(node.base, bound)
        for subject in _subjects(node.base, bound):
            yield subject, node.name
    elif isinstance(node, Gather):
        yield from _facts(node.items, bound)
        inner = bound if node.variable is None else {**bound, node.variable.slot: _subjects(node.items, bound)}
        for part in (node.condition, node.element):
            if part is not None:
                yield from _facts(part, inner)
    else:
        for child in node.children():
            yield from _facts(child, bound)


def _subjects(node: Node, bound: Bound) -> tuple[Any, ...]:
    """The subjects that a variable or a fact stands for; none where they are unknown or decided to be none."""
    if isinstance(node, Variable):
        return bound[node.slot]
    if not isinstance(node, Fact):
        return ()
    found: list[Any] = []
    for base in _subjects(node.base, bound):
        try:
            value = getattr(base, node.name)
        except Exception:  # noqa: BLE001 - `_traced` tells the cause for the same fact
            continue
        found.extend(value if isinstance(value, tuple) else [value])
    return _only_subjects(*found)


def _only_subjects(*values: Any) -> tuple[Any, ...]:
    """Those that are subjects, not unknown and not decided absence."""
    return tuple(each for each in values if hasattr(each, "kind") and hasattr(each, "id"))
