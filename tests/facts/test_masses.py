"""Masses, axle loads, dimensions."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask

HEAVY = ("equipment.house.mass", "unknown")


def test_the_added_mass_is_that_of_the_battery() -> None:
    assert ask("design", "design", "added_mass") == pytest.approx(12.0)


def test_a_battery_without_a_mass_leaves_the_sum_open() -> None:
    found = ask("design", "design", "added_mass", HEAVY)
    assert isinstance(found, Unknown)
    assert "house" in found.reason


def test_what_the_factory_fitted_adds_nothing() -> None:
    assert ask("design", "design", "added_mass", ("equipment.house.own", "factory")) == 0.0


def test_the_vehicle_weighs_both_axles_the_work_and_the_payload() -> None:
    # 1400 + 1500 + 12 + 300
    assert ask("design", "design", "gross_mass") == pytest.approx(3212.0)


def test_without_the_payload_the_mass_is_a_least_one() -> None:
    found = ask("design", "design", "gross_mass", ("vehicle.masses.payload kept", "unknown"))
    assert isinstance(found, Range)
    assert found.low == pytest.approx(2912.0)
    assert found.high == float("inf")


def test_roof_gear_raises_the_vehicle() -> None:
    assert ask("design", "design", "overall_height") == pytest.approx(2.9)
    assert ask("design", "design", "overall_height", ("equipment.plus.height added", "100 mm")) == pytest.approx(3.0)


def test_people_and_water_count_beside_the_payload_and_what_was_taken_out_does_not() -> None:
    told = {"people": "150 kg", "water": "80 kg", "removed": "20 kg"}
    masses = tuple((f"vehicle.masses.{key}", mass) for key, mass in told.items())
    # 1400 + 1500 + 12 - 20 + 300 + 150 + 80
    assert ask("design", "design", "gross_mass", *masses) == pytest.approx(3422.0)
    assert ask("design", "design", "added_mass", *masses) == pytest.approx(-8.0)


def test_whatever_was_moved_may_have_changed_the_ball_load() -> None:
    edits = (("vehicle.masses.before.ball", "90 kg"), ("vehicle.masses.removed", "20 kg"))
    found = ask("design", "design", "ball_load", *edits)
    assert (found.low, found.high) == (pytest.approx(58.0), pytest.approx(122.0))
