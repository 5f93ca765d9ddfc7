"""How many live conductors come from a source of mains."""

from __future__ import annotations

import pytest

from checker.quantities import Range
from tests.facts.mains_subjects import COACH, VAN, subject

THREE = {"vehicle.supply.phases": "3", "vehicle.supply.voltage": "400 V"}


def test_one_line_brings_two() -> None:
    assert subject(VAN, "changeover", "KG").live_conductors == 2.0


@pytest.mark.parametrize(("poles", "found"), [("4", 4.0), ("2", 2.0), ("1", 2.0)])
def test_the_poles_of_the_inlet_tell_it(poles: str, found: float) -> None:
    assert subject(COACH, "changeover", "K2", THREE | {"equipment.inlet.poles": poles}).live_conductors == found


@pytest.mark.parametrize("lines", ["3", "unknown", "(remove)"])
def test_lines_of_which_nobody_says_how_many_are_used_leave_it_open(lines: str) -> None:
    edits = {"vehicle.supply.phases": lines, "equipment.inlet.poles": "(remove)"}
    assert subject(COACH, "changeover", "K2", edits).live_conductors == Range(2.0, 4.0)


def test_a_generator_of_three_lines_may_have_a_neutral() -> None:
    assert subject(VAN, "changeover", "KG", {"equipment.genset.phases": "3"}).live_conductors == Range(3.0, 4.0)


def test_the_cable_tells_what_a_switch_has_to_open_where_the_source_brings_as_much() -> None:
    five = {"cables.flex-5": "{size: 2.5 mm2, cores: 5, voltage: 450 V}", "circuits.board-feed.cable": "flex-5"}
    three = THREE | {"equipment.inlet.poles": "4"}
    assert subject(COACH, "switch", "S1", five).live_conductors == 2.0
    assert subject(COACH, "switch", "S1", three).live_conductors == 2.0
    assert subject(COACH, "switch", "S1", three | five).live_conductors == 4.0
    unread = three | five | {"cables.flex-5.cores": "unknown"}
    assert subject(COACH, "switch", "S1", unread).live_conductors == Range(2.0, 4.0)
