"""Published values of transients, each with where it was read."""

from __future__ import annotations

import math

import pytest

from checker.physics import capacitor, inrush, load_dump


@pytest.mark.parametrize("time_s", [0.0, 0.001, 0.005, 0.02, 0.05])
def test_a_printed_solution_of_a_swinging_circuit(time_s: float) -> None:
    # Trench, Elementary Differential Equations, 6.3 (open textbook), printed solution seen in a public quotation:
    # Q = e^(-100 t) (cos 200 t + 51/100 sin 200 t) for Q(0) = 1 and Q'(0) = 2, so R/L = 200 and 1/LC = 50 000.
    ind, r, c = 0.2, 40.0, 1e-4
    printed = math.exp(-100 * time_s) * (2 * math.cos(200 * time_s) - 251 * math.sin(200 * time_s))
    assert inrush.current(time_s, -1.0 / c, r, ind, c, 2.0) == pytest.approx(printed, rel=1e-9, abs=1e-9)


def test_a_printed_precharge() -> None:
    # A public calculator of pre-charge resistors prints together 47.0 ms, 141.0 ms (95 %), 216.4 ms (99 %), 17.0 A,
    # 13 617 W and 320.0 J (seen). Its inputs are not in the quotation; 800 V, 47 ohm and 1000 uF give all six.
    volts, ohms, farads = 800.0, 47.0, 1e-3
    assert capacitor.time_constant(ohms, farads) == pytest.approx(0.0470, abs=5e-5)
    # It takes 3 tau and 4.6 tau for 95 % and 99 %.
    assert capacitor.charged_share(0.141, 0.047) == pytest.approx(0.95, abs=1e-3)
    assert inrush.left_after_precharge(volts, ohms, farads, 0.2164) == pytest.approx(0.01 * volts, rel=1e-2)
    assert inrush.peak_current(volts, ohms, 0.0, farads) == pytest.approx(17.0, abs=0.05)
    assert inrush.resistor_power(volts, ohms) == pytest.approx(13617.0, abs=0.5)
    assert capacitor.stored_energy(farads, volts) == pytest.approx(320.0, abs=0.05)


def test_a_printed_energy_of_a_precharge() -> None:
    # A public guide for battery management: 100 V and 10 000 uF (seen); C V2 / 2 heats the resistor by 50 J.
    assert 5.0 * inrush.inrush_energy(100.0, 5.0, 0.01) == pytest.approx(50.0)


@pytest.mark.parametrize(
    ("nominal", "peak", "ohms", "lasts"),
    [(12.0, (79.0, 101.0), (0.5, 4.0), (0.04, 0.4)), (24.0, (151.0, 202.0), (1.0, 8.0), (0.1, 0.35))],
)
def test_the_windows_of_a_load_dump_are_those_printed(
    nominal: float, peak: tuple[float, float], ohms: tuple[float, float], lasts: tuple[float, float]
) -> None:
    # ISO 16750-2, load dump without central suppression, table quoted by a journal and by two manuals (seen).
    assert load_dump.pulse(nominal)[:3] == (peak, ohms, lasts)


def test_the_inner_resistance_of_a_load_dump_follows_the_printed_formula() -> None:
    # 10 U n / (0.8 I 12000 min-1), quoted from ISO 16750-2 by a manual (seen): 14 V, 100 A, 6000 min-1 by hand.
    assert load_dump.inner_resistance(14.0, 100.0, 6000.0) == pytest.approx(0.875)
