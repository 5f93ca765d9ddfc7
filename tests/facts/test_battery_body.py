"""Batteries as bodies."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown, Window
from tests.facts.van import ask

CHEMISTRY = "equipment.house.chemistry"


@pytest.mark.parametrize(
    ("chemistry", "lithium", "lead", "flooded"),
    [
        ("lithium titanate", True, False, False),
        ("AGM lead acid", False, True, False),
        ("flooded lead acid", False, True, True),
        ("sodium ion", False, False, False),
    ],
)
def test_the_chemistry_says_what_it_is(chemistry: str, lithium: bool, lead: bool, flooded: bool) -> None:
    names = ("is_lithium", "is_lead", "is_flooded")
    facts = [ask("equipment", "house", name, (CHEMISTRY, chemistry)) for name in names]
    assert facts == [lithium, lead, flooded]


def test_an_unknown_chemistry_decides_nothing() -> None:
    for name in ("is_lithium", "is_lead", "is_flooded"):
        assert isinstance(ask("equipment", "house", name, (CHEMISTRY, "unknown")), Unknown)


def test_a_bank_is_what_its_units_are() -> None:
    unit = ("parts", "{module: {kind: battery, chemistry: lithium iron phosphate, nominal: 12 V, capacity: 50 Ah}}")
    bank = ("equipment.house", "{kind: bank, units: 2, of: module, arrangement: 1s2p, place: bay}")
    assert ask("equipment", "house", "is_lithium", unit, bank) is True


def test_only_liquid_acid_spills() -> None:
    assert ask("equipment", "house", "spill_proof") is True
    assert isinstance(ask("equipment", "house", "spill_proof", (CHEMISTRY, "flooded lead acid")), Unknown)
    told = ("equipment.house.spill proof", "false")
    assert ask("equipment", "house", "spill_proof", (CHEMISTRY, "flooded lead acid"), told) is False


def test_the_window_is_that_of_discharging() -> None:
    assert ask("equipment", "house", "discharge_window") == Window(-10.0, 50.0)
