"""Distances of equipment to exits, beds, fuel and gas."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask


def test_the_distance_to_fuel_is_between_the_nearest_faces() -> None:
    # house: x to 1.4 m, y to -0.7 m, z from 0.4 m; tank: x from 2 m, y from 0.2 m, z to 0.6 m: sqrt(0.6^2 + 0.9^2).
    assert ask("equipment", "house", "distance_to_fuel") == pytest.approx(1.08167, abs=1e-5)


def test_without_a_box_the_distance_lies_within_what_its_place_allows() -> None:
    found = ask("equipment", "house", "distance_to_fuel", ("equipment.house.box", "unknown"))
    # The bay: x 1..1.6 m, y -1..-0.5 m: at the nearest 0.4 m and 0.7 m away.
    assert isinstance(found, Range)
    assert found.low == pytest.approx(0.80623, abs=1e-5)
    assert found.low <= 1.08167 <= found.high


def test_without_a_fuel_tank_in_the_file_the_distance_is_not_known() -> None:
    found = ask("equipment", "house", "distance_to_fuel", ("places.tank.kind", "locker"))
    assert isinstance(found, Unknown)


def test_a_bed_above_is_found_by_its_ground() -> None:
    assert ask("equipment", "house", "under_bed") is False
    assert ask("equipment", "house", "under_bed", ("equipment.house.box.at", "[4 m, -0.5 m, 0.4 m]")) is True


def test_a_place_of_unknown_kind_may_be_the_nearest_exit() -> None:
    found = ask("equipment", "house", "distance_to_exit", ("places.duct.kind", "unknown"))
    assert isinstance(found, Unknown)


def test_whether_a_bed_lies_above_what_has_no_box_of_its_own_is_a_question() -> None:
    tall = ("places.bay.box", "{at: [3.7 m, -0.9 m, 0.4 m], size: [0.6 m, 0.5 m, 2 m]}")
    found = ask("equipment", "house", "under_bed", ("equipment.house.box", "(remove)"), tall)
    assert isinstance(found, Unknown)


def test_a_battery_in_the_box_of_a_bed_lies_under_it_and_one_on_a_shelf_above_does_not() -> None:
    here = ("equipment.house.box.at", "[4 m, -0.5 m, 0.4 m]")
    chest = ("places.bunk.box", "{at: [3.6 m, -1 m, 0.4 m], size: [1.3 m, 1.4 m, 0.8 m]}")
    assert ask("equipment", "house", "under_bed", here, chest) is True
    assert ask("equipment", "house", "under_bed", ("equipment.house.box.at", "[4 m, -0.5 m, 1.5 m]")) is False
    lost = (("places.bay.inside", "bunk"), ("places.bay.box", "unknown"), ("equipment.house.box", "unknown"))
    assert ask("equipment", "house", "under_bed", *lost) is True
