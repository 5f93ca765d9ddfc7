"""Moving parts: what they sweep, and what is not known to be clear."""

from __future__ import annotations

import pytest

from checker.facts.subject import trace
from checker.quantities import Unknown
from tests.facts.van import ask, van

PLUS_AT = "equipment.plus.box.at"


def test_nothing_stands_in_the_way_of_the_slide() -> None:
    assert ask("moving", "slide", "sweep_hits") == ()


def test_equipment_where_the_slide_stows_is_hit() -> None:
    hits = ask("moving", "slide", "sweep_hits", (PLUS_AT, "[2 m, -0.6 m, 1 m]"))
    assert [one.id for one in hits] == ["plus"]


def test_equipment_where_the_slide_goes_only_when_out_is_hit() -> None:
    # The slide ends at y = -1.0 - 0.6 = -1.6 m; the bar stands at -1.5 m, outside the retracted box.
    hits = ask("moving", "slide", "sweep_hits", (PLUS_AT, "[2 m, -1.5 m, 1 m]"))
    assert [one.id for one in hits] == ["plus"]


def test_equipment_just_beyond_the_travel_is_not_hit() -> None:
    # The bar is 0.1 m deep: from -1.7 m to -1.6 m it touches the end of the travel and no more.
    assert ask("moving", "slide", "sweep_hits", (PLUS_AT, "[2 m, -1.7 m, 1 m]")) == ()


def test_what_the_slide_carries_is_never_in_its_way() -> None:
    box = "{at: [2 m, -0.8 m, 1 m], size: [0.1 m, 0.1 m, 0.1 m]}"
    assert ask("equipment", "lamps", "swept_by", ("equipment.lamps.box", box)) == ()


def test_equipment_without_a_box_is_not_known_to_be_clear() -> None:
    found = ask("moving", "slide", "sweep_hits", ("equipment.plus.box", "unknown"))
    assert isinstance(found, Unknown)
    assert "plus" in found.reason


def test_equipment_without_a_box_in_a_place_clear_of_the_travel_is_clear() -> None:
    assert ask("equipment", "FH", "swept_by") == ()


def test_the_clearance_is_the_least_distance_to_what_has_a_box() -> None:
    # The battery bay ends at 1.6 m, the slide begins at 1.8 m; both reach over y -1 m to -0.5 m.
    assert ask("moving", "slide", "sweep_clearance") == pytest.approx(0.2, abs=1e-5)
    # With the bay far away the motor: y from 0 m against -0.3 m, top at 0.7 m against 0.8 m: sqrt(0.3^2 + 0.1^2).
    away = ("places.bay.box.at", "[0 m, 0.5 m, 0.4 m]")
    assert ask("moving", "slide", "sweep_clearance", away) == pytest.approx(0.31623, abs=1e-5)


def test_a_fixed_place_in_the_way_is_found() -> None:
    hit = ask("moving", "slide", "places_hit", ("places.gas.box.at", "[2 m, -1.3 m, 0.9 m]"))
    assert [one.id for one in hit] == ["gas"]


def test_a_duct_in_the_way_is_found_where_its_box_is_told() -> None:
    box = ("places.duct.box", "{at: [2 m, -1.3 m, 0.9 m], size: [0.5 m, 0.1 m, 0.1 m]}")
    assert [one.id for one in ask("moving", "slide", "places_hit", box)] == ["duct"]
    assert ask("moving", "slide", "places_hit") == ()


def test_an_interlock_of_none_acts_on_nothing() -> None:
    facts = van(("moving.slide.interlock", "none"))
    slide = facts.subjects("moving")[0]
    assert slide.interlock is False
    assert slide.interlock_acts_on is None


def test_the_working_names_the_boxes_it_read() -> None:
    paths = [leaf.path for leaf in trace(van().subjects("moving")[0], "sweep_hits").leaves()]
    assert "moving.slide.box" in paths
    assert "equipment.plus.box" in paths


def test_a_backup_drive_is_as_told_and_open_while_it_is_not() -> None:
    assert ask("moving", "slide", "backup_drive", ("moving.slide.backup drive", "true")) is True
    assert isinstance(ask("moving", "slide", "backup_drive"), Unknown)


LINE = "{gas: {carries: gas, along: [[1 m, %s m, 1 m], [3 m, %s m, 1 m]], outer: 8 mm}}"


@pytest.mark.parametrize(("y", "answer"), [("-1.2", True), ("-1.7", False)])
def test_a_line_within_the_way_of_a_part_is_in_its_way(y: str, answer: bool) -> None:
    assert ask("moving", "slide", "service_in_way", ("services", LINE % (y, y))) is answer


def test_a_line_that_runs_nobody_knows_where_decides_nothing() -> None:
    assert isinstance(ask("moving", "slide", "service_in_way", ("services", "{gas: {carries: gas}}")), Unknown)


@pytest.mark.parametrize(("kind", "hit"), [("locker", True), ("wet room", True), ("living space", False)])
def test_a_place_with_walls_and_a_box_is_in_the_way(kind: str, hit: bool) -> None:
    place = f"{{kind: {kind}, inside: cabin, box: {{at: [2 m, -0.7 m, 1 m], size: [0.3 m, 0.3 m, 0.5 m]}}}}"
    found = ask("moving", "slide", "places_hit", ("places.cupboard", place))
    assert ("cupboard" in [one.id for one in found]) is hit


BED = (("moving.slide.travel.along", "-z"), ("places.lounge.kind", "bed"))


@pytest.mark.parametrize(
    ("edits", "answer"),
    [((), True), (BED[:1], True), (BED, False), ((*BED, ("moving.slide.carries", "(remove)")), True)],
)
def test_only_a_bed_that_moves_up_and_down_lets_the_vehicle_leave(
    edits: tuple[tuple[str, str], ...], answer: bool
) -> None:
    assert ask("moving", "slide", "blocks_leaving", *edits) is answer


@pytest.mark.parametrize(("y", "hit"), [("-1.3", True), ("-0.8", False), ("0", False)])
def test_cables_in_a_place_with_a_box_may_be_in_the_way_where_the_part_does_not_rest(y: str, hit: bool) -> None:
    lane = ("places.lane", f"{{kind: outside, box: {{at: [2 m, {y} m, 1 m], size: [0.1 m, 0.1 m, 0.5 m]}}}}")
    run = ("circuits.drive.run", "[0.1 m via cabin, FS, 1 m via lane, 2 m via underbody]")
    wrong = ("papers.found wrong", "[moving cables]")
    assert ("lane" in [one.id for one in ask("moving", "slide", "places_hit", lane, run, wrong)]) is hit
    assert isinstance(ask("moving", "slide", "places_hit", lane, run), Unknown) is hit
    assert ask("moving", "slide", "places_hit", lane, wrong) == ()
    assert ask("moving", "slide", "places_hit", lane, run, ("papers.inspected", "[moving cables]")) == ()
