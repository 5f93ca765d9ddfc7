"""Facts of modes."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

from checker.circuit.dc_elements import Element
from checker.circuit.dc_solution import NoSolution, Solution
from checker.facts.subject import Subject, trace
from checker.quantities import Range, Unknown
from checker.reading import read_text
from checker.review import review
from checker.rulebook import load_rulebook
from tests.facts.dc_designs import MODES, van

ROOT = Path(__file__).parents[2]


def mode(name: str) -> Subject:
    found = van().subject("mode", name)
    assert found is not None
    return found


def test_modes_stand_in_file_order() -> None:
    assert [s.id for s in van().subjects("mode")] == list(MODES)


def test_power_from_the_alternator_goes_to_batteries_loads_and_heat() -> None:
    s = mode("driving")
    assert s.has_operating_point is True
    given = s.alternator_power
    assert isinstance(given, Range)
    taken = s.house_bank_power.low + s.starting_battery_power.low
    assert 0.5 * given.low < taken < given.high


def test_a_converter_within_one_voltage_gives_at_its_high_side_too() -> None:
    assert mode("driving").power_to_high_side.high == pytest.approx(40.0 * 13.6, rel=0.1)
    assert mode("sunny").power_to_high_side == 0.0


def test_a_discharged_battery_gives_and_its_power_is_negative() -> None:
    assert mode("boiling").house_bank_power.high < -780.0


def test_the_lowest_bus_is_told_against_its_nominal_voltage() -> None:
    found = mode("boiling").lowest_bus_share
    assert isinstance(found, Range)
    assert 12.0 * found.low == pytest.approx(12.9, abs=0.4)


def test_heat_in_conductors_is_small_and_never_negative() -> None:
    found = mode("boiling").conductor_losses
    assert 0.0 < found.low < found.high < 100.0


def test_a_bus_without_supply_has_no_voltage() -> None:
    assert isinstance(mode("off").lowest_bus_share, Unknown)


def test_the_working_says_what_was_assumed() -> None:
    notes = trace(mode("driving"), "has_operating_point").notes
    assert any(note.startswith("a fuse drops 80 mV") for note in notes)


def test_a_review_solves_one_corner_of_each_mode(monkeypatch: pytest.MonkeyPatch) -> None:
    from checker.facts import operating_point as point

    solved: list[int] = []
    solve = point.solve

    def counted(elements: Sequence[Element], **how: Any) -> Solution | NoSolution:
        solved.append(len(elements))
        return solve(elements, **how)

    monkeypatch.setattr(point, "solve", counted)
    text = (ROOT / "examples" / "heron-camper.fitout.yaml").read_text("utf-8")
    design = read_text(text, "camper")
    review(design, load_rulebook())
    assert len(solved) == len(design.modes) == 3, "no reading stands in this file, so nothing more is asked"
