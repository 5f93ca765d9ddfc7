"""What guards a converter and what hangs on it."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask


def test_the_high_side_is_bounded_by_its_batteries_and_without_any_by_a_third_above_nominal() -> None:
    assert ask("converter", "converter", "high_side_limit") == pytest.approx(58.4)
    assert ask("converter", "alarm-supply", "high_side_limit") == pytest.approx(64.0)


def test_sodium_cells_are_no_lead_acid_cells() -> None:
    assert ask("converter", "sun", "charges_lead", {"parts.module.chemistry": "sodium ion"}) is False


def test_a_low_bus_bears_a_third_above_nominal() -> None:
    assert ask("converter", "converter", "low_bus_limit") == pytest.approx(16.0)


def test_a_cable_before_any_device_must_carry_what_a_converter_gives_for_ever() -> None:
    assert ask("converter", "alarm-supply", "output_within_cables") is True
    strong = {"equipment.alarm-supply.sides.low.current": "200 A"}
    assert ask("converter", "alarm-supply", "output_within_cables", strong) is False
    assert isinstance(
        ask("converter", "alarm-supply", "output_within_cables", {"circuits.alarm.cable": "unknown"}), Unknown
    )


def test_the_input_sees_the_voltage_of_its_source_less_the_drop() -> None:
    drop = ask("circuit", "low", "drop")
    low = drop.high if hasattr(drop, "high") else drop
    found = ask("converter", "converter", "input_voltage_min")
    assert (found.low if hasattr(found, "low") else found) == pytest.approx(13.8 - low)
    assert ask("converter", "converter", "cut_out_voltage") == 13.2
    assert ask("converter", "inverter", "cut_out_voltage") == 44.0


def test_lead_acid_house_batteries_are_told_from_starting_ones() -> None:
    assert ask("converter", "sun", "charges_lead") is False
    assert ask("converter", "sun", "charges_lead", {"parts.module.chemistry": "gel lead acid"}) is True
    assert ask("converter", "alternator", "charges_lead") is False


def test_only_added_equipment_on_a_road_vehicle_needs_its_approval() -> None:
    assert ask("converter", "sun", "goes_on_the_road") is True
    assert ask("converter", "alternator", "goes_on_the_road") is False
    assert ask("converter", "sun", "goes_on_the_road", {"vehicle.kind": "boat"}) is False
    assert ask("converter", "sun", "approved_for_vehicles", {"equipment.sun.approval": "[UN Regulation 10]"}) is True
    assert ask("converter", "sun", "approved_for_vehicles", {"equipment.sun.approval": "none"}) is False
    assert isinstance(ask("converter", "sun", "approved_for_vehicles"), Unknown)
