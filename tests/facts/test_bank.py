"""Banks and batteries as the file tells them."""

from __future__ import annotations

import pytest

from checker.facts.subject import trace
from checker.quantities import Range, Unknown, Window
from tests.facts.house import ask, house, ids, one


def test_banks_and_batteries_are_subjects_and_the_units_of_a_bank_are_not() -> None:
    assert ids(house().subjects("bank")) == ["start-battery", "bank"]


def test_strings_in_parallel_add_capacity_and_units_in_series_add_voltage() -> None:
    assert ask("bank", "bank", "capacity") == 2 * 50 * 3600
    assert ask("bank", "bank", "nominal_voltage") == 48.0
    series = {"equipment.bank.arrangement": "2s1p"}
    assert ask("bank", "bank", "capacity", series) == 50 * 3600
    assert ask("bank", "bank", "nominal_voltage", series) == 96.0
    assert ask("bank", "bank", "charge_voltage_limit", series) == pytest.approx(2 * 58.4)


def test_an_unknown_arrangement_leaves_voltage_and_capacity_unknown() -> None:
    edits = {"equipment.bank.arrangement": "unknown"}
    assert isinstance(ask("bank", "bank", "nominal_voltage", edits), Unknown)
    assert isinstance(ask("bank", "bank", "capacity", edits), Unknown)


def test_usable_energy_is_the_share_of_the_chemistry() -> None:
    assert ask("bank", "bank", "usable_energy") == pytest.approx(100 * 48 * 0.8 * 3600)
    assert ask("bank", "start-battery", "usable_energy") == pytest.approx(90 * 12 * 0.5 * 3600)


def test_the_cells_of_a_nameplate_voltage_may_be_one_of_two_numbers() -> None:
    # 15 x 3.2 V = 48 V and 16 x 3.2 V = 51.2 V are both sold as 48 V.
    assert ask("bank", "bank", "cells", {"parts.module.cells": "unknown"}) == Range(15.0, 16.0)
    assert ask("bank", "start-battery", "cells") == 6.0


def test_the_management_can_only_lower_the_charging_voltage() -> None:
    assert ask("bank", "bank", "charge_voltage_limit") == 58.4  # 16 x 3.65 V
    assert ask("bank", "bank", "charge_voltage_limit", {"parts.module.bms.over voltage": "57 V"}) == 57.0
    assert ask("bank", "bank", "charge_voltage_limit", {"parts.module.bms.over voltage": "60 V"}) == 58.4


def test_a_battery_no_alternator_reaches_is_a_house_battery() -> None:
    assert ask("bank", "bank", "purpose", {"equipment.bank.purpose": "(remove)"}) == "house"
    told = ask("bank", "start-battery", "purpose", {"equipment.start-battery.purpose": "unknown"})
    assert isinstance(told, Unknown)


def test_the_coldest_air_is_that_of_its_place_else_of_the_vehicle() -> None:
    assert ask("bank", "bank", "coldest_air", {"places.locker.temperature": "3..40 °C"}) == 3.0
    # Stated as not known, the place may be warmer than the air around the vehicle, never colder.
    told = ask("bank", "bank", "coldest_air", {"places.locker.temperature": "unknown"})
    assert isinstance(told, Range)
    assert (told.low, told.high) == (-5.0, float("inf"))


def test_a_key_of_the_bank_overrides_that_of_its_battery() -> None:
    assert ask("bank", "bank", "discharge_limit", {"equipment.bank.bms.discharge limit": "80 A"}) == 160.0


def test_a_recognised_standard_is_found_within_the_text() -> None:
    assert (
        ask("bank", "bank", "safety_standard", {"parts.module.standard": "[house rules, IEC 62619:2022]"})
        == "IEC 62619"
    )
    assert ask("bank", "bank", "safety_standard", {"parts.module.standard": "house rules"}) == "other"
    assert ask("bank", "bank", "safety_standard", {"parts.module.standard": "none"}) is None


def test_covers_are_told_only_when_both_poles_are() -> None:
    assert ask("bank", "bank", "terminal_covers") is True
    assert isinstance(ask("bank", "bank", "terminal_covers", {"parts.module.terminals.-": "(remove)"}), Unknown)


def test_windows_of_temperature_are_read() -> None:
    assert ask("bank", "bank", "window_charge") == Window(0.0, 45.0)


def test_the_working_names_the_lines_it_rests_on() -> None:
    paths = [given.path for given in trace(one("bank", "bank"), "capacity").leaves()]
    assert paths == ["parts.module.capacity", "equipment.bank.arrangement"]


def test_a_management_that_nobody_could_read_may_stop_anywhere_above_the_rested_voltage() -> None:
    untold = {"parts.module.bms.over voltage": "unknown"}
    assert isinstance(ask("bank", "bank", "highest_voltage", untold), Unknown)
    # 16 cells of lithium iron phosphate: from the rested voltage of full ones to the greatest that charges them.
    limit = ask("bank", "bank", "charge_voltage_limit", untold)
    assert limit == Range(ask("bank", "bank", "full_voltage"), 16 * 3.65)
    assert ask("bank", "bank", "charge_voltage_limit", {"parts.module.bms.over voltage": "none"}) == 16 * 3.65
    cells = ask("bank", "bank", "charge_voltage_limit", {"parts.module.chemistry": "unknown"})
    assert cells == Range(0.0, 58.4)


def test_a_bank_whose_purpose_nobody_knows_is_no_house_battery_for_certain() -> None:
    assert isinstance(ask("bank", "bank", "purpose", {"equipment.bank.purpose": "unknown"}), Unknown)
