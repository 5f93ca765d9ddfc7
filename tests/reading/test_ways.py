"""The ways of a board."""

from __future__ import annotations

import pytest

from checker.quantities import UNKNOWN
from tests.reading.small import only, problems, read


def test_each_way_is_a_device_of_the_family_of_its_board() -> None:
    board = read().equipment["board"]
    lights, spare = board.ways
    assert (lights.name, lights.kind, lights.path) == ("board.lights", "fuse", "equipment.board.ways.lights")
    assert (lights.value("rating"), lights.value("family"), lights.value("place")) == (10.0, "blade", "cabin")
    assert spare.value("rating") is UNKNOWN and spare.get("rating").basis == "stated"
    assert "board.lights" not in read().equipment


def test_a_way_may_be_written_out() -> None:
    edit = (
        "equipment.board.ways.lights",
        "{kind: breaker, rating: 6 A, family: C curve, terminals: {line: {torque: 2 N m}}}",
    )
    way = read(edit).equipment["board"].ways[0]
    assert (way.kind, way.value("family"), way.value("rating")) == ("breaker", "C curve", 6.0)
    assert way.value("voltage") == read().equipment["board"].value("voltage")
    assert way.terminals["line"].value("torque") == 2.0


def test_a_family_of_fuses_is_not_handed_to_a_breaker() -> None:
    way = read(("equipment.board.ways.lights", "{kind: breaker, rating: 6 A}")).equipment["board"].ways[0]
    assert way.value("family") is UNKNOWN


def test_a_way_may_be_a_part_and_carry_a_basis() -> None:
    ways = (
        read(("equipment.board.ways", "{a: {part: strip, rating: 60 A}, b: {is: 5 A, basis: read off}}"))
        .equipment["board"]
        .ways
    )
    assert (ways[0].part, ways[0].value("family"), ways[0].value("rating")) == ("strip", "bolt-down strip", 60.0)
    assert ways[1].get("rating").basis == "read off" and ways[1].value("family") == "blade"


@pytest.mark.parametrize(
    ("board", "kind"),
    [
        ("family: blade", "fuse"),
        ("family: C curve", "breaker"),
        ("family: unknown", "fuse"),
        ("system: mains", "breaker"),
        ("voltage: 230 V AC", "breaker"),
        ("voltage: 32 V DC", "fuse"),
    ],
)
def test_the_board_tells_what_its_ways_are(board: str, kind: str) -> None:
    design = read(("equipment.B", f"{{kind: board, {board}, ways: {{x: 10 A}}}}"))
    assert design.equipment["B"].ways[0].kind == kind


def test_ways_stand_with_their_board_and_in_no_part() -> None:
    assert "a part has ways" in only(("parts.b", "{kind: board, ways: {x: 10 A}}")).what


def test_ways_may_be_unknown() -> None:
    assert read(("equipment.board.ways", "unknown")).equipment["board"].ways == ()


@pytest.mark.parametrize(
    ("ways", "what"),
    [
        ("{x: 10}", "bare number"),
        ("{x: 10 V}", "a voltage"),
        ("{x.y: 10 A}", "`x.y` cannot name a way"),
        ("{L: 10 A}", "`L` cannot name a way"),
        ("[x, y]", "`ways` is a list"),
        ("{x: {part: stip}}", "no `stip` in parts"),
        ("{x: [10 A]}", "`rating` is a list"),
    ],
)
def test_a_wrong_way_is_noted(ways: str, what: str) -> None:
    assert what in problems(("equipment.board.ways", ways))[0].what


def test_a_circuit_starts_at_a_way_that_exists() -> None:
    assert str(read(("circuits.light.from", "board.lights")).circuits["light"].start) == "board.lights"
    problem = only(("circuits.light.from", "board.light"))
    assert "`board` has no way `light`" in problem.what and "did you mean `lights`?" in problem.right


def test_ways_have_positions_and_draw() -> None:
    design = read(("modes.parked.set", "{board.lights: open}"))
    assert design.modes["parked"].value("set")[0][0] == "board.lights"
    assert "no way `lihgts`" in only(("modes.parked.set", "{board.lihgts: open}")).what
