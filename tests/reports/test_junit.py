"""The report as JUnit XML."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from checker.reports import render
from tests.reports.sample import finding, nothing_found, sample

SCHEMA = etree.XMLSchema(etree.parse(Path(__file__).parents[1] / "vendored" / "junit.xsd"))


def tree(document: Any) -> Any:
    return etree.fromstring("".join(render(document, "junit")).encode())


@pytest.mark.parametrize("document", [sample(everything=True), nothing_found()], ids=["findings", "nothing found"])
def test_it_is_valid_against_the_published_schema(document: Any) -> None:
    SCHEMA.assertValid(tree(document))


def test_the_numbers_of_the_suite_are_those_of_its_cases() -> None:
    suite = tree(sample(everything=True)).find("testsuite")
    assert int(suite.get("tests")) == len(suite.findall("testcase"))
    assert int(suite.get("failures")) == len(suite.findall("testcase/failure"))
    assert int(suite.get("skipped")) == len(suite.findall("testcase/skipped"))


@pytest.mark.parametrize(
    ("verdict", "child"),
    [
        ("breach", "failure"),
        ("unproven", "skipped"),
        ("set aside", "skipped"),
        ("not applicable", "skipped"),
        ("met", ""),
    ],
)
def test_each_verdict_has_its_element(verdict: str, child: str) -> None:
    document = {**nothing_found(), "findings": [finding("a", verdict, "DANGER", "device", "F1", 3)]}
    _, case = tree(document).findall("testsuite/testcase")
    assert [each.tag for each in case] == ([child] if child else [])


def test_an_unproven_case_says_unproven_and_what_would_settle_it() -> None:
    messages = [each.get("message") for each in tree(sample()).iter("skipped")]
    assert any(
        each.startswith("unproven, WARNING if broken") and "circuits.heater-feed.run" in each for each in messages
    )


@pytest.mark.parametrize("text", ["]]>", "<x>", "&", '"', "\x00\x1b", "\ud800", "\ufffe", "--"])
def test_no_text_breaks_the_file(text: str) -> None:
    document = sample()
    for each in document["findings"]:
        each["says"] = each["title"] = each["about"]["id"] = f"before {text} after"
    SCHEMA.assertValid(tree(document))


def test_it_carries_no_time() -> None:
    assert not tree(sample()).xpath("//@time | //@timestamp")


def test_a_report_without_a_finding_still_has_a_test_case() -> None:
    (case,) = tree(nothing_found()).findall("testsuite/testcase")
    assert case.get("name") == "the review was carried out"
