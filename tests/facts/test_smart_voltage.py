"""Charging from an alternator that changes its voltage."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

SMART = {"equipment.alternator.smart": "true", "equipment.alternator.set voltage": "12.4..14.9 V"}
HOLDS = "equipment.converter.settings.holds low above"


@pytest.mark.parametrize(
    ("stop", "works"), [("12 V", True), ("12.4 V", True), ("12.5 V", False), ("13.2 V", False), ("none", True)]
)
def test_a_converter_that_stops_above_the_lowest_voltage_does_not_work_over_all_of_it(stop: str, works: bool) -> None:
    assert ask("converter", "alternator", "works_over_set_voltage", {**SMART, HOLDS: stop}) is works


def test_a_stop_that_nobody_read_leaves_it_open() -> None:
    assert isinstance(ask("converter", "alternator", "works_over_set_voltage", {**SMART, HOLDS: "unknown"}), Unknown)
    straddling = {**SMART, HOLDS: "12..13 V"}
    assert isinstance(ask("converter", "alternator", "works_over_set_voltage", straddling), Unknown)


def test_other_equipment_has_no_voltage_of_a_towing_vehicle() -> None:
    assert ask("equipment", "F4", "charged_by_a_smart_vehicle") is False
    assert ask("equipment", "F4", "works_over_towing_voltage") is None
