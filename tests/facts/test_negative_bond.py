"""Where a negative is joined to the chassis, and what a fault to the chassis may draw back that way."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.coach import one

GONE = "(remove)"


def test_a_starting_battery_whose_circuits_return_by_the_chassis_has_a_strap_to_it() -> None:
    found = one("bank", "start-battery")
    assert (found.returns_by_chassis, found.negative_meets_chassis) == (True, True)
    assert one("bank", "start-battery", ("circuits.start-neg", GONE)).negative_meets_chassis is False


def test_a_bank_behind_a_converter_returns_nothing_by_the_chassis() -> None:
    assert one("bank", "house-bank").returns_by_chassis is False


def test_how_a_circuit_returns_that_nobody_told_leaves_it_open() -> None:
    found = one("bank", "start-battery", ("circuits.start-neg", GONE), ("circuits.coach-feed.return", "unknown"))
    assert isinstance(found.negative_meets_chassis, Unknown)


def test_a_fault_to_the_chassis_draws_on_the_largest_first_device_of_the_batteries() -> None:
    # FL1 of 350 A stands between alternator and starting battery, F2 and F3 of 225 A on the way to the coach side.
    assert one("circuit", "neg-12").fault_device_rating == 350.0
    assert one("circuit", "earth-chassis").fault_device_rating is None
