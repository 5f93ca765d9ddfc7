"""A review as plain data."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.reading import read_design
from checker.reports.document import document
from checker.reports.model import Report
from checker.review import Review, review
from checker.rulebook import load_rulebook

COMMANDS = Path(__file__).parents[1] / "commands"
DESIGN = read_design(str(COMMANDS / "gravel-van.fitout.yaml"))


@pytest.fixture(scope="module")
def found() -> Review:
    """A review by the shipped rules and those of the command tests."""
    return review(DESIGN, load_rulebook([COMMANDS / "house"]), keep_all=True)


def test_every_finding_of_the_review_is_there_in_its_order(found: Review) -> None:
    assert [each["key"] for each in document(found, everything=True)["findings"]] == [
        finding.key for finding in found.findings
    ]


def test_what_is_met_or_not_applicable_is_left_out_unless_asked_for(found: Review) -> None:
    listed = {each["verdict"] for each in document(found)["findings"]}
    assert listed == {"breach", "unproven", "set aside"}
    assert {each["verdict"] for each in document(found, everything=True)["findings"]} > listed


def test_the_counts_are_those_of_the_review_and_breaches_are_told_by_signal(found: Review) -> None:
    counts = document(found)["counts"]
    assert sum(counts["breach"].values()) == found.counts["breach"]
    assert list(counts["breach"]) == ["DANGER", "WARNING", "CAUTION", "NOTICE"]
    for verdict, number in (("unproven", counts["unproven"]), ("set aside", counts["set_aside"]),
                            ("met", counts["met"]), ("not applicable", counts["not_applicable"])):  # fmt: skip
        assert number == found.counts[verdict]


def test_a_real_review_keeps_to_the_model_of_the_report(found: Review) -> None:
    made = Report.model_validate(document(found, everything=True, not_checked=["x"]))
    assert made.design.sha256 == DESIGN.sha256
    assert made.caution == found.caution
    assert any(finding.departure is not None for finding in made.findings)
    assert any(finding.needs for finding in made.findings)
    assert any(finding.under is not None for finding in made.findings)
