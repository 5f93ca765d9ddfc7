from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from checker.circuit.dc_elements import (
    Branch,
    Capacitor,
    CurrentLoad,
    Element,
    Emf,
    Inductor,
    PowerLoad,
    ResistanceLoad,
    Supply,
)
from checker.circuit.dc_exponential import closed_form, is_piecewise_linear
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_stiff import integrate
from checker.circuit.dc_transient import Course, run

PRECHARGE: list[Element] = [
    Emf("bank", "b", "gnd", 51.2, 0.006),
    Branch("resistor", "b", "c", 30.0),
    Capacitor("caps", "c", "gnd", 0.018, 0.0),
]
LIMITED: list[Element] = [
    Supply("alternator", "a", "gnd", 14.4, 100.0, droop_ohm=0.002),
    Branch("cable", "a", "b", 0.006),
    Branch("inside", "b", "c", 0.004),
    CurrentLoad("load", "b", "gnd", 20.0),
    Capacitor("bank", "c", "gnd", 20000.0, 12.6),
]


def course(elements: list[Element], end: float) -> Course:
    found = run(elements, end)
    assert isinstance(found, Course), found
    return found


def test_a_capacitor_behind_a_resistor_follows_the_exponential() -> None:
    found = course(PRECHARGE, 4.0)
    assert found.closed_form
    tau = 30.006 * 0.018
    for time in (0.0, 0.1, 0.5, 2.0, 4.0):
        assert found.stored(time)[0] == pytest.approx(51.2 * (1.0 - math.exp(-time / tau)), rel=1e-6, abs=1e-9)


def test_currents_at_any_moment_are_solved_from_what_is_stored() -> None:
    point = course(PRECHARGE, 4.0).point(0.0)
    assert isinstance(point, Solution)
    assert point.flows["resistor"].amps == pytest.approx(51.2 / 30.006)


def test_a_current_limit_gives_a_straight_line_and_then_an_exponential() -> None:
    found = course(LIMITED, 900.0)
    assert len(found.pieces) == 2
    assert found.pieces[1].start == pytest.approx(170.0, rel=1e-6)
    assert found.pieces[1].tau == pytest.approx(240.0, rel=1e-6)
    assert found.stored(100.0)[0] == pytest.approx(13.0)


@pytest.mark.parametrize(("elements", "end"), [(PRECHARGE, 4.0), (LIMITED, 900.0)])
def test_the_integrator_agrees_with_the_closed_form(elements: list[Element], end: float) -> None:
    stores = [one for one in elements if isinstance(one, Capacitor)]
    pieces = integrate(elements, stores, end, "gnd", 1e-7)
    assert not isinstance(pieces, NoSolution)
    closed = closed_form(elements, stores[0], end, "gnd")
    assert closed is not None
    stepped = Course(elements, stores, pieces, end, "gnd", False)
    exact = Course(elements, stores, closed, end, "gnd", True)
    for part in range(21):
        time = end * part / 20
        assert stepped.stored(time)[0] == pytest.approx(exact.stored(time)[0], abs=2e-4)


def test_two_capacitors_agree_with_an_integrator_of_another_hand() -> None:
    elements: list[Element] = [
        Emf("bank", "b", "gnd", 51.2, 0.05),
        Branch("lead", "b", "c", 0.5),
        Capacitor("near", "c", "gnd", 0.01, 10.0),
        Branch("far lead", "c", "d", 2.0),
        Capacitor("far", "d", "gnd", 0.02, 0.0),
        PowerLoad("fan", "c", "gnd", 40.0),
    ]
    found = course(elements, 0.4)
    assert not found.closed_form

    def rates(_: float, v: np.ndarray) -> list[float]:
        into_far = (v[0] - v[1]) / 2.0
        return [((51.2 - v[0]) / 0.55 - into_far - 40.0 / v[0]) / 0.01, into_far / 0.02]

    other = solve_ivp(rates, (0.0, 0.4), [10.0, 0.0], method="Radau", rtol=1e-9, atol=1e-9, dense_output=True)
    for part in range(21):
        time = 0.4 * part / 20
        assert found.stored(time) == pytest.approx(tuple(other.sol(time)), abs=2e-3)


def test_the_current_of_an_inductance_rises_to_what_the_resistance_allows() -> None:
    elements: list[Element] = [
        Emf("bank", "b", "gnd", 48.0, 0.01),
        Inductor("cable", "b", "c", 5e-6, 0.0),
        ResistanceLoad("fault", "c", "gnd", 0.01),
    ]
    found = course(elements, 1e-3)
    tau = 5e-6 / 0.02
    for time in (1e-4, 2.5e-4, 1e-3):
        assert found.stored(time)[0] == pytest.approx(2400.0 * (1.0 - math.exp(-time / tau)), rel=1e-4)


def test_what_lies_behind_an_inductance_can_be_read_at_any_moment() -> None:
    elements: list[Element] = [
        Emf("bank", "b", "gnd", 48.0, 0.01),
        Inductor("cable", "b", "c", 5e-6, 0.0),
        ResistanceLoad("fault", "c", "gnd", 0.01),
    ]
    found = course(elements, 1e-3)
    start, later = found.point(0.0), found.point(1e-3)
    assert isinstance(start, Solution)
    assert isinstance(later, Solution)
    assert start.flows["cable"].volts == pytest.approx(48.0)
    assert later.flows["fault"].volts == pytest.approx(24.0, rel=0.02)


def test_a_capacitor_across_an_ideal_source_is_reported() -> None:
    elements: list[Element] = [Emf("bank", "b", "gnd", 48.0, 0.0), Capacitor("caps", "b", "gnd", 0.01, 0.0)]
    found = run(elements, 1.0)
    assert isinstance(found, NoSolution)
    assert "48 V" in found.reason


def test_a_capacitor_at_rest_stays_there() -> None:
    found = course([Emf("bank", "b", "gnd", 48.0, 0.1), Capacitor("caps", "b", "gnd", 0.01, 48.0)], 10.0)
    assert found.stored(10.0)[0] == pytest.approx(48.0)


def test_constant_power_is_not_piecewise_linear() -> None:
    assert is_piecewise_linear(LIMITED)
    assert not is_piecewise_linear([*LIMITED, PowerLoad("fan", "b", "gnd", 10.0)])
