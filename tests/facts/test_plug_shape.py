"""Plugs of another voltage."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

WINDING = {
    "equipment.T": "{kind: transformer, primary: {voltage: 230 V AC}, secondary: {voltage: 24 V AC}, "
    "windings: separate, isolation: reinforced, place: locker}",
    "circuits.heating": "{from: T.secondary, to: low-outlet, run: [3 m via duct], cable: pair-4}",
    "circuits.stepping": "{from: board.heater, to: T.primary, run: [0.5 m via locker], cable: flex-2.5}",
}


def low_outlet(shape: str, voltage: str = "24 V AC") -> dict[str, str]:
    return {**WINDING, "equipment.low-outlet": f"{{kind: outlet, voltage: {voltage}, shape: {shape}, place: cabin}}"}


@pytest.mark.parametrize(
    ("shape", "foreign"),
    [("two-pole 48 V", False), ("12 V socket", True), ("national 10 A", True), ("USB", False)],
)
def test_a_battery_outlet_takes_foreign_plugs_unless_its_shape_is_of_its_voltage(shape: str, foreign: bool) -> None:
    assert subject(COACH, "outlet", "dc-outlet", {"equipment.dc-outlet.shape": shape}).takes_foreign_plugs is foreign


@pytest.mark.parametrize(("voltage", "foreign"), [("12 V DC", True), ("48 V DC", False), ("51.2 V DC", False)])
def test_the_shape_belongs_to_the_voltage_of_the_circuit_and_to_the_rated_one(voltage: str, foreign: bool) -> None:
    found = subject(COACH, "outlet", "dc-outlet", {"equipment.dc-outlet.voltage": voltage})
    assert found.takes_foreign_plugs is foreign
    twelve = {"equipment.dc-outlet.voltage": "12 V DC", "equipment.dc-outlet.shape": "12 V socket"}
    assert subject(COACH, "outlet", "dc-outlet", twelve).takes_foreign_plugs is True


@pytest.mark.parametrize(
    ("shape", "foreign"),
    [("two-pole 48 V", True), ("USB", True), ("national 10 A", False), ("hard wired", False)],
)
def test_a_mains_outlet_takes_no_plug_of_a_low_voltage(shape: str, foreign: bool) -> None:
    found = subject(COACH, "outlet", "kitchen-outlets", {"equipment.kitchen-outlets.shape": shape})
    assert (found.takes_foreign_plugs, found.is_low_alternating) == (foreign, False)


def test_an_outlet_on_a_low_winding_is_no_mains_outlet() -> None:
    found = subject(COACH, "outlet", "low-outlet", low_outlet("national 10 A"))
    assert (found.is_low_alternating, found.takes_foreign_plugs) == (True, True)
    assert subject(COACH, "outlet", "low-outlet", low_outlet("24 V socket")).takes_foreign_plugs is False
    hidden = {**low_outlet("24 V socket"), "equipment.T": WINDING["equipment.T"].replace("24 V AC", "unknown")}
    found = subject(COACH, "outlet", "low-outlet", hidden)
    assert isinstance(found.is_low_alternating, Unknown)
    assert isinstance(found.takes_foreign_plugs, Unknown)
