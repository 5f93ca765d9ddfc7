"""Chargers and transformers against the voltage that reaches them."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject

STEP = {
    "equipment.T1": "{kind: transformer, primary: {voltage: 120 V AC}, secondary: {voltage: 230 V AC}, "
    "windings: separate, place: locker}",
    "circuits.heating": "{from: T1.secondary, to: heater, run: [3 m via duct], cable: flex-2.5}",
    "circuits.stepping": "{from: board.heater, to: T1.primary, run: [0.5 m via locker], cable: flex-2.5}",
}


def test_every_source_that_reaches_a_charger_counts() -> None:
    charger = subject(VAN, "equipment", "charger", {"equipment.inverter.ac.voltage": "115 V"})
    assert (charger.lowest_input, charger.highest_input) == (0.5, 1.0)


def test_a_transformer_is_held_against_what_reaches_its_primary() -> None:
    assert subject(COACH, "equipment", "T1", STEP).lowest_input == pytest.approx(230.0 / 120.0)


def test_what_a_source_gives_may_be_unknown() -> None:
    edits = {"vehicle.supply.voltage": "unknown"}
    assert isinstance(subject(VAN, "equipment", "charger", edits).lowest_input, Unknown)


def test_a_source_that_perhaps_reaches_it_leaves_it_open() -> None:
    edits = STEP | {
        "equipment.KR": "{kind: relay, poles: 2, rating: 16 A, voltage: 230 V AC, form: unknown, place: locker}",
        "circuits.stepping.run": "[0.5 m via locker, KR]",
    }
    assert isinstance(subject(COACH, "equipment", "T1", edits).highest_input, Unknown)


def test_other_equipment_has_no_such_input() -> None:
    assert subject(VAN, "equipment", "earth").input_voltage is None
    assert subject(VAN, "equipment", "earth").highest_input is None


def test_line_and_neutral_of_a_site_of_three_lines() -> None:
    three = {"vehicle.supply.phases": "3", "vehicle.supply.voltage": "400 V"}
    assert subject(COACH, "inlet", "inlet", three).site_line_voltage == 230.0
