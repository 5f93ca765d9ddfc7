"""Boards of both voltages in one place."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

BOTH = {
    "equipment.fuses": "{kind: board, family: blade, place: locker, ways: {a: 10 A}}",
    "circuits.to-fuses": "{from: bank, to: fuses, run: [0.2 m via locker, F2], cable: pair-4}",
    "circuits.lighting": "{from: fuses.a, to: [lamp, dc-outlet], run: [4 m via duct], cable: pair-4}",
}


def test_one_box_is_enough_and_none_is_not() -> None:
    assert subject(COACH, "place", "locker", BOTH).holds_both_boards is True
    assert subject(COACH, "place", "locker", BOTH).boards_parted is True
    bare = BOTH | {"equipment.board.enclosure": "none"}
    assert isinstance(subject(COACH, "place", "locker", bare).boards_parted, Unknown)
    assert subject(COACH, "place", "locker", bare | {"equipment.fuses.enclosure": "none"}).boards_parted is False


def test_a_mains_board_alone_and_two_on_the_walls_of_a_room_are_no_panel() -> None:
    assert subject(COACH, "place", "locker").holds_both_boards is False
    room = BOTH | {"equipment.board.place": "cabin", "equipment.fuses.place": "cabin"}
    assert subject(COACH, "place", "cabin", room).holds_both_boards is False
