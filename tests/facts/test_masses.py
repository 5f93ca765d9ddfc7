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


def test_axle_loads_follow_the_lever() -> None:
    # Middle of the battery: 1.1 + 0.15 = 1.25 m behind the front axle, wheelbase 3.5 m: 12 * 1.25 / 3.5 = 4.286 kg aft.
    assert ask("design", "design", "rear_axle_load") == pytest.approx(1504.2857, abs=1e-3)
    assert ask("design", "design", "front_axle_load") == pytest.approx(1407.7143, abs=1e-3)


def test_what_has_no_box_lies_anywhere_its_place_allows() -> None:
    # The bay: 1 m to 1.6 m behind the axle.
    found = ask("design", "design", "rear_axle_load", ("equipment.house.box", "unknown"))
    assert isinstance(found, Range)
    assert found.low == pytest.approx(1500 + 12 * 1.0 / 3.5, abs=1e-3)
    assert found.high == pytest.approx(1500 + 12 * 1.6 / 3.5, abs=1e-3)


def test_roof_gear_raises_the_vehicle() -> None:
    assert ask("design", "design", "overall_height") == pytest.approx(2.9)
    assert ask("design", "design", "overall_height", ("equipment.plus.height added", "100 mm")) == pytest.approx(3.0)
