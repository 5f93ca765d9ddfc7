"""Flexible loops between the two ends of the way, and runs that follow a moving part."""

from __future__ import annotations

from math import hypot, inf

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

RUN = "circuits.lights.run"
CLAMPS = "places.drag.clamps"
# The slide goes 0.6 m towards -y.
HINGE = ("moving.slide.hinge", "{at: [1.8 m, -0.3 m, 1 m], along: z}")


def test_on_a_straight_travel_the_span_is_widest_at_an_end() -> None:
    assert ask("loop", "drag", "widest_span") == pytest.approx(1.1)
    assert ask("loop", "drag", "widest_span", ("places.drag.span in", "1.3 m")) == pytest.approx(1.3)


def test_a_span_told_for_the_way_between_counts() -> None:
    assert ask("loop", "drag", "widest_span", ("places.drag.span widest", "1.4 m")) == pytest.approx(1.4)
    assert ask("loop", "drag", "slack", ("places.drag.span widest", "1.4 m")) == pytest.approx(0.2)


def test_clamps_that_are_told_are_reckoned_at_both_ends_of_the_travel() -> None:
    # The second clamp moves from 0.3 m beside the first to 0.9 m beside it, 0.8 m further along x: sqrt(0.64 + 0.81).
    clamps = (CLAMPS, "[[2 m, 0 m, 0.5 m], [2.8 m, -0.3 m, 0.5 m]]")
    assert ask("loop", "drag", "widest_span", clamps) == pytest.approx(hypot(0.8, 0.9))


def test_a_shorter_distance_between_clamps_does_not_shorten_what_was_measured() -> None:
    assert ask("loop", "drag", "widest_span", (CLAMPS, "[[2 m, 0 m, 0.5 m], [2 m, 0 m, 0.5 m]]")) == pytest.approx(1.1)


def test_on_a_hinge_the_two_ends_do_not_tell_the_widest_span() -> None:
    found = ask("loop", "drag", "widest_span", HINGE)
    assert isinstance(found, Unknown) and "between the two ends" in found.reason
    assert isinstance(ask("loop", "drag", "slack", HINGE), Unknown)


def test_on_a_hinge_clamps_may_come_opposite_each_other_in_mid_travel() -> None:
    # 0.7 m before the hinge and 0.8 m behind it: together 1.5 m, more than at either end (1.1 m); 0.1 m of 1.6 m left.
    clamps = (CLAMPS, "[[1.1 m, -0.3 m, 1 m], [1.8 m, 0.5 m, 1 m]]")
    assert ask("loop", "drag", "widest_span", HINGE, clamps) == pytest.approx(1.5)
    assert ask("loop", "drag", "slack", HINGE, clamps) == pytest.approx(0.1)


def test_one_clamp_is_not_two() -> None:
    assert isinstance(ask("loop", "drag", "widest_span", HINGE, (CLAMPS, "[[1.1 m, -0.3 m, 1 m]]")), Unknown)


def test_a_loop_of_which_the_part_is_not_told_has_no_widest_span() -> None:
    found = ask("loop", "drag", "widest_span", ("places.drag.across", "unknown"))
    assert isinstance(found, Unknown) and "bridges" in found.reason


def test_in_a_chain_thin_cables_need_the_wider_radius_of_chains() -> None:
    # DIN VDE 0298-3 (seen): up to 8 mm, 4 times the diameter in a drag chain, 3 times in free movement.
    thin = ("cables.drag-4", "{size: 1.5 mm2, cores: 2, strands: extra flexible, outer: 7 mm}")
    for guide, factor in (("chain", 0.028), ("hanging", 0.021), ("unknown", 0.021)):
        found = ask("loop", "drag", "bend_needed", thin, ("places.drag.guide", guide))
        assert (found.low, found.high) == (pytest.approx(factor), inf)


def test_a_run_into_a_carried_place_follows_the_part() -> None:
    assert [one.id for one in ask("circuit", "lights", "follows_moving")] == ["slide"]
    assert ask("circuit", "trunk", "follows_moving") == ()
    assert ask("circuit", "lights", "loop_at_each_moving") is True


def test_a_run_that_stays_on_the_part_follows_nothing() -> None:
    edits = ((RUN, "[0.1 m via lounge, FL, 0.5 m via lounge]"), ("equipment.plus.place", "lounge"),
             ("equipment.FL.place", "lounge"))  # fmt: skip
    assert ask("circuit", "lights", "follows_moving", *edits) == ()


def test_a_loop_across_another_part_does_not_help() -> None:
    other = ("moving.bed", "{carries: [bunk], box: {at: [3 m, 0 m, 1 m], size: [1 m, 1 m, 0.2 m]}}")
    assert ask("circuit", "lights", "loop_at_each_moving", other, ("places.drag.across", "bed")) is False


def test_a_stretch_that_was_not_seen_may_be_the_loop() -> None:
    seen = "[0.1 m via cabin, FL, 2 m via duct, 0.5 m via lounge]"
    assert ask("circuit", "lights", "loop_at_each_moving", (RUN, seen)) is False
    unseen = (RUN, "[0.1 m via cabin, FL, 2 m via duct, unknown, 0.5 m via lounge]")
    assert isinstance(ask("circuit", "lights", "loop_at_each_moving", unseen), Unknown)


def test_an_end_of_unknown_place_may_ride_on_the_part() -> None:
    assert isinstance(ask("circuit", "trunk", "follows_moving", ("equipment.plus.place", "unknown")), Unknown)


@pytest.mark.parametrize(("sheath", "answer"), [("rubber", True), ("none", False)])
def test_the_sheath_of_moving_cables_is_asked(sheath: str, answer: bool) -> None:
    assert ask("loop", "drag", "cables_sheathed", ("cables.drag-4.sheath", sheath)) is answer


def test_a_loop_that_nobody_looked_at_may_be_loose() -> None:
    assert ask("loop", "drag", "clamped") is True
    assert isinstance(ask("loop", "drag", "clamped", ("places.drag.clamped", "unknown")), Unknown)


BOX = (
    ("equipment.box", "{kind: board, family: blade, voltage: 32 V DC, place: cabin, ways: {lounge: 10 A}}"),
    ("circuits.feed", "{from: plus, to: box, run: [0.3 m via cabin], cable: red-16, return: same}"),
    ("circuits.lights.from", "box.lounge"),
)
BEHIND = (RUN, "[2.1 m via duct, 1.6 m via drag, FL, 0.5 m via lounge]")


def test_a_device_behind_the_moving_length_does_not_stand_ahead_of_it() -> None:
    assert ask("loop", "drag", "devices_on_fixed_side") is True
    assert ask("loop", "drag", "devices_on_fixed_side", BEHIND) is False
    assert ask("loop", "drag", "devices_on_fixed_side", BEHIND, *BOX) is True
    unseen = (RUN, "[unknown, 2.1 m via duct, 1.6 m via drag, FL, 0.5 m via lounge]")
    assert isinstance(ask("loop", "drag", "devices_on_fixed_side", unseen), Unknown)


@pytest.mark.parametrize(
    ("back", "answer"),
    [
        ("{run: [0.5 m via lounge, 2 m via duct]}", False),
        ("{run: [0.5 m via lounge, 1.6 m via drag, 2 m via duct]}", True),
        ("{run: [0.5 m via lounge], to: minus.-}", True),
        ("chassis", True),
    ],
)
def test_a_return_of_its_own_that_crosses_needs_a_loop(back: str, answer: bool) -> None:
    cable = "{size: 4 mm2, cores: 1, strands: extra flexible, outer: 6 mm, sheath: rubber}"
    edits = [("cables.one", cable), ("circuits.lights.cable", "one"), ("circuits.lights.return", back)]
    edits.append(("equipment.minus", "{kind: bar, poles: [-], rating: 50 A, place: lounge}"))
    assert ask("circuit", "lights", "loop_at_each_moving", *edits) is answer


def test_a_return_of_which_the_rest_was_not_seen_may_have_a_loop() -> None:
    cable = "{size: 4 mm2, cores: 1, strands: extra flexible, outer: 6 mm, sheath: rubber}"
    back = ("circuits.lights.return", "{run: [0.5 m via lounge, unknown]}")
    found = ask(
        "circuit", "lights", "loop_at_each_moving", ("cables.one", cable), ("circuits.lights.cable", "one"), back
    )
    assert isinstance(found, Unknown)
