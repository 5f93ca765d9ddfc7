"""What comes together in a cable when every charger works at once."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

OTHER = {
    "equipment.bat2": "{kind: battery, chemistry: AGM lead acid, nominal: 48 V, cells: 24, purpose: house}",
    "circuits.bat2": "{from: bat2, to: bar-48, run: [0.5 m via locker], cable: red-35, return: same}",
}


@pytest.mark.parametrize(
    ("cable", "amperes"), [("main", 60.0), ("high", 20.0), ("sun-out", 15.0), ("feed", 0.0), ("charging", 180.0)]
)
def test_all_chargers_behind_a_cable_add_up(cable: str, amperes: float) -> None:
    assert ask("conductor", cable, "charging_sum") == pytest.approx(amperes)


def test_a_cable_of_one_of_several_batteries_is_left_out() -> None:
    assert ask("conductor", "bank.lead-1", "charging_sum") == 0.0
    assert ask("conductor", "main", "charging_sum", OTHER) == 0.0
    assert ask("conductor", "sun-out", "charging_sum", OTHER) == pytest.approx(15.0)


def test_a_battery_that_may_be_for_starting_leaves_it_open() -> None:
    link = {**OTHER, "circuits.bat2": "{from: bat2, to: bar-48, run: [0.5 m via locker], cable: red-35, return: same}"}
    link["equipment.bat2"] = link["equipment.bat2"].replace("purpose: house", "purpose: unknown")
    found = ask("conductor", "main", "charging_sum", link)
    assert (found.low, found.high) == (0.0, 60.0)


def test_a_charger_of_unknown_current_leaves_it_open() -> None:
    assert isinstance(
        ask("conductor", "main", "charging_sum", {"equipment.inverter.charger.current": "unknown"}), Unknown
    )
    assert ask("conductor", "sun-out", "charging_sum", {"equipment.inverter.charger.current": "unknown"}) == 15.0


def test_a_return_carries_no_charge_of_its_own() -> None:
    assert ask("conductor", "main return", "charging_sum") == 0.0
