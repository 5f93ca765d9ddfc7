"""Recorded readings beside what was to be expected."""

from __future__ import annotations

import pytest

from checker.facts.subject import Subject
from checker.quantities import Unknown
from tests.facts.dc_designs import van


def reading(text: str, number: int = 0) -> Subject:
    return van(readings=f"  - {text}").subjects("reading")[number]


def test_a_reading_within_the_cases_agrees_and_one_outside_does_not() -> None:
    assert reading("{mode: sunny, at: pump, current: 6.1 A}").agrees is True
    assert reading("{mode: sunny, at: pump, current: 9 A}").agrees is False
    assert reading("{mode: boiling, at: bus, voltage: 9.5 V}").agrees is False


def test_the_sign_of_a_current_does_not_matter() -> None:
    assert reading("{mode: sunny, at: pump, current: -6 A}").agrees is True


def test_how_far_a_reading_lies_off_is_told() -> None:
    assert reading("{mode: sunny, at: pump, current: 9 A}").deviation == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("{mode: sunny, at: kettle, voltage: 230 V}", "not on the direct-current side"),
        ("{mode: sunny, at: bus, current: 5 A}", "no one current"),
        ("{mode: sunny, at: pump, current: unknown}", "not told"),
        ("{mode: sunny, at: pump, current: 5..9 A}", "partly"),
        ("{mode: sunny, at: pump, current: -9..9 A}", "partly"),
    ],
)
def test_what_cannot_be_compared_is_undecided_with_the_reason(text: str, words: str) -> None:
    found = reading(text).agrees
    assert isinstance(found, Unknown)
    assert words in found.reason


def test_a_mode_without_an_operating_point_leaves_its_readings_undecided() -> None:
    changes = (("{kettle: 700 W, pump: 6 A", "{kettle: 700 W, pump: 900 kW"),)
    found = van(changes, readings="  - {mode: boiling, at: bus, voltage: 12 V}").subjects("reading")[0].agrees
    assert isinstance(found, Unknown)
    assert "no operating point" in found.reason


def test_tests_and_readings_without_mode_or_place_are_no_subjects() -> None:
    lines = [
        "{test: rcd trip, at: F1, time: 20 ms, current: 30 mA}",
        "{at: bus, voltage: 12 V}",
        "{mode: sunny, voltage: 12 V}",
        "{mode: sunny, at: F1, temperature: 40 °C}",
        "{mode: sunny, at: pump, current: 6 A, voltage: 13 V}",
        "{mode: sunny, at: pump, current: 7 A}",
    ]
    ids = [s.id for s in van(readings="\n".join(f"  - {line}" for line in lines)).subjects("reading")]
    assert ids == ["voltage at pump in sunny", "current at pump in sunny", "current at pump in sunny (2)"]
