"""A site pillar of the design, and the distances of outlets along a wall."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject


def gap(wall: str, at: str = "[1 m, 0 m, 1 m]") -> object:
    return subject(COACH, "place", "cabin", {"places.cabin.wall": wall, "equipment.kitchen-outlets.at": at}).outlet_gap


def test_the_farthest_point_of_a_wall_is_at_its_end_or_half_way_between_outlets() -> None:
    assert gap("[[0 m, 0 m, 1 m], [3 m, 0 m, 1 m]]") == pytest.approx(2.0)
    two = {
        "places.cabin.wall": "[[0 m, 0 m, 1 m], [6 m, 0 m, 1 m]]",
        "equipment.kitchen-outlets.at": "[0.5 m, 0 m, 1 m]",
        "equipment.step-outlet.place": "cabin",
        "equipment.step-outlet.at": "[5.5 m, 0 m, 1 m]",
    }
    assert subject(COACH, "place", "cabin", two).outlet_gap == pytest.approx(2.5)


def test_the_length_goes_round_a_corner() -> None:
    # From the outlet 1 m before the corner, 2 m along the other wall.
    assert gap("[[0 m, 0 m, 1 m], [2 m, 0 m, 1 m], [2 m, 2 m, 1 m]]") == pytest.approx(3.0)


def test_a_wall_without_outlets_is_far_along_all_of_it_and_one_not_told_is_not_known() -> None:
    away = {"places.cabin.wall": "[[0 m, 0 m, 1 m], [3 m, 0 m, 1 m]]", "equipment.kitchen-outlets.place": "locker"}
    assert subject(COACH, "place", "cabin", away).outlet_gap == pytest.approx(3.0)
    assert isinstance(subject(COACH, "place", "cabin").outlet_gap, Unknown)
    assert isinstance(gap("[[0 m, 0 m, 1 m], [3 m, 0 m, 1 m]]", "unknown"), Unknown)
    away["equipment.kitchen-outlets.place"] = "unknown"
    assert isinstance(subject(COACH, "place", "cabin", away).outlet_gap, Unknown)


def test_a_pillar_is_told_when_any_of_it_is() -> None:
    told = {"vehicle.site pillar": "{height: 0.8 m, degree: IP44}"}
    found = subject(COACH, "design", "design", told)
    assert found.pillar_told is True
    assert (found.pillar_height, found.pillar_water) == (0.8, 4)
    assert isinstance(found.pillar_distance, Unknown)
    assert subject(COACH, "design", "design").pillar_told is False
