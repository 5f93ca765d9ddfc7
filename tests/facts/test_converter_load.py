"""What is asked of a converter that holds a bus up by itself."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask


def test_an_alarm_counts_though_no_mode_names_it() -> None:
    assert ask("converter", "alarm-supply", "asked_power") == pytest.approx(2.0)


def test_loads_count_as_the_modes_run_them() -> None:
    lamp = {"equipment.gas-alarm": "{kind: lamp, power: 30 W, voltage: 9..16 V, place: cabin}", "essential": "none"}
    assert ask("converter", "alarm-supply", "asked_power", lamp) == pytest.approx(0.0)
    lit = {**lamp, "modes.parked.running": "{gas-alarm: 30 W}"}
    assert ask("converter", "alarm-supply", "asked_power", lit) == pytest.approx(30.0)


def test_an_alarm_of_unknown_power_leaves_it_open() -> None:
    assert isinstance(
        ask("converter", "alarm-supply", "asked_power", {"equipment.gas-alarm.power": "unknown"}), Unknown
    )


def test_what_is_left_in_the_heat_is_told_of_its_rating_at_that_bus() -> None:
    half = {"equipment.alarm-supply.derates": "{above: 30 °C, to zero at: 50 °C}"}
    assert ask("converter", "alarm-supply", "derated_output", half) == pytest.approx(0.5 * 5.0 * 12.5)
