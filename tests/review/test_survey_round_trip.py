"""Every question on what must be looked at or measured: written into the file, its answer settles the rule.

Each row is put to its rule three times: unanswered it is unproven and the survey asks; with the good answer, as the
survey suggests it where it can, it is met; with the bad answer it is a breach.
"""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.inspected import ASKED
from checker.facts.subject import Facts
from checker.reading import read_text
from checker.review import review
from checker.review.run import code_of
from checker.review.survey import LOOKED_AT, Question, survey
from checker.rulebook import Broken, Rulebook, judge, load_rulebook

ROOT = Path(__file__).parents[2]
BASES = {
    "saltbush": ROOT / "examples" / "saltbush-survey.fitout.yaml",
    "van": ROOT / "rules" / "designs" / "slide-van.fitout.yaml",
    "coach": ROOT / "rules" / "designs" / "mains-coach.fitout.yaml",
    "generator": ROOT / "rules" / "designs" / "generator-van.fitout.yaml",
}
Edits = tuple[tuple[str, str], ...]
GONE = "there is no such subject any more"
SUGGESTED = ""
"""The good answer is what the survey writes as an example."""


class Answer(NamedTuple):
    """One entry that the survey asks for, with the answer that is right and the one that is wrong."""

    entry: str
    good: str
    bad: str


class Row(NamedTuple):
    """A published requirement that no drawing decides, the rule and subject that ask, and the answers."""

    requirement: str
    rule: str
    about: str
    base: str
    prepared: Edits
    answers: tuple[Answer, ...]


def look(
    requirement: str, rule: str, word: str, about: str = "design", base: str = "saltbush", *edits: tuple[str, str]
) -> Row:
    return Row(requirement, rule, about, base, edits, (Answer(f"{LOOKED_AT}: {word}", word, word),))


def row(requirement: str, rule: str, about: str, base: str, edits: Edits, *answers: tuple[str, str, str]) -> Row:
    return Row(requirement, rule, about, base, edits, tuple(Answer(*one) for one in answers))


NO_TEST = (("readings", "[]"),)
ENGINE = ("vehicle.kind", "motorhome")
ROWS = (
    row("battery-sealed-from-living-space", "battery-hole-sealed", "boot-hole", "saltbush", (),
        ("passes.boot-hole.sealed", SUGGESTED, "false")),
    row("terminals-covered", "battery-studs-covered", "bank", "saltbush", (),
        ("parts.found-battery.terminals.+.cover", SUGGESTED, "false"),
        ("parts.found-battery.terminals.-.cover", SUGGESTED, "false")),
    look("corrosion-of-vent-space", "battery-tray-drains", "battery tray", "design", "saltbush",
         ("parts.found-battery.chemistry", "flooded lead acid")),
    look("vent-hose-routing", "vent-hose-free-to-drain", "vent hose"),
    row("earth-continuity-resistance", "earth-proven-by-test", "inlet", "saltbush", (),
        ("readings.1.resistance", "0.2 Ω", "0.9 Ω")),
    look("ground-connection-hardware", "chassis-connections-clean", "chassis connections"),
    row("neutral-earth-link-legacy-removed", "neutral-free-of-earth-on-shore", "inverter", "coach",
        (("equipment.inverter.bond", "unknown"),),
        ("equipment.inverter.bond.when", "{when: inverting, by: relay}", "{when: always, by: link}")),
    row("panel-neutral-insulated", "neutral-bar-free-of-earth", "board", "coach",
        (("equipment.board.neutral bar", "unknown"),), ("equipment.board.neutral bar", SUGGESTED, "bonded")),
    row("structural-metal-bonded", "metal-box-joined-to-the-earth", "mains-tail", "saltbush", (),
        ("joints.mains-tail.enclosure", "metal", "metal"), ("joints.mains-tail.box earthed", SUGGESTED, "false")),
    look("fuel-line-wiring-spacing", "fuel-lines-left-alone", "fuel lines", "design", "saltbush", ENGINE),
    look("gas-pipe-cable-spacing", "gas-pipes-left-alone", "gas pipes"),
    look("generator-compartment", "generator-space-looked-at", "generator space", "genset", "generator"),
    look("wet-compartment-drain", "wet-bays-drain", "drains", "design", "saltbush", ("vehicle.kind", "boat")),
    look("as-built-measurements", "readings-brought-back", "as built"),
    row("bms-functional-test", "management-tried-out", "design", "van", NO_TEST,
        ("readings: function", SUGGESTED, "{test: function, at: house, result: wrong}")),
    row("changeover-test-all-modes", "link-tested-in-every-mode", "camp", "saltbush", (),
        ("readings: neutral-earth link in camp", SUGGESTED, "{test: neutral-earth link, mode: camp, result: none}")),
    row("changeover-test-all-modes", "link-tested-in-every-mode", "shore", "saltbush", (),
        ("readings: neutral-earth link in shore", SUGGESTED,
         "{test: neutral-earth link, mode: shore, result: several}")),
    row("changeover-test-all-modes", "inlet-pins-tested-dead", "design", "saltbush", (),
        ("readings: inlet pins in camp", SUGGESTED, "{test: inlet pins, mode: camp, result: wrong}")),
    look("continuity-and-operation-test", "every-circuit-tried-out", "operation"),
    row("dielectric-test-rv", "dielectric-strength-shown", "design", "van", (("code", "us-rv"),),
        ("readings: dielectric strength", SUGGESTED, "{test: dielectric strength, result: wrong}")),
    row("changeover-test-all-modes", "changes-between-modes-tested", "design", "coach", NO_TEST,
        ("readings: polarity in camp", SUGGESTED, "{test: polarity, mode: camp, result: wrong}"),
        ("readings: polarity in shore", SUGGESTED, "{test: polarity, mode: shore, result: wrong}"),
        ("readings: mode change in camp", SUGGESTED, "{test: mode change, mode: camp, result: wrong}"),
        ("readings: mode change in shore", SUGGESTED, "{test: mode change, mode: shore, result: wrong}")),
    look("existing-wiring-surveyed", "kept-wiring-looked-at", "old wiring"),
    row("initial-verification", "first-verification-recorded", "design", "van", NO_TEST,
        ("readings: insulation resistance", SUGGESTED, "{test: insulation resistance, resistance: 3 MΩ}"),
        ("readings: polarity at inlet", SUGGESTED, "{test: polarity, at: inlet, result: wrong}"),
        ("readings: polarity at socket", SUGGESTED, "{test: polarity, at: socket, result: wrong}"),
        ("readings: earth continuity", SUGGESTED, "{test: earth continuity, at: socket, result: wrong}"),
        ("readings: rcd trip at RB", SUGGESTED, "{test: rcd trip, at: RB, result: wrong}")),
    row("insulation-resistance-mains", "mains-insulation-measured", "design", "saltbush", (),
        ("readings: insulation resistance", SUGGESTED,
         "{test: insulation resistance, resistance: 0.2 MΩ, voltage: 500 V}")),
    look("live-parts-not-touchable", "live-parts-out-of-touch", "live parts"),
    row("live-parts-not-touchable", "splice-insulated", "tee-joint", "saltbush", (),
        ("joints.tee-joint.insulated", SUGGESTED, "false")),
    row("polarity-test", "polarity-proven", "design", "saltbush", (),
        ("readings: polarity at inlet", SUGGESTED, "{test: polarity, at: inlet, result: wrong}"),
        ("readings: polarity at outlets", SUGGESTED, "{test: polarity, at: outlets, result: wrong}")),
    row("thermal-check-under-load", "joints-checked-warm", "design", "saltbush", (),
        ("readings: temperature or voltage drop under load", SUGGESTED, "{at: inv-fuse, temperature: 95 °C}")),
    row("circuit-labels-and-ratings", "devices-marked-with-their-circuits", "design", "van",
        (("equipment.FL.marked", "unknown"),), ("equipment.FL.marked", SUGGESTED, "false"),
        (f"{LOOKED_AT}: fuse ratings", "fuse ratings", "fuse ratings")),
    row("inlet-data-label", "inlet-plate-complete", "inlet", "saltbush", (),
        ("equipment.inlet.labels", SUGGESTED, "[voltage]")),
    row("isolation-point-labels", "isolator-marked", "boot-switch", "saltbush", (),
        ("equipment.boot-switch.marked", SUGGESTED, "false"),
        ("equipment.boot-switch.shows state", SUGGESTED, "false")),
    row("main-switch-instructions", "main-switch-explains-itself", "design", "saltbush", (),
        ("labels.main switch", SUGGESTED, "[state]")),
    row("multiple-supply-warning", "more-than-one-source-told", "design", "saltbush", (),
        ("labels.main switch", SUGGESTED, "[instructions]"),
        (f"{LOOKED_AT}: source labels", "source labels", "source labels")),
    row("wire-marking", "wire-marked-along-its-length", "lights", "van", (("code", "us-rv"),),
        ("circuits.lights.marked every", SUGGESTED, "2 m")),
    look("covers-need-tool", "covers-ask-for-a-tool", "covers"),
    row("grommet-through-panels", "cable-edge-covered-in-hole", "boot-hole", "saltbush", (),
        ("passes.boot-hole.grommet", SUGGESTED, "false"), ("passes.boot-hole.gland", "false", "false")),
    row("slide-cable-chain-or-guide", "loop-guided", "drag", "van", (("places.drag.guide", "unknown"),),
        ("places.drag.guide", SUGGESTED, "hanging")),
    look("wiring-clear-of-steering-and-wheels", "cables-clear-of-wheels", "steering and wheels"),
    row("joints-in-enclosures", "mains-joint-in-a-box", "mains-tail", "saltbush", (),
        ("joints.mains-tail.enclosure", SUGGESTED, "none")),
    look("joints-in-enclosures", "mains-joints-closed-in", "mains joints"),
    look("joints-mechanical-then-soldered", "splices-mechanically-sound", "splices"),
    look("strain-relief-at-terminals", "terminals-spared-from-pull", "strain relief"),
    row("terminal-torque", "stud-torque-as-stated", "house.+", "van",
        (("circuits.trunk.ends.from.torqued", "unknown"),),
        ("circuits.trunk.ends.from.torqued", "12 N m", "3 N m")),
    row("rcd-test-function", "rcd-proven-by-test", "board-rcd", "saltbush", (),
        ("readings: rcd trip at board-rcd", SUGGESTED, "{test: rcd trip, at: board-rcd, time: 900 ms}")),
    look("outlet-not-face-up", "outlet-faces-no-water", "outlet faces"),
    look("pv-roof-fixing-loads", "array-fixing-stands-the-wind", "array fixing", "panels"),
    look("roof-cable-entry-sealed", "roof-entry-sealed", "roof entries", "panels"),
    look("protection-accessible", "devices-within-reach", "device access"),
    look("luminaire-fixed-to-structure", "lamps-fixed-for-travel", "lamps"),
    look("ties-bundle-only", "ties-not-the-only-support", "supports"),
    look("immunity-of-safety-functions", "driving-aids-undisturbed", "driving aids", "design", "saltbush", ENGINE),
    look("occupant-impact-zone-clear", "strike-zones-free", "strike zones", "design", "saltbush", ENGINE),
    look("structure-not-weakened", "structure-left-strong", "structure"),
)  # fmt: skip
ASKED_ELSEWHERE = {"vibration-tolerant-connections": "the record of torque has no bad answer; see terminal-torque"}


@cache
def book() -> Rulebook:
    return load_rulebook()


def alone(rule: str) -> Rulebook:
    """The rulebook with one rule left in it."""
    whole = book()
    return Rulebook([one for one in whole.rules if one.id == rule], whole.limits, whole.codes, whole.sha256)


def put(one: Row, edits: Edits) -> tuple[str, tuple[Question, ...]]:
    """The verdict of the rule on its subject, and the questions it leaves open."""
    design = read_text(BASES[one.base].read_text("utf-8"), "x.fitout.yaml", one.prepared + edits)
    facts, rules = Facts(design), alone(one.rule)
    rule = rules.rules[0]
    subject = facts.subject(rule.about, one.about)
    if subject is None:
        return GONE, ()
    broken: list[Broken] = []
    limits = rules.limits_for(code_of(design))
    verdict = judge(rule, [subject], facts.subjects("design")[0], limits, broken)[0]
    assert broken == []
    return verdict, survey(review(design, rules, facts=facts), rules, facts).questions


def asked(one: Row, answer: Answer) -> Question:
    """The question for an entry, on which the row's finding hangs."""
    entry, _, word = answer.entry.partition(": ")
    is_look = entry == LOOKED_AT
    for question in put(one, ())[1]:
        right = question.entry == answer.entry
        if is_look:
            right = question.entry == entry and f"`{word}`" in question.way.write
        if right and any(each.about.id == one.about for each in question.settles):
            return question
    raise AssertionError(f"the survey does not ask for {answer.entry}")


def written(one: Row, answer: Answer, good: bool, at: int) -> tuple[str, str]:
    """The edit that writes an answer into the file; `at` counts the readings that stand before it."""
    entry, _, word = answer.entry.partition(": ")
    if entry == LOOKED_AT:
        return (LOOKED_AT if good else "papers.found wrong"), f"[{word}]"
    text = answer.good if good else answer.bad
    if good and text == SUGGESTED:
        suggested = asked(one, answer).way.write.partition("  #")[0]
        text = suggested.partition(": ")[2]
    if entry == "readings":
        mode = next(iter(read_text(BASES[one.base].read_text("utf-8"), "x.fitout.yaml").modes))
        return f"readings.{at}", text.replace("at: …", "at: inlet").replace("mode: …", f"mode: {mode}")
    # What stands as one unknown in the file is answered as a whole.
    return answer.entry.removesuffix(".when") if text.startswith("{when") else answer.entry, text


def answers(one: Row, good: bool) -> Edits:
    text = BASES[one.base].read_text("utf-8")
    before = 0 if one.prepared == NO_TEST else len(read_text(text, "x.fitout.yaml").readings)
    return tuple(written(one, answer, good, before + at) for at, answer in enumerate(one.answers))


IDS = [f"{one.requirement}-{one.rule}" for one in ROWS]


@pytest.mark.parametrize("one", ROWS, ids=IDS)
def test_what_nobody_answered_is_unproven_and_asked_for(one: Row) -> None:
    assert put(one, ())[0] == "unproven"
    for answer in one.answers:
        question = asked(one, answer)
        assert question.way.look
        assert question.way.instrument
        assert question.way.care


@pytest.mark.parametrize("one", ROWS, ids=IDS)
def test_the_good_answer_as_it_is_suggested_settles_it(one: Row) -> None:
    verdict, left = put(one, answers(one, good=True))
    assert verdict == (GONE if one.requirement == "panel-neutral-insulated" else "met"), "an insulated bar is no bond"
    assert not any(each.about.id == one.about for question in left for each in question.settles)


@pytest.mark.parametrize("one", ROWS, ids=IDS)
def test_the_bad_answer_is_a_breach(one: Row) -> None:
    assert put(one, answers(one, good=False))[0] == "breach"


def test_every_requirement_that_must_be_looked_at_or_measured_has_its_row() -> None:
    with (ROOT / "rules" / "requirements.csv").open(encoding="utf-8", newline="") as lines:
        wanted = {each["id"] for each in csv.DictReader(lines) if each["decidable"] in ("survey", "test")}
    assert {one.requirement for one in ROWS} | set(ASKED_ELSEWHERE) == wanted


def test_each_row_asks_by_a_rule_that_covers_its_requirement() -> None:
    covers = {rule.id: rule.covers for rule in book().rules}
    assert [one.rule for one in ROWS if one.requirement not in covers[one.rule]] == []


def test_every_word_of_a_look_is_put_to_some_rule() -> None:
    required = " ".join(rule.require for rule in book().rules)
    assert [word for name, word, _ in ASKED if f"design.{name}_inspected" not in required] == []
