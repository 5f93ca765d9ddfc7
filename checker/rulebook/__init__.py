"""Rule files: read, checked against the catalogue of facts, compiled, and put to subjects."""

from __future__ import annotations

from checker.rulebook.judge import Broken, judge, judge_example
from checker.rulebook.limits import Limits
from checker.rulebook.load import Rulebook, load_rulebook
from checker.rulebook.problems import RuleErrors, RuleProblem
from checker.rulebook.rule import Rule

__all__ = [
    "Broken", "Limits", "Rule", "RuleErrors", "RuleProblem", "Rulebook", "judge", "judge_example", "load_rulebook",
]  # fmt: skip
