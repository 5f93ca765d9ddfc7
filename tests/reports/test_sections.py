"""Which finding stands where."""

from __future__ import annotations

from checker.reports.sections import sections
from tests.reports.sample import DROP, HEATER_DROP, HEATER_FAR, HEATER_THIN, NASTY, THIN, finding, nothing_found, sample


def with_findings(*findings: dict) -> dict:
    return {**nothing_found(), "findings": list(findings)}


def test_breaches_stand_worst_first_in_whatever_order_they_come() -> None:
    found = sections(with_findings(NASTY, DROP, THIN)).breaches
    assert [headed.finding["rule"] for headed in found] == ["device-protects-conductor", "terminal-covered"]


def test_breaches_of_one_signal_keep_the_order_of_the_review() -> None:
    two = [finding("b", "breach", "DANGER", "device", "F2", 9), finding("a", "breach", "DANGER", "device", "F1", 3)]
    assert [headed.finding["rule"] for headed in sections(with_findings(*two)).breaches] == ["b", "a"]


def test_a_finding_is_folded_under_its_head() -> None:
    (headed,) = sections(with_findings(THIN, DROP)).breaches
    assert headed.folded == (DROP,)


def test_a_finding_whose_head_is_not_a_breach_here_stands_on_its_own() -> None:
    found = sections(with_findings(DROP)).breaches
    assert [(headed.finding["rule"], headed.folded) for headed in found] == [("drop-within-limit", ())]


def test_two_findings_under_each_other_are_both_shown() -> None:
    first = {**THIN, "under": DROP["key"]}
    found = sections(with_findings(first, DROP)).breaches
    assert {headed.finding["rule"] for headed in found} == {"device-protects-conductor", "drop-within-limit"}


def test_every_finding_of_a_report_stands_in_exactly_one_section() -> None:
    document = sample(everything=True)
    parts = sections(document)
    shown = [each for headed in parts.breaches for each in (headed.finding, *headed.folded)]
    shown += [each for question in parts.questions for each in question.settles]
    shown += [*parts.set_aside, *parts.met, *parts.not_applicable]
    key = lambda each: (each["rule"], each["about"]["id"], each["verdict"])  # noqa: E731
    assert sorted(shown, key=key) == sorted(document["findings"], key=key)


def test_questions_come_by_the_worst_that_they_settle_then_by_how_much_they_settle() -> None:
    found = sections(with_findings(HEATER_FAR, HEATER_DROP, HEATER_THIN)).questions
    assert [[each["signal"] for each in question.settles] for question in found] == [["DANGER", "NOTICE"], ["WARNING"]]


def test_an_unproven_finding_that_a_breach_explains_is_folded_under_it_and_asked_no_more() -> None:
    follows = {**HEATER_FAR, "under": THIN["key"]}
    parts = sections(with_findings(THIN, follows, HEATER_DROP))
    assert parts.breaches[0].folded == (follows,)
    assert [question.settles for question in parts.questions] == [(HEATER_DROP,)]


def test_an_unproven_finding_under_another_unproven_one_is_still_asked() -> None:
    parts = sections(with_findings(HEATER_THIN, {**HEATER_DROP, "under": HEATER_THIN["key"]}))
    assert [[each["rule"] for each in question.settles] for question in parts.questions] == [
        ["device-protects-conductor", "drop-within-limit"]
    ]
