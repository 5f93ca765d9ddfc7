"""Closing onto a capacitor: published solutions, a step-by-step oracle, and laws."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import inrush

ohms = st.floats(1e-3, 10.0)
henries = st.floats(1e-7, 1e-3)
farads = st.floats(1e-5, 1e-1)


def stepped(until: float, volts: float, r: float, ind: float, c: float, steps: int = 20000) -> tuple[float, float]:
    """Current and charge by the classical Runge-Kutta method, nothing shared with the closed form."""
    current, charge, h = 0.0, 0.0, until / steps

    def slope(i: float, q: float) -> tuple[float, float]:
        return (volts - r * i - q / c) / ind, i

    for _ in range(steps):
        a = slope(current, charge)
        b = slope(current + h / 2 * a[0], charge + h / 2 * a[1])
        d = slope(current + h / 2 * b[0], charge + h / 2 * b[1])
        e = slope(current + h * d[0], charge + h * d[1])
        current += h / 6 * (a[0] + 2 * b[0] + 2 * d[0] + e[0])
        charge += h / 6 * (a[1] + 2 * b[1] + 2 * d[1] + e[1])
    return current, charge


@pytest.mark.parametrize(("r", "ind", "c"), [(0.01, 2e-6, 0.015), (0.3, 2e-6, 0.015), (0.02, 1e-5, 1e-4)])
def test_the_closed_form_follows_the_equation_step_by_step(r: float, ind: float, c: float) -> None:
    at = inrush.time_of_peak(r, ind, c)
    assert inrush.current(2 * at, 50.0, r, ind, c) == pytest.approx(stepped(2 * at, 50.0, r, ind, c)[0], rel=1e-6)


def test_critical_damping_peaks_at_v_over_e_times_a_l() -> None:
    ind, c = 1e-5, 1e-3
    r = 2 * math.sqrt(ind / c)
    assert inrush.peak_current(48.0, r, ind, c) == pytest.approx(48.0 * 2 / (r * math.e), rel=1e-6)


@given(ohms, henries, farads)
def test_the_peak_is_the_current_at_its_time_and_no_other_is_larger(r: float, ind: float, c: float) -> None:
    at, peak = inrush.time_of_peak(r, ind, c), inrush.peak_current(50.0, r, ind, c)
    assert inrush.current(at, 50.0, r, ind, c) == pytest.approx(peak, rel=1e-5)
    for share in (0.5, 0.9, 1.1, 2.0, 5.0):
        assert inrush.current(share * at, 50.0, r, ind, c) <= peak * (1 + 1e-6)


@given(ohms, henries, farads)
def test_inductance_only_lowers_the_peak(r: float, ind: float, c: float) -> None:
    assert inrush.peak_current(50.0, r, ind, c) <= inrush.peak_current(50.0, r, 0.0, c) * (1 + 1e-9)


@pytest.mark.parametrize(("r", "ind", "c"), [(0.01, 2e-6, 0.015), (0.3, 2e-6, 0.015), (0.02, 1e-5, 1e-4)])
def test_the_energy_of_the_inrush_is_the_sum_of_its_squares_whatever_the_inductance(
    r: float, ind: float, c: float
) -> None:
    slowest = inrush.damping(r, ind, c)
    decay = slowest.decay if slowest.rings else slowest.decay - math.sqrt(slowest.decay**2 - slowest.natural**2)
    steps, until = 40_000, 20.0 / decay
    h = until / steps
    summed = math.fsum(inrush.current((n + 0.5) * h, 50.0, r, ind, c) ** 2 * h for n in range(steps))
    assert inrush.inrush_energy(50.0, r, c) == pytest.approx(summed, rel=1e-3)


def test_what_cannot_be_is_refused() -> None:
    for call in (
        lambda: inrush.damping(0.0, 1e-6, 1e-3),
        lambda: inrush.peak_current(48.0, 1.0, -1e-6, 1e-3),
        lambda: inrush.current(-1.0, 48.0, 1.0, 1e-6, 1e-3),
        lambda: inrush.left_after_precharge(48.0, 1.0, 0.0, 1.0),
    ):
        with pytest.raises(OutOfRange):
            call()
