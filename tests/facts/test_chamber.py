"""Mains and extra-low-voltage cables in one chamber."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.van import ask

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
