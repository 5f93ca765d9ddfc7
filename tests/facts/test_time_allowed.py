"""How long a fault to earth may last."""

from __future__ import annotations

import pytest

from checker.quantities import Range
from tests.facts.mains_subjects import COACH, VAN, subject

TT = {"vehicle.supply.earthing": "TT"}


@pytest.mark.parametrize(
    ("voltage", "with_earth", "with_electrode"),
    [("120 V", 0.8, 0.3), ("121 V", 0.4, 0.2), ("230 V", 0.4, 0.2), ("250 V", 0.4, 0.2), ("42 V", 0.8, 0.3)],
)
def test_the_time_goes_by_the_voltage_and_the_earth_of_the_sites(
    voltage: str, with_earth: float, with_electrode: float
) -> None:
    told = {"vehicle.supply.voltage": voltage}
    assert subject(COACH, "supply", "heater on inlet", told).time_allowed == with_earth
    assert subject(COACH, "supply", "heater on inlet", told | TT).time_allowed == with_electrode
    assert subject(COACH, "short", "inverter-in on inlet", told | TT).time_allowed == with_electrode


def test_a_source_aboard_has_no_electrode_and_a_voltage_of_its_own() -> None:
    edits = TT | {"equipment.inverter.ac.voltage": "120 V"}
    assert subject(COACH, "supply", "heater on inverter", edits).time_allowed == 0.8
    edits = TT | {"equipment.genset.voltage": "120 V AC"}
    assert subject(VAN, "supply", "sockets on genset", edits).time_allowed == 0.8


@pytest.mark.parametrize(("code", "allowed"), [("us-boat", 0.8), ("ca", 0.8), ("au-nz", 0.4)])
def test_two_hundred_and_forty_volts_are_two_lines_in_north_america_alone(code: str, allowed: float) -> None:
    edits = {"code": code, "vehicle.supply.voltage": "240 V"}
    assert subject(COACH, "supply", "heater on inlet", edits).time_allowed == allowed


def test_three_lines_are_counted_against_their_neutral() -> None:
    edits = {"vehicle.supply.voltage": "400 V", "vehicle.supply.phases": "3"}
    assert subject(COACH, "supply", "heater on inlet", edits).time_allowed == 0.4


def test_what_is_not_told_leaves_a_range() -> None:
    unknown = {"vehicle.supply.voltage": "unknown"}
    assert subject(COACH, "supply", "heater on inlet", unknown).time_allowed == Range(0.4, 0.8)
    earth = {"vehicle.supply.earthing": "unknown"}
    assert subject(COACH, "supply", "heater on inlet", earth).time_allowed == Range(0.2, 0.4)
    assert subject(COACH, "supply", "heater on inlet", unknown | earth).time_allowed == Range(0.2, 0.8)


def test_a_voltage_that_may_be_that_of_two_lines_leaves_both() -> None:
    edits = {"code": "us-boat", "vehicle.supply.voltage": "230..245 V"}
    assert subject(COACH, "supply", "heater on inlet", edits).time_allowed == Range(0.4, 0.8)


def test_without_a_code_the_voltage_stands_as_it_is_told() -> None:
    edits = {"code": "unknown", "vehicle.supply.voltage": "240 V"}
    assert subject(COACH, "supply", "heater on inlet", edits).time_allowed == 0.4
