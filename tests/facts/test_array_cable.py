"""Cables of solar arrays."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

ROOF = "looms.roof-loom"


def test_the_voltage_is_that_of_the_array_and_none_for_other_circuits() -> None:
    assert ask("circuit", "sun-in", "array_voltage") == pytest.approx(3 * 24.3)
    assert ask("circuit", "lamps", "array_voltage") is None


def test_marks_are_told_by_their_interval() -> None:
    assert ask("circuit", "sun-in", "is_marked_along", {"circuits.sun-in.marked every": "2 m"}) is True
    assert ask("circuit", "sun-in", "is_marked_along", {"circuits.sun-in.marked every": "none"}) is False
    assert isinstance(ask("circuit", "sun-in", "is_marked_along"), Unknown)


def test_a_bundle_with_another_circuit_counts_by_its_list_and_by_what_circuits_name() -> None:
    assert ask("circuit", "sun-in", "runs_with_others") is False
    assert ask("circuit", "sun-in", "runs_with_others", {ROOF: "{carries: [sun-in], place: cabin}"}) is False
    assert ask("circuit", "sun-in", "runs_with_others", {ROOF: "{carries: [sun-in, lamps], place: cabin}"}) is True
    named = {ROOF: "{carries: [sun-in], place: cabin}", "circuits.lamps.loom": "roof-loom"}
    assert ask("circuit", "sun-in", "runs_with_others", named) is True
    unsure = {ROOF: "{carries: unknown, place: cabin}"}
    assert isinstance(ask("circuit", "sun-in", "runs_with_others", unsure), Unknown)
