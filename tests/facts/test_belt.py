"""What an alternator takes from its belt, mode by mode."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

ASKED = 20 * 56 / 0.94 / 13.8 + 20  # A: 20 A at 56 V by a converter of 94 % at the lowest voltage, 20 A of the vehicle


def belt(fact: str, edits: dict[str, str] | None = None) -> object:
    return ask("converter", "alternator", fact, edits)


def test_at_idle_it_takes_no_more_than_it_gives() -> None:
    # 70 A hot at idle, 14.4 V, 67 %.
    assert ASKED > 70
    assert belt("belt_power_at_idle") == pytest.approx(70 * 14.4 / 0.67)


def test_the_worst_mode_counts_and_not_the_slowest() -> None:
    edits = {"modes.cruising": "{engine: 2000 rpm}"}
    assert belt("belt_power", edits) == pytest.approx(ASKED * 14.4 / 0.67)  # less than the 150 A it gives there
    assert belt("belt_power_at_idle", edits) == pytest.approx(70 * 14.4 / 0.67)


def test_without_a_mode_that_idles_the_power_at_idle_is_not_known() -> None:
    edits = {"modes.idling.engine": "2000 rpm"}
    assert isinstance(belt("belt_power_at_idle", edits), Unknown)
    assert belt("belt_power", edits) == pytest.approx(ASKED * 14.4 / 0.67)


def test_a_speed_that_is_not_known_leaves_the_power_open() -> None:
    edits = {"modes.idling.engine": "unknown"}
    assert isinstance(belt("belt_power_at_idle", edits), Unknown)


def test_other_equipment_has_no_belt() -> None:
    assert ask("converter", "converter", "belt_power") is None
    assert ask("converter", "converter", "belt_power_at_idle") is None
