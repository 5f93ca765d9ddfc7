"""The file to answer in holds every question once, and unanswered it changes nothing."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import yaml

from checker.facts.subject import Facts
from checker.reading import read_design
from checker.reports.survey_answers import survey_answers
from checker.reports.survey_report import survey_document
from checker.review import review
from checker.review.answers import answered
from checker.review.survey import survey
from checker.rulebook import load_rulebook

FILE = Path("examples/saltbush-survey.fitout.yaml")


@cache
def document() -> dict[str, Any]:
    design, rulebook = read_design(FILE), load_rulebook()
    facts = Facts(design)
    found = review(design, rulebook, facts=facts)
    return survey_document(found, survey(found, rulebook, facts))


def form(**changes: Any) -> str:
    return "".join(survey_answers({**document(), **changes}))


def asked() -> list[dict[str, Any]]:
    return [one for group in document()["groups"] for one in group["questions"]]


def test_every_question_has_its_line_and_is_unknown_until_it_is_answered() -> None:
    read = yaml.safe_load(form())
    assert list(read) == ["answers", "looks", "readings"]
    assert read["readings"] == []
    tests = [one for one in asked() if one["entry"].startswith("readings: ")]
    assert set(read["answers"].values()) == set(read["looks"].values()) == {"unknown"}
    assert set(read["looks"]) == {one["word"] for one in asked() if one["word"]}
    assert set(read["answers"]) == {one["entry"] for one in asked() if not one["word"] and one not in tests}
    assert all(f"# {one['number']} {one['signal']} " in form() for one in asked())


def test_unanswered_it_changes_nothing() -> None:
    text = FILE.read_text("utf-8")
    found = answered(text, read_design(FILE), form(), "answers.yaml")
    assert found.text == text
    assert found.written == 0


def test_the_cautions_stand_in_it() -> None:
    words = " ".join(form().replace("#", " ").split())
    assert words.startswith("Mains and high-current direct current kill and burn.")
    assert all(
        " ".join(one["isolation"].split()) in words for one in asked() if not one["entry"].startswith("readings:")
    )


def test_a_design_that_leaves_nothing_open_gives_empty_sections() -> None:
    counts = {"questions": 0, "unproven": 0, "without_a_question": 0}
    empty = form(order=[], groups=[], settle_most=[], counts=counts)
    assert yaml.safe_load(empty) == {"answers": {}, "looks": {}, "readings": []}
