"""What follows when an alternator loses its battery."""

from __future__ import annotations

from checker.quantities import Range, Unknown
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
    assert ask("converter", "alternator", "charges_managed_directly") is False
    assert ask("converter", "alternator", "charges_managed_directly", LITHIUM_STARTER) is True


def test_a_jump_start_goes_by_the_nominal_voltage_and_an_untold_level_leaves_it_open() -> None:
    assert ask("converter", "alternator", "jump_start_voltage") == 24.0
    assert ask("converter", "alternator", "jump_start_voltage", {"equipment.alternator.nominal": "48 V"}) is None
    assert isinstance(ask("converter", "alternator", "weakest_in_jump_start"), Unknown)
    assert ask("converter", "sun", "jump_start_voltage") is None


def test_an_inverter_on_the_bus_of_an_alternator_counts() -> None:
    small = {
        "equipment.small": "{kind: inverter, transient level: 20 V, place: cabin}",
        "circuits.small": "{from: bar-12, to: small.dc, run: [1 m via cabin], cable: red-35, return: same}",
    }
    assert ask("converter", "alternator", "weakest_transient", small) == 20.0


def test_where_no_level_is_told_the_clamp_bounds_the_load_dump() -> None:
    def level(told: str, nominal: str = "12 V") -> object:
        edits = {"equipment.alternator.load dump": told, "equipment.alternator.nominal": nominal}
        return ask("converter", "alternator", "load_dump_level", edits)

    assert level("{clamped: true}") == Range(12.0, 35.0)
    assert level("{clamped: false}", "24 V") == Range(151.0, 202.0)
    assert level("{level: 30 V, clamped: false}") == 30.0
    for told in ("{level: unknown, clamped: true}", "{clamped: unknown}"):
        assert isinstance(level(told), Unknown)
    assert isinstance(level("{clamped: true}", "48 V"), Unknown)
