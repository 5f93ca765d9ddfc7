"""The report as SARIF 2.1.0."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from checker.reports import render
from tests.reports.sample import finding, nothing_found, sample

SCHEMA = json.loads((Path(__file__).parents[1] / "vendored" / "sarif-2.1.0.json").read_text("utf-8"))


def log(document: Any) -> dict[str, Any]:
    return json.loads("".join(render(document, "sarif")))


def results(document: Any) -> dict[tuple[str, str], dict[str, Any]]:
    return {
        (each["ruleId"], each["locations"][0]["logicalLocations"][0]["name"]): each
        for each in log(document)["runs"][0]["results"]
    }


@pytest.mark.parametrize("document", [sample(everything=True), nothing_found()], ids=["findings", "nothing found"])
def test_it_is_valid_against_the_published_schema(document: Any) -> None:
    jsonschema.Draft4Validator(SCHEMA).validate(log(document))


@pytest.mark.parametrize(
    ("verdict", "signal", "kind", "level"),
    [
        ("breach", "DANGER", "fail", "error"),
        ("breach", "WARNING", "fail", "error"),
        ("breach", "CAUTION", "fail", "warning"),
        ("breach", "NOTICE", "fail", "note"),
        ("set aside", "DANGER", "fail", "error"),
        ("unproven", "DANGER", "open", "none"),
        ("met", "DANGER", "pass", "none"),
        ("not applicable", "DANGER", "notApplicable", "none"),
    ],
)
def test_verdict_and_signal_become_kind_and_level(verdict: str, signal: str, kind: str, level: str) -> None:
    document = {**nothing_found(), "findings": [finding("a", verdict, signal, "device", "F1", 3)]}
    (result,) = results(document).values()
    assert (result["kind"], result["level"]) == (kind, level)


def test_a_fingerprint_does_not_move_with_the_line_and_tells_subjects_and_rules_apart() -> None:
    def mark(rule: str, name: str, line: int) -> str:
        document = {**nothing_found(), "findings": [finding(rule, "breach", "DANGER", "device", name, line)]}
        (result,) = results(document).values()
        return result["partialFingerprints"]["ruleAndSubject/v1"]

    assert mark("a", "F1", 3) == mark("a", "F1", 99)
    assert len({mark("a", "F1", 3), mark("a", "F2", 3), mark("b", "F1", 3)}) == 3


def test_what_is_set_aside_is_suppressed_with_its_record() -> None:
    (suppression,) = results(sample())["protection-accessible", "F1"]["suppressions"]
    assert suppression["status"] == "accepted"
    assert "licence AB-1234, note 4, 2026-11-02" in suppression["justification"]


def test_only_what_is_set_aside_is_suppressed() -> None:
    suppressed = {name for name, each in results(sample(everything=True)).items() if "suppressions" in each}
    assert suppressed == {("protection-accessible", "F1")}


def test_every_result_points_to_its_rule() -> None:
    run = log(sample(everything=True))["runs"][0]
    rules = run["tool"]["driver"]["rules"]
    assert [rules[each["ruleIndex"]]["id"] for each in run["results"]] == [each["ruleId"] for each in run["results"]]


def test_an_unproven_result_asks_its_question() -> None:
    message = results(sample())["fuse-near-source", "bank>heater-feed"]["message"]["text"]
    assert "Unproven (WARNING if broken)" in message
    assert "circuits.heater-feed.run (holds `unknown`, line 53)" in message


def test_brackets_and_braces_in_a_design_are_no_links_or_placeholders() -> None:
    message = results(sample())["terminal-covered", "bar-48.+"]["message"]["text"]
    assert "\\[link\\](http://x)" in message


def test_a_file_name_becomes_a_uri() -> None:
    document = {**nothing_found(), "findings": [finding("a", "breach", "DANGER", "device", "F1", 3)]}
    document["findings"][0]["where"]["file"] = "my vans/a#1 ünits:2.fitout.yaml"
    ((location,),) = [each["locations"] for each in results(document).values()]
    uri = location["physicalLocation"]["artifactLocation"]["uri"]
    assert uri == "my%20vans/a%231%20%C3%BCnits%3A2.fitout.yaml"


def test_the_caution_stands_in_the_run_and_as_a_notification() -> None:
    run = log(nothing_found())["runs"][0]
    assert "does not certify" in run["properties"]["caution"]
    (invocation,) = run["invocations"]
    assert "does not certify" in invocation["toolExecutionNotifications"][0]["message"]["text"]
