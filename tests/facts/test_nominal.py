"""Nominal voltages as the standard voltages they stand for."""

from __future__ import annotations

import pytest

from checker.facts.nominal import system_voltage_of
from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, subject


@pytest.mark.parametrize(
    ("told", "stands_for"),
    [(12.0, 12.0), (12.8, 12.0), (25.6, 24.0), (51.2, 48.0), (6.4, 6.0), (13.3, 13.3), (60.0, 60.0), (11.3, 11.3)],
)
def test_a_chemistry_shifts_a_nominal_voltage_and_not_its_system(told: float, stands_for: float) -> None:
    assert system_voltage_of(told) == stands_for


def test_a_range_stands_for_one_system_only_when_all_of_it_does() -> None:
    assert system_voltage_of(Range(12.0, 12.8)) == 12.0
    assert system_voltage_of(Range(12.8, 24.0)) == Range(12.8, 24.0)
    assert isinstance(system_voltage_of(Unknown()), Unknown)


def test_the_revision_lists_three_voltages() -> None:
    assert subject(COACH, "bank", "bank").voltage_in_revision is True
    assert subject(COACH, "bank", "bank", {"equipment.bank.nominal": "36 V"}).voltage_in_revision is False
    assert isinstance(
        subject(COACH, "bank", "bank", {"equipment.bank.nominal": "unknown"}).voltage_in_revision, Unknown
    )
