"""Batteries joined by a contact, bonds of a battery negative."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask
from tests.facts.mains_subjects import VAN, subject

JOINING = {
    "equipment.KB": "{kind: relay, rating: 100 A, voltage: 24 V DC, driven by: hooked-up, place: locker}",
    "circuits.joining": "{from: bank, to: second, run: [0.1 m, KB, 0.1 m], cable: red-35, return: same}",
}


def second(chemistry: str, volts: str = "12 V") -> dict[str, str]:
    battery = f"{{kind: battery, chemistry: {chemistry}, nominal: {volts}, capacity: 100 Ah, place: locker}}"
    return JOINING | {"equipment.second": battery}


def test_a_relay_with_a_battery_on_either_side_joins_them() -> None:
    assert subject(VAN, "switch", "KB", second("AGM lead acid")).joins_batteries is True
    assert ask("switch", "K1", "joins_batteries") is False  # behind it stands a converter


def test_alike_means_voltage_and_chemistry() -> None:
    assert subject(VAN, "switch", "KB", second("AGM lead acid")).batteries_alike is True
    lithium = subject(VAN, "switch", "KB", second("lithium iron phosphate"))
    assert lithium.batteries_alike is False
    assert lithium.batteries_of_one_voltage is True
    assert subject(VAN, "switch", "KB", second("AGM lead acid", "24 V")).batteries_of_one_voltage is False
    assert isinstance(subject(VAN, "switch", "KB", second("unknown")).batteries_alike, Unknown)


def test_a_way_around_means_that_the_switch_alone_joins_nothing() -> None:
    around = {"circuits.around": "{from: bank, to: second, run: [0.3 m], cable: red-35, return: same}"}
    assert subject(VAN, "switch", "KB", second("lithium iron phosphate") | around).joins_batteries is False


def test_a_bond_of_the_negative_is_told_from_a_bond_of_the_mains_earth() -> None:
    assert ask("circuit", "neg-48", "bonds_negative") is True
    assert ask("circuit", "neg-48", "ungrounded_lead_area") == pytest.approx(70e-6)
    assert subject(VAN, "circuit", "chassis-bond").bonds_negative is False
    assert subject(VAN, "circuit", "chassis-bond").ungrounded_lead_area is None


def test_what_returns_by_the_chassis_comes_back_through_the_bond_of_the_negative() -> None:
    # `link` ends at bar-12 and returns by the chassis; what the alternator drives may come back there as well.
    found = ask("circuit", "neg-12", "chassis_return_current")
    link = ask("conductor", "link", "design_current")
    assert isinstance(found, Range)
    assert found.low == pytest.approx(link)
    assert found.high == pytest.approx(link + ask("conductor", "charging", "design_current"))
    assert ask("circuit", "neg-48", "chassis_return_current") == 0.0
    assert ask("circuit", "lamps", "chassis_return_current") is None
    assert ask("circuit", "neg-12", "bond_capacity") == ask("conductor", "neg-12", "carrying_capacity")


def test_a_return_that_is_not_told_may_come_back_by_the_chassis() -> None:
    # Not told, it may add to the most, and no longer raises the least.
    found = ask("circuit", "neg-12", "chassis_return_current", {"circuits.link.return": "unknown"})
    told = ask("circuit", "neg-12", "chassis_return_current")
    assert isinstance(found, Range) and isinstance(told, Range)
    assert found.low == 0.0 and found.high == pytest.approx(told.high)


SECOND = {
    "circuits.neg-inverter": "{from: inverter.dc-, to: chassis, run: [0.5 m via locker], cable: red-35, duty: bonding}"
}


def test_bonds_of_a_negative_are_counted_along_its_returns() -> None:
    assert ask("bank", "bank", "chassis_bonds") == 1
    assert ask("bank", "bank", "chassis_bonds", SECOND) == 2
    assert ask("bank", "bank", "chassis_bonds", {"circuits.neg-48": "(remove)"}) == 0


def test_a_return_that_was_not_seen_may_hide_a_bond_and_takes_none_away() -> None:
    unseen = {"circuits.high.return": "unknown"}
    assert isinstance(ask("bank", "bank", "chassis_bonds", unseen), Unknown)
    found = ask("bank", "bank", "chassis_bonds", {**SECOND, **unseen})
    assert isinstance(found, Range) and found.low == 2
