"""Batteries in an operating point."""

from __future__ import annotations

import pytest

from checker.physics.battery import lfp_cell_voltage
from tests.facts.dc_designs import point_of, read, van


def test_a_resting_lithium_battery_stands_at_the_voltage_of_its_charge() -> None:
    low, high = lfp_cell_voltage(0.7)
    found = read(van(), "off", "house", "voltage")
    assert found.likely == pytest.approx(4 * 0.5 * (low + high), abs=1e-6)


def test_the_charge_of_the_mode_counts_for_the_house_battery_alone() -> None:
    facts = van((("{sun: 800 W/m2, charge: 60 %, running: {pump: 6 A}}", "{charge: 30 %}"),))
    house, start = read(facts, "sunny", "house", "voltage"), read(facts, "sunny", "start", "voltage")
    assert house.likely == pytest.approx(4 * sum(lfp_cell_voltage(0.3)) / 2, abs=1e-3)
    assert start.likely == pytest.approx(12.6, abs=0.1)
    assert any("starting battery" in text for text in point_of(facts, "sunny").assumed)
    assert not any("house battery" in text for text in point_of(facts, "sunny").assumed)


def test_a_charged_lead_acid_battery_takes_little() -> None:
    found = read(van(), "driving", "start", "current")
    assert 0.5 < found.likely < 5.0
    assert point_of(van(), "driving").state("start") == "charging"


def test_a_battery_without_a_stated_resistance_is_taken_by_its_size() -> None:
    facts = van((("internal resistance: 4 mΩ, purpose: house", "purpose: house"),))
    point = point_of(facts, "boiling")
    assert any("others in proportion" in text for text in point.assumed)
    assert point.missing == ()


def test_a_chemistry_without_a_voltage_curve_leaves_its_bus_without_numbers() -> None:
    facts = van((("chemistry: lithium iron phosphate", "chemistry: sodium ion"), ("cells: 4, ", "")))
    assert any("rested voltage" in text for text in point_of(facts, "boiling").missing)


def test_a_bank_written_short_is_one_battery_a_string() -> None:
    from tests.facts.test_operating_point import coach

    point = point_of(coach(), "driving")
    names = [f"house-bank.unit-{number}" for number in (1, 2, 3)]
    assert point.plan.units["house-bank"] == tuple(names)
    likely = point.likely
    assert likely is not None
    amps = [likely.flows[name].amps for name in names]
    assert amps[0] == pytest.approx(amps[1] or 0.0, rel=1e-6)
    whole = read(coach(), "driving", "house-bank", "current").likely
    assert whole == pytest.approx(sum(abs(one or 0.0) for one in amps))
