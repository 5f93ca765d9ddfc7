"""Batteries that a circuit joins in series."""

from __future__ import annotations

from checker.quantities import Range
from tests.facts.house import ask

LOWER = {
    "equipment.lower": "{kind: battery, chemistry: lithium iron phosphate, nominal: 48 V, cells: 16, place: locker, "
    "purpose: house, bms: {over voltage: 58.4 V}}",
}


def _series(to: str, duty: str = "load") -> dict[str, str]:
    circuit = f"{{from: bar-bank.-, to: {to}, run: [0.5 m via locker], cable: red-70, return: none, duty: {duty}}}"
    return {**LOWER, "circuits.series": circuit}


def test_the_upper_of_two_has_both_voltages() -> None:
    alone = ask("bank", "bank", "stacked_voltage")
    assert ask("bank", "bank", "stacked_voltage", _series("lower.+")) == alone + 58.4
    assert ask("bank", "lower", "stacked_voltage", _series("lower.+")) == 58.4
    assert ask("device", "F6", "circuit_voltage", _series("lower.+")) > 110.0


def test_joined_negatives_are_no_series() -> None:
    assert ask("bank", "bank", "stacked_voltage", _series("lower.-")) == ask("bank", "bank", "stacked_voltage")


def test_a_pole_that_is_not_told_leaves_both() -> None:
    found = ask("bank", "bank", "stacked_voltage", _series("lower", "bonding"))
    assert isinstance(found, Range)
    assert found.high - found.low == 58.4
