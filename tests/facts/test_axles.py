"""Loads of axles and sides, by hand with the lever rule."""

from __future__ import annotations

import math

import pytest

from checker.facts.subject import trace
from checker.quantities import Range, Unknown
from tests.facts.van import ask, van

# The van: wheelbase 3.5 m, front 1400 kg, rear 1500 kg before; a battery of 12 kg from x = 1.1 m to 1.4 m and from
# y = -0.9 m to -0.7 m; payload 300 kg; the envelope from x = -1 m to 5 m, from y = -1.1 m to 1.1 m.
PAYLOAD = ("vehicle.masses.payload at", "[2.1 m, 0 m, 1 m]")
NONE = ("vehicle.masses.payload kept", "0 kg")


def load(which: str, *edits: tuple[str, str]) -> object:
    return ask("design", "design", f"{which}_load", *edits)


def test_axle_loads_follow_the_lever() -> None:
    # Battery 12 * 1.25 / 3.5 = 4.286 kg aft; payload 300 * 2.1 / 3.5 = 180 kg aft.
    assert load("rear_axle", PAYLOAD) == pytest.approx(1500 + 4.2857 + 180, abs=1e-3)
    assert load("front_axle", PAYLOAD) == pytest.approx(1400 + 7.7143 + 120, abs=1e-3)


def test_both_axles_together_carry_everything() -> None:
    both = load("rear_axle", PAYLOAD) + load("front_axle", PAYLOAD)  # type: ignore[operator]
    assert both == pytest.approx(ask("design", "design", "gross_mass", PAYLOAD))


def test_a_payload_of_which_nobody_says_where_may_lie_anywhere_in_the_vehicle() -> None:
    found = load("rear_axle")
    assert isinstance(found, Range)
    # 1504.286 and 300 kg at x = -1 m or 5 m.
    assert found.low == pytest.approx(1504.2857 - 300 / 3.5, abs=1e-3)
    assert found.high == pytest.approx(1504.2857 + 300 * 5 / 3.5, abs=1e-3)


def test_a_payload_that_is_not_told_leaves_a_least_load() -> None:
    found = load("rear_axle", ("vehicle.masses.payload kept", "unknown"))
    assert isinstance(found, Range | Unknown)
    silent = ("vehicle.masses", "{wheelbase: 3.5 m, before: {rear: 1500 kg}}")
    found = load("rear_axle", silent)
    assert isinstance(found, Range) and found.low == pytest.approx(1504.2857, abs=1e-3) and found.high == math.inf


def test_what_has_no_box_lies_anywhere_its_place_allows() -> None:
    # The bay: 1 m to 1.6 m behind the axle.
    found = load("rear_axle", NONE, ("equipment.house.box", "unknown"))
    assert isinstance(found, Range)
    assert found.low == pytest.approx(1500 + 12 * 1.0 / 3.5, abs=1e-3)
    assert found.high == pytest.approx(1500 + 12 * 1.6 / 3.5, abs=1e-3)


def test_people_water_and_what_was_taken_out_follow_the_lever_too() -> None:
    edits = (
        NONE, ("vehicle.masses.people", "150 kg"), ("vehicle.masses.people at", "[0.7 m, 0 m, 1 m]"),
        ("vehicle.masses.water", "70 kg"), ("vehicle.masses.water at", "[7 m, 0 m, 1 m]"),
        ("vehicle.masses.removed", "35 kg"), ("vehicle.masses.removed at", "[3.5 m, 0 m, 1 m]"),
    )  # fmt: skip
    # 150 * 0.7 / 3.5 = 30; 70 * 7 / 3.5 = 140, which takes 70 kg off the front; 35 kg off the rear axle alone.
    assert load("rear_axle", *edits) == pytest.approx(1504.2857 + 30 + 140 - 35, abs=1e-3)
    assert load("front_axle", *edits) == pytest.approx(1407.7143 + 120 - 70, abs=1e-3)


def test_an_axis_that_points_forward_turns_the_positions_round() -> None:
    forward = (NONE, ("vehicle.axes", "{x: forward}"), ("equipment.house.box.at", "[-1.4 m, -0.9 m, 0.4 m]"))
    assert load("rear_axle", *forward) == pytest.approx(1504.2857, abs=1e-3)


SIDES = ("vehicle.masses", "{left limit: 1800 kg, right limit: 1800 kg, track: 1.6 m, payload kept: 300 kg, "
                           "payload at: [2 m, -0.4 m, 1 m], before: {left: 1440 kg, right: 1460 kg}}")  # fmt: skip


def test_the_sides_follow_the_lever_across() -> None:
    # Battery at y = -0.8 m: on the left wheels alone. Payload 0.4 m left of the middle: 225 kg left, 75 kg right.
    assert load("left", SIDES) == pytest.approx(1440 + 12 + 225)
    assert load("right", SIDES) == pytest.approx(1460 + 0 + 75)


def test_an_axis_that_points_to_the_left_changes_the_sides() -> None:
    assert load("left", SIDES, ("vehicle.axes", "{y: to the left}")) == pytest.approx(1440 + 0 + 75)


def test_the_working_shows_each_mass_and_its_lever() -> None:
    design = van(PAYLOAD).subject("design", "design")
    assert design is not None
    assert "payload kept: 300 kg at 2.1 m gives 180 kg" in trace(design, "rear_axle_load").notes


def test_a_limit_of_one_side_asks_about_both() -> None:
    assert ask("design", "design", "sides_told") is False
    assert ask("design", "design", "sides_told", ("vehicle.masses.left limit", "1800 kg")) is True
