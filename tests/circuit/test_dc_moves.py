"""How readings move at a solved point: by hand, and a sum as its parts together."""

from __future__ import annotations

import pytest

from checker.circuit.dc_elements import Branch, CurrentLoad, Element, Emf
from checker.circuit.dc_frame import Frame
from checker.circuit.dc_moves import Moves, Reading, Total
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import solve_frame

ELEMENTS: list[Element] = [
    Emf("battery", "a", "gnd", 12.0, 0.1),
    Branch("wire", "a", "b", 0.2),
    CurrentLoad("pump", "b", "gnd", 5.0),
    CurrentLoad("fan", "a", "gnd", 3.0),
]


def moves() -> Moves:
    frame = Frame(ELEMENTS)
    found = solve_frame(frame)
    assert isinstance(found, Solution)
    return Moves(frame, found)


def by(reading: Reading, name: str) -> float:
    """What an ampere more through an element changes in a reading."""
    solved = moves()
    pull = solved.pull(reading)
    assert pull is not None
    plus, minus, *_ = solved.terminals(name)
    return pull.held[minus] - pull.held[plus] + pull.ins.get(name, 0.0)


def volts(found: Solution) -> float | None:
    return found.between("b", "gnd")


def lost(found: Solution) -> float | None:
    return found.flows["wire"].watts


def test_a_voltage_falls_by_the_resistance_to_its_source() -> None:
    assert by(volts, "pump") == pytest.approx(-0.3, rel=1e-6)
    assert by(volts, "fan") == pytest.approx(-0.1, rel=1e-6)


def test_a_loss_grows_with_twice_the_current() -> None:
    assert by(lost, "pump") == pytest.approx(2 * 5.0 * 0.2, rel=1e-4)
    assert by(lost, "fan") == pytest.approx(0.0, abs=1e-6)


def test_a_sum_is_and_moves_as_its_parts_together() -> None:
    def nothing(found: Solution) -> float | None:
        return None

    both = Total([volts, lost, nothing])
    found = moves().found
    assert both(found) == pytest.approx(12.0 - 8.0 * 0.1 - 5.0 * 0.2 + 25.0 * 0.2)
    for name in ("pump", "fan"):
        assert by(both, name) == pytest.approx(by(volts, name) + by(lost, name), rel=1e-9)
