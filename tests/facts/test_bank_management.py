"""The management of a battery."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask, ids

CONTACTOR = {
    "equipment.leave": "{kind: signal, means: charge allowed, from: lone.allow, fails: released}",
    "equipment.KB": "{kind: relay, rating: 200 A, voltage: 80 V DC, driven by: leave, rest: open}",
    "equipment.lone": "{part: module, place: locker}",
    "equipment.heater": "{kind: load, power: 100 W, voltage: 40..60 V}",
    "circuits.lone": "{from: lone, to: heater, run: [0.1 m, KB, 2 m], cable: pair-4}",
}


def test_functions_are_held_missing_or_not_told() -> None:
    assert ask("bank", "bank", "stops_under_voltage") is True
    assert ask("bank", "bank", "stops_under_voltage", {"parts.module.bms.under voltage": "none"}) is False
    assert isinstance(
        ask("bank", "bank", "stops_under_voltage", {"parts.module.bms.under voltage": "unknown"}), Unknown
    )


def test_a_battery_without_a_management_has_none_of_its_functions() -> None:
    bare = {"parts.module.bms": "none"}
    assert ask("bank", "bank", "has_management", bare) is False
    assert ask("bank", "bank", "stops_over_voltage", bare) is False
    assert ask("bank", "bank", "stops_over_current", bare) is False


def test_behind_its_contactor_nothing_bypasses_the_management() -> None:
    assert ask("bank", "lone", "bypassed_by", CONTACTOR) == ()


def test_a_circuit_before_the_contactor_bypasses_it() -> None:
    past = {
        **CONTACTOR,
        "equipment.fan": "{kind: load, power: 20 W, voltage: 40..60 V}",
        "circuits.past": "{from: lone, to: fan, run: [1 m], cable: pair-4}",
    }
    assert ids(ask("bank", "lone", "bypassed_by", past)) == ["past"]


def test_where_the_management_opens_must_be_told() -> None:
    assert isinstance(ask("bank", "bank", "bypassed_by", {"parts.module.bms.ports": "unknown"}), Unknown)


def test_cold_charging_is_inhibited_by_the_management_or_by_every_charger() -> None:
    assert ask("bank", "bank", "inhibits_cold_charge") is True
    cold = {"parts.module.bms.low temperature": "none"}
    assert ask("bank", "bank", "inhibits_cold_charge", cold) is False
    stop = "{by: thermostat}"
    told = {
        **cold,
        "equipment.thermostat": "{kind: signal, means: temperature, fails: given}",
        "equipment.sun.charge stop": stop,
        "equipment.inverter.charge stop": stop,
        "equipment.converter.charge stop": stop,
    }
    assert ask("bank", "bank", "inhibits_cold_charge", told) is True
    assert ask("bank", "bank", "inhibits_cold_charge", {**told, "equipment.sun.charge stop": "none"}) is False


def test_a_place_that_stays_warm_meets_no_cold() -> None:
    assert ask("bank", "bank", "meets_cold") is True
    assert ask("bank", "bank", "meets_cold", {"places.locker.temperature": "0..40 °C"}) is False
    assert isinstance(ask("bank", "bank", "meets_cold", {"parts.module.window.charge": "unknown"}), Unknown)


def test_every_charger_that_reaches_it_is_listed() -> None:
    assert ids(ask("bank", "bank", "chargers")) == ["converter", "sun", "inverter"]
    assert isinstance(ask("bank", "bank", "chargers", {"equipment.bank.joined by": "unknown"}), Unknown)


def test_a_voltage_monitor_on_the_bus_is_a_low_cut_off() -> None:
    assert ask("bank", "bank", "has_low_cutoff") is False
    guard = {
        "equipment.VM": "{kind: voltage monitor, rating: 200 A, trips below: 44 V}",
        "circuits.main.run": "[0.15 m, F1, 0.3 m, isolator, VM, 0.5 m]",
    }
    assert ask("bank", "bank", "has_low_cutoff", guard) is True
    assert isinstance(ask("bank", "bank", "has_low_cutoff", {**guard, "equipment.VM.trips below": "unknown"}), Unknown)


def test_a_voltage_monitor_that_trips_above_is_a_high_cut_off() -> None:
    assert ask("bank", "bank", "has_high_cutoff") is False
    guard = {
        "equipment.VM": "{kind: voltage monitor, rating: 200 A, trips below: none, trips above: 60 V}",
        "circuits.main.run": "[0.15 m, F1, 0.3 m, isolator, VM, 0.5 m]",
    }
    assert ask("bank", "bank", "has_high_cutoff", guard) is True
    assert ask("bank", "bank", "has_low_cutoff", guard) is False


SEPARATE = {"parts.module.bms.ports": "separate"}
RELAYS = {
    "equipment.fill": "{kind: signal, means: charge allowed, from: bank.allow, fails: released}",
    "equipment.draw": "{kind: signal, means: discharge allowed, from: bank.allow, fails: released}",
    "equipment.fan": "{kind: load, power: 20 W, voltage: 40..60 V}",
    "circuits.fan": "{from: bar-48, to: fan, run: [1 m], cable: pair-4}",
    "equipment.KC": "{kind: relay, rating: 200 A, voltage: 80 V DC, driven by: fill, rest: open}",
    "equipment.KD": "{kind: relay, rating: 200 A, voltage: 80 V DC, driven by: draw, rest: open}",
}


def test_a_main_that_charges_and_draws_hangs_at_neither_of_two_ports() -> None:
    assert ids(ask("bank", "bank", "bypassed_by", SEPARATE)) == ["main"]
    assert ask("bank", "bank", "bypassed_by") == ()


def test_each_direction_passes_the_relay_that_its_leave_drives() -> None:
    alone = {"circuits.alarming.from": "bar-48"}
    both = {"circuits.main.run": "[0.15 m, F1, KC, KD, isolator, 0.5 m]"}
    one = {"circuits.main.run": "[0.15 m, F1, KD, isolator, 0.5 m]"}
    silent = {"parts.module.bms.ports": "unknown"}
    assert ask("bank", "bank", "bypassed_by", {**RELAYS, **alone, **SEPARATE, **both}) == ()
    assert ids(ask("bank", "bank", "bypassed_by", {**RELAYS, **alone, **SEPARATE, **one})) == ["main"]
    assert ask("bank", "bank", "bypassed_by", {**RELAYS, **alone, **silent, **both}) == ()
    assert ask("bank", "bank", "bypassed_by", {**RELAYS, **alone, **one}) == ()


def test_a_towing_vehicle_charges_what_its_plug_reaches_without_a_converter() -> None:
    plug = "{kind: vehicle coupling, supplies: {charge: {nominal: 48 V, current: 15 A, fuse: 20 A}}, place: cabin}"
    tow = {
        "equipment.plug": plug,
        "circuits.tow": "{from: plug.charge, to: bar-48, run: [5 m via cabin], cable: red-35, return: chassis}",
    }
    assert ask("bank", "bank", "charged_by_towing", tow) is True
    assert ask("bank", "start-battery", "charged_by_towing", tow) is False
    assert ask("bank", "bank", "charged_by_towing") is False
    assert isinstance(ask("bank", "bank", "charged_by_towing", {**tow, "equipment.bank.joined by": "unknown"}), Unknown)
    alone = ask("bank", "bank", "charge_sum")
    assert ask("bank", "bank", "charge_sum", tow) == alone + 15.0
