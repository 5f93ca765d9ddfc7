"""The page of requirements says of each one which rule decides it and from what, and counts what it shows."""

from __future__ import annotations

import csv
import re
from functools import cache
from pathlib import Path

from checker.rulebook import Rulebook, load_rulebook
from checker.rulebook.coverage_page import Asked, Left, coverage_page
from checker.shipped import shipped


@cache
def book() -> Rulebook:
    return load_rulebook()


def asked() -> list[Asked]:
    file = Path(str(shipped("rules"))) / "requirements.csv"
    with file.open(encoding="utf-8", newline="") as lines:
        return [Asked(row["id"], row["topic"], row["decidable"], row["severity"]) for row in csv.DictReader(lines)]


def rows(page: str) -> dict[str, list[str]]:
    """Requirement to the cells of its line."""
    cells = [re.split(r"(?<!\\) \| ", line.removeprefix("| ").removesuffix(" |")) for line in page.splitlines()]
    return {line[0]: line for line in cells if len(line) == 8 and line[1] in ("design", "survey", "test")}


def test_every_requirement_has_one_line_with_the_rules_that_cover_it() -> None:
    page = rows(coverage_page(book(), asked(), {}, {}))
    assert set(page) == {one.id for one in asked()}
    for rule in book().rules:
        for id in rule.covers:
            assert f"[{rule.id}](rules/{rule.topic}.md#{rule.id})" in page[id][3]


def test_a_line_names_the_facts_and_limits_of_the_rule_and_the_codes_that_differ() -> None:
    line = rows(coverage_page(book(), asked(), {}, {}))["battery-fuse-distance"]
    assert "`approach.length_before_device`" in line[4]
    found = re.search(r"`battery_fuse_distance` \(([^)]*)\)", line[5])
    assert found is not None
    assert "intl" in found[1].split(", ")


def test_what_is_left_of_a_requirement_stands_in_its_line() -> None:
    page = rows(
        coverage_page(
            book(),
            [Asked("made-up", "solar", "design", "notice")],
            {"made-up": Left("text", "it is made up")},
            {"made-up": 2},
        )
    )
    assert page["made-up"][3:] == ["none", "", "", "[2](conditions.md#made-up)", "text: it is made up"]


def test_the_counts_are_those_of_the_lines() -> None:
    text = coverage_page(
        book(),
        asked(),
        {"battery-fuse-distance": Left("text", "half of it"), "bms-present": Left("arrangement", "one of two")},
        {"battery-fuse-distance": 3, "bms-present": 4},
    )
    page = rows(text)
    for way in ("design", "survey", "test"):
        lines = [line for line in page.values() if line[1] == way]
        covered = sum(line[3] != "none" for line in lines)
        whole = sum(line[3] != "none" and line[7] == "" for line in lines)
        told = covered - (way == "design")
        assert whole == told - (way == "design")
        assert f"| {way} | {len(lines)} | {covered} | {7 if way == 'design' else 0} | {told} (" in text
        assert f" %) | {whole} ({100 * whole / len(lines):.0f} %) |" in text


def left() -> dict[str, Left]:
    with (Path(__file__).parents[2] / "rules" / "not-decided.csv").open(encoding="utf-8", newline="") as lines:
        return {row["id"]: Left(row["of"], row["left"]) for row in csv.DictReader(lines)}


def test_what_is_left_is_said_of_requirements_of_the_catalogue_in_words() -> None:
    assert left().keys() <= {one.id for one in asked()}
    assert all(len(one.says.split()) > 2 for one in left().values())
    assert {one.of for one in left().values()} <= {"text", "arrangement"}


def test_at_least_nine_in_ten_of_what_a_design_can_decide_have_a_rule_and_none_is_forgotten() -> None:
    page = rows(coverage_page(book(), asked(), left(), {})).values()
    design = [line for line in page if line[1] == "design"]
    assert sum(line[3] != "none" for line in design) >= 0.9 * len(design)
    assert sum(not line[7].startswith("text: ") for line in design) >= 0.9 * len(design)
    assert [line[0] for line in page if line[7] == "not written yet"] == []
