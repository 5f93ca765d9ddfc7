"""What a hand meets along a conductor."""

from __future__ import annotations

import pytest

from checker.design.run import Gap, Hole, Length, Through
from checker.quantities import UNKNOWN, Range
from tests.reading.small import SMALL, only, problems, read


def run_of(text: str) -> list[object]:
    return list(read(("circuits.light.run", text)).circuits["light"].run)


def test_lengths_say_where_they_lie() -> None:
    stretch, bare = run_of("[1.1 m via bench, 300..400 mm]")
    assert isinstance(stretch, Length) and stretch.length.value == 1.1 and stretch.place == "bench"
    assert isinstance(bare, Length) and bare.length.value == Range(0.3, 0.4) and bare.place is None


def test_a_length_may_carry_a_basis_and_be_zero() -> None:
    measured, nothing = run_of("[{is: 2 m ± 20 % via cabin, basis: measured}, 0 m]")
    assert isinstance(measured, Length) and measured.length.basis == "measured" and measured.length.text == "2 m ± 20 %"
    assert measured.length.value == Range(1.6, 2.4)
    assert isinstance(nothing, Length) and nothing.length.value == 0.0


def test_devices_joints_and_passes_stand_in_order() -> None:
    fuse, joint, hole = run_of("[Q1, tee, hole]")
    assert fuse == Through("Q1", None, None, fuse.where)  # type: ignore[attr-defined]
    assert isinstance(joint, Through) and joint.equipment == "tee" and isinstance(hole, Hole)


def test_a_device_fed_from_behind_is_entered_at_its_load_side() -> None:
    (breaker,) = run_of("[Q1.load]")
    assert isinstance(breaker, Through) and (breaker.enter, breaker.leave) == ("load", "line")
    (usual,) = run_of("[Q1.line]")
    assert isinstance(usual, Through) and (usual.enter, usual.leave) == ("line", "load")


def test_a_changeover_names_both_terminals() -> None:
    for text in ("[K1.shore>common]", "[K1.shore]"):
        (changeover,) = run_of(text)
        assert isinstance(changeover, Through) and (changeover.enter, changeover.leave) == ("shore", "common")
    assert "which terminals of `K1`" in only(("circuits.light.run", "[K1]")).what
    assert "which terminals" in only(("circuits.light.run", "[K1.common]")).what


def test_unknown_may_hide_a_device() -> None:
    assert [type(step) for step in run_of("[unknown]")] == [Gap]
    assert [type(step) for step in run_of("unknown")] == [Gap]
    unseen, gap, known = run_of("[unknown via bench, 1 m]")
    assert isinstance(unseen, Length) and unseen.length.value is UNKNOWN and unseen.place == "bench"
    assert isinstance(gap, Gap) and isinstance(known, Length)
    (nowhere,) = run_of("[1 m via unknown]")
    assert isinstance(nowhere, Length) and nowhere.place is None


def test_a_device_in_place_is_named_after_its_circuit() -> None:
    design = read(
        ("circuits.light.run", "[{kind: fuse, rating: 5 A}, 1 m, {part: strip}]"),
        ("circuits.light.return", "{run: [1 m, {kind: shunt}]}"),
    )
    circuit = design.circuits["light"]
    assert [step.equipment for step in circuit.run if isinstance(step, Through)] == ["light#1", "light#2"]
    assert [step.equipment for step in circuit.returns.run if isinstance(step, Through)] == ["light#3"]
    first, second, third = (design.equipment[f"light#{n}"] for n in (1, 2, 3))
    assert (first.value("rating"), second.value("rating"), third.kind) == (5.0, 80.0, "shunt")
    assert first.inline_of == "light" and first.where.column > 20


@pytest.mark.parametrize(
    ("item", "what", "right"),
    [
        ("-2 m via cabin", "below zero", "zero up"),
        ("2 via cabin", "bare number", "'2 m'"),
        ("2 A via cabin", "a current", "a length"),
        ("nan m via cabin", "nan", "'0.3 m'"),
        ("2 m via cabn", "no `cabn` in places", "did you mean `cabin`?"),
        ("F2", "`F2` is nothing", "did you mean `F1`?"),
        ("fuse one", "nothing a run can pass", "write a length"),
        ("Q1.lod", "no terminal `lod`", "did you mean `load`?"),
        ("lamp", "a lamp, which no run passes", "end the circuit there"),
        ("none via cabin", "cannot be `none`", "write a length"),
        ("[1 m]", "is a list", "write a length"),
        ("{is: [1 m], basis: measured}", "is a list", "write a length"),
        ("{kind: lamp}", "a lamp stands in a run", "declare it under `equipment:`"),
        ("{rating: 5 A}", "neither `kind` nor `part`", "`kind: fuse`"),
        ("K1.shore>shore", "which terminals", "`K1.shore>common`"),
        ("board.lights", "which no run passes", "end the circuit"),
    ],
)
def test_a_wrong_step_says_what_is_right(item: str, what: str, right: str) -> None:
    problem = only(("circuits.light.run", f"[{item}]"))
    assert what in problem.what and right in problem.right


@pytest.mark.parametrize(
    ("text", "what"), [("[]", "the run is empty"), ("3 m", "a run is a list"), ("{a: b}", "a run is a list")]
)
def test_a_run_is_a_list_of_something(text: str, what: str) -> None:
    assert what in only(("circuits.light.run", text)).what


def test_a_problem_points_to_the_step() -> None:
    line = next(n for n, line in enumerate(SMALL.splitlines(), 1) if line.startswith("  main:"))
    problem = only(("circuits.main.run.2", "1 m via bnech"))
    assert (problem.line, problem.column) == (line, SMALL.splitlines()[line - 1].index("1 m via") + 1)


def test_one_device_stands_in_one_run() -> None:
    problem = only(("circuits.light.run", "[F1]"))
    assert "`F1` stands in the run of `main` already" in problem.what


def test_a_two_pole_device_stands_in_the_run_and_the_return_and_a_joint_in_many() -> None:
    assert not problems(
        ("circuits.light.run", "[Q1, tee]"), ("circuits.light.return", "{run: [Q1]}"), ("circuits.main.run.0", "tee")
    )
