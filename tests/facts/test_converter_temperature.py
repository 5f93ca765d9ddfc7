"""Whether charging follows the temperature of the battery, and not of the place where the charger stands."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

LEAD = {"parts.module.chemistry": "AGM lead acid"}
SENSED = "equipment.sun.settings.temperature sensed"
FOLLOWS = "equipment.sun.settings.temperature compensation"


@pytest.mark.parametrize(("written", "answer"), [("none", False), ("0 mV/K", False), ("-72 mV/K", True)])
def test_a_compensation_of_nothing_is_none(written: str, answer: bool) -> None:
    assert ask("converter", "sun", "temperature_compensated", {FOLLOWS: written}) is answer


@pytest.mark.parametrize(
    ("edits", "answer"),
    [
        ({SENSED: "at the battery"}, True),
        ({SENSED: "none"}, False),
        ({SENSED: "at itself"}, True),
        ({SENSED: "at itself", "equipment.sun.place": "cabin"}, False),
        (
            {SENSED: "at itself", "equipment.sun.place": "cabin", "parts.module.chemistry": "lithium iron phosphate"},
            True,
        ),
    ],
)
def test_it_measures_at_the_battery_or_in_its_place(edits: dict[str, str], answer: bool) -> None:
    assert ask("converter", "sun", "senses_the_battery", LEAD | edits) is answer


@pytest.mark.parametrize(
    "edits", [{}, {SENSED: "unknown"}, {SENSED: "at itself", "equipment.sun.place": "unknown"}], ids=str
)
def test_what_is_not_told_is_not_decided(edits: dict[str, str]) -> None:
    assert isinstance(ask("converter", "sun", "senses_the_battery", LEAD | edits), Unknown)
