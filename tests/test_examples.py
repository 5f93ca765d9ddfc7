"""The example designs: each is read, fits the schema, and is reviewed as it teaches.

The snapshots are written again with `pytest tests/test_examples.py --snapshot-update`; read the difference first.
"""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from checker.facts.subject import Facts, trace
from checker.quantities import Unknown
from checker.reading import read_text
from checker.reports import render
from checker.reports.document import document
from checker.review import Finding, Review, review
from checker.review.decisive import atoms, leaves
from checker.rulebook import Rulebook, load_rulebook
from checker.rulebook.walk import Scene

ROOT = Path(__file__).parents[1]
EXAMPLES = ROOT / "examples"
COACH, FLAWED, CAMPER, SURVEY = "estuary-coach", "estuary-coach-flawed", "heron-camper", "saltbush-survey"
NAMES = (COACH, FLAWED, CAMPER, SURVEY)
SEVERITY = ("notice", "caution", "warning", "danger")

CONSEQUENCES = {
    ("device-breaks-the-fault", "F6"): "the household breaker in the inverter feed",
    ("fault-on-inverter-disconnected", "fridge on inverter"): "no residual-current device before the fridge",
    ("fault-cleared-in-time", "fridge on inverter"): "no residual-current device before the fridge",
    ("main-switch-opens-all-live", "inlet"): "the single-pole breaker on the shore side",
    ("one-neutral-earth-link", "inverter"): "the bond that stays closed",
    ("lithium-gas-led-outside", "bank-bay"): "the bank opens into the living space",
    ("both-ends-of-a-link-protected", "link-12"): "no fuse at the start battery",
    ("both-ends-of-a-link-protected", "bank-main"): "the main fuse far from the bank",
    ("device-within-conductor-capacity", "alarm-feed"): "the alarm feed without its fuse",
    ("conductor-stands-the-short", "alarm-feed"): "the alarm feed without its fuse",
    ("branch-kept-from-fire", "alarm-feed"): "the alarm feed without its fuse",
    ("bank-fuse-made-for-the-bank", "bank-main from house-bank"): "the main fuse that cannot break the bank",
    ("unprotected-run-kept-from-fire", "converter-high from converter.high"): "the converter overloads its thin cable",
}
"""What else is in danger in the spoilt coach because of a listed flaw: no false alarm."""

HARMLESS = {
    "inside": "the kind of a place tells that no gas locker lies around it",
    "temperature": "the hottest air of the vehicle stands for a place without a temperature",
    "settings.charge voltage": "the chemistry bounds the voltage of the bus",
    "bms.over voltage": "the chemistry bounds the voltage of the bus",
    "cells": "the nominal voltage tells them",
    "own cell": "no management opens a lead-acid bank",
    "surge.power": "the lasting power covers the starts",
    "ac.current": "the charging current bounds it",
    "run time": "the load is within the margin however long it lasts",
    "rating": "the smaller device on the way decides",
    "bond.when": "the graph of live conductors does not hang on the bond",
    "earthing": "the graph of live conductors does not hang on the earthing of the site",
    "strands": "untold the finer kind is taken, which resists more",
}
"""Entries that a met verdict of the survey may leave open, by their last words, with the reason."""


def text_of(name: str) -> str:
    return (EXAMPLES / f"{name}.fitout.yaml").read_text("utf-8")


@cache
def book() -> Rulebook:
    return load_rulebook()


@cache
def facts_of(name: str) -> Facts:
    return Facts(read_text(text_of(name), f"examples/{name}.fitout.yaml"))


@cache
def reviewed(name: str) -> Review:
    return review(facts_of(name).design, book(), keep_all=True, facts=facts_of(name))


def found(name: str, verdict: str) -> list[Finding]:
    return [one for one in reviewed(name).findings if one.verdict == verdict]


def rules(name: str, verdict: str) -> set[tuple[str, str]]:
    return {(one.rule, one.about.id) for one in found(name, verdict)}


@cache
def flaws() -> tuple[dict[str, str], ...]:
    return tuple(yaml.safe_load((EXAMPLES / "estuary-coach-flawed.expected.yaml").read_text("utf-8")))


# --- files


def test_there_is_a_coach_with_its_twin_a_camper_and_a_survey() -> None:
    assert {path.name.removesuffix(".fitout.yaml") for path in EXAMPLES.glob("*.fitout.yaml")} == set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_an_example_says_what_it_teaches_and_fits_the_schema(name: str) -> None:
    assert text_of(name).startswith("# Teaches ")
    schema = json.loads((ROOT / "schemas" / "design.schema.json").read_text("utf-8"))
    tree = yaml.load(text_of(name), Loader=yaml.BaseLoader)
    jsonschema.Draft202012Validator(schema).validate(tree)
    design = facts_of(name).design
    assert design.circuits
    assert design.equipment


def test_the_twin_differs_from_the_coach_and_keeps_its_circuits() -> None:
    coach, twin = facts_of(COACH).design, facts_of(FLAWED).design
    assert list(coach.circuits) == list(twin.circuits)
    assert set(twin.equipment) < set(coach.equipment)


@pytest.mark.parametrize("name", NAMES)
def test_no_fact_and_no_rule_breaks_on_an_example(name: str) -> None:
    assert reviewed(name).broken == ()


# --- what is right


def test_the_coach_is_clean_and_one_departure_is_argued() -> None:
    assert rules(COACH, "breach") == set()
    assert rules(COACH, "set aside") == {("bank-outlasts-the-nights", "design")}
    assert rules(COACH, "unproven") == set()
    assert len(found(COACH, "met")) > 800


def test_the_camper_is_clean_and_one_departure_is_argued() -> None:
    assert rules(CAMPER, "breach") == set()
    assert rules(CAMPER, "set aside") == {("surge-device-behind-inlet", "inlet")}
    assert rules(CAMPER, "unproven") == set()
    assert len(found(CAMPER, "met")) > 350


# --- what is wrong


def test_at_least_thirty_flaws_of_fifteen_topics_are_listed() -> None:
    assert len(flaws()) >= 30
    topics = {book().by_id[flaw["rule"]].topic for flaw in flaws()}
    assert len(topics) >= 15
    assert len({(flaw["rule"], flaw["subject"]) for flaw in flaws()}) == len(flaws())
    assert all(flaw["flaw"] for flaw in flaws())
    assert {flaw["signal"] for flaw in flaws()} <= set(SEVERITY)


@pytest.mark.parametrize("flaw", flaws(), ids=lambda flaw: flaw["flaw"])
def test_each_flaw_is_found_where_it_is_and_as_bad_as_it_is(flaw: dict[str, str]) -> None:
    broken = {(one.rule, one.about.id): one.signal for one in found(FLAWED, "breach")}
    assert (flaw["rule"], flaw["subject"]) in broken, flaw["flaw"]
    signal = broken[flaw["rule"], flaw["subject"]]
    assert SEVERITY.index(signal) >= SEVERITY.index(flaw["signal"])


@pytest.mark.parametrize("flaw", flaws(), ids=lambda flaw: flaw["flaw"])
def test_the_coach_has_none_of_the_flaws(flaw: dict[str, str]) -> None:
    assert (flaw["rule"], flaw["subject"]) not in rules(COACH, "breach") | rules(COACH, "unproven")


def test_no_danger_is_told_of_the_spoilt_coach_that_no_flaw_explains() -> None:
    told = {(one.rule, one.about.id) for one in found(FLAWED, "breach") if one.signal == "danger"}
    assert len(told) > 20
    assert told - {(flaw["rule"], flaw["subject"]) for flaw in flaws()} == set(CONSEQUENCES)


# --- what is not known


def test_a_survey_leaves_more_open_than_it_settles() -> None:
    counts = reviewed(SURVEY).counts
    assert counts["unproven"] > counts["met"] > 100
    assert 15 < counts["breach"] < 60


def test_nothing_met_in_the_survey_rests_on_what_is_not_known() -> None:
    open_entries: dict[str, set[str]] = {}
    for finding in found(SURVEY, "met"):
        for path in unknown_entries(finding):
            if not any(path.endswith(f".{key}") for key in HARMLESS):
                open_entries.setdefault(f"{finding.rule} of {finding.about.id}", set()).add(path)
    assert open_entries == {}


def unknown_entries(finding: Finding) -> set[str]:
    """The entries without a value from which the facts that decided a verdict were computed."""
    facts, rule = facts_of(SURVEY), book().by_id[finding.rule]
    limits = book().limits_for(reviewed(SURVEY).rulebook["code"])
    scene = Scene((facts.subject(*finding.about), facts.subjects("design")[0]), limits)
    steps = [
        trace(leaf.subject, leaf.name)
        for atom in atoms(rule.require_tree, scene, rule.require)
        for leaf in leaves(atom)
    ]
    return {given.path for step in steps for given in step.leaves() if isinstance(given.value, Unknown)}


def test_the_survey_breaks_rules_only_where_something_was_seen() -> None:
    """Breaches that what is written makes certain; each was argued over by hand."""
    certain = {
        ("sources-never-joined", "inverter"),  # the inverter hangs on the joint of the shore
        ("source-meets-a-device", "old-feed from bank"),  # walked from end to end: no fuse
        ("mains-circuit-behind-rcd", "charger-ac"),  # on inverter power nothing stands before it
        ("bank-has-an-isolator", "bank"),  # the inverter passes the switch by
        ("main-breaker-within-inlet-and-lead", "board-mcb"),  # 16 A behind an inlet of 15 A
    }
    assert certain <= rules(SURVEY, "breach")
    assert ("main-switch-opens-all-live", "inlet") in rules(SURVEY, "unproven"), "nobody read whether the rcd isolates"
    assert ("surge-device-behind-inlet", "inlet") in rules(SURVEY, "unproven"), "one may hide where nobody looked"


# --- whole reports


def report(name: str, form: str) -> str:
    """The report without the figures that every change of any rule changes."""
    text = "".join(render(document(reviewed(name)), form))
    text = re.sub(r"[0-9a-f]{64}", "(hash)", text)
    text = re.sub(r"against \d+ rules", "against (count) rules", text)
    text = re.sub(r"(?m)^(  (?:met|not applicable) +)\d+", r"\1(count)", text)
    return re.sub(r'("(?:rules|met|not_applicable)": )\d+', r'\1"(count)"', text)


@pytest.mark.parametrize(
    ("name", "form", "file"),
    [(COACH, "text", "coach.txt"), (FLAWED, "text", "coach-flawed.txt"), (CAMPER, "json", "camper.json")],
)
def test_the_report_reads_as_before(name: str, form: str, file: str, snapshot: Any) -> None:
    snapshot.snapshot_dir = str(ROOT / "tests" / "snapshots")
    snapshot.assert_match(report(name, form), file)
