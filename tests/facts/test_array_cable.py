"""Cables of solar arrays."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

ROOF = "looms.roof-loom"


def test_the_voltage_is_that_of_the_array_and_none_for_other_circuits() -> None:
    # at the coldest -5 °C, 30 K below the test conditions, by -0.28 % a kelvin
    assert ask("circuit", "sun-in", "array_voltage") == pytest.approx(3 * 24.3 * 1.084)
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


def test_a_duct_shared_with_other_circuits_counts_like_a_bundle() -> None:
    way = {"circuits.sun-in.run": "[3 m via duct, sun-switch, 0.5 m via locker]"}
    duct = {**way, "places.duct": "{kind: duct, inside: cabin}"}
    lamps = {"circuits.lamps.run": "[5 m via duct]"}
    mains = {"circuits.cooling.run": "[0.2 m via locker, Q2, 3 m via duct]"}
    assert ask("circuit", "sun-in", "runs_with_others", duct) is False
    assert ask("circuit", "sun-in", "runs_with_others", {**duct, **lamps}) is True
    assert ask("circuit", "sun-in", "runs_with_others", {**duct, **mains}) is True
    parted = {**way, "places.duct": "{kind: duct, inside: cabin, chambers: {elv: 1, mains: 1}}"}
    assert ask("circuit", "sun-in", "runs_with_others", {**parted, **mains}) is False
    several = {**way, "places.duct": "{kind: duct, inside: cabin, chambers: {elv: 2, mains: 1}}"}
    assert isinstance(ask("circuit", "sun-in", "runs_with_others", {**several, **lamps}), Unknown)
    hall = {**way, "places.duct": "{inside: cabin}"}
    assert ask("circuit", "sun-in", "runs_with_others", {**hall, **lamps}) is False
