"""Which facts a rule looks at, found from its checked expression."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.facts.subject import Facts, Step
from checker.reading import read_design
from checker.reports.rule_facts import Broke, rule_limits, rule_steps
from checker.rulebook import Rulebook, load_rulebook

COMMANDS = Path(__file__).parents[1] / "commands"
VAN = read_design(str(COMMANDS / "gravel-van.fitout.yaml"))


@pytest.fixture(scope="module")
def house() -> Rulebook:
    """The rules of the command tests alone, under the shipped limits."""
    return load_rulebook(base=COMMANDS / "house")


def names(steps: tuple[Any, ...]) -> list[tuple[str, str]]:
    return [(step.name, step.subject_id) for step in steps]


def test_facts_of_the_subject_and_of_what_a_loop_runs_over_come_in_the_order_of_the_text(house: Rulebook) -> None:
    facts = Facts(VAN)
    steps = rule_steps(house.by_id["house-capacity"], facts.subject("device", "F1"), None)
    assert names(steps) == [
        ("device.opens_on_overcurrent", "F1"),
        ("device.protects", "F1"),
        ("device.rating", "F1"),
        ("conductor.carrying_capacity", "main"),
    ]
    assert all(isinstance(step, Step) for step in steps)


def test_a_fact_of_a_fact_is_followed(house: Rulebook) -> None:
    steps = rule_steps(house.by_id["house-thinnest"], Facts(VAN).subject("circuit", "lamp-feed"), None)
    assert names(steps) == [
        ("circuit.is_final", "lamp-feed"), ("circuit.live", "lamp-feed"), ("conductor.area", "lamp-feed"),
    ]  # fmt: skip


def test_a_fact_that_breaks_is_named_with_its_cause_and_stops_nothing(
    house: Rulebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    from checker.facts.catalogue import CATALOGUE

    def broken(_: object) -> float:
        raise ZeroDivisionError("division by zero")

    monkeypatch.setattr(CATALOGUE.find("device", "protects"), "function", broken)
    steps = rule_steps(house.by_id["house-capacity"], Facts(VAN).subject("device", "F1"), None)
    assert steps[1] == Broke("device", "F1", "protects", "ZeroDivisionError: division by zero")
    assert [step.name for step in steps] == ["device.opens_on_overcurrent", "protects", "device.rating"]


def test_a_rule_names_its_limits_once(tmp_path: Path) -> None:
    rulebook = load_rulebook()
    named = {rule.id: rule_limits(rule) for rule in rulebook.rules}
    for rule in rulebook.rules:
        assert set(named[rule.id]) == {name for name in rulebook.limits if f"limits.{name}" in _words(rule)}
    assert any(named.values())


def _words(rule: Any) -> set[str]:
    import re

    return set(re.findall(r"limits\.\w+", f"{rule.given} {rule.require}"))
