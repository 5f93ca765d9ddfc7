"""Each condition that a published requirement states is shown by an example made from a whole design."""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from checker.rulebook.conditions import Condition, read_conditions
from checker.rulebook.examples import Example
from tests.rules.test_examples import RULES_FOLDER, book, requirements

CONDITIONS = read_conditions(RULES_FOLDER / "conditions")
CASES = [pytest.param(one, id=f"{one.requirement}-{number}") for number, one in enumerate(CONDITIONS)]
ASKED = {id: row["topic"] for id, row in requirements().items() if row["decidable"] == "design"}


@cache
def examples() -> dict[tuple[str, str], Example]:
    """Rule and name of an example -> the example."""
    return {(rule.id, example.name): example for rule in book().rules for example in rule.examples}


@pytest.mark.parametrize("one", CASES)
def test_a_condition_is_shown_on_a_whole_design_by_a_rule_that_covers_its_requirement(one: Condition) -> None:
    assert ASKED.get(one.requirement) == one.topic, "not a requirement of this topic that a design decides"
    rule = next((rule for rule in book().rules if rule.id == one.rule), None)
    assert rule is not None, f"no rule {one.rule}"
    assert one.requirement in rule.covers, f"{one.rule} does not cover {one.requirement}"
    example = examples().get((one.rule, one.example))
    assert example is not None, f"{one.rule} has no example {one.example}"
    assert example.design, f"{one.example} of {one.rule} is made of facts, not of a design"


@pytest.mark.parametrize(
    "requirement", [id for id, topic in ASKED.items() if topic in {one.topic for one in CONDITIONS}]
)
def test_a_requirement_has_a_condition_that_can_be_broken(requirement: str) -> None:
    held = [one for one in CONDITIONS if one.requirement == requirement]
    assert any(examples()[one.rule, one.example].verdict == "breach" for one in held)


def test_no_condition_stands_twice() -> None:
    assert not [one for one, times in Counter(CONDITIONS).items() if times > 1]
