"""Heat of equipment at full output."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

CHARGER = "{kind: charger, dc: {nominal: 12.5 V, current: 40 A}, efficiency: 80 %, place: bay}"


def test_a_stated_heat_stands_above_the_computed_one() -> None:
    assert ask("place", "bay", "heat", ("equipment.charger", CHARGER)) == pytest.approx(125.0)
    stated = CHARGER.replace("place: bay", "heat: 60 W, place: bay")
    assert ask("place", "bay", "heat", ("equipment.charger", stated)) == pytest.approx(60.0)


def test_an_inverter_of_unknown_power_leaves_the_heat_open() -> None:
    inverter = "{kind: inverter, power: unknown, dc: {nominal: 12 V}, ac: {voltage: 230 V}, place: bay}"
    assert isinstance(ask("place", "bay", "heat", ("equipment.inverter", inverter)), Unknown)


def test_a_side_of_a_converter_called_unknown_may_be_the_stronger_one() -> None:
    sides = "low: {nominal: 12 V, current: 100 A}"
    converter = "{kind: dc converter, both ways: false, efficiency: 80 %, place: bay, sides: {SIDES}}"
    one = ("equipment.converter", converter.replace("SIDES", sides))
    both = ("equipment.converter", converter.replace("SIDES", f"{sides}, high: {{nominal: 48 V, current: unknown}}"))
    assert ask("place", "bay", "heat", one) == pytest.approx(300.0)
    assert isinstance(ask("place", "bay", "heat", both), Unknown)


def test_a_charger_of_no_efficiency_at_all_leaves_the_heat_open() -> None:
    charger = CHARGER.replace("80 %", "0 %")
    assert isinstance(ask("place", "bay", "heat", ("equipment.charger", charger)), Unknown)
