"""Load dump: published windows and formula, and the energy of a clamp against a sum in small steps."""

from __future__ import annotations

import math

import pytest

from checker.outofrange import OutOfRange
from checker.physics.load_dump import clamp_current, clamp_energy, inner_resistance, pulse


def test_no_window_is_made_up_for_other_systems() -> None:
    with pytest.raises(OutOfRange):
        pulse(48.0)


def test_a_faster_or_smaller_alternator_has_more_inner_resistance() -> None:
    assert inner_resistance(14.0, 100.0, 12000.0) == pytest.approx(2 * inner_resistance(14.0, 100.0, 6000.0))
    assert inner_resistance(14.0, 50.0) == pytest.approx(2 * inner_resistance(14.0, 100.0))


def test_a_clamp_takes_what_is_above_it() -> None:
    assert clamp_current(100.0, 35.0, 0.5) == pytest.approx(130.0)
    assert clamp_current(30.0, 35.0, 0.5) == 0.0
    assert clamp_energy(30.0, 14.0, 35.0, 0.5, 0.4) == 0.0


def test_the_energy_of_a_clamp_is_the_sum_over_the_pulse() -> None:
    peak, base, clamp, ohms, lasts = 101.0, 14.0, 35.0, 4.0, 0.4
    tau, step = lasts / math.log(10.0), 1e-5
    summed = 0.0
    for n in range(100_000):
        above = (peak - base) * math.exp(-(n + 0.5) * step / tau) + base - clamp
        summed += clamp * max(above, 0.0) / ohms * step
    assert clamp_energy(peak, base, clamp, ohms, lasts) == pytest.approx(summed, rel=1e-4)


def test_a_clamp_that_conducts_in_use_is_refused() -> None:
    with pytest.raises(OutOfRange):
        clamp_energy(100.0, 14.0, 13.0, 1.0, 0.1)
