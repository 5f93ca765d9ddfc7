"""Terminals and their lugs."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask, van

ENDS = "circuits.trunk.ends"


def test_only_described_terminals_and_described_ends_are_subjects() -> None:
    assert [one.id for one in van().subjects("terminal")] == ["house.+", "house.-"]
    ids = [one.id for one in van((ENDS, "{to: {lug: 16-8}}")).subjects("terminal")]
    assert ids == ["house.+", "house.-", "plus.+"]


def test_each_wire_on_a_stud_is_a_lug_and_parallel_cables_count() -> None:
    assert ask("terminal", "house.+", "lugs") == 1.0
    assert ask("terminal", "house.+", "lugs", ("circuits.trunk.in parallel", "2")) == 2.0


def test_the_stud_is_read_from_its_thread() -> None:
    assert ask("terminal", "house.+", "stud") == pytest.approx(0.008)


def test_one_conductor_brings_its_design_current() -> None:
    facts = van()
    stud, trunk = facts.subject("terminal", "house.+"), facts.subject("conductor", "trunk")
    assert stud is not None and trunk is not None
    assert stud.current == trunk.design_current


def test_several_conductors_bring_between_the_greatest_and_their_sum() -> None:
    more = ("circuits.second", "{from: house, to: socket-12, run: [1 m via cabin], cable: red-16, return: same}")
    load = ("equipment.socket-12", "{kind: load, current: 5 A, voltage: 10..15 V, place: cabin}")
    found = ask("terminal", "house.+", "current", load, more)
    assert isinstance(found, Range)
    assert found.low == pytest.approx(found.high - 5.0)


def test_the_barrel_is_held_against_the_cable_and_the_hole_against_the_stud() -> None:
    assert ask("terminal", "house.+", "lugs_fit_cable") is True
    assert ask("terminal", "house.+", "lugs_fit_cable", (ENDS, "{from: {lug: 25-8}}")) is False
    assert ask("terminal", "house.+", "lugs_fit_stud", (ENDS, "{from: {lug: 16-10}}")) is False


def test_a_lug_of_a_cable_of_unknown_size_is_not_known_to_fit() -> None:
    assert isinstance(ask("terminal", "house.+", "lugs_fit_cable", ("cables.red-16.size", "unknown")), Unknown)


def test_the_record_of_the_torque_is_read_from_the_end_of_the_circuit() -> None:
    assert ask("terminal", "house.+", "torqued") == pytest.approx(12.0)
    assert isinstance(ask("terminal", "house.+", "torqued", (ENDS, "{from: {lug: 16-8}}")), Unknown)
    assert ask("terminal", "house.+", "torqued", (ENDS, "{from: {lug: 16-8, torqued: none}}")) is None


def test_a_soldered_end_is_not_crimped() -> None:
    assert ask("terminal", "house.+", "crimped", (ENDS, "{from: {crimp: soldered}}")) is False


def test_a_terminal_in_the_middle_of_a_run_keeps_its_own_record_of_the_torque() -> None:
    said = ("equipment.house.terminals", "{+: {stud: M8, torque: 12 N m, torqued: 11 N m}}")
    ends = (ENDS, "{from: {lug: 16-8}}")
    assert ask("terminal", "house.+", "torque_told", said, ends) is True
    assert ask("terminal", "house.+", "torqued", said, ends) == pytest.approx(11.0)
