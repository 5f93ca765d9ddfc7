"""What stands in the earth, and which bonding conductors carry it to the chassis."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.coach import coach, one

SECOND = ("equipment.second-earth", "{kind: earth bar, studs: 4, place: inverter-locker}")
BETWEEN = (
    "circuits.between",
    "{from: main-earth, to: second-earth, run: [0.4 m via inverter-locker], cable: green-6, duty: bonding}",
)
FROM_SECOND = ("circuits.earth-chassis.from", "second-earth")


def test_a_bond_between_earth_and_chassis_carries_it_there_and_one_of_a_case_or_a_pipe_does_not() -> None:
    facts = coach()
    found = {id: facts.subject("circuit", id) for id in ("earth-chassis", "inverter-case", "gas-pipe", "neg-48")}
    assert {id: one.bonds_chassis for id, one in found.items() if one is not None} == {
        "earth-chassis": True,
        "inverter-case": False,
        "gas-pipe": False,
        "neg-48": False,
    }


def test_a_piece_between_two_earth_bars_is_part_of_the_way_unless_there_is_another() -> None:
    assert one("circuit", "between", SECOND, BETWEEN, FROM_SECOND).bonds_chassis is True
    other = (
        "circuits.other",
        "{from: main-earth, to: chassis.rear-stud, run: [1 m via underbody], cable: green-6, duty: bonding}",
    )
    assert one("circuit", "between", SECOND, BETWEEN, FROM_SECOND, other).bonds_chassis is False


def test_a_device_in_a_bond_of_the_earth_stands_in_the_earth_and_one_in_a_live_run_does_not() -> None:
    run = ("circuits.earth-chassis.run", "[0.4 m via underbody, guard, 0.4 m via underbody]")
    guard = ("equipment.guard", "{kind: diode, rating: 16 A, place: underbody}")
    assert one("equipment", "guard", guard, run).in_earth is True
    assert one("equipment", "F1").in_earth is False


def test_where_a_device_stands_that_no_run_names_is_open_while_a_run_was_not_seen() -> None:
    guard = ("equipment.guard", "{kind: diode, rating: 16 A, place: underbody}")
    assert one("equipment", "guard", guard).in_earth is False
    gap = ("circuits.earth-chassis.run", "[0.4 m via underbody, unknown]")
    assert isinstance(one("equipment", "guard", guard, gap).in_earth, Unknown)


def test_the_bond_of_a_case_has_to_reach_the_chassis_past_no_negative() -> None:
    assert one("converter", "inverter").case_bond_meets_chassis is True
    to_negative = ("circuits.inverter-case.to", "bar-48.-")
    assert one("converter", "inverter", to_negative).case_bond_meets_chassis is False


def test_a_wire_from_a_negative_to_the_chassis_is_a_bond_whatever_it_was_said_to_be_for() -> None:
    said = ("circuits.neg-48.duty", "load")
    assert one("circuit", "neg-48", said).bonds_negative is True
