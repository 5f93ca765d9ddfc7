"""Alternators, and converters that draw from the starting battery."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask

STIFF = {"equipment.converter.settings.holds low above": "none"}
LITHIUM_STARTER = {"equipment.start-battery.chemistry": "lithium iron phosphate"}


def test_charging_asks_its_power_over_efficiency_and_the_lowest_voltage() -> None:
    # 20 A x 56 V / 0.94 / 13.8 V
    assert ask("converter", "alternator", "asked_current") == pytest.approx(20 * 56 / 0.94 / 13.8)


def test_idle_is_the_lowest_speed_of_the_curve() -> None:
    assert ask("converter", "alternator", "hot_output") == 70.0
    assert ask("converter", "alternator", "hot_output", {"modes.idling.engine": "1375 rpm"}) == pytest.approx(110.0)
    assert isinstance(ask("converter", "alternator", "hot_output", {"modes.idling.engine": "500 rpm"}), Unknown)


def test_a_stiff_converter_overloads_it_at_idle_and_one_that_gives_way_does_not() -> None:
    assert ask("converter", "alternator", "continuous_share", STIFF) == pytest.approx(20 * 56 / 0.94 / 13.8 / 70)
    assert ask("converter", "alternator", "continuous_share") == 1.0


def test_whether_it_gives_way_is_worth_the_whole_difference() -> None:
    found = ask(
        "converter", "alternator", "continuous_share", {"equipment.converter.settings.holds low above": "unknown"}
    )
    assert isinstance(found, Range)
    assert (found.low, found.high) == (1.0, pytest.approx(20 * 56 / 0.94 / 13.8 / 70))


def test_a_curve_of_the_shaft_says_nothing_of_the_engine() -> None:
    assert isinstance(
        ask("converter", "alternator", "continuous_share", {"equipment.alternator.rpm": "shaft"}), Unknown
    )


def test_a_relay_driven_by_the_engine_is_the_signal_that_lets_a_converter_draw() -> None:
    assert ask("converter", "converter", "drains_starter") is True
    assert ask("converter", "converter", "engine_signal") == "engine running"
    assert ask("converter", "converter", "engine_signal_fails") == "released"
    assert (
        ask("converter", "converter", "engine_signal", {"equipment.engine-run.means": "ignition on"}) == "ignition on"
    )
    nothing = {"equipment.K1.driven by": "none", "equipment.converter.enabled by": "none"}
    assert ask("converter", "converter", "engine_signal", nothing) is None


def test_a_battery_of_unknown_purpose_may_be_the_starting_one() -> None:
    edits = {"equipment.start-battery.purpose": "unknown"}
    assert isinstance(ask("converter", "converter", "drains_starter", edits), Unknown)


def test_the_stop_of_a_converter_is_held_against_the_reserve_of_the_battery() -> None:
    assert ask("converter", "converter", "spares_starter") is True
    low = {"equipment.converter.settings.holds low above": "12.1 V"}
    assert ask("converter", "converter", "spares_starter", low) is False


def test_a_voltage_sensing_relay_does_not_suit_a_smart_alternator() -> None:
    assert ask("converter", "alternator", "works_over_set_voltage") is True
    combiner = {"equipment.K1": "{kind: combiner, rating: 200 A, voltage: 24 V DC, senses: voltage, place: cabin}"}
    assert ask("converter", "alternator", "works_over_set_voltage", combiner) is False


def test_a_lead_acid_battery_on_the_bus_catches_the_load_dump() -> None:
    assert ask("converter", "alternator", "keeps_another_battery") is True
    assert ask("converter", "alternator", "keeps_another_battery", LITHIUM_STARTER) is False


def test_a_dump_is_harmless_when_clamped_below_the_weakest_equipment() -> None:
    assert ask("converter", "alternator", "weakest_transient") == 40.0
    assert ask("converter", "alternator", "dump_is_harmless") is True
    assert ask("converter", "alternator", "dump_is_harmless", {"equipment.lights.transient level": "34 V"}) is False
    assert (
        ask("converter", "alternator", "dump_is_harmless", {"equipment.alternator.load dump.clamped": "false"}) is False
    )


def test_an_alternator_that_reaches_lithium_through_a_converter_does_not_charge_it_directly() -> None:
    assert ask("converter", "alternator", "charges_lithium_directly") is False
    assert ask("converter", "alternator", "charges_lithium_directly", LITHIUM_STARTER) is True
