"""Phrases that several formats share."""

from __future__ import annotations

from checker.reports.wording import conditions, few, how_to_see_all, judged, record, short_working
from tests.reports.sample import ASIDE, HEATER_FAR, THIN


def test_a_working_for_reading_is_its_comparisons_and_the_limits_with_their_codes() -> None:
    assert short_working(THIN) == (
        "device.rating (80 A) <= conductor.carrying_capacity (61 A): no",
        "limit for device share of capacity = 100 % (au-nz; a source)",
    )


def test_a_working_without_a_condition_is_shown_as_it_is() -> None:
    finding = {**THIN, "working": ["one line", "  and another"]}
    assert short_working(finding) == ("one line", "  and another")


def test_the_conditions_of_a_working_are_its_first_lines_and_what_stands_further_in() -> None:
    assert list(conditions(THIN["working"])) == THIN["working"][:2]


def test_a_long_list_is_cut_and_the_rest_counted() -> None:
    assert few(["a"] * 6) == ("a",) * 6
    assert few([*"abcdefgh"]) == ("a", "b", "c", "d", "e", "and 3 more")
    assert few([]) == ()


def test_a_command_is_written_as_it_must_be_typed() -> None:
    assert how_to_see_all("my van.yaml").endswith("fitout explain 'my van.yaml' RULE SUBJECT")


def test_only_an_unproven_finding_is_called_unproven() -> None:
    assert judged(HEATER_FAR) == "WARNING if broken, unproven:"
    assert judged(THIN) == "DANGER"


def test_a_record_leaves_out_what_was_not_written() -> None:
    departure = ASIDE["departure"]
    assert departure is not None
    assert record(departure) == "workshop, licence AB-1234, note 4, 2026-11-02"
    assert record({**departure, "by": "", "date": ""}) == "licence AB-1234, note 4"
