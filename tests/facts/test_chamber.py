"""Mains and extra-low-voltage cables in one chamber."""

from __future__ import annotations

from checker.facts.chamber import band_of, bands_by_place
from checker.quantities import Unknown
from tests.facts.van import ask, van

NO_LOOMS = ("looms", "{}")


def test_each_band_in_its_chamber_is_not_mixed() -> None:
    assert ask("place", "duct", "bands") == ("elv", "mains")
    assert ask("place", "duct", "chamber_mixed") is False


def test_a_loom_in_the_chamber_of_the_other_band_is_mixed() -> None:
    assert ask("place", "duct", "chamber_mixed", ("looms.duct-mains.chamber", "elv")) is True


def test_a_loom_of_both_bands_is_mixed() -> None:
    assert ask("place", "duct", "chamber_mixed", ("looms.duct-elv.carries", "[lights, shore]")) is True


def test_chambers_nobody_saw_leave_it_open() -> None:
    found = ask("place", "duct", "chamber_mixed", ("places.duct.chambers", "unknown"), NO_LOOMS)
    assert isinstance(found, Unknown)


def test_one_band_alone_cannot_be_mixed() -> None:
    assert ask("place", "drag", "chamber_mixed") is False


def test_a_bonding_conductor_belongs_to_no_band() -> None:
    bond = ("circuits.house-neg.run", "[0.5 m via drag]")
    assert ask("place", "drag", "bands", bond) == ("elv",)


def test_a_return_of_its_own_passes_the_places_of_its_run() -> None:
    back = ("circuits.trunk.return", "{run: [1 m via duct]}")
    assert ask("place", "duct", "chamber_mixed", ("looms", "{}"), ("places.duct.chambers", "none")) is True
    assert "trunk" not in bands_by_place(van())["duct"]
    assert bands_by_place(van(back))["duct"]["trunk"] == "elv"


def test_alternating_current_of_low_voltage_is_no_mains() -> None:
    assert band_of(van(), "shore") == "mains"
    low = [("equipment.inlet.voltage", "24 V AC"), ("vehicle.supply.voltage", "24 V")]
    assert band_of(van(*low), "shore") == "elv"
    assert (
        band_of(van(("equipment.inlet.voltage", "unknown"), ("vehicle.supply.voltage", "unknown")), "shore") == "mains"
    )


def test_the_negative_to_the_chassis_belongs_to_the_battery_side() -> None:
    assert bands_by_place(van(("circuits.house-neg.run", "[0.5 m via duct]")))["duct"]["house-neg"] == "elv"


def test_looms_of_both_bands_in_one_part_of_a_divided_box_are_mixed() -> None:
    box = (("places.duct.chambers", "(remove)"), ("places.duct.dividers", "[left, right]"))
    one = ("looms.duct-elv", "{carries: [lights], place: duct, divider: left}")

    def mixed(part: str) -> object:
        other = ("looms.duct-mains", f"{{carries: [shore], place: duct, divider: {part}}}")
        return ask("place", "duct", "chamber_mixed", *box, one, other)

    assert (mixed("left"), mixed("right")) == (True, False)
    assert isinstance(mixed("unknown"), Unknown)
    assert isinstance(mixed("middle"), Unknown)
