"""Boxes that cannot be are errors, each at its line and column."""

from __future__ import annotations

import pytest

from tests.reading.small import only, problems

ENVELOPE = ("vehicle.envelope", "{at: [-1 m, -1 m, 0 m], size: [6 m, 2 m, 3 m]}")


def box(at: str = "0 m, 0 m, 0 m", size: str = "1 m, 1 m, 1 m") -> str:
    return f"{{at: [{at}], size: [{size}]}}"


@pytest.mark.parametrize("size", ["-1 m, 1 m, 1 m", "1 m, 1 m, -5 mm", "1 m, -1..1 m, 1 m"])
def test_a_negative_size_is_an_error_at_its_place(size: str) -> None:
    problem = only(("equipment.lamp.box", box(size=size)))
    assert "is below zero" in problem.what and problem.line > 0 and problem.column > 0


def test_a_flat_box_and_one_of_unknown_size_are_taken() -> None:
    assert not problems(("equipment.lamp.box", box(size="1 m, 1 m, 0 m")))
    assert not problems(("equipment.lamp.box", box(size="1 m, unknown, 1 m")))


@pytest.mark.parametrize("path", ["equipment.lamp.box", "places.cabin.box"])
def test_a_box_far_from_the_vehicle_is_an_error_that_says_how_far_and_where_the_vehicle_is(path: str) -> None:
    problem = only(ENVELOPE, (path, box(at="0 m, 3 m, 0 m")))
    assert "lies 2 m beyond the vehicle along y" in problem.what and "-1 m to 1 m" in problem.what
    assert "vehicle.axes" in problem.right


def test_a_point_far_from_the_vehicle_is_an_error() -> None:
    assert "beyond the vehicle along z" in only(ENVELOPE, ("equipment.lamp.at", "[0 m, 0 m, 9 m]")).what


def test_what_stands_out_of_the_envelope_a_little_is_taken() -> None:
    # A rack on the roof or a locker on the drawbar: up to one metre.
    assert not problems(ENVELOPE, ("equipment.lamp.box", box(at="0 m, 0 m, 4 m")))
    assert problems(ENVELOPE, ("equipment.lamp.box", box(at="0 m, 0 m, 4.01 m")))


def test_what_may_lie_near_is_taken() -> None:
    assert not problems(ENVELOPE, ("equipment.lamp.box", box(at="0 m, 1..9 m, 0 m")))
    assert not problems(ENVELOPE, ("equipment.lamp.box", box(at="0 m, unknown, 0 m")))


def test_without_an_envelope_nothing_is_too_far() -> None:
    assert not problems(("equipment.lamp.box", box(at="0 m, 300 m, 0 m")))
