"""The sheet to take to the vehicle: every question once, with a blank, under what must be made dead first."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any

from checker.facts.subject import Facts
from checker.reading import read_design
from checker.reports.survey_report import survey_document
from checker.reports.survey_sheet import TICKS, survey_sheet
from checker.review import review
from checker.review.survey import survey
from checker.rulebook import load_rulebook

BLANK = "_" * 24


@cache
def document() -> dict[str, Any]:
    design, rulebook = read_design(Path("examples/saltbush-survey.fitout.yaml")), load_rulebook()
    facts = Facts(design)
    found = review(design, rulebook, facts=facts)
    return survey_document(found, survey(found, rulebook, facts))


def sheet(**changes: Any) -> str:
    return "".join(survey_sheet({**document(), **changes}))


def asked() -> list[dict[str, Any]]:
    return [one for group in document()["groups"] for one in group["questions"]]


def test_every_question_stands_once_under_its_number_with_room_for_the_answer() -> None:
    text = sheet()
    for one in asked():
        here = re.findall(rf"^ +{one['number']} {one['signal']} +(.*(?:\n {{16}}.*)*)", text, re.MULTILINE)
        assert len(here) == 1
        assert here[0].startswith(one["word"] or one["entry"])
        assert (TICKS if one["word"] else BLANK) in here[0]


def test_what_must_be_made_dead_stands_above_the_question_it_holds_for() -> None:
    text = " ".join(sheet().split())
    care, last = "", 0
    for one in asked():
        first = " ".join(f"First: {one['isolation']}".split())
        at = text.index(f" {one['number']} {one['signal']} ", last)
        said = text.rindex("First: ", 0, at)
        assert text.startswith(first, said), (one["entry"], care)
        last, care = at, first


def test_it_has_under_six_lines_a_question_and_fits_the_width() -> None:
    lines = sheet().splitlines()
    assert max(map(len, lines)) <= 80
    assert len(lines) < 6 * len(asked())


def test_it_opens_with_the_caution_and_ends_with_who_decides() -> None:
    text = " ".join(sheet().split())
    assert text.startswith("Mains and high-current direct current kill and burn.")
    assert text.endswith("a licensed electrician say otherwise, they are right.")


def test_nothing_open_gives_a_sheet_without_questions() -> None:
    counts = {"questions": 0, "unproven": 0, "without_a_question": 0}
    assert "First:" not in sheet(order=[], groups=[], settle_most=[], counts=counts)
