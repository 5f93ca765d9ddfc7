"""Papers, labels, tests and dates: what is written decides, silence does not."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask

YEAR_S = 31_557_600.0


@pytest.mark.parametrize(
    ("fact", "key"),
    [("diagram_held", "diagram"), ("certificate_held", "certificate"), ("inspection_stated", "next inspection"),
     ("editions_stated", "editions")],
)  # fmt: skip
def test_a_paper_is_held_when_named_refused_when_none_and_open_when_unknown(fact: str, key: str) -> None:
    assert ask("design", "design", fact, (f"papers.{key}", "none")) is False
    assert isinstance(ask("design", "design", fact, (f"papers.{key}", "unknown")), Unknown)


def test_what_is_named_is_held() -> None:
    assert ask("design", "design", "diagram_held") is True
    assert ask("design", "design", "certificate_held") is True


def test_the_time_to_the_next_inspection_counts_months() -> None:
    # 2026-05 to 2027-05
    assert ask("design", "design", "years_to_inspection") == pytest.approx(YEAR_S)
    sooner = ask("design", "design", "years_to_inspection", ("papers.next inspection", "2026-11"))
    assert sooner == pytest.approx(YEAR_S / 2)


def test_a_date_in_doubt_gives_a_time_in_doubt() -> None:
    # From May 2026: a year alone may be any month of it.
    found = ask("design", "design", "years_to_inspection", ("papers.next inspection", "2027..2028"))
    assert isinstance(found, Range)
    assert found.low == pytest.approx(8 / 12 * YEAR_S)
    assert found.high == pytest.approx(31 / 12 * YEAR_S)


def test_a_licence_of_none_is_no_licence() -> None:
    assert ask("design", "design", "mains_licence_held") is True
    assert ask("design", "design", "mains_licence_held", ("people", "{mains work: {licence: none needed}}")) is False
    assert isinstance(ask("design", "design", "mains_licence_held", ("people", "{}")), Unknown)


def test_one_device_nobody_looked_at_leaves_the_marks_open() -> None:
    assert ask("design", "design", "devices_marked") is True
    found = ask("design", "design", "devices_marked", ("equipment.FL.marked", "unknown"))
    assert isinstance(found, Unknown)
    assert "FL" in found.reason
    assert ask("design", "design", "devices_marked", ("equipment.FL.marked", "false")) is False


def test_what_is_essential_is_told_or_asked() -> None:
    assert ask("design", "design", "essential_told") is True
    assert isinstance(ask("design", "design", "essential_told", ("essential", "unknown")), Unknown)


def test_marks_are_asked_of_the_fitter_and_not_of_the_vehicle_maker() -> None:
    unmarked = ("equipment.FL.marked", "false")
    assert ask("design", "design", "devices_marked", unmarked, ("equipment.FL.own", "factory")) is True


def test_a_survey_that_names_some_covers_says_nothing_of_the_others() -> None:
    survey = ("purpose", "survey")
    left = ask("design", "design", "opened_all", survey, ("seen", "{covers off: [duct]}"))
    assert isinstance(left, Unknown)
    assert "bay" in left.reason
    assert ask("design", "design", "opened_all", survey, ("seen", "{not opened: none}")) is True
