"""Equipment as bodies."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask, van


def test_a_device_written_in_a_run_stands_where_the_run_has_just_been() -> None:
    run = "[0.1 m via cabin, {kind: fuse, family: blade, rating: 3 A}, 4 m via cabin, 0.4 m via gas]"
    facts = van(("circuits.valve.run", run))
    fuse = facts.subject("equipment", "valve#1")
    assert fuse is not None
    assert fuse.place.id == "cabin"


def test_gear_of_the_gas_system_serves_the_gas() -> None:
    assert ask("equipment", "solenoid", "serves_gas") is True
    assert ask("equipment", "FS", "serves_gas") is False
    assert ask("equipment", "slide-motor", "serves_gas") is False
    unread = ("equipment.slide-motor.purpose", "unknown")
    assert isinstance(ask("equipment", "slide-motor", "serves_gas", unread), Unknown)


def test_the_place_decides_whether_it_stands_in_a_gas_locker() -> None:
    assert ask("equipment", "solenoid", "in_gas_locker") is True
    assert ask("equipment", "plus", "in_gas_locker") is False
    assert ask("equipment", "plus", "in_gas_locker", ("equipment.plus.place", "gas")) is True


def test_without_a_place_its_point_decides() -> None:
    assert ask("equipment", "inlet", "in_gas_locker") is False
    assert ask("equipment", "inlet", "in_gas_locker", ("equipment.inlet.at", "[4.3 m, 0.8 m, 0.6 m]")) is True


def test_without_place_and_box_it_may_stand_in_the_gas_locker() -> None:
    edits = (("equipment.plus.place", "unknown"), ("equipment.plus.box", "unknown"))
    assert isinstance(ask("equipment", "plus", "in_gas_locker", *edits), Unknown)


@pytest.mark.parametrize(("code", "water", "solids"), [("IP67", 7.0, 6.0), ("IP20", 0.0, 2.0), ("IP69", 9.0, 6.0)])
def test_the_digits_of_the_code_are_read(code: str, water: float, solids: float) -> None:
    motor = van(("equipment.slide-motor.degree", code)).subject("equipment", "slide-motor")
    assert motor is not None
    assert (motor.water_degree, motor.solids_degree) == (water, solids)


def test_a_digit_left_open_is_not_known() -> None:
    found = ask("equipment", "slide-motor", "solids_degree", ("equipment.slide-motor.degree", "IPX7"))
    assert isinstance(found, Unknown)


def test_the_hold_of_the_place_holds_what_stands_in_it() -> None:
    assert ask("equipment", "house", "restrained") is True
    assert ask("equipment", "house", "restrained", ("equipment.house.restraint", "none")) is False
    assert isinstance(ask("equipment", "plus", "restrained"), Unknown)


def test_equipment_planned_for_later_is_no_subject() -> None:
    assert van(("equipment.FL.fitted", "later")).subject("equipment", "FL") is None


def test_what_is_said_to_light_no_gas_does_not_spark() -> None:
    assert ask("equipment", "FS", "sparks") is True
    assert ask("equipment", "FS", "sparks", ("equipment.FS.ignition protected", "true")) is False
    assert ask("equipment", "plus", "sparks") is False
