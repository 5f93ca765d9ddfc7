"""Low-voltage cut-offs of a bank."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask, ids

STOPS = {"equipment.converter.settings.low stop": "44 V", "equipment.alarm-supply.settings.low stop": "44 V"}
FAN = {
    "equipment.fan": "{kind: load, power: 20 W, voltage: 40..60 V}",
    "circuits.fan": "{from: bar-48, to: fan, run: [1 m], cable: pair-4}",
}


def monitor(below: str) -> dict[str, str]:
    """A monitor before the fan."""
    return {
        **STOPS,
        **FAN,
        "equipment.VM": f"{{kind: voltage monitor, rating: 60 A, voltage: 80 V DC, trips below: {below}}}",
        "circuits.fan.run": "[0.1 m, VM, 1 m]",
    }


def test_a_load_with_nothing_before_it_drains_the_bank() -> None:
    assert ids(ask("bank", "bank", "uncut", {**STOPS, **FAN})) == ["fan"]
    assert ask("bank", "bank", "uncut", STOPS) == ()
    assert ask("bank", "bank", "uncut", {**STOPS, **FAN, "circuits.fan.duty": "safety"}) == ()
    assert ask("bank", "bank", "uncut", {**STOPS, **FAN, "essential": "[fan]"}) == ()


def test_a_monitor_or_a_relay_told_by_a_low_battery_cuts() -> None:
    assert ask("bank", "bank", "uncut", monitor("46 V")) == ()
    assert ids(ask("bank", "bank", "uncut", monitor("none"))) == ["fan"]
    assert isinstance(ask("bank", "bank", "uncut", monitor("unknown")), Unknown)
    relay = {
        **monitor("46 V"),
        "equipment.flat": "{kind: signal, means: battery low, from: bank.allow}",
        "equipment.VM": "{kind: relay, rating: 60 A, voltage: 80 V DC, driven by: flat}",
    }
    assert ask("bank", "bank", "uncut", relay) == ()
    assert ids(ask("bank", "bank", "uncut", {**relay, "equipment.flat.means": "engine running"})) == ["fan"]


def test_a_converter_stops_where_it_is_set_to() -> None:
    assert isinstance(ask("bank", "bank", "uncut"), Unknown)
    never = {**STOPS, "equipment.converter.settings.low stop": "none"}
    assert ids(ask("bank", "bank", "uncut", never)) == ["converter"]


def test_the_higher_of_management_and_monitor_counts() -> None:
    assert ask("bank", "bank", "cut_off_voltage") == pytest.approx(42.0)
    assert ask("bank", "bank", "cut_off_voltage", monitor("46 V")) == pytest.approx(46.0)
    assert ask("bank", "bank", "cut_off_voltage", {"parts.module.bms.under voltage": "none"}) is None
    assert ask("bank", "bank", "cells_in_series") == 16.0


def test_an_alarm_behind_a_cut_off_goes_dark_with_it() -> None:
    behind = {
        "equipment.VM": "{kind: voltage monitor, rating: 20 A, voltage: 80 V DC, trips below: 46 V}",
        "circuits.alarming.run": "[0.1 m via locker, F9, VM, 0.5 m via locker]",
    }
    assert ask("load", "gas-alarm", "dark_by_cut_off") is False
    assert ask("load", "gas-alarm", "dark_by_cut_off", behind) is True
    unread = {**behind, "equipment.VM": "{kind: voltage monitor, rating: 20 A, voltage: 80 V DC}"}
    assert isinstance(ask("load", "gas-alarm", "dark_by_cut_off", unread), Unknown)
