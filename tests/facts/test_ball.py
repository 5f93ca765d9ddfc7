"""What the work lays on the tow ball, by the lever of each mass."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import subject

CARAVAN = {
    "vehicle.kind": "caravan",
    "vehicle.axes": "{origin: axle centre at ground, x: rearward, y: to the right, z: up}",
    "vehicle.envelope": "{at: [-4 m, -1.1 m, 0 m], size: [8 m, 2.2 m, 2.9 m]}",
    "equipment.house.mass": "40 kg",
}
MASSES = "{gross: 1500 kg, ball limit: 80 kg, before: {ball: 50 kg, total: 1000 kg}, payload kept: 0 kg%s}"
FIVE = ", ball to axle: 5 m"


def _ball(told: str, at: str = "-3 m", **more: str) -> object:
    box = f"{{at: [{at}, -0.9 m, 0.4 m], size: [0.3 m, 0.2 m, 0.2 m]}}"
    edits = CARAVAN | {"vehicle.masses": MASSES % told, "equipment.house.box": box} | more
    return subject("slide-van", "design", "design", edits).ball_load


def test_a_mass_ahead_of_the_axle_loads_the_ball_by_its_lever() -> None:
    assert _ball(FIVE) == pytest.approx(50.0 + 40.0 * 2.85 / 5.0)


def test_a_mass_behind_the_axle_takes_off() -> None:
    assert _ball(FIVE, at="3 m") == pytest.approx(50.0 - 40.0 * 3.15 / 5.0)


def test_the_axes_may_point_forward() -> None:
    forward = {"vehicle.axes": "{origin: axle centre at ground, x: forward, y: to the right, z: up}"}
    assert _ball(FIVE, at="3 m", **forward) == pytest.approx(50.0 + 40.0 * 3.15 / 5.0)


def test_a_ball_of_which_nobody_says_where_it_is_lies_ahead_of_the_body() -> None:
    found = _ball("")
    assert isinstance(found, Range)
    assert (found.low, found.high) == pytest.approx((50.0, 50.0 + 40.0 * 2.85 / 4.0))


def test_without_an_axle_a_mass_counts_at_most_itself() -> None:
    nowhere = {"vehicle.axes": "{origin: front wall, x: rearward, y: to the right, z: up}"}
    assert _ball(FIVE, **nowhere) == Range(10.0, 90.0)


def test_a_mass_that_nobody_knows_leaves_it_open() -> None:
    assert isinstance(_ball(FIVE, **{"equipment.house.mass": "unknown"}), Unknown)


def test_the_axle_carries_what_the_ball_does_not() -> None:
    box = {"equipment.house.box": "{at: [-3 m, -0.9 m, 0.4 m], size: [0.3 m, 0.2 m, 0.2 m]}"}
    edits = CARAVAN | box | {"vehicle.masses": MASSES % FIVE}
    found = subject("slide-van", "design", "design", edits)
    assert found.axle_load == pytest.approx(1000.0 + 40.0 - (50.0 + 40.0 * 2.85 / 5.0))
