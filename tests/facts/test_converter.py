"""Converters, chargers and what they charge."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask, house, ids

STARTS_ALIKE = {"parts.module.chemistry": "AGM lead acid"}


def test_everything_that_converts_or_charges_is_a_subject() -> None:
    assert ids(house().subjects("converter")) == ["alternator", "converter", "sun", "inverter", "alarm-supply"]


def test_a_converter_both_ways_charges_the_batteries_of_both_sides() -> None:
    assert ids(ask("converter", "converter", "charges")) == ["start-battery", "bank"]
    assert ids(ask("converter", "sun", "charges")) == ["bank"]
    assert ask("converter", "alarm-supply", "charges") == ()


def test_one_way_leaves_the_other_side_alone() -> None:
    edits = {
        "equipment.converter.both ways": "false",
        "circuits.high": "{from: converter.high, to: bar-48, run: [2 m, F7], cable: red-35, return: same}",
    }
    assert ids(ask("converter", "converter", "charges", edits)) == ["bank"]


def test_how_the_units_of_a_bank_are_joined_decides_what_is_charged() -> None:
    assert isinstance(ask("converter", "sun", "charges", {"equipment.bank.joined by": "unknown"}), Unknown)


@pytest.mark.parametrize(("volts", "fits"), [("53.5 V", False), ("53.6 V", True), ("58.4 V", True), ("58.5 V", False)])
def test_a_charging_voltage_fits_between_full_and_highest(volts: str, fits: bool) -> None:
    # Sixteen cells: 3.35 V rested when full, 3.65 V at most.
    assert ask("converter", "sun", "fits_chemistry", {"equipment.sun.settings.charge voltage": volts}) is fits


def test_a_charger_may_stop_instead_of_floating() -> None:
    assert ask("converter", "sun", "fits_chemistry", {"equipment.sun.settings.float": "none"}) is True
    assert ask("converter", "sun", "fits_chemistry", {"equipment.sun.settings.float": "59 V"}) is False


def test_equalising_is_on_off_or_not_told() -> None:
    assert ask("converter", "sun", "equalises") is False
    assert ask("converter", "sun", "equalises", {"equipment.sun.settings.equalise": "60 V"}) is True
    assert isinstance(ask("converter", "sun", "equalises", {"equipment.sun.settings.equalise": "unknown"}), Unknown)


def test_a_stop_counts_only_when_a_broken_wire_stops_too() -> None:
    assert ask("converter", "sun", "stops_on_management") is True
    assert ask("converter", "sun", "stops_on_management", {"equipment.bms-stop.fails": "given"}) is False
    assert isinstance(ask("converter", "sun", "stops_on_management", {"equipment.bms-stop.fails": "unknown"}), Unknown)
    assert ask("converter", "sun", "stops_on_management", {"equipment.sun.charge stop": "none"}) is False


def test_negatives_are_joined_over_the_chassis() -> None:
    assert ask("converter", "converter", "negatives_joined") is True
    assert ask("converter", "converter", "negatives_joined", {"circuits.neg-48": "(remove)"}) is False
    hidden = {"circuits.neg-48": "(remove)", "circuits.high.return": "unknown"}
    assert isinstance(ask("converter", "converter", "negatives_joined", hidden), Unknown)


def test_both_ports_meet_a_device_on_every_branch() -> None:
    assert ask("converter", "converter", "both_ports_protected") is True
    bare = {
        "equipment.heat": "{kind: load, power: 60 W, voltage: 10..15 V}",
        "circuits.heat": "{from: bar-12, to: heat, run: [2 m], cable: pair-4}",
    }
    assert ask("converter", "converter", "both_ports_protected", bare) is False


def test_only_a_converter_upwards_steps_up() -> None:
    assert ask("converter", "converter", "steps_up") is True
    assert ask("converter", "alarm-supply", "steps_up") is False
    assert ask("converter", "inverter", "steps_up") is False
