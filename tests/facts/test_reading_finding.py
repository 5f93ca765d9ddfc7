"""What a review says of a reading."""

from __future__ import annotations

from checker.facts.subject import Subject
from checker.quantities import Unknown
from tests.facts.dc_designs import van

PUMP = "  - {mode: sunny, at: pump, current: SHOWN}"


def reading(shown: str, *changes: tuple[str, str]) -> Subject:
    return van(changes, readings=PUMP.replace("SHOWN", shown)).subjects("reading")[0]


def test_a_reading_within_the_cases_of_exact_values_agrees() -> None:
    assert reading("6.1 A").surely_agrees is True


def test_one_outside_does_not_and_is_explained() -> None:
    found = reading("9 A")
    assert found.surely_agrees is False
    assert found.expected.startswith("6 A, from ")
    assert "pump" in found.likely_cause


def test_nothing_is_explained_where_it_agrees() -> None:
    assert reading("6.1 A").likely_cause == ""


def test_a_range_of_the_file_on_which_the_mode_rests_leaves_agreement_open_and_not_the_difference() -> None:
    wide = ("internal resistance: 4 mΩ", "internal resistance: 2..6 mΩ")
    found = reading("6.1 A", wide).surely_agrees
    assert isinstance(found, Unknown)
    assert "internal resistance" in found.reason
    assert reading("9 A", wide).surely_agrees is False


def test_a_range_on_which_nothing_rests_leaves_it_decided() -> None:
    assert reading("6.1 A", ("kind: inverter,", "kind: inverter, mass: 5..9 kg,")).surely_agrees is True


def test_what_the_file_calls_unknown_leaves_the_difference_open_too() -> None:
    lost = ("internal resistance: 4 mΩ", "internal resistance: unknown")
    assert isinstance(reading("9 A", lost).surely_agrees, Unknown)
