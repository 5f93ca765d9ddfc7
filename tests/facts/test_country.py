"""Voltage and frequency of the sites and of the sources aboard."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def test_an_inverter_stands_in_for_the_shore_and_is_held_against_its_voltage() -> None:
    inverter = subject(COACH, "ac_source", "inverter", {"equipment.inverter.ac.voltage": "207 V"})
    assert inverter.stands_in_for_shore is True
    assert inverter.voltage_over_site == pytest.approx(0.9)
    assert inverter.frequency == inverter.site_frequency == 50.0


def test_the_shore_is_not_held_against_itself() -> None:
    inlet = subject(COACH, "ac_source", "inlet")
    assert inlet.stands_in_for_shore is False
    assert inlet.voltage_over_site is None


def test_a_generator_gives_its_rated_voltage_and_frequency() -> None:
    genset = subject(
        VAN, "ac_source", "genset", {"equipment.genset.voltage": "230 V AC", "equipment.genset.frequency": "50 Hz"}
    )
    assert (genset.output_voltage, genset.frequency) == (230.0, 50.0)
    assert isinstance(subject(VAN, "ac_source", "genset", {"equipment.genset.frequency": "unknown"}).frequency, Unknown)


@pytest.mark.parametrize(
    ("told", "listed"),
    [("ANSI/RVIA EGS-1", True), ("[ISO 8528-13]", False), ("Vehicle generator, type 3", True)],
)
def test_a_generator_is_made_for_vehicles_when_a_standard_for_them_is_told(told: str, listed: bool) -> None:
    edits = {"equipment.genset.standard": told, "equipment.genset.approval": "none"}
    assert subject(VAN, "ac_source", "genset", edits).listed_for_vehicles is listed


def test_what_is_no_generator_needs_no_such_listing() -> None:
    assert subject(VAN, "ac_source", "inverter").listed_for_vehicles is None
