"""Voltages and times of tests: the lowest counts, and the battery side is held apart from the mains."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

BOTH = (
    "readings",
    "[{test: insulation resistance, at: socket, resistance: 9 MΩ, voltage: 500 V}, "
    "{test: insulation resistance, at: plus, resistance: 0.6 MΩ, voltage: 250 V}, "
    "{test: insulation resistance, at: trunk, resistance: 0.7 MΩ, voltage: 100 V}]",
)


def test_each_side_has_figures_of_its_own() -> None:
    assert ask("design", "design", "insulation_resistance", BOTH) == pytest.approx(9e6)
    assert ask("design", "design", "insulation_test_voltage", BOTH) == 500
    assert ask("design", "design", "battery_side_insulation", BOTH) == pytest.approx(0.6e6)
    assert ask("design", "design", "battery_side_test_voltage", BOTH) == 100


def test_without_a_reading_the_battery_side_has_none_and_the_mains_side_is_asked_for() -> None:
    assert ask("design", "design", "battery_side_insulation") is None
    assert isinstance(ask("design", "design", "insulation_test_voltage"), Unknown)
    assert isinstance(ask("design", "design", "dielectric_voltage"), Unknown)


def test_a_reading_at_an_unknown_point_may_be_of_either_side() -> None:
    lost = ("readings", "[{test: insulation resistance, at: unknown, resistance: 0.2 MΩ, voltage: 500 V}]")
    assert isinstance(ask("design", "design", "insulation_resistance", lost), Unknown)
    assert isinstance(ask("design", "design", "battery_side_insulation", lost), Unknown)


def test_the_shortest_and_the_lowest_test_of_the_strength_count() -> None:
    two = (
        "readings",
        "[{test: dielectric strength, voltage: 1080 V, time: 1 s}, "
        "{test: dielectric strength, voltage: 900 V, time: 60 s}]",
    )  # fmt: skip
    assert ask("design", "design", "dielectric_voltage", two) == 900
    assert ask("design", "design", "dielectric_time", two) == 1
