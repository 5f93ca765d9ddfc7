"""Socket outlets."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, subject


def test_the_circuit_tells_mains_from_battery_outlets() -> None:
    assert subject(COACH, "outlet", "kitchen-outlets").is_mains is True
    assert subject(COACH, "outlet", "dc-outlet").is_mains is False


def test_an_outlet_under_the_body_or_used_outside_is_in_the_open() -> None:
    assert subject(COACH, "outlet", "step-outlet").is_in_the_open is True
    assert subject(COACH, "outlet", "kitchen-outlets").is_in_the_open is False
    moved = {"equipment.kitchen-outlets.use": "outside"}
    assert subject(COACH, "outlet", "kitchen-outlets", moved).is_in_the_open is True


def test_the_degree_is_read_for_both_conditions_or_once_for_both() -> None:
    edits = {"equipment.step-outlet.degree": "{open: IP54, mated: IP20}"}
    found = subject(COACH, "outlet", "step-outlet", edits)
    assert (found.water_open, found.water_mated) == (4.0, 0.0)
    found = subject(COACH, "outlet", "step-outlet", {"equipment.step-outlet.degree": "IP65"})
    assert (found.water_open, found.water_mated) == (5.0, 5.0)


def test_a_device_within_the_outlet_protects_it() -> None:
    bare = {"circuits.board-feed.run": "[0.3 m via locker, S1]"}
    assert subject(COACH, "outlet", "step-outlet", bare).residual_current is None
    own = {**bare, "equipment.step-outlet.own rcd": "30 mA"}
    assert subject(COACH, "outlet", "step-outlet", own).residual_current == 0.03


def test_a_switch_that_nobody_saw_is_neither_there_nor_absent() -> None:
    edits = {"equipment.kitchen-outlets.switched poles": "unknown"}
    assert isinstance(subject(COACH, "outlet", "kitchen-outlets", edits).has_switch, Unknown)
    none = {"equipment.kitchen-outlets.switched poles": "none"}
    assert subject(COACH, "outlet", "kitchen-outlets", none).has_switch is False


WASH = {
    "places.wash": "{kind: wet room, tray: {at: [0 m, 0 m, 0 m], size: [0.7 m, 0.7 m, 0 m]}}",
    "equipment.kitchen-outlets.place": "wash",
}


@pytest.mark.parametrize(
    ("at", "gap"),
    [("[1.7 m, 0.3 m, 1 m]", 1.0), ("[1 m, 1.1 m, 1 m]", 0.5), ("[0.3 m, 0.3 m, 1 m]", 0.0)],
)
def test_the_distance_to_the_shower_is_measured_level_to_the_tray(at: str, gap: float) -> None:
    found = subject(COACH, "outlet", "kitchen-outlets", {**WASH, "equipment.kitchen-outlets.at": at})
    assert found.is_in_wet_room is True
    assert found.distance_to_shower == pytest.approx(gap)


def test_a_place_in_doubt_gives_every_distance_it_may_have() -> None:
    edits = {**WASH, "equipment.kitchen-outlets.at": "[-1..1.2 m, 0 m, 1 m]"}
    found = subject(COACH, "outlet", "kitchen-outlets", edits)
    assert found.distance_to_shower == Range(0.0, 1.0)
