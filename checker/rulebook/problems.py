"""What is wrong with a rule file: where, what, and what would be right."""

from __future__ import annotations

from collections.abc import Iterable

from checker.source import problems
from checker.source.nearest import nearest
from checker.source.problems import Problem as RuleProblem
from checker.source.problems import SourceErrors, listed, shown

__all__ = ["Problems", "RuleErrors", "RuleProblem", "fact_meant", "listed", "meant", "shown"]


class RuleErrors(SourceErrors):
    """Everything that is wrong with the rule files, by file and place."""


class Problems(problems.Problems):
    """Collects the problems of one rule file while it is read on."""

    errors = RuleErrors


def meant(name: str, options: Iterable[str], otherwise: str) -> str:
    """`did you mean ...?` when a right name lies near, else `otherwise`."""
    near = nearest(name, sorted(options))
    return otherwise if near is None else f"did you mean `{near}`?"


def fact_meant(name: str, facts: Iterable[str]) -> str:
    """The fact meant by a wrong name; where none is spelt like it, those that share a word with it come first."""
    words = set(name.split("_"))
    likely = sorted(facts, key=lambda fact: (-len(words & set(fact.split("_"))), fact))
    return meant(name, likely, f"there are {listed(likely, 12)}, all told in `docs/facts.md`")
