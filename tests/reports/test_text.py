"""The report for the terminal."""

from __future__ import annotations

import re

from checker.reports import render
from tests.reports.sample import nothing_found, sample

STYLE = re.compile("\x1b\\[[0-9;]*m")


def lines(**options: bool) -> list[str]:
    return "".join(render(sample(everything=True), "text", **options)).splitlines()


def test_no_line_is_wider_than_80_columns_unless_it_is_one_word() -> None:
    for line in lines():
        assert len(line) <= 80 or len(line.split()) == 1, line


def test_a_long_path_is_left_whole_so_that_it_can_be_copied() -> None:
    document = sample()
    path = "a-very-long-folder-name/" * 5 + "coach.fitout.yaml"
    for finding in document["findings"]:
        finding["where"]["file"] = path
    assert f"{path}:41:3" in "".join(render(document, "text")).split()


def test_colour_adds_nothing_but_colour() -> None:
    assert [STYLE.sub("", line) for line in lines(colour=True)] == lines()


def test_without_colour_no_escape_is_written() -> None:
    assert not any("\x1b" in line for line in lines())


def test_the_worst_breach_comes_first_and_its_consequence_under_it() -> None:
    report = "".join(render(sample(), "text"))
    order = [
        "DANGER   The protective",
        "NOTICE The conductor loses",
        "CAUTION  A live terminal",
        "Questions",
        "Set aside",
    ]
    places = [report.index(words) for words in order]
    assert places == sorted(places)


def test_one_missing_value_is_asked_for_once_with_all_that_it_would_settle() -> None:
    report = "".join(render(sample(), "text"))
    assert report.count("cables.old-red.size") == 1
    question = report[report.index("? cables.old-red.size") : report.index("? circuits.heater-feed.run")]
    assert "DANGER The protective device" in question
    assert "NOTICE The conductor loses" in question


def test_the_count_names_every_verdict_even_when_there_is_none() -> None:
    report = "".join(render(nothing_found(), "text"))
    for line in [
        "breach          0",
        "unproven        0",
        "set aside       0",
        "met             9",
        "not applicable  4",
    ]:
        assert line in report
    assert "Not checked: " in report


def test_a_folded_finding_is_not_listed_on_its_own() -> None:
    report = "".join(render(sample(), "text"))
    breaches = report[: report.index("Questions to settle")]
    assert breaches.count("The conductor loses more voltage than the limit") == 1


def test_a_source_that_nobody_has_seen_says_so() -> None:
    report = " ".join("".join(render(sample(), "text")).split())
    assert "IEC 60364-4-43, 433.1, 2008 (from memory)" in report
    assert "33 CFR 183.455, (c), current Rule" in report
    assert "Workshop habit (common practice, no source)" in report
