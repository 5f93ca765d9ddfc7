"""The free space beside equipment: which way it faces, what stands in it, and the walls and the door of its place."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

SERVICE, FRONT = "equipment.plus.service", "equipment.plus.front towards"
# The bar stands at (0.5, -0.7, 0.6) and is 0.2 × 0.1 × 0.1 m; the breaker FS at (0.5, -0.5, 0.6), the switch main at
# (0.5, -0.9, 0.6), both 0.1 m wide: 0.1 m from it towards y and towards -y.
FS_ABOVE = ("equipment.FS.box.at", "[0.5 m, -0.7 m, 0.75 m]")


def crowded(*edits: tuple[str, str]) -> object:
    found = ask("equipment", "plus", "crowded_by", *edits)
    return found if isinstance(found, Unknown) else [one.id for one in found]


def test_what_stands_before_its_front_is_found_and_what_stands_behind_is_not() -> None:
    assert crowded((SERVICE, "{front: 0.11 m}"), (FRONT, "y")) == ["FS"]
    assert crowded((SERVICE, "{front: 0.11 m}"), (FRONT, "-y")) == ["main"]
    assert crowded((SERVICE, "{front: 0.11 m}"), (FRONT, "x")) == []
    assert crowded((SERVICE, "{back: 0.11 m}"), (FRONT, "y")) == ["main"]


def test_a_space_that_is_only_touched_is_free() -> None:
    assert crowded((SERVICE, "{front: 0.1 m}"), (FRONT, "y")) == []


def test_without_a_front_only_what_lies_above_and_below_is_certain() -> None:
    assert isinstance(crowded((SERVICE, "{front: 0.11 m}")), Unknown)
    assert crowded((SERVICE, "{top: 0.1 m}"), FS_ABOVE) == ["FS"]
    assert crowded((SERVICE, "{top: 0.04 m}"), FS_ABOVE) == []


def test_left_and_right_are_the_other_level_axis_and_both_where_they_are_alike() -> None:
    assert crowded((SERVICE, "{left: 0.11 m, right: 0.11 m}"), (FRONT, "x")) == ["FS", "main"]
    assert isinstance(crowded((SERVICE, "{left: 0.11 m}"), (FRONT, "x")), Unknown)
    assert crowded((SERVICE, "{left: 0.11 m, right: 0.11 m}"), (FRONT, "y")) == []


def test_what_faces_up_has_its_front_above() -> None:
    assert crowded((SERVICE, "{front: 0.1 m}"), (FRONT, "z"), FS_ABOVE) == ["FS"]


def test_a_space_that_reaches_so_far_perhaps_leaves_the_question() -> None:
    assert isinstance(crowded((SERVICE, "{front: 0.05..0.15 m}"), (FRONT, "y")), Unknown)
    assert isinstance(crowded((SERVICE, "{top: 0.04 m, front: unknown}"), (FRONT, "y")), Unknown)
    assert crowded((SERVICE, "{front: 0.11..0.15 m}"), (FRONT, "y")) == ["FS"]


def test_boxes_that_meet_are_told_elsewhere() -> None:
    assert crowded((SERVICE, "{top: 0.1 m}"), ("equipment.FS.box.at", "[0.5 m, -0.7 m, 0.65 m]")) == []


def test_it_is_settled_by_what_is_found_or_by_all_boxes() -> None:
    assert ask("equipment", "plus", "crowding_settled") is False
    assert ask("equipment", "plus", "crowding_settled", (SERVICE, "{top: 0.1 m}")) is False
    assert ask("equipment", "plus", "crowding_settled", (SERVICE, "{top: 0.1 m}"), FS_ABOVE) is True


# The bay goes from (1, -1, 0.4) to (1.6, -0.5, 0.8); the battery from (1.1, -0.9, 0.4) to (1.4, -0.7, 0.6).
BANK, BANK_FRONT, DOOR = "equipment.house.service", "equipment.house.front towards", "places.bay.door"


@pytest.mark.parametrize(
    ("edits", "kept"),
    [
        ([(BANK, "{top: 0.2 m}")], True),
        ([(BANK, "{top: 0.3 m}"), (DOOR, "y")], False),
        ([(BANK, "{top: 0.3 m}"), (DOOR, "z")], True),  # out through the lid
        ([(BANK, "{front: 0.2 m}"), (BANK_FRONT, "y")], True),
        ([(BANK, "{front: 0.3 m}"), (BANK_FRONT, "y"), (DOOR, "y")], True),
        ([(BANK, "{front: 0.3 m}"), (BANK_FRONT, "y"), (DOOR, "-y")], False),
        ([(BANK, "{front: 0.3 m, back: 0.3 m}"), (BANK_FRONT, "y")], False),  # no door is on two sides
    ],
)
def test_free_space_stays_within_walls_but_goes_out_through_a_door(edits: list[tuple[str, str]], kept: bool) -> None:
    assert ask("equipment", "house", "service_space_in_place", *edits) is kept


@pytest.mark.parametrize(
    "edits",
    [
        [(BANK, "{top: 0.3 m}")],
        [(BANK, "{front: 0.3 m}"), (DOOR, "-y")],
        [(BANK, "{front: 0.3 m}"), (BANK_FRONT, "y")],
        [(BANK, "{front: 0.3 m, back: 0.05..0.15 m}"), (BANK_FRONT, "y")],  # perhaps beyond one wall alone: the door's
    ],
)
def test_an_unknown_door_or_front_leaves_the_question(edits: list[tuple[str, str]]) -> None:
    assert isinstance(ask("equipment", "house", "service_space_in_place", *edits), Unknown)


def test_places_without_walls_ask_nothing() -> None:
    assert ask("equipment", "house", "walls_told") is True
    assert ask("equipment", "plus", "walls_told") is False
