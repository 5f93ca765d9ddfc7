"""Every example of every rule is a test; nothing is copied from a rule file into here."""

from __future__ import annotations

import csv
import re
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.review.examples import example_verdict
from checker.rulebook import Rule, Rulebook, load_rulebook
from checker.rulebook.examples import Example
from checker.rulebook.keys import NAME, ORDER, SIGNALS
from checker.shipped import shipped

RULES_FOLDER = Path(str(shipped("rules")))


@cache
def book() -> Rulebook:
    """The shipped rules, read from their files."""
    patch = pytest.MonkeyPatch()
    with patch.context() as context:
        context.setenv("FITOUT_CACHE", "none")
        return load_rulebook()


@cache
def requirements() -> dict[str, dict[str, str]]:
    """The requirements catalogue by id."""
    with (RULES_FOLDER / "requirements.csv").open(encoding="utf-8", newline="") as stream:
        return {row["id"]: row for row in csv.DictReader(stream)}


RULES = [pytest.param(rule, id=rule.id) for rule in book().rules]
CASES = [
    pytest.param(rule, example, id=f"{rule.id}-{example.verdict.replace(' ', '-')}-{example.name}")
    for rule in book().rules
    for example in rule.examples
]


@pytest.mark.parametrize(("rule", "example"), CASES)
def test_an_example_gets_the_verdict_it_stands_under(rule: Rule, example: Example) -> None:
    assert example_verdict(rule, example, book()) == example.verdict, f"{example.file}:{example.line}"


@pytest.mark.parametrize("rule", RULES)
def test_a_rule_shows_met_breach_and_unproven(rule: Rule) -> None:
    shown = Counter(example.verdict for example in rule.examples)
    assert {"met", "breach", "unproven"} <= set(shown)


@pytest.mark.parametrize("rule", RULES)
def test_a_file_is_called_like_its_rule_and_lies_in_a_folder_called_like_a_topic(rule: Rule) -> None:
    folder, file = rule.file.split("/")[-2:]
    assert file == f"{rule.id}.yaml"
    assert folder == rule.topic
    assert rule.topic in {row["topic"] for row in requirements().values()}


@pytest.mark.parametrize("rule", RULES)
def test_the_keys_of_a_rule_stand_in_the_usual_order(rule: Rule) -> None:
    text = (RULES_FOLDER / rule.topic / f"{rule.id}.yaml").read_text("utf-8")
    keys = re.findall(r"^([a-z]+):", text, re.MULTILINE)
    assert keys == [key for key in ORDER if key in keys]


@pytest.mark.parametrize("rule", RULES)
def test_what_a_rule_covers_is_in_the_requirements_catalogue(rule: Rule) -> None:
    assert set(rule.covers) <= set(requirements())


@pytest.mark.parametrize("rule", RULES)
def test_an_id_names_a_duty_without_signal_or_clause(rule: Rule) -> None:
    assert re.fullmatch(NAME, rule.id)
    assert not set(rule.id.split("-")) & set(SIGNALS)
    assert not re.search(r"\d{3}", rule.id)


@pytest.mark.parametrize("rule", RULES)
def test_the_placeholders_of_a_rule_name_facts(rule: Rule) -> None:
    assert isinstance(rule.says_parts, tuple)
    assert rule.mend_parts


def test_no_two_rules_have_one_title() -> None:
    titles = Counter(rule.title.lower() for rule in book().rules)
    assert [title for title, count in titles.items() if count > 1] == []


def test_at_least_half_of_the_rules_walk_the_road_from_a_design_to_the_verdict() -> None:
    walked = [rule.id for rule in book().rules if any(example.design for example in rule.examples)]
    assert 2 * len(walked) >= len(book().rules)


def test_the_rules_show_what_is_right_as_often_as_half_of_what_is_wrong() -> None:
    shown = Counter(example.verdict for rule in book().rules for example in rule.examples)
    assert shown["met"] >= shown["breach"] / 2, "a checker that cries wolf is switched off: show what is right as well"


def test_the_requirements_catalogue_is_whole() -> None:
    rows = requirements().values()
    assert len(rows) > 300
    assert {row["decidable"] for row in rows} == {"design", "survey", "test"}
    assert {row["severity"] for row in rows} == set(SIGNALS)
    assert all(re.fullmatch(NAME, row["id"]) and re.fullmatch(NAME, row["topic"]) for row in rows)


def test_every_code_gives_only_declared_limits_with_a_source_and_its_basis() -> None:
    assert set(book().codes) == {"intl", "eu", "uk", "au-nz", "us-rv", "us-boat", "intl-boat", "ca"}
    for code in book().codes.values():
        assert code.limits
        for value in code.limits.values():
            assert value.source.title
            assert value.source.basis in ("seen", "memory", "practice")
            if value.source.basis == "practice":
                assert not value.source.clause


def test_a_limit_that_no_code_gives_is_not_declared() -> None:
    given = {name for code in book().codes.values() for name in code.limits}
    assert set(book().limits) == given
