"""Tests made on the finished work: a wrong result decides, a missing one is asked for."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask


def test_tests_are_those_with_a_recorded_answer() -> None:
    assert "insulation resistance" in ask("design", "design", "tests_recorded")
    assert ask("design", "design", "tests_recorded", ("readings", "[{test: polarity}]")) == ()


def test_the_least_insulation_resistance_counts() -> None:
    readings = "[{test: insulation resistance, resistance: 9 MΩ}, {test: insulation resistance, resistance: 2 MΩ}]"
    assert ask("design", "design", "insulation_resistance", ("readings", readings)) == pytest.approx(2e6)
    assert isinstance(ask("design", "design", "insulation_resistance", ("readings", "[]")), Unknown)
    lesser = readings.replace("test: insulation resistance, resistance: 2 MΩ", "test: unknown, resistance: 2 MΩ")
    assert ask("design", "design", "insulation_resistance", ("readings", lesser)) == Range(2e6, 9e6)


def test_a_wrong_result_decides_and_a_missing_one_does_not() -> None:
    assert ask("design", "design", "polarity_proven") is True
    assert ask("design", "design", "polarity_proven", ("readings", "[{test: polarity, result: wrong}]")) is False
    assert isinstance(ask("design", "design", "polarity_proven", ("readings", "[]")), Unknown)


def test_the_link_has_to_be_tested_in_each_mode_with_mains() -> None:
    assert isinstance(ask("mode", "parked", "link_tested"), Unknown)
    done = "[{test: neutral-earth link, mode: parked, result: none}]"
    assert ask("mode", "parked", "link_tested", ("readings", done)) is True


def readings(*lines: str) -> tuple[str, str]:
    return "readings", f"[{', '.join(lines)}]"


INVERTING = ("modes", "{away: {shore: absent, inverter: inverting}}")


def test_polarity_is_proven_point_by_point() -> None:
    inlet, socket = "{test: polarity, at: inlet, result: right}", "{test: polarity, at: socket, result: right}"
    assert ask("design", "design", "polarity_proven", readings(inlet, socket)) is True
    left = ask("design", "design", "polarity_proven", readings(inlet))
    assert isinstance(left, Unknown)
    assert "socket" in left.reason
    assert isinstance(ask("design", "design", "polarity_proven", readings("{test: polarity, result: right}")), Unknown)


def test_no_link_is_right_only_where_the_shore_brings_it() -> None:
    none = readings("{test: neutral-earth link, mode: away, result: none}")
    assert ask("mode", "away", "link_tested", none, INVERTING) is False
    one = readings("{test: neutral-earth link, mode: away, result: one}")
    assert ask("mode", "away", "link_tested", one, INVERTING) is True
    unsure = ("modes", "{away: {shore: absent, inverter: unknown}}")
    assert isinstance(ask("mode", "away", "link_tested", none, unsure), Unknown)


def test_the_pins_are_tested_in_each_mode_without_shore() -> None:
    assert ask("design", "design", "makes_mains_aboard") is False
    live = readings("{test: inlet pins, mode: away, result: wrong}")
    assert ask("design", "design", "inlet_pins_tested_dead", live, INVERTING) is False
    assert isinstance(ask("design", "design", "inlet_pins_tested_dead", INVERTING), Unknown)


def test_a_stop_that_nobody_named_was_not_tried() -> None:
    some = readings("{test: function, at: house, result: right, tried: [alarm, charge stop]}")
    left = ask("design", "design", "function_proven", some)
    assert isinstance(left, Unknown)
    assert "cold stop" in left.reason


def test_the_temperature_of_the_air_is_that_of_no_joint() -> None:
    air = readings("{at: bay, temperature: 31 °C}")
    assert ask("design", "design", "hottest_joint", air) is None
    assert isinstance(ask("design", "design", "warm_joints_checked", air), Unknown)
    both = readings("{at: FH, temperature: 64 °C}", "{at: plus, temperature: 41 °C}")
    assert ask("design", "design", "hottest_joint", both) == 64.0
    lost = readings("{at: unknown, temperature: 64 °C}", "{at: plus, temperature: 41 °C}")
    assert ask("design", "design", "hottest_joint", lost) == Range(41.0, 64.0)
    assert isinstance(ask("design", "design", "hottest_joint", readings("{at: unknown, temperature: 64 °C}")), Unknown)


def test_a_failed_first_test_decides_and_a_missing_one_is_asked_for() -> None:
    assert ask("design", "design", "verification_recorded") is True
    assert isinstance(ask("design", "design", "verification_recorded", ("readings", "[]")), Unknown)
    failed = readings("{test: earth continuity, at: inlet, result: wrong}")
    assert ask("design", "design", "verification_recorded", failed) is False
