"""Dates of the papers: what was certified before it was there, what was due before the file was written."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

CERTIFICATE, DUE = "papers.certificate.date", "papers.next inspection"


@pytest.mark.parametrize(
    ("date", "answer"), [("2026-05-06", True), ("2025-05", True), ("2025-04-30", False), ("2020", False)]
)
def test_a_certificate_is_at_most_a_year_older_than_the_file_of_a_design(date: str, answer: bool) -> None:
    assert ask("design", "design", "certificate_covers_the_work", (CERTIFICATE, date)) is answer


@pytest.mark.parametrize(("date", "answer"), [("2024-02", True), ("2024-01", False)])
def test_in_a_survey_a_certificate_is_held_against_the_build_alone(date: str, answer: bool) -> None:
    edits = (("purpose", "survey"), (CERTIFICATE, date))
    assert ask("design", "design", "certificate_covers_the_work", *edits) is answer


@pytest.mark.parametrize("edit", [(CERTIFICATE, "unknown"), ("vehicle.built", "unknown"), ("date", "unknown")])
def test_a_date_that_is_missing_decides_nothing_of_a_certificate(edit: tuple[str, str]) -> None:
    assert isinstance(ask("design", "design", "certificate_covers_the_work", edit), Unknown)


@pytest.mark.parametrize(("date", "answer"), [("2026-05", True), ("2026-04", False), ("2027", True), ("none", None)])
def test_an_inspection_is_due_after_the_file(date: str, answer: bool | None) -> None:
    assert ask("design", "design", "inspection_ahead", (DUE, date)) is answer


def test_the_year_of_the_file_alone_does_not_tell_whether_an_inspection_is_ahead() -> None:
    assert isinstance(ask("design", "design", "inspection_ahead", (DUE, "2026")), Unknown)
