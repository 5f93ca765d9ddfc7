"""What feeds a battery with no converter between."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

CHARGER = {
    "equipment.more": "{kind: charger, ac: {voltage: 230 V}, dc: {nominal: %s, current: 20 A}, place: locker}",
    "circuits.more": "{from: more.dc, to: bar-48, run: [1 m], cable: red-35, return: same, duty: charge}",
}


@pytest.mark.parametrize(
    ("volts", "alike"), [("48 V", True), ("51.2 V", True), ("12 V", False), ("24 V", False), ("72 V", False)]
)
def test_the_nominal_voltage_of_a_charger_is_that_of_its_battery(volts: str, alike: bool) -> None:
    edits = CHARGER | {"equipment.more": CHARGER["equipment.more"] % volts}
    assert ask("bank", "bank", "fed_at_its_voltage", edits) is alike


def test_a_way_that_nobody_saw_may_hide_a_converter() -> None:
    edits = CHARGER | {"equipment.more": CHARGER["equipment.more"] % "12 V", "circuits.more.run": "[unknown]"}
    assert isinstance(ask("bank", "bank", "fed_at_its_voltage", edits), Unknown)


def test_what_stands_behind_a_converter_is_of_its_own_voltage() -> None:
    assert ask("bank", "bank", "fed_at_its_voltage") is True
    assert ask("bank", "start-battery", "fed_at_its_voltage") is True
