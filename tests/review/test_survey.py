"""The questions of a review: every open finding is asked for, each entry once, with what to make dead first."""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts
from checker.reading import read_text
from checker.review import SIGNALS, Review, review
from checker.review.survey import Question, Survey, survey
from checker.review.survey_entries import INSTRUMENTS, PAPERS, WHOLE
from checker.review.survey_order import order_of_work, settle_most
from checker.review.survey_ways import BATTERY_CARE, DC_CARE, DEAD_TEST_CARE, LIVE_CARE, LOOK_CARE, MAINS_CARE
from checker.rulebook import Rulebook, load_rulebook

ROOT = Path(__file__).parents[2]
OLD_WORK = (ROOT / "examples" / "saltbush-survey.fitout.yaml").read_text("utf-8")
CAMPER = (ROOT / "examples" / "heron-camper.fitout.yaml").read_text("utf-8")


@cache
def book() -> Rulebook:
    return load_rulebook()


@cache
def asked(text: str, edits: tuple[tuple[str, str], ...] = ()) -> tuple[Review, Survey]:
    design = read_text(text, "x.fitout.yaml", edits)
    facts = Facts(design)
    found = review(design, book(), facts=facts)
    return found, survey(found, book(), facts)


def question(text: str, entry: str, *edits: tuple[str, str]) -> Question:
    return next(one for one in asked(text, edits)[1].questions if one.entry == entry)


def test_every_open_finding_is_asked_for_or_said_to_be_without_a_question() -> None:
    found, questions = asked(OLD_WORK)
    open_ = {one.key for one in found.findings if one.verdict == "unproven"}
    settled = {f"{one.rule}:{one.about.kind}:{one.about.id}" for each in questions.questions for one in each.settles}
    assert settled | {one.key for one in questions.unasked} == open_
    assert questions.undecided == len(open_)


def test_an_entry_is_asked_for_once_and_the_worst_come_first() -> None:
    questions = asked(OLD_WORK)[1].questions
    assert len({(one.entry, one.way.write) for one in questions}) == len(questions)
    order = [(SIGNALS.index(one.signal), -len(one.settles)) for one in questions]
    assert order == sorted(order)


def test_every_question_says_what_to_look_at_with_what_and_what_to_make_dead_first() -> None:
    for one in asked(OLD_WORK)[1].questions:
        assert one.way.look.strip()
        assert one.way.instrument.strip()
        assert len(one.way.care.split()) > 2
        assert one.way.write.strip()
        assert one.settles
        assert all(each.wanted and each.title for each in one.settles)


def test_a_place_stands_once_with_all_its_questions() -> None:
    questions = asked(OLD_WORK)[1].questions
    steps = order_of_work(questions)
    assert sorted(one.entry + one.way.write for step in steps for one in step.questions) == sorted(
        one.entry + one.way.write for one in questions
    )
    assert {"front-boot", PAPERS, WHOLE, INSTRUMENTS} <= {step.place for step in steps}
    held = [(one.place, one.way.instrument) for step in steps for one in step.questions]
    assert held == [(step.place, step.instrument) for step in steps for _ in step.questions]
    places = [step.place for step in steps]
    assert len(dict.fromkeys(places)) == sum(here != before for here, before in pairwise([*places, ""]))


def test_papers_come_first_tests_last_and_the_numbers_follow_each_other() -> None:
    steps = order_of_work(asked(OLD_WORK)[1].questions)
    assert steps[0].place == PAPERS
    assert steps[-1].place == INSTRUMENTS
    assert steps[0].first == 1
    assert all(after.first == before.last + 1 for before, after in pairwise(steps))


def test_what_settles_most_comes_first_when_time_is_short() -> None:
    steps = order_of_work(asked(OLD_WORK)[1].questions)
    numbered = {step.first + at: one for step in steps for at, one in enumerate(step.questions)}
    most = [len(numbered[number].settles) for number in settle_most(steps)]
    assert most == sorted((len(one.settles) for one in numbered.values()), reverse=True)[: len(most)]


def test_the_order_of_work_fits_a_page() -> None:
    assert len(order_of_work(asked(OLD_WORK)[1].questions)) <= 50


@pytest.mark.parametrize(
    ("entry", "edits", "place", "care"),
    [
        ("equipment.leisure.restraint", (("equipment.leisure.restraint", "unknown"),), "bench", BATTERY_CARE),
        ("equipment.RB.type", (("equipment.RB.type", "unknown"),), "cupboard", MAINS_CARE),
        ("equipment.FA.rating", (("equipment.FA.rating", "unknown"),), "engine-bay", DC_CARE),
        ("cables.one-10.size", (("cables.one-10.size", "unknown"),), "bench", LOOK_CARE),
        ("places.bench.detector", (("places.bench.detector", "unknown"),), "bench", LOOK_CARE),
        ("equipment.charger.isolation", (("equipment.charger.isolation", "unknown"),), "bench", MAINS_CARE),
    ],
)
def test_where_to_go_and_what_to_make_dead_hang_on_the_thing(
    entry: str, edits: tuple[tuple[str, str], ...], place: str, care: str
) -> None:
    one = question(CAMPER, entry, *edits)
    assert one.place == place
    if care == LOOK_CARE and entry.startswith("cables"):
        assert one.way.care == DC_CARE, "the strands are bare metal"
    else:
        assert one.way.care == care


def test_a_conductor_is_never_measured_over_its_insulation() -> None:
    look = question(CAMPER, "cables.one-10.size", ("cables.one-10.size", "unknown")).way.look
    assert "never the outside of the insulation" in look


def test_a_terminal_of_which_nothing_is_told_is_asked_for_by_its_own_key() -> None:
    one = question(OLD_WORK, "parts.found-battery.terminals.+.cover")
    assert one.way.look == "It is covered."
    assert one.way.care == BATTERY_CARE
    assert one.way.write == "parts.found-battery.terminals.+.cover: {is: true, basis: read off}"


def test_a_missing_test_is_asked_for_with_its_instrument_and_its_record() -> None:
    one = next(one for one in asked(CAMPER, (("readings.5", "(remove)"),))[1].questions if "rcd trip" in one.entry)
    assert one.place == INSTRUMENTS
    assert "residual-current tester" in one.way.instrument
    assert one.way.care == LIVE_CARE
    assert one.way.write == "readings: {test: rcd trip, at: RB, time: 24 ms, current: 30 mA}"


def test_insulation_is_measured_dead() -> None:
    one = next(one for one in asked(CAMPER, (("readings.4", "(remove)"),))[1].questions if "insulation" in one.entry)
    assert one.way.care == DEAD_TEST_CARE


def test_each_look_at_the_finished_vehicle_is_a_question_of_its_own() -> None:
    questions = asked(CAMPER, (("papers.inspected", "[covers]"),))[1].questions
    looks = [one for one in questions if one.entry == "papers.inspected"]
    assert all(one.place == WHOLE for one in looks)
    assert any("`structure`" in one.way.write for one in looks)
    assert not any("`covers`" in one.way.write for one in looks)


def test_an_answer_written_as_told_settles_its_question() -> None:
    edits = (("equipment.leisure.restraint", "unknown"),)
    assert any(one.entry == "equipment.leisure.restraint" for one in asked(CAMPER, edits)[1].questions)
    answered = (("equipment.leisure.restraint", "{hold-down: strap, movement: 3 mm, basis: measured}"),)
    assert not any(one.entry.startswith("equipment.leisure.restraint") for one in asked(CAMPER, answered)[1].questions)


def test_a_design_that_leaves_nothing_open_has_no_questions() -> None:
    assert asked(CAMPER)[1].questions == ()
