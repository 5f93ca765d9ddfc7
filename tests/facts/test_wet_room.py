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
