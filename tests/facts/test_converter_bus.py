"""A bus without a battery."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask

BUFFER = {
    "equipment.buffer": "{kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 20 Ah, purpose: house}",
    "circuits.buffer": "{from: buffer, to: bar-12, run: [0.3 m], cable: red-35, return: same}",
}


def test_an_open_relay_leaves_the_bus_to_the_converter() -> None:
    assert ask("converter", "converter", "bus_has_battery") is False
    assert ask("converter", "converter", "only_source") is True


def test_a_buffer_battery_holds_the_bus_in_every_mode() -> None:
    assert ask("converter", "converter", "bus_has_battery", BUFFER) is True
    assert ask("converter", "converter", "peak_bus_current", BUFFER) is None
    assert ask("converter", "converter", "only_source", BUFFER) is False


def test_a_relay_that_nobody_knows_leaves_it_open() -> None:
    assert isinstance(ask("converter", "converter", "bus_has_battery", {"equipment.K1.driven by": "unknown"}), Unknown)


def test_all_loads_starting_together_are_summed() -> None:
    # Lamps 40 W at 12 V, pump with 18 A when held still, its start of 15 A being less.
    assert ask("converter", "converter", "peak_bus_current") == pytest.approx(40 / 12 + 18)


def test_a_motor_that_does_not_tell_its_start_leaves_the_peak_unknown() -> None:
    edits = {"equipment.pump.start": "unknown", "equipment.pump.stall": "unknown"}
    assert isinstance(ask("converter", "converter", "peak_bus_current", edits), Unknown)


def test_without_a_stated_peak_it_gives_at_least_its_lasting_current() -> None:
    edits = {"equipment.converter.sides.low.peak": "unknown"}
    assert ask("converter", "converter", "peak_output", edits) == Range(150.0, float("inf"))


def test_a_start_longer_than_the_peak_is_not_covered() -> None:
    strong = {"equipment.pump.stall": "160 A"}
    assert ask("converter", "converter", "covers_starts", strong) is True
    assert ask("converter", "converter", "covers_starts", {**strong, "equipment.pump.start.time": "1.5 s"}) is False


def test_within_its_peak_the_bus_keeps_the_set_voltage_and_beyond_it_nobody_knows() -> None:
    assert ask("converter", "converter", "lowest_bus_voltage") == 13.4
    beyond = {"equipment.pump.stall": "400 A"}
    assert isinstance(ask("converter", "converter", "lowest_bus_voltage", beyond), Unknown)


def test_the_most_demanding_load_sets_the_voltage_that_is_needed() -> None:
    assert ask("converter", "converter", "lowest_load_voltage", {"equipment.lights.voltage": "11..15 V"}) == 11.0


def test_an_essential_load_without_a_cell_is_lost_with_its_only_converter() -> None:
    assert ask("converter", "alarm-supply", "leaves_essentials_dark") is False
    bare = {"equipment.gas-alarm.own cell": "none"}
    assert ask("converter", "alarm-supply", "leaves_essentials_dark", bare) is True
    unsure = {"equipment.gas-alarm.own cell": "unknown"}
    assert isinstance(ask("converter", "alarm-supply", "leaves_essentials_dark", unsure), Unknown)


WINCH = {
    "equipment.pump.stall": "110 A",
    "equipment.winch": "{kind: motor, running: 40 A, start: {current: 110 A, time: 0.5 s, alone: true}, place: cabin}",
    "circuits.winch": "{from: board, to: winch, run: [2 m], cable: red-35, return: same}",
}


def test_of_those_that_start_by_themselves_one_starts_while_the_others_run() -> None:
    single = {**WINCH, "equipment.pump.start.alone": "true"}
    assert ask("converter", "converter", "peak_bus_current", single) == pytest.approx(40 / 12 + 110 + 40)


def test_only_one_that_starts_by_itself_saves_nothing() -> None:
    assert ask("converter", "converter", "peak_bus_current", WINCH) == pytest.approx(40 / 12 + 110 + 110)


def test_whether_one_starts_by_itself_unknown_spans_both() -> None:
    found = ask("converter", "converter", "peak_bus_current", {**WINCH, "equipment.pump.start.alone": "unknown"})
    assert isinstance(found, Range)
    assert (found.low, found.high) == pytest.approx((40 / 12 + 150, 40 / 12 + 220))


SUPPLY = {
    "equipment.psu": "{kind: charger, dc: {nominal: 12 V, current: 10 A}, at fault: limits, place: cabin}",
    "circuits.psu-in": "{from: inverter.ac-out, to: psu.ac, run: [1 m], cable: mains-2}",
    "equipment.dome": "{kind: lamp, power: 24 W, voltage: 10..15 V, place: cabin}",
    "circuits.psu-out": "{from: psu.dc, to: dome, run: [3 m], cable: pair-4}",
}


def test_a_power_supply_of_the_mains_may_be_alone_on_its_bus() -> None:
    assert ask("converter", "psu", "bus_has_battery", SUPPLY) is False
    assert ask("converter", "psu", "peak_bus_current", SUPPLY) == pytest.approx(2.0)
    assert ask("converter", "psu", "only_source", SUPPLY) is True


def test_where_the_mains_may_be_absent_a_power_supply_is_alone_perhaps() -> None:
    found = ask(
        "converter", "psu", "bus_has_battery", {**SUPPLY, "modes": "{parked: {engine: stopped, shore: unknown}}"}
    )
    assert isinstance(found, Unknown)


def test_a_power_supply_of_a_bus_with_a_battery_is_not_alone() -> None:
    edits = {**SUPPLY, **BUFFER, "circuits.buffer": "{from: buffer, to: dome, run: [1 m], cable: pair-4}"}
    assert ask("converter", "psu", "bus_has_battery", edits) is True
