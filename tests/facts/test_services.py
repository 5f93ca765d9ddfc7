"""Distances to lines of gas, fuel and water."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

# The battery stands from (1.1, -0.9, 0.4) to (1.4, -0.7, 0.6).


def line(points: str, outer: str = "10 mm") -> tuple[str, str]:
    return ("services", f"{{pipe: {{carries: gas, along: {points}, outer: {outer}}}}}")


def test_the_distance_is_to_the_skin_of_the_nearest_stretch() -> None:
    beside = line("[[0 m, -0.6 m, 0.5 m], [3 m, -0.6 m, 0.5 m]]")
    assert ask("equipment", "house", "distance_to_service", beside) == pytest.approx(0.1 - 0.005, abs=1e-6)


def test_a_slanting_stretch_is_measured_where_it_comes_nearest() -> None:
    # In the plane z = 0.5 m the line x + y = 1 passes the corner (1.4, -0.7) at (1.4 - 0.7 - 1) / sqrt 2 = 0.212 m.
    slant = line("[[0 m, 1 m, 0.5 m], [3 m, -2 m, 0.5 m]]", "0 mm")
    assert ask("equipment", "house", "distance_to_service", slant) == pytest.approx(0.3 / 2**0.5, abs=1e-6)


def test_a_line_through_the_battery_is_at_no_distance() -> None:
    assert ask("equipment", "house", "distance_to_service", line("[[0 m, -0.8 m, 0.5 m], [3 m, -0.8 m, 0.5 m]]")) == 0.0


def test_without_lines_or_points_the_distance_is_a_question() -> None:
    assert isinstance(ask("equipment", "house", "distance_to_service"), Unknown)
    assert isinstance(ask("equipment", "house", "distance_to_service", ("services", "{pipe: {carries: gas}}")), Unknown)


def test_equipment_that_lies_somewhere_in_a_place_is_not_measured() -> None:
    found = ask("equipment", "FH", "distance_to_service", line("[[0 m, 0 m, 0 m], [3 m, 0 m, 0 m]]"))
    assert isinstance(found, Unknown)


def test_one_line_that_is_told_says_nothing_of_the_others() -> None:
    points = "along: [[0 m, 1 m, 0.5 m], [3 m, 1 m, 0.5 m]]"
    two = f"a: {{carries: gas, {points}}}, b: {{carries: water, {points}}}"
    assert ask("design", "design", "lines_told", ("services", f"{{{two}}}")) is False
    assert ask("design", "design", "lines_told", ("services", f"{{{two}, c: {{carries: diesel, {points}}}}}")) is True
    assert ask("design", "design", "lines_told", ("services", f"{{{two}, c: {{carries: petrol}}}}")) is False
    assert ask("design", "design", "exhausts_told", ("services", f"{{{two}}}")) is False
    assert ask("design", "design", "exhausts_told", ("services", f"{{c: {{carries: exhaust, {points}}}}}")) is True
