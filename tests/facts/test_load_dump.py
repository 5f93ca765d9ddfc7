"""What follows when an alternator loses its battery."""

from __future__ import annotations

from tests.facts.house import ask

LITHIUM_STARTER = {"equipment.start-battery.chemistry": "lithium iron phosphate"}


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
