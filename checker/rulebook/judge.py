"""The verdicts of one rule on its subjects."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

from checker.rulebook.examples import Example
from checker.rulebook.rule import Rule
from checker.rulebook.walk import Scene, decide

WORTH_COMPILING = 8
"""Compiling a rule takes as long as walking over its tree for about so many subjects."""


class Broken(NamedTuple):
    """A fact or rule that broke on one subject: the pair is unproven, `cause` says why."""

    rule: str
    kind: str
    id: str
    cause: str


def judge(
    rule: Rule, subjects: Sequence[Any], design: Any, limits: Mapping[str, Any], broken: list[Broken]
) -> list[str]:
    """A verdict for each subject. What breaks is unproven and goes to `broken`; it never ends a review."""

    def crashed(subject: Any, error: Exception) -> str:
        broken.append(Broken(rule.text.id, subject.kind, subject.id, cause_of(error)))
        return "unproven"

    if len(subjects) < WORTH_COMPILING:
        return [_walked(rule, subject, design, limits, crashed) for subject in subjects]
    return rule.quick(subjects, design, limits, lambda rest: rule.careful(rest, design, limits, crashed))


def _walked(
    rule: Rule, subject: Any, design: Any, limits: Mapping[str, Any], crashed: Callable[[Any, Exception], str]
) -> str:
    """The verdict for one subject without compiling the rule."""
    try:
        return decide(rule.given_tree, rule.require_tree, Scene((subject, design), limits))
    except Exception as error:  # noqa: BLE001 - whatever a fact raises, the pair is unproven and the cause is told
        return crashed(subject, error)


def cause_of(error: Exception) -> str:
    """The first line of an exception, in one sentence."""
    said = str(error).strip().splitlines()
    return f"{type(error).__name__}: {said[0][:200]}" if said else type(error).__name__


def judge_example(rule: Rule, example: Example, limits: Mapping[str, Any]) -> str:
    """The verdict on an example made of facts, under the limits of its code and those it gives itself.

    Raises ValueError for an example that is a design, and whatever the rule raises.
    """
    if example.subject is None:
        raise ValueError(f"the example {example.name} is a design, not a set of facts")
    merged = {**limits, **example.limits}
    broken: list[Broken] = []
    verdict = judge(rule, [example.subject], example.design_subject, merged, broken)[0]
    if broken:
        raise ValueError(f"the example {example.name} broke: {broken[0].cause}")
    return verdict
