"""Voltages that reach mains appliances, and sources side by side."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject

BESIDE = {"circuits.inverting.to": "out", "equipment.inverter.synchronises with": "[inlet, genset]"}
FIFTY = {"equipment.inverter.ac.frequency": "50 Hz", "equipment.genset.frequency": "50 Hz"}


def test_a_load_is_asked_about_every_source_that_reaches_it() -> None:
    heater = subject(COACH, "load", "heater")
    assert (heater.least_mains_voltage, heater.most_mains_voltage) == (230.0, 230.0)
    foreign = subject(COACH, "load", "heater", {"equipment.inverter.ac.voltage": "120 V"})
    assert (foreign.least_mains_voltage, foreign.most_mains_voltage) == (120.0, 230.0)
    assert subject(COACH, "load", "lamp").most_mains_voltage is None


def test_a_source_of_unknown_voltage_leaves_it_open() -> None:
    untold = subject(COACH, "load", "heater", {"equipment.inverter.ac.voltage": "unknown"})
    assert isinstance(untold.least_mains_voltage, Unknown)


def test_sources_side_by_side_are_held_against_each_other() -> None:
    assert subject(VAN, "ac_source", "inverter", BESIDE | FIFTY).like_those_beside is True
    sixty = BESIDE | FIFTY | {"equipment.genset.frequency": "60 Hz"}
    assert subject(VAN, "ac_source", "inverter", sixty).like_those_beside is False
    assert isinstance(subject(VAN, "ac_source", "inverter", BESIDE).like_those_beside, Unknown)


def test_only_a_standard_for_running_beside_another_counts() -> None:
    tried = {"equipment.inverter.standard": "[AS/NZS 4777.2]"}
    assert subject(VAN, "ac_source", "inverter", tried).listed_to_run_beside is True
    other = {"equipment.inverter.standard": "[IEC 62109-1]", "equipment.inverter.approval": "none"}
    assert subject(VAN, "ac_source", "inverter", other).listed_to_run_beside is False
    assert subject(VAN, "ac_source", "inlet").listed_to_run_beside is None


THREE = {"vehicle.supply.phases": "3", "vehicle.supply.voltage": "400 V"}


def test_an_ordinary_appliance_sees_line_and_neutral_of_three_lines_and_one_of_three_sees_the_lines() -> None:
    plain = subject(COACH, "supply", "heater on inlet", THREE)
    assert plain.voltage == pytest.approx(230.0)
    assert subject(COACH, "supply", "heater on inlet", THREE | {"equipment.heater.phases": "3"}).voltage == 400.0
    told_low = {"vehicle.supply.phases": "3", "equipment.heater.phases": "3"}
    assert subject(COACH, "supply", "heater on inlet", told_low).voltage == pytest.approx(400.0)


def test_lines_that_nobody_told_leave_the_voltage_open_above_that_of_one_line() -> None:
    untold = THREE | {"vehicle.supply.phases": "unknown"}
    assert isinstance(subject(COACH, "supply", "heater on inlet", untold).voltage, Unknown)
    assert subject(COACH, "supply", "heater on inlet", {"vehicle.supply.phases": "unknown"}).voltage == 230.0


def test_the_fewest_lines_of_a_source_count() -> None:
    assert subject(COACH, "load", "heater", THREE).source_phases == 1.0
    ashore = THREE | {"circuits.normal": "(remove)"}
    assert subject(COACH, "load", "heater", ashore).source_phases == 3.0


def test_circuits_stand_at_line_and_neutral_and_an_appliance_of_three_lines_leaves_them_open() -> None:
    assert subject(COACH, "conductor", "heating", THREE).voltage == pytest.approx(230.0)
    open_to_both = subject(COACH, "conductor", "heating", THREE | {"equipment.heater.phases": "3"}).voltage
    assert (open_to_both.low, open_to_both.high) == pytest.approx((230.0, 400.0))
