"""Which charger reaches which battery."""

from __future__ import annotations

from checker.facts.charging import outputs
from tests.facts.house import house


def reached(edits: dict[str, str] | None = None) -> dict[str, list[str]]:
    return {one.source.name: [bank.name for bank in one.banks] for one in outputs(house(edits))}


def test_every_output_is_followed_to_its_batteries() -> None:
    assert reached() == {
        "alternator": ["start-battery"],
        "converter.low": ["start-battery"],
        "converter.high": ["bank"],
        "sun.battery": ["bank"],
        "inverter.dc": ["bank"],
        "alarm-supply.low": [],
    }


def test_a_diode_is_passed_one_way_only() -> None:
    forward = {"equipment.D": "{kind: diode, rating: 30 A}", "circuits.sun-out.run": "[0.5 m, F8, D, 0.1 m]"}
    assert reached(forward)["sun.battery"] == ["bank"]
    backward = {**forward, "circuits.sun-out.run": "[0.5 m, F8, D.b, 0.1 m]"}
    assert reached(backward)["sun.battery"] == []
