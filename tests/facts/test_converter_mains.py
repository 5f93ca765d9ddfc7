"""Converters between mains and battery."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask
from tests.facts.mains_subjects import COACH, VAN, subject


def test_chargers_and_inverters_join_mains_and_battery() -> None:
    assert subject(VAN, "converter", "charger").joins_mains_and_battery is True
    assert subject(VAN, "converter", "charger").makes_mains is False
    assert subject(VAN, "converter", "inverter").makes_mains is True


def test_the_bond_of_the_case_is_the_largest_conductor_that_ends_there() -> None:
    assert subject(COACH, "converter", "inverter").case_bond_area == 16e-6
    assert subject(VAN, "converter", "inverter").case_bond_area is None


@pytest.mark.parametrize(
    ("written", "known"),
    [
        ("IEC 62109-1", ("IEC 62109",)), ("EN 62109-1", ("IEC 62109",)), ("AS/NZS 4763", ("AS/NZS 4763",)),
        ("EN 60335-1", ()), ("none", ()),
    ],
)  # fmt: skip
def test_standards_are_known_by_number_whether_international_or_european(written: str, known: tuple[str, ...]) -> None:
    found = subject(COACH, "converter", "inverter", {"equipment.inverter.standard": written})
    assert found.standards == known


def test_a_standard_that_nobody_read_is_unknown() -> None:
    found = subject(COACH, "converter", "inverter", {"equipment.inverter.standard": "unknown"})
    assert isinstance(found.standards, Unknown)


def test_an_inverter_with_a_circuit_at_its_output_feeds_wiring() -> None:
    assert subject(COACH, "converter", "inverter").feeds_mains_wiring is True
    assert subject(VAN, "converter", "charger").feeds_mains_wiring is False


def test_the_highest_side_is_that_of_the_batteries_not_of_the_array() -> None:
    assert ask("converter", "converter", "highest_nominal_side") == 48.0
    assert ask("converter", "alternator", "highest_nominal_side") == 12.0
    assert ask("converter", "sun", "highest_nominal_side") == 48.0
