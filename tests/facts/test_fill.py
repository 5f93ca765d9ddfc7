"""How full ducts and guides are."""

from __future__ import annotations

import math

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask

DUCT = "places.duct.inner"
WIDE = (DUCT, "{width: 40 mm, height: 20 mm}")
ONE = ("places.duct.chambers", "none")
ROUND_9, ROUND_10 = math.pi * 81 / 4, math.pi * 100 / 4


def test_the_fullest_chamber_counts() -> None:
    # Extra-low voltage: one cable of 9 mm; mains: one of 10 mm, in a chamber of its own.
    assert ask("place", "duct", "fill", WIDE) == pytest.approx(ROUND_10 / 800)


def test_without_chambers_all_cables_lie_together() -> None:
    assert ask("place", "duct", "fill", WIDE, ONE) == pytest.approx((ROUND_9 + ROUND_10) / 800)


def test_a_second_single_core_and_cables_in_parallel_count() -> None:
    lights = "circuits.lights"
    single = (f"{lights}.cable", "red-16"), (f"{lights}.return", "same"), (f"{lights}.in parallel", "2")
    # Red-16 is 8 mm: two ways, two of each.
    assert ask("place", "duct", "fill", WIDE, *single) == pytest.approx(4 * math.pi * 64 / 4 / 800)


def test_a_round_duct_has_the_area_of_its_bore() -> None:
    assert ask("place", "duct", "clear_opening", (DUCT, "{diameter: 20 mm}")) == pytest.approx(math.pi * 1e-4)
    assert ask("place", "duct", "inner_told") is False and ask("place", "duct", "inner_told", WIDE) is True


def test_a_cable_of_unknown_thickness_leaves_a_least_fill() -> None:
    found = ask("place", "duct", "fill", WIDE, ONE, ("cables.flex-2.5.outer", "unknown"))
    assert isinstance(found, Range) and found.low == pytest.approx(ROUND_9 / 800) and found.high == math.inf


def test_an_earth_wire_beside_the_cable_takes_room_as_well() -> None:
    found = ask("place", "duct", "fill", WIDE, ONE, ("circuits.shore.earth", "same"))
    assert isinstance(found, Range) and found.low == pytest.approx((ROUND_9 + ROUND_10) / 800)


def test_a_stretch_of_unknown_way_may_lie_in_it() -> None:
    found = ask("place", "duct", "fill", WIDE, ("circuits.trunk.run", "[0.15 m via bay, FH, unknown, main]"))
    assert isinstance(found, Range) and found.high == math.inf


def test_of_several_like_chambers_the_fullest_holds_a_fair_share_at_least() -> None:
    found = ask("place", "duct", "fill", WIDE, ("places.duct.chambers", "{elv: 1, mains: 2}"))
    assert isinstance(found, Range)
    assert (found.low, found.high) == (pytest.approx(ROUND_9 / 800), pytest.approx(ROUND_10 / 800))


def test_an_opening_that_is_not_known_has_no_fill() -> None:
    assert isinstance(ask("place", "duct", "fill", (DUCT, "{width: unknown, height: 20 mm}")), Unknown)


def test_circuits_in_one_multi_core_cable_count_once() -> None:
    shared = (
        ("circuits.more", "{from: plus, to: lamps, run: [2 m via duct], cores: [1, 2]}"),
        ("looms.pair", "{carries: [lights, more], cable: drag-4}"),
        ("circuits.lights.cable", "drag-4"), ("circuits.more.cable", "drag-4"),
    )  # fmt: skip
    assert ask("place", "duct", "fill", WIDE, ONE, *shared) == pytest.approx((ROUND_9 + ROUND_10) / 800)


GUIDE = "places.drag.inner"


def test_the_width_needed_has_a_tenth_of_play() -> None:
    assert ask("loop", "drag", "width_needed") == pytest.approx(0.0099)
    assert ask("loop", "drag", "clear_width", (GUIDE, "{width: 12 mm, height: 12 mm}")) == pytest.approx(0.012)
    assert isinstance(ask("loop", "drag", "clear_width"), Unknown)


TWO = ("circuits.more", "{from: plus, to: lamps, run: [2 m via duct, 1.6 m via drag, 0.5 m via lounge], cable: drag-4}")


@pytest.mark.parametrize(
    ("edits", "answer"),
    [
        ([], False),  # one cable
        ([TWO, (GUIDE, "{width: 40 mm, height: 18 mm}"), ("places.drag.separators", "false")], True),
        ([TWO, (GUIDE, "{width: 40 mm, height: 17 mm}")], False),  # less than two of 9 mm
        ([TWO, (GUIDE, "{width: 40 mm, height: 18 mm}"), ("places.drag.separators", "true")], False),
        ([TWO, (GUIDE, "{width: 40 mm, height: 18 mm}"), ("places.drag.chambers", "{elv: 2, mains: 0}")], False),
    ],
)
def test_two_cables_climb_where_the_guide_is_twice_as_high(edits: list[tuple[str, str]], answer: bool) -> None:
    assert ask("loop", "drag", "cables_can_climb", *edits) is answer


def test_separators_of_which_the_file_says_nothing_leave_the_question() -> None:
    edits = (TWO, (GUIDE, "{width: 40 mm, height: 18 mm}"))
    assert isinstance(ask("loop", "drag", "cables_can_climb", *edits), Unknown)


HIGH = (GUIDE, "{width: 40 mm, height: 18 mm}"), ("places.drag.separators", "false")


def test_a_stretch_of_unknown_way_may_pass_the_guide_as_well() -> None:
    lost = ("circuits.lights.run.2", "unknown")
    assert ask("loop", "drag", "width_needed", lost) == Range(0.0099, float("inf"))
    assert ask("loop", "drag", "cables_can_climb", *HIGH) is False
    assert isinstance(ask("loop", "drag", "cables_can_climb", *HIGH, lost), Unknown)


def test_a_single_core_that_returns_nobody_knows_how_may_lie_there_twice() -> None:
    alone = (("circuits.lights.cable", "{size: 4 mm2, cores: 1, outer: 5 mm}"), ("circuits.lights.return", "unknown"))
    assert ask("loop", "drag", "width_needed", *alone) == Range(0.0055, 0.011)
    assert isinstance(ask("loop", "drag", "cables_can_climb", *HIGH, *alone), Unknown)


def test_chambers_called_unknown_may_hold_one_cable_each() -> None:
    chambers = ("places.drag.chambers", "{elv: unknown, mains: 0}")
    assert isinstance(ask("loop", "drag", "cables_can_climb", TWO, *HIGH, chambers), Unknown)
