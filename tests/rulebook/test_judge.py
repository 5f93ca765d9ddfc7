"""A rule put to subjects: what breaks is unproven and told, the rest goes on."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.rulebook import Broken, Rule, judge, judge_example, load_rulebook
from checker.rulebook.judge import WORTH_COMPILING
from tests.rulebook.small import Thing, rule_text, small_catalogue, write_rules


class Crashing(Thing):
    """A subject whose capacity cannot be computed."""

    @property
    def capacity(self) -> float:
        raise ZeroDivisionError("division by zero\nsecond line")


@pytest.fixture
def rule(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Rule:
    monkeypatch.setenv("FITOUT_CACHE", "none")
    return load_rulebook(catalogue=small_catalogue(), base=write_rules(tmp_path, rule_text())).rules[0]


def devices(*ratings: float) -> Any:
    return tuple(Thing("device", str(at), rating=rating) for at, rating in enumerate(ratings))


def test_each_subject_gets_one_verdict_in_order(rule: Rule) -> None:
    things = [
        Thing("conductor", "a", is_live=True, capacity=30.0, protected_by=devices(40.0, 20.0)),
        Thing("conductor", "b", is_live=True, capacity=30.0, protected_by=devices(40.0)),
        Thing("conductor", "c", is_live=True, capacity=30.0),
        Thing("conductor", "d", is_live=False),
    ]
    assert judge(rule, things, Thing("design"), {}, []) == ["met", "breach", "unproven", "not applicable"]


def test_a_crash_is_unproven_and_its_cause_is_told(rule: Rule) -> None:
    things = [
        Crashing("conductor", "a", is_live=True, protected_by=devices(40.0)),
        Thing("conductor", "b", is_live=True, capacity=30.0, protected_by=devices(10.0)),
    ]
    broken: list[Broken] = []
    assert judge(rule, things, Thing("design"), {}, broken) == ["unproven", "met"]
    assert broken == [Broken("device-protects-conductor", "conductor", "a", "ZeroDivisionError: division by zero")]


def test_a_crash_is_never_taken_for_met_by_what_stands_before_it(rule: Rule) -> None:
    thing = Crashing("conductor", "a", is_live=False)
    broken: list[Broken] = []
    assert judge(rule, [thing], Thing("design"), {}, broken) == ["not applicable"]
    assert not broken


def test_no_subjects_no_verdicts(rule: Rule) -> None:
    assert judge(rule, [], Thing("design"), {}, []) == []
    assert "quick" not in rule.__dict__, "a rule without subjects is not even compiled"


def test_few_subjects_and_many_get_the_same_verdicts(rule: Rule) -> None:
    ratings = [float(rating) for rating in range(25, 25 + 2 * WORTH_COMPILING)]
    things = [Thing("conductor", str(r), is_live=True, capacity=30.0, protected_by=devices(r)) for r in ratings]
    many = judge(rule, things, Thing("design"), {}, [])
    assert "quick" in rule.__dict__
    assert [judge(rule, [thing], Thing("design"), {}, [])[0] for thing in things] == many
    assert many == ["met"] * 6 + ["breach"] * (2 * WORTH_COMPILING - 6)


def test_a_crash_among_many_is_unproven_and_the_others_are_judged(rule: Rule) -> None:
    good = [
        Thing("conductor", str(at), is_live=True, capacity=30.0, protected_by=devices(10.0))
        for at in range(WORTH_COMPILING)
    ]
    broken: list[Broken] = []
    found = judge(rule, [*good, Crashing("conductor", "x", is_live=True, protected_by=devices(1.0))], None, {}, broken)
    assert found == ["met"] * WORTH_COMPILING + ["unproven"]
    assert [one.id for one in broken] == ["x"]


def test_an_example_of_facts_gets_its_verdict(rule: Rule) -> None:
    assert [judge_example(rule, one, {}) for one in rule.examples] == ["met", "breach", "unproven", "not applicable"]


def test_the_limits_of_an_example_stand_before_those_of_the_code(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("FITOUT_CACHE", "none")
    shown = """
  met: [{name: own, facts: {conductor.length: 1 m, limits.reach: 2 m}}]
  breach: [{name: of-the-code, facts: {conductor.length: 1 m}, code: eu}]
  unproven: [{name: no-limit, facts: {conductor.length: 1 m}}]"""
    text = rule_text(drop=["given"], require="conductor.length <= limits.reach", mend="Less.", examples=shown)
    book = load_rulebook(catalogue=small_catalogue(), base=write_rules(tmp_path, text))
    rule = book.rules[0]
    for example in rule.examples:
        assert judge_example(rule, example, book.limits_for(example.code or "intl")) == example.verdict
