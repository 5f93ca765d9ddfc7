"""Heat of equipment at full output."""

from __future__ import annotations

import pytest

from checker.facts.heat import loss
from checker.quantities import Unknown
from tests.facts.van import ask

CHARGER = "{kind: charger, dc: {nominal: 12.5 V, current: 40 A}, efficiency: 80 %, place: bay}"


def test_the_loss_is_what_goes_in_and_does_not_come_out() -> None:
    # 900 W out at 90 %: 1000 W in, 100 W stay.
    assert loss(900.0, 0.9) == pytest.approx(100.0)


def test_a_stated_heat_stands_above_the_computed_one() -> None:
    assert ask("place", "bay", "heat", ("equipment.charger", CHARGER)) == pytest.approx(125.0)
    stated = CHARGER.replace("place: bay", "heat: 60 W, place: bay")
    assert ask("place", "bay", "heat", ("equipment.charger", stated)) == pytest.approx(60.0)


def test_an_inverter_of_unknown_power_leaves_the_heat_open() -> None:
    inverter = "{kind: inverter, power: unknown, dc: {nominal: 12 V}, ac: {voltage: 230 V}, place: bay}"
    assert isinstance(ask("place", "bay", "heat", ("equipment.inverter", inverter)), Unknown)
