"""Converters that draw from the starting battery."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask


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
