"""The standing caution stands in every report, first and last."""

from __future__ import annotations

import html as markup
import re

import pytest

from checker.reports import FORMATS, render
from checker.reports.caution import CAUTION, DEFERRAL, MET_MEANS
from tests.reports.sample import nothing_found, sample


def words_of(report: str) -> str:
    """The words alone: entities resolved, escapes and line breaks gone."""
    return " ".join(markup.unescape(report).replace("\\", "").split())


@pytest.mark.parametrize("form", FORMATS)
@pytest.mark.parametrize("document", [sample(), nothing_found()], ids=["findings", "nothing found"])
def test_every_format_opens_with_the_caution_and_ends_with_who_decides(form: str, document: dict) -> None:
    report = words_of("".join(render(document, form)))
    assert CAUTION in report
    assert DEFERRAL in report
    assert report.index(CAUTION) < report.index(document["design"]["sha256"])
    assert report.rindex(DEFERRAL) > report.index(CAUTION)


@pytest.mark.parametrize(
    "needed",
    ["does not certify", "Local codes", "instructions of the equipment makers", "licensed electrician",
     "Isolate", "prove dead", "second pair of eyes", "Mains", "high-current direct current", "kill"],
)  # fmt: skip
def test_the_caution_says(needed: str) -> None:
    assert needed in CAUTION


@pytest.mark.parametrize("form", FORMATS)
def test_no_format_calls_a_design_safe_or_compliant(form: str) -> None:
    report = "".join(render(nothing_found(), form)) + "".join(render(sample(everything=True), form))
    said = re.sub(r"<style>.*?</style>", "", report, flags=re.DOTALL)
    for word in ("safe", "compliant", "approved", "passed"):
        assert not re.search(rf"\b{word}\b", said, flags=re.IGNORECASE), word


@pytest.mark.parametrize("form", ["text", "html", "junit", "markdown"])
def test_met_only_says_that_nothing_was_found_against_it(form: str) -> None:
    assert MET_MEANS in "".join(render(nothing_found(), form))
