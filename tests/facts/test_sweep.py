"""Where a moving part meets what stands still, and the room for hands beside it."""

from __future__ import annotations

import pytest

from checker.facts.subject import trace
from checker.quantities import Range, Unknown
from tests.facts.van import ask, van

# The slide: from y = -1.0 m to -0.3 m, x = 1.8 m to 3.4 m, z = 0.8 m to 2.6 m; it goes 0.6 m towards -y.
PLUS_AT = "equipment.plus.box.at"
PLUS_SERVICE = "equipment.plus.service"


def test_what_stands_where_the_part_is_stowed_is_touched_at_once() -> None:
    assert ask("equipment", "plus", "first_touch", (PLUS_AT, "[2 m, -0.6 m, 1 m]")) == 0.0


def test_what_stands_on_the_way_is_touched_after_the_gap() -> None:
    # The bar is 0.1 m deep: from -1.5 m to -1.4 m, 0.4 m beyond the side of the slide.
    assert ask("equipment", "plus", "first_touch", (PLUS_AT, "[2 m, -1.5 m, 1 m]")) == pytest.approx(0.4)


def test_what_is_never_touched_has_no_first_touch() -> None:
    assert ask("equipment", "plus", "first_touch") is None
    assert ask("equipment", "plus", "first_touch", (PLUS_AT, "[2 m, -1.7 m, 1 m]")) is None


def test_a_gap_that_is_a_range_gives_a_range() -> None:
    assert ask("equipment", "plus", "first_touch", (PLUS_AT, "[2 m, -1.5..-1.4 m, 1 m]")) == Range(0.3, 0.4)


def test_the_working_says_where_it_is_touched() -> None:
    facts = van((PLUS_AT, "[2 m, -1.5 m, 1 m]"))
    plus = facts.subject("equipment", "plus")
    assert plus is not None
    assert any("meets plus after 0.4 m of its travel" in note for note in trace(plus, "first_touch").notes)


def test_the_nearest_equipment_is_named() -> None:
    nearest = ask("moving", "slide", "nearest", (PLUS_AT, "[3.42 m, -0.6 m, 1 m]"))
    assert nearest.id == "plus"
    assert ask("moving", "slide", "sweep_clearance", (PLUS_AT, "[3.42 m, -0.6 m, 1 m]")) == pytest.approx(0.02)


# A door on a hinge along z at its corner (1.8, -0.3): the farthest corner of its box is 1.6 m and 0.7 m away.
HINGE = ("moving.slide.hinge", "{at: [1.8 m, -0.3 m, 1 m], along: z}")
NO_TRAVEL = ("moving.slide.travel", "unknown")


def test_a_part_on_a_hinge_is_taken_to_turn_all_around() -> None:
    # Reach sqrt(1.6^2 + 0.7^2) = 1.746 m: a bar 1.7 m before the hinge is in it, one 1.8 m before it is not.
    near, far = (PLUS_AT, "[0 m, -0.3 m, 1 m]"), (PLUS_AT, "[-0.2 m, -0.3 m, 1 m]")
    assert [one.id for one in ask("moving", "slide", "sweep_hits", HINGE, near)] == ["plus"]
    assert ask("equipment", "plus", "swept_by", HINGE, far) == ()


def test_where_on_a_swing_something_is_touched_is_not_computed() -> None:
    found = ask("equipment", "plus", "first_touch", HINGE, (PLUS_AT, "[0 m, -0.3 m, 1 m]"))
    assert isinstance(found, Unknown) and "turns" in found.reason


def test_a_box_around_the_swing_that_the_writer_gives_is_believed() -> None:
    sweeps = ("moving.slide.sweeps", "{at: [1.8 m, -1.9 m, 0.8 m], size: [1.6 m, 1.6 m, 1.8 m]}")
    assert ask("equipment", "plus", "swept_by", HINGE, sweeps, (PLUS_AT, "[1 m, -0.3 m, 1 m]")) == ()
    hit = ask("equipment", "plus", "swept_by", HINGE, sweeps, (PLUS_AT, "[2 m, -1.8 m, 1 m]"))
    assert [one.id for one in hit] == ["slide"]


def test_a_hinge_that_is_not_told_leaves_the_way_open() -> None:
    half = ("moving.slide.hinge", "{along: z}")
    assert isinstance(ask("equipment", "plus", "swept_by", half), Unknown)


def test_the_room_above_is_exact() -> None:
    under = (PLUS_AT, "[2 m, -0.9 m, 0.6 m]")  # its top at 0.7 m, the slide 0.1 m above
    assert ask("equipment", "plus", "service_space_clear", under, (PLUS_SERVICE, "{top: 0.1 m}")) is True
    assert ask("equipment", "plus", "service_space_clear", under, (PLUS_SERVICE, "{top: 0.11 m}")) is False


def test_the_room_at_a_side_is_a_question_when_any_side_might_be_swept() -> None:
    beside = (PLUS_AT, "[1.5 m, -0.9 m, 1 m]")  # 0.1 m before the slide
    assert ask("equipment", "plus", "service_space_clear", beside, (PLUS_SERVICE, "{front: 0.1 m}")) is True
    assert isinstance(
        ask("equipment", "plus", "service_space_clear", beside, (PLUS_SERVICE, "{front: 0.2 m}")), Unknown
    )


def test_room_that_is_told_without_a_box_says_nothing() -> None:
    assert ask("equipment", "plus", "service_told", (PLUS_SERVICE, "{top: 0.1 m}")) is True
    assert ask("equipment", "plus", "service_told") is False
    assert (
        ask("equipment", "plus", "service_told", (PLUS_SERVICE, "{top: 0.1 m}"), ("equipment.plus.box", "unknown"))
        is False
    )
