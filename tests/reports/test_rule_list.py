"""The list of rules and its coverage."""

from __future__ import annotations

from pathlib import Path
from typing import Any, NamedTuple

import pytest

from checker.reports.rule_list import Requirement, read_requirements, rule_list, rule_list_text
from checker.shipped import shipped


class Rule(NamedTuple):
    id: str
    topic: str
    signal: str
    covers: tuple[str, ...] = ()
    title: str = "A fault"
    about: str = "conductor"


RULES: Any = [
    Rule("z-last", "wiring", "notice", ("r1",)),
    Rule("drop", "protection", "warning", ("r2", "r3")),
    Rule("again", "protection", "danger", ("r3", "not-in-the-catalogue")),
]
REQUIREMENTS = [
    Requirement("r1", "x", "design"),
    Requirement("r2", "x", "design", "half of it"),
    Requirement("r3", "y", "test"),
    Requirement("r4", "y", "design"),
]


def test_rules_stand_by_topic_and_id_with_their_signal_word() -> None:
    listed = rule_list(RULES, REQUIREMENTS)["rules"]
    assert [(each["topic"], each["id"], each["signal"]) for each in listed] == [
        ("protection", "again", "DANGER"),
        ("protection", "drop", "WARNING"),
        ("wiring", "z-last", "NOTICE"),
    ]


def test_a_requirement_counts_once_however_many_rules_cover_it_and_only_when_it_is_in_the_catalogue() -> None:
    assert rule_list(RULES, REQUIREMENTS)["coverage"] == {
        "covered": 3, "total": 4, "decidable_covered": 2, "decidable_partly": 1, "decidable": 3,
    }  # fmt: skip


def test_a_topic_narrows_the_list_and_not_the_coverage() -> None:
    listed = rule_list(RULES, REQUIREMENTS, "wiring")
    assert [each["id"] for each in listed["rules"]] == ["z-last"]
    assert listed["coverage"] == rule_list(RULES, REQUIREMENTS)["coverage"]


def test_the_text_names_topic_id_signal_title_and_coverage() -> None:
    text = "".join(rule_list_text(rule_list(RULES, REQUIREMENTS)))
    assert "protection\n----------\nDANGER   again\n         A fault\nWARNING  drop\n" in text
    assert "3 of 4" in text
    assert "2 of\n3" in text or "2 of 3" in text
    assert max(map(len, text.splitlines())) <= 80


def test_the_list_carries_the_caution_and_defers() -> None:
    listed = rule_list(RULES, REQUIREMENTS)
    text = " ".join("".join(rule_list_text(listed)).split())
    assert text.startswith(listed["caution"])
    assert text.endswith(listed["deferral"])


def test_the_shipped_catalogue_is_read(tmp_path: Path) -> None:
    shipped = read_requirements(Path(__file__).parents[2] / "rules" / "requirements.csv")
    assert len({each.id for each in shipped}) == len(shipped) > 100
    assert {each.decidable for each in shipped} <= {"design", "survey", "test"}


def test_a_catalogue_without_its_columns_is_refused(tmp_path: Path) -> None:
    (tmp_path / "x.csv").write_text("id,name\na,b\n")
    with pytest.raises(ValueError, match="needs the columns id, topic and decidable"):
        read_requirements(tmp_path / "x.csv")


def test_the_shipped_catalogue_says_what_is_left_of_a_requirement() -> None:
    rows = read_requirements(Path(str(shipped("rules"))) / "requirements.csv")
    assert any(one.left for one in rows)
    assert all(len(one.left.split()) > 2 for one in rows if one.left)
