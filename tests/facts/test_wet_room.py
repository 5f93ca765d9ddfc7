"""What stands in the room with the shower."""

from __future__ import annotations

from typing import Any

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

WASH = {"places.wash": "{kind: wet room, tray: {at: [0 m, 0 m, 0 m], size: [0.7 m, 0.7 m, 0 m]}}"}


def heater(at: str, **more: str) -> Any:
    edits = WASH | {"equipment.heater.place": "wash", "equipment.heater.at": at}
    return subject(
        COACH, "equipment", "heater", edits | {f"equipment.heater.{key}": text for key, text in more.items()}
    )


def test_the_distance_is_level_from_the_edge_of_the_tray() -> None:
    assert heater("[1.5 m, 0.3 m, 2 m]").distance_to_shower == 0.8
    assert heater("[0.5 m, 0.3 m, 2 m]").distance_to_shower == 0.0


def test_a_box_reaches_nearer_than_its_middle() -> None:
    found = heater("[9 m, 9 m, 0 m]", box="{at: [1.2 m, 0 m, 0 m], size: [0.4 m, 0.4 m, 0.4 m]}")
    assert found.distance_to_shower == 0.5


def test_a_range_of_places_gives_a_range_of_distances() -> None:
    found = heater("[1..1.5 m, 0.3 m, 0.2 m]").distance_to_shower
    assert (round(found.low, 9), round(found.high, 9)) == (0.3, 0.8)


def test_without_a_wash_room_nothing_stands_in_one_and_with_one_the_unplaced_may() -> None:
    loose = {"equipment.heater.place": "(remove)"}
    assert subject(COACH, "equipment", "heater", loose).is_in_wet_room is False
    assert isinstance(subject(COACH, "equipment", "heater", WASH | loose).is_in_wet_room, Unknown)
    assert subject(COACH, "equipment", "heater", WASH).is_in_wet_room is False


def test_a_cupboard_within_the_room_belongs_to_it() -> None:
    room = "{kind: wet room, tray: {at: [0 m, 0 m, 0 m], size: [0.7 m, 0.7 m, 0 m]}}"
    edits = {
        "places.wash": room,
        "places.vanity": "{kind: locker, inside: wash}",
        "equipment.heater.place": "vanity",
        "equipment.heater.at": "[1.5 m, 0.3 m, 0.2 m]",
    }
    heater = subject(COACH, "equipment", "heater", edits)
    assert heater.is_in_wet_room is True
    assert heater.distance_to_shower == pytest.approx(0.8)
    hidden = subject(COACH, "equipment", "heater", edits | {"places.vanity.inside": "unknown"})
    assert isinstance(hidden.is_in_wet_room, Unknown)


def test_a_tray_in_a_room_of_another_kind_is_a_shower_too() -> None:
    found = subject(COACH, "equipment", "heater", {"places.cabin.tray": "{at: [0 m, 0 m, 0 m], size: [1 m, 1 m, 0 m]}"})
    assert found.is_in_wet_room is True


def test_an_open_wash_room_counts_for_what_stands_beside_it_and_walls_part_it_off() -> None:
    at = WASH | {"equipment.heater.at": "[1 m, 0.3 m, 0 m]"}
    assert isinstance(subject(COACH, "equipment", "heater", at).beside_shower, Unknown)
    assert subject(COACH, "equipment", "heater", at).distance_to_shower == pytest.approx(0.3)
    walls = {"places.wash": WASH["places.wash"].replace("room,", "room, walled off: true,")}
    walled = subject(COACH, "equipment", "heater", at | walls)
    assert (walled.beside_shower, walled.distance_to_shower) == (False, None)


@pytest.mark.parametrize(("height", "volts"), [("0.1 m", 30.0), ("0.11 m", 60.0)])
def test_what_stands_no_higher_than_a_hand_in_the_tray_may_have_less(height: str, volts: float) -> None:
    assert heater(f"[0.3 m, 0.3 m, {height}]").shower_voltage == volts


def test_the_nearest_sink_aboard_counts_and_rooms_that_do_not_tell_theirs_leave_it_open() -> None:
    at = {"equipment.kitchen-outlets.at": "[1 m, 0 m, 1 m]"}
    assert isinstance(subject(COACH, "outlet", "kitchen-outlets", at).distance_to_sink, Unknown)
    sinks = at | {"places.cabin.sinks": "[[3 m, 0 m, 1 m], [1 m, 2 m, 0 m]]"}
    assert subject(COACH, "outlet", "kitchen-outlets", sinks).distance_to_sink == pytest.approx(2.0)
    none = at | {"places.cabin.sinks": "none"}
    assert subject(COACH, "outlet", "kitchen-outlets", none).distance_to_sink is None
