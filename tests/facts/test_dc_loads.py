"""Loads, inverters and converters in an operating point."""

from __future__ import annotations

import pytest

from checker.circuit.dc_solution import Solution
from checker.facts.dc_loads import mains_watts
from checker.quantities import Unknown
from tests.facts.dc_designs import point_of, read, van


def test_an_inverter_draws_its_loads_over_its_efficiency_and_itself() -> None:
    assert read(van(), "boiling", "inverter", "power").likely == pytest.approx(700.0 / 0.9 + 10.0, rel=1e-6)


def test_an_inverter_that_rests_draws_nothing() -> None:
    assert "inverter" not in point_of(van(), "sunny").plan.loads


def test_a_stated_current_is_drawn_as_it_stands() -> None:
    assert read(van(), "sunny", "pump", "current").likely == pytest.approx(6.0)


def test_an_inverter_stops_below_its_battery_voltage() -> None:
    facts = van((("voltage: 10.5..16 V", "voltage: 14..16 V"),))
    point = point_of(facts, "boiling")
    likely = point.likely
    assert likely is not None
    assert likely.off == ("inverter",)
    assert point.state("inverter") == "switched off by its voltage limits"
    s = facts.subject("mode", "boiling")
    assert s is not None
    assert s.stops_by_voltage == 1.0


def test_mains_loads_are_counted_for_the_inverter_that_feeds_them() -> None:
    facts = van()
    point = point_of(facts, "boiling")
    assert mains_watts(point.plan, facts.design.equipment["inverter"]).likely == pytest.approx(700.0)
    assert mains_watts(point.plan, None).likely == pytest.approx(700.0)


def test_a_converter_charges_with_its_own_limit_and_rests_without_its_signal() -> None:
    facts = van()
    assert read(facts, "driving", "charger.high", "current").likely == pytest.approx(40.0)
    assert "charger" not in point_of(facts, "sunny").plan.sources


def test_power_out_of_a_converter_is_power_in_less_its_own_and_its_loss() -> None:
    facts = van()
    into, out = read(facts, "driving", "charger.low", "power"), read(facts, "driving", "charger.high", "power")
    assert out.likely == pytest.approx(0.9 * (into.likely - 2.0), rel=1e-6)


def test_a_converter_without_a_setting_is_taken_a_little_above_nominal_and_that_is_said() -> None:
    facts = van((("},\n            settings: {charge voltage: 14.2 V}}\n  run:", "}}\n  run:"),))
    assert any("8 % (0 to 15 %) above" in text for text in point_of(facts, "driving").assumed)


def test_an_efficiency_left_out_is_assumed_and_said() -> None:
    facts = van((("isolated: false, efficiency: 0.9, idle", "isolated: false, idle"),))
    assert any("efficiency of charger" in text for text in point_of(facts, "driving").assumed)


def test_a_draw_that_is_not_known_leaves_what_hangs_on_it_without_numbers() -> None:
    facts = van((("{sun: 800 W/m2, charge: 60 %, running: {pump: 6 A}}", "{sun: 800 W/m2, running: {pump: unknown}}"),))
    point = point_of(facts, "sunny")
    assert point.missing == ("what pump draws in sunny",)
    s = facts.subject("mode", "sunny")
    assert s is not None
    assert isinstance(s.house_bank_power, Unknown)


def test_every_case_of_every_mode_balances() -> None:
    facts = van()
    for mode in facts.design.modes:
        for case in point_of(facts, mode).cases.values():
            assert isinstance(case, Solution)
            assert case.imbalance() < 1e-6


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("isolated: false, efficiency: 0.9", "isolated: false, efficiency: 0", "efficiency of charger is taken"),
        ("isolated: false, efficiency: 0.9", "isolated: false, efficiency: 1.4", "efficiency of charger is taken"),
        ("cells: 4, capacity: 200 Ah", "cells: 4, capacity: 0 Ah", "starting battery"),
        ("internal resistance: 4 mΩ", "internal resistance: 0 mΩ", "others in proportion"),
        ("cells: 4, capacity", "cells: 0, capacity", "starting battery"),
    ],
)
def test_what_cannot_be_is_taken_as_not_told(old: str, new: str, words: str) -> None:
    point = point_of(van(((old, new),)), "driving")
    assert any(words in text for text in point.assumed)
    assert point.likely is not None


def test_an_inverter_of_which_nobody_knows_whether_it_works_leaves_its_bus_without_numbers() -> None:
    facts = van((("{inverter: inverting, charge: 80 %", "{inverter: unknown, charge: 80 %"),))
    point = point_of(facts, "boiling")
    assert point.missing == ("whether inverter is inverting in boiling",)
    s = facts.subject("mode", "boiling")
    assert s is not None
    assert isinstance(s.house_bank_power, Unknown)
