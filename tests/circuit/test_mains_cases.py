"""Small mains circuits with the states, links of neutral and earth and verdicts that published rules ask for."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

import checker.facts  # noqa: F401 - fills the catalogue
from checker.circuit.feeding import neutral_links
from checker.facts.mains import states_of
from checker.facts.subject import Facts
from checker.reports.explanation import design_subject, verdicts
from checker.rulebook import Rulebook, load_rulebook
from tests.circuit.mains_designs import changed_at

CASES: list[dict[str, Any]] = yaml.safe_load((Path(__file__).parent / "mains_cases.yaml").read_text("utf-8"))


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def facts_of(case: dict[str, Any]) -> Facts:
    return Facts(changed_at(case["base"], case.get("with", {})))


def test_there_are_at_least_forty_each_with_its_source() -> None:
    assert len(CASES) >= 40
    assert len({case["name"] for case in CASES}) == len(CASES)
    marks = ("(seen)", "from memory", "no source")
    assert all(any(mark in case["source"] for mark in marks) for case in CASES)


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_states_and_links(case: dict[str, Any]) -> None:
    states = states_of(facts_of(case)).states
    assert len(states) == case["states"]
    found: dict[str, list[int]] = {}
    for state in states:
        for feed in state.feeding:
            least, most = neutral_links(state, feed)
            known = found.setdefault(feed.name, [least, most])
            found[feed.name] = [min(known[0], least), max(known[1], most)]
    assert {name: found[name] for name in case["links"]} == case["links"]


@pytest.mark.parametrize("case", [case for case in CASES if case["verdicts"]], ids=lambda case: str(case["name"]))
def test_verdicts(case: dict[str, Any], rulebook: Rulebook) -> None:
    facts = facts_of(case)
    limits = rulebook.limits_for("intl")
    found = {}
    for name in case["verdicts"]:
        rule_id, subject = name.split(" ", 1)
        rule = rulebook.by_id[rule_id]
        judged = verdicts(design_subject(facts), rule, facts.subjects(rule.about), limits, [])
        found[name] = {one.id: verdict for one, verdict in judged}[subject]
    assert found == case["verdicts"]
