"""What each format looks like, whole; read every changed line before accepting it."""

from __future__ import annotations

import pytest

from checker.reports import FORMATS, render
from tests.reports.sample import nothing_found, sample

SUFFIX = {"text": "txt", "html": "html", "json": "json", "sarif": "sarif", "junit": "xml", "markdown": "md"}


@pytest.mark.parametrize("form", FORMATS)
def test_a_report_with_every_kind_of_finding(form: str, snapshot) -> None:
    snapshot.snapshot_dir = "tests/reports/snapshots"
    snapshot.assert_match("".join(render(sample(everything=True), form)), f"everything.{SUFFIX[form]}")


@pytest.mark.parametrize("form", ["text", "html", "markdown"])
def test_a_report_without_a_finding(form: str, snapshot) -> None:
    snapshot.snapshot_dir = "tests/reports/snapshots"
    snapshot.assert_match("".join(render(nothing_found(), form)), f"nothing.{SUFFIX[form]}")


def test_a_report_in_colour(snapshot) -> None:
    snapshot.snapshot_dir = "tests/reports/snapshots"
    snapshot.assert_match("".join(render(sample(), "text", colour=True)), "colour.txt")


def test_an_unknown_format_is_refused_with_the_known_ones() -> None:
    with pytest.raises(ValueError, match="no report format 'pdf'; there are text, html"):
        render(sample(), "pdf")


@pytest.mark.parametrize("form", FORMATS)
def test_the_same_report_gives_the_same_text(form: str) -> None:
    assert list(render(sample(), form)) == list(render(sample(), form))


@pytest.mark.parametrize("form", FORMATS)
def test_no_format_lets_a_control_or_direction_changing_character_through(form: str) -> None:
    report = "".join(render(sample(), form))
    if form in ("json", "sarif"):
        assert "\x1b" not in report  # JSON escapes it; U+202E is data there, as it stood in the file
    else:
        assert "\x1b" not in report
        assert "\u202e" not in report
