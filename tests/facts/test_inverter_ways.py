"""What parts an inverter from its battery, and what a fault to its case lets through."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask

STRAIGHT = {"circuits.main.run": "[0.15 m via locker, F1, 0.8 m via locker]"}


def test_one_switch_has_to_part_it_from_every_battery() -> None:
    assert ask("converter", "inverter", "cut_from_batteries") is True
    assert ask("converter", "inverter", "cut_from_batteries", STRAIGHT) is False
    hidden = {"circuits.main.run": "[0.15 m via locker, F1, unknown]"}
    assert isinstance(ask("converter", "inverter", "cut_from_batteries", hidden), Unknown)


def test_a_fuse_parts_nothing() -> None:
    assert ask("converter", "inverter", "cut_from_batteries", {**STRAIGHT, "equipment.F6.place": "locker"}) is False


def test_a_case_without_a_bond_stands_nothing() -> None:
    assert ask("converter", "inverter", "case_bond_stands") is None
    bond = {"circuits.case": "{from: inverter.case, to: chassis, run: [1 m], cable: red-70, duty: bonding}"}
    assert ask("converter", "inverter", "case_bond_stands", bond) > 1e6
    thin = {**bond, "cables.red-70.size": "unknown"}
    assert isinstance(ask("converter", "inverter", "case_bond_stands", thin), Unknown)


def test_a_fault_lets_through_what_the_fuse_of_the_cable_does() -> None:
    assert ask("converter", "inverter", "case_fault_lets_through") == ask("device", "F6", "let_through")
    none = {"circuits.inverting.run": "[0.7 m via locker]"}
    assert isinstance(ask("converter", "inverter", "case_fault_lets_through", none), Unknown)
