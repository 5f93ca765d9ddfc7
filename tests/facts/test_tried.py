"""Tests made on the finished work: a wrong result decides, a missing one is asked for."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask


def test_tests_are_those_with_a_recorded_answer() -> None:
    assert "insulation resistance" in ask("design", "design", "tests_recorded")
    assert ask("design", "design", "tests_recorded", ("readings", "[{test: polarity}]")) == ()


def test_the_least_insulation_resistance_counts() -> None:
    readings = "[{test: insulation resistance, resistance: 9 MΩ}, {test: insulation resistance, resistance: 2 MΩ}]"
    assert ask("design", "design", "insulation_resistance", ("readings", readings)) == pytest.approx(2e6)
    assert isinstance(ask("design", "design", "insulation_resistance", ("readings", "[]")), Unknown)


def test_a_wrong_result_decides_and_a_missing_one_does_not() -> None:
    assert ask("design", "design", "polarity_proven") is True
    assert ask("design", "design", "polarity_proven", ("readings", "[{test: polarity, result: wrong}]")) is False
    assert isinstance(ask("design", "design", "polarity_proven", ("readings", "[]")), Unknown)


def test_the_link_has_to_be_tested_in_each_mode_with_mains() -> None:
    assert isinstance(ask("design", "design", "link_tested_in_modes"), Unknown)
    done = "[{test: neutral-earth link, mode: parked, result: none}]"
    assert ask("design", "design", "link_tested_in_modes", ("readings", done)) is True
