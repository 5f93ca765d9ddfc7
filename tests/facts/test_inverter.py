"""Inverters on their battery."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask, ids


def test_the_switch_between_bank_and_inverter_charges_its_capacitors() -> None:
    assert ids(ask("switch", "isolator", "capacitors_behind")) == ["inverter"]
    assert ask("switch", "sun-switch", "capacitors_behind") == ()
    assert ask("switch", "K1", "capacitors_behind") == ()


def test_power_asked_is_what_runs_while_it_inverts() -> None:
    assert ask("converter", "inverter", "asked_power") == pytest.approx(140.0)
    resting = {"modes.driving.inverter": "resting", "modes.parked.inverter": "resting"}
    assert ask("converter", "inverter", "asked_power", resting) == 0.0


def test_the_hardest_start_counts_beside_what_runs() -> None:
    assert ask("converter", "inverter", "surge_asked") == pytest.approx(6 * 230)
    edits = {
        "equipment.kettle": "{kind: load, power: 800 W, voltage: 207..253 V}",
        "circuits.kettle": "{from: inverter.ac-out, to: kettle, run: [1 m], cable: mains-2}",
        "modes.parked.running": "{fridge: 140 W, kettle: 800 W}",
    }
    assert ask("converter", "inverter", "surge_asked", edits) == pytest.approx(6 * 230 + 800)
    assert isinstance(ask("converter", "inverter", "surge_asked", {"equipment.fridge.start": "unknown"}), Unknown)


@pytest.mark.parametrize(("hottest", "share"), [("40 °C", 1.0), ("52.5 °C", 0.5), ("65 °C", 0.0), ("80 °C", 0.0)])
def test_derating_falls_on_a_straight_line(hottest: str, share: float) -> None:
    edits = {"places.locker.temperature": f"-5..{hottest}"}
    assert ask("converter", "inverter", "derated_share", edits) == pytest.approx(share)
    assert ask("converter", "inverter", "derated_output", edits) == pytest.approx(share * 2000)


def test_a_place_without_a_temperature_is_at_least_as_hot_as_outside() -> None:
    found = ask("converter", "inverter", "air_temperature", {"places.locker.temperature": "unknown"})
    assert found == Range(40.0, float("inf"))


def test_a_residual_current_device_needs_a_sine() -> None:
    assert ask("converter", "inverter", "feeds_sine_loads") is True
    plain = {
        "equipment.fridge": "{kind: load, power: 100 W, voltage: 207..253 V}",
        "equipment.Q2": "{kind: breaker, family: C curve, rating: 10 A, voltage: 230 V AC}",
    }
    assert ask("converter", "inverter", "feeds_sine_loads", plain) is False


def test_loss_is_what_the_efficiency_leaves() -> None:
    assert ask("converter", "inverter", "loss") == pytest.approx(140 * (1 / 0.92 - 1))
