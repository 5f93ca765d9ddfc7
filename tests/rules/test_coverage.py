"""Each published requirement that a file can decide is decided from whole designs, one way and the other.

Facts given by hand show what an expression does; only a design shows that the facts it rests on can be had from a file.
"""

from __future__ import annotations

from collections import defaultdict
from functools import cache

import pytest

from tests.rules.test_examples import book, requirements

BOTH = ("met", "breach")

NEVER = {
    ("survey-opened-everything", "breach"): "what was not opened is asked for until somebody opens it",
    ("essential-loads-named", "breach"): "a file that names none and does not say so is asked",
    ("neutral-bar-free-of-earth", "met"): "a bar free of earth joins nothing, so that there is no bond to judge",
}
"""Verdicts that a rule cannot give on a whole design, and why."""


@cache
def shown() -> dict[str, set[str]]:
    """Verdicts that examples made from whole designs show, by rule."""
    found: dict[str, set[str]] = defaultdict(set)
    for rule in book().rules:
        found[rule.id] |= {example.verdict for example in rule.examples if example.design}
    return found


@pytest.mark.parametrize("rule", [rule.id for rule in book().rules])
def test_a_rule_is_met_and_broken_by_a_whole_design(rule: str) -> None:
    lacks = {verdict for verdict in BOTH if verdict not in shown()[rule] and (rule, verdict) not in NEVER}
    assert not lacks


def test_what_is_never_given_is_never_given() -> None:
    assert not [(rule, verdict) for rule, verdict in NEVER if verdict in shown()[rule]]


@pytest.mark.parametrize("requirement", [id for id, one in requirements().items() if one["decidable"] == "design"])
def test_a_requirement_is_met_and_broken_by_a_whole_design(requirement: str) -> None:
    verdicts = set().union(*(shown()[rule.id] for rule in book().rules if requirement in rule.covers))
    assert set(BOTH) <= verdicts
