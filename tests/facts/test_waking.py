"""How a battery whose management shut down comes back."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

REST = {"equipment.converter.wakes by": "none", "equipment.inverter.wakes by": "none"}


@pytest.mark.parametrize(
    ("by", "wakes"),
    [("by itself", True), ("by hand", True), ("engine-run", True), ("charge voltage", False), ("load", False),
     ("none", False)],
)  # fmt: skip
def test_a_charger_wakes_a_battery_when_it_starts_without_one(by: str, wakes: bool) -> None:
    assert ask("bank", "bank", "charged_while_asleep", REST | {"equipment.sun.wakes by": by}) is wakes


def test_what_nobody_told_of_a_charger_leaves_it_open() -> None:
    assert isinstance(ask("bank", "bank", "charged_while_asleep"), Unknown)


def test_a_signal_that_wakes_must_come_from_elsewhere() -> None:
    by = "parts.module.bms.wakes by"
    assert ask("bank", "bank", "woken_from_elsewhere", {by: "engine-run"}) is True
    assert ask("bank", "bank", "woken_from_elsewhere", {by: "bms-stop"}) is False
    assert ask("bank", "bank", "woken_from_elsewhere") is None
    assert isinstance(ask("bank", "bank", "woken_from_elsewhere", {by: "unknown"}), Unknown)
