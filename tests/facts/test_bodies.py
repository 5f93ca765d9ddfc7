"""Boxes of equipment against each other and against their places."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.facts.bodies import bodies
from checker.facts.space import overlaps
from checker.quantities import Unknown
from tests.facts.van import ask, van

FS_AT, PLUS_AT = "equipment.FS.box.at", "equipment.plus.box.at"


def test_boxes_that_touch_do_not_share_space() -> None:
    # The bar ends at y = -0.6 m; 0.1 + 0.2 style sums may miss by a bit of floating point.
    assert ask("equipment", "FS", "shares_space_with", (FS_AT, "[0.5 m, -0.6 m, 0.6 m]")) == ()


def test_boxes_that_meet_are_found_from_both_sides() -> None:
    edit = (FS_AT, "[0.55 m, -0.7 m, 0.6 m]")
    assert [one.id for one in ask("equipment", "FS", "shares_space_with", edit)] == ["plus"]
    assert [one.id for one in ask("equipment", "plus", "shares_space_with", edit)] == ["FS"]


def test_a_box_somewhere_along_a_wall_may_meet_another() -> None:
    found = ask("equipment", "FS", "shares_space_with", (FS_AT, "[0.5 m, -0.7..-0.5 m, 0.6 m]"))
    assert isinstance(found, Unknown)


def test_without_the_boxes_of_all_others_nothing_is_settled_unless_they_meet() -> None:
    assert ask("equipment", "FS", "bodies_settled") is False
    assert ask("equipment", "FS", "bodies_settled", (FS_AT, "[0.55 m, -0.7 m, 0.6 m]")) is True


@settings(max_examples=25)
@given(st.lists(st.tuples(*[st.integers(0, 8)] * 3), min_size=4, max_size=4))
def test_the_sorted_search_finds_what_comparing_every_pair_finds(corners: list[tuple[int, int, int]]) -> None:
    names = ("main", "FS", "FL", "FV")
    edits = [(f"equipment.{name}.box.at", f"[{x / 20} m, {y / 20} m, {z / 20} m]")
             for name, (x, y, z) in zip(names, corners, strict=True)]  # fmt: skip
    facts = van(*edits)
    known = bodies(facts)
    for one in known:
        expected = {other.subject.id for other in known
                    if other is not one and overlaps(one.here, other.here) is True}  # fmt: skip
        assert {found.id for found in one.subject.shares_space_with} <= expected


@pytest.mark.parametrize(("at", "inside"), [("[1 m, -1 m, 0.4 m]", True), ("[1.3 m, -0.7 m, 0.6 m]", True),
                                            ("[1.31 m, -0.7 m, 0.6 m]", False)])  # fmt: skip
def test_a_battery_fits_up_to_the_walls_of_its_bay(at: str, inside: bool) -> None:
    assert ask("equipment", "house", "inside_its_place", ("equipment.house.box.at", at)) is inside


def test_a_place_without_walls_or_box_holds_nothing_in() -> None:
    assert ask("equipment", "plus", "place_box_told") is False
    roof = ("places.underbody.box", "{at: [0 m, 0 m, 0 m], size: [1 m, 1 m, 1 m]}")
    assert ask("equipment", "slide-motor", "place_box_told", roof) is False
