"""Answers to a survey go into the design, each where it belongs, and nothing else in it changes."""

from __future__ import annotations

from difflib import unified_diff
from functools import cache
from pathlib import Path

import pytest

from checker.design.model import Design
from checker.reading import read_design, read_text
from checker.review.answers import Answered, answered
from checker.source.problems import SourceErrors

FILE = "examples/saltbush-survey.fitout.yaml"
TEXT = Path(FILE).read_text("utf-8")


@cache
def design() -> Design:
    return read_design(FILE)


def answer(text: str) -> Answered:
    return answered(TEXT, design(), text, "answers.yaml")


def changed(text: str) -> list[str]:
    """Lines that the answers took away and added, without their indents."""
    lines = unified_diff(TEXT.splitlines(), answer(text).text.splitlines(), lineterm="", n=0)
    return [line[1:].strip() for line in lines if line[:1] in "+-" and line[:3] not in ("+++", "---")]


def added(text: str) -> str:
    """What stands in the one changed line and did not before."""
    old, new = changed(text)
    start = next(at for at, (one, other) in enumerate(zip(old, new, strict=False)) if one != other)
    end = next(at for at, (one, other) in enumerate(zip(old[::-1], new[::-1], strict=False)) if one != other)
    return new[start : len(new) - end]


def refused(text: str) -> list[str]:
    with pytest.raises(SourceErrors) as caught:
        answer(text)
    return str(caught.value).splitlines()


def test_what_is_still_unknown_changes_nothing() -> None:
    found = answer("answers:\n  equipment.inlet.degree: unknown\nlooks:\n  structure: unknown\nreadings: []\n")
    assert found == (TEXT, 0, 2)


def test_a_plain_value_gets_the_basis_of_its_question() -> None:
    assert added("answers: {equipment.boot-switch.rating: 100 A}") == "{is: 100 A, basis: datasheet}"
    assert added("answers: {places.front-boot.material: steel}").endswith("material: {is: steel, basis: read off}")


def test_a_basis_of_ones_own_and_a_decided_absence_stay_as_written() -> None:
    assert added("answers: {equipment.boot-switch.rating: {is: 90 A, basis: assumed}}") == "{is: 90 A, basis: assumed}"
    assert added("answers: {circuits.break-out.covering: none}") == "none"


def test_what_was_unknown_as_a_whole_takes_its_parts() -> None:
    given = "answers: {places.front-boot.vents.to: outside, places.front-boot.vents.high: 40 cm2}"
    assert added(given) == "{to: {is: outside, basis: read off}, high: {is: 40 cm2, basis: measured}}"


def test_a_stretch_of_a_run_gets_its_length() -> None:
    assert added("answers: {circuits.old-feed.run via cabin: 2.7 m}") == "7"
    assert "[2.7 m via cabin]" not in TEXT
    assert "boot-hole, 2.7 m via cabin]" in answer("answers: {circuits.old-feed.run via cabin: 2.7 m}").text


def test_looks_go_on_the_list_of_what_was_found_right_or_wrong() -> None:
    found = answer("looks: {structure: right, lamps: right, splices: wrong}").text
    papers = read_text(found).papers
    assert papers is not None
    assert papers.value("inspected") == ("structure", "lamps")
    assert papers.value("found wrong") == ("splices",)


def test_a_reading_is_added_behind_the_others() -> None:
    found = answer(
        "readings:\n  - {test: polarity, at: inlet, result: right}\n  - {mode: camp, at: bank, voltage: 13 V}"
    )
    assert found.written == 2
    readings = read_text(found.text).readings
    assert [one.value("at") for one in readings][-2:] == ["inlet", "bank"]
    assert len(readings) == len(design().readings) + 2


def test_a_plain_yes_gives_way_to_what_says_more() -> None:
    given = "answers: {papers.certificate: true, papers.certificate.electrical: CoC-000000}"
    assert "papers: {certificate: {electrical: CoC-000000}}" in answer(given).text


def test_a_mapping_as_answer_leaves_what_stands_beside_it() -> None:
    found = answer("answers: {equipment.regulator.settings: {charge current: 20 A}}").text
    assert "settings: {charge voltage: unknown, charge current: 20 A}" in found


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("answers:\n  equipment.inlett.degree: IP44\n", "2:3", "neither `kind` nor `part`"),
        ("answers:\n  equipment.inlet.degre: IP44\n", "2:3", "did you mean `degree`?"),
        ("answers:\n  equipment.boot-switch.rating: much\n", "2:3", "with this answer"),
        ("answers:\n  circuits.inverter-feed.run via front-boot: 1 m\n", "2:3", "2 stretches via `front-boot`"),
        ("answers:\n  equipment.old-board.ways.pump.curve: {20 A: 1..2 s}\n", "2:3", "has no keys below it"),
        ("answers: {equipment.inlet.degree: IP44, equipment.inlet.degree.open: IP44}\n", "1:11", "answered too"),
        ("looks:\n  structur: right\n", "2:3", "did you mean `structure`?"),
        ("looks:\n  structure: fine\n", "2:14", "write right, wrong or unknown"),
        ("looks: fine\n", "1:8", "one to a line"),
        ("anwsers: {}\n", "1:1", "did you mean `answers`?"),
        ("readings: {test: polarity}\n", "1:11", "is no list"),
        ("- a\n", "1:1", "the file is a list"),
        ("", "1:1", "the file is empty"),
        ("answers: {equipment.inlet: {degree: IP44}, equipment.inlet.degree: IP54}\n", "1:1", "is put twice"),
    ],
)
def test_an_answer_that_cannot_be_written_is_told_at_its_line(text: str, place: str, words: str) -> None:
    lines = refused(text)
    assert lines[0].startswith(f"answers.yaml:{place}: ")
    assert words in lines[0]


def test_a_look_that_the_other_list_holds_is_refused() -> None:
    given = TEXT + "papers: {found wrong: [splices]}\n"
    with pytest.raises(SourceErrors, match=r"stands in papers\.found wrong already"):
        answered(given, read_text(given), "looks: {splices: right}", "answers.yaml")
    assert answered(given, read_text(given), "looks: {splices: wrong}", "answers.yaml").text == given
