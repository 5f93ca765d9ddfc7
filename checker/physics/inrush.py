"""Closing onto a capacitor: the current of source, leads and capacitor in series, its peak, its energy.

A stiff source behind a resistance and an inductance; the capacitor starts at a voltage of its own. Solved in closed
form for weak, critical and strong damping.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from checker.outofrange import require, require_positive

SOURCE = "resistance, inductance and capacitance in series (circuit theory)"
NEARLY_CRITICAL = 1e-6


class Damping(NamedTuple):
    """Decay rate ``R / 2L`` and natural rate ``1 / sqrt(L C)``, both [1/s]."""

    decay: float
    natural: float

    @property
    def rings(self) -> bool:
        """Whether the current swings."""
        return self.decay < self.natural


def damping(resistance_ohm: float, inductance_h: float, capacitance_f: float) -> Damping:
    """Rates of a series circuit; every value above 0."""
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    require_positive("inductance, H,", inductance_h, SOURCE)
    require_positive("capacitance, F,", capacitance_f, SOURCE)
    return Damping(resistance_ohm / (2.0 * inductance_h), 1.0 / math.sqrt(inductance_h * capacitance_f))


def current(
    time_s: float,
    step_v: float,
    resistance_ohm: float,
    inductance_h: float,
    capacitance_f: float,
    initial_a: float = 0.0,
) -> float:
    """Current some time after closing. [A]

    Parameters
    ----------
    step_v : source voltage less the voltage the capacitor starts with. [V]
    initial_a : current at the moment of closing. [A]

    Valid for
    ---------
    Time 0 and later.
    """
    require("time, s,", time_s, 0.0, math.inf, SOURCE)
    rates = damping(resistance_ohm, inductance_h, capacitance_f)
    # i' (0) = (step - R i0) / L; i = e^(-at) (i0 c(t) + (i'(0) + a i0) s(t)).
    slope = (step_v - resistance_ohm * initial_a) / inductance_h + rates.decay * initial_a
    even, odd = _parts(rates, time_s)
    return initial_a * even + slope * odd


def _parts(rates: Damping, time_s: float) -> tuple[float, float]:
    """``e^(-at) cos wt`` and ``e^(-at) sin(wt)/w``, or their hyperbolic twins."""
    a, w0 = rates
    fade = math.exp(-a * time_s)
    if abs(a - w0) <= NEARLY_CRITICAL * w0:
        return fade, fade * time_s
    if rates.rings:
        w = math.sqrt(w0**2 - a**2)
        return fade * math.cos(w * time_s), fade * math.sin(w * time_s) / w
    b = math.sqrt(a**2 - w0**2)
    # Two falling exponentials, so that nothing overflows.
    slow, fast = math.exp(-(a - b) * time_s), math.exp(-(a + b) * time_s)
    return (slow + fast) / 2.0, (slow - fast) / (2.0 * b)


def time_of_peak(resistance_ohm: float, inductance_h: float, capacitance_f: float) -> float:
    """Time from closing on an idle circuit to the greatest current. [s]

    ``atan(w/a)/w``, ``1/a`` or ``atanh(b/a)/b`` for weak, critical and strong damping.
    """
    rates = damping(resistance_ohm, inductance_h, capacitance_f)
    a, w0 = rates
    if abs(a - w0) <= NEARLY_CRITICAL * w0:
        return 1.0 / a
    if rates.rings:
        w = math.sqrt(w0**2 - a**2)
        return math.atan2(w, a) / w
    b = math.sqrt(a**2 - w0**2)
    return math.log((a + b) / w0) / b


def peak_current(step_v: float, resistance_ohm: float, inductance_h: float, capacitance_f: float) -> float:
    """Greatest current after closing on an idle circuit. [A]

    ``V sqrt(C/L) e^(-a t_peak)``; without inductance ``V / R``, which no inductance exceeds.

    Parameters
    ----------
    inductance_h : 0 or more. [H]
    """
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    require("inductance, H,", inductance_h, 0.0, math.inf, SOURCE)
    if inductance_h == 0.0:
        return step_v / resistance_ohm
    at_s = time_of_peak(resistance_ohm, inductance_h, capacitance_f)
    rates = damping(resistance_ohm, inductance_h, capacitance_f)
    return step_v * math.sqrt(capacitance_f / inductance_h) * math.exp(-rates.decay * at_s)


def inrush_energy(step_v: float, resistance_ohm: float, capacitance_f: float) -> float:
    """``I^2 t`` of the whole in-rush, ``C V^2 / 2R``, whatever the inductance. [A2 s]

    The resistance turns into heat as much as the capacitor stores.
    """
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    return capacitance_f * step_v**2 / (2.0 * resistance_ohm)


def left_after_precharge(supply_v: float, resistance_ohm: float, capacitance_f: float, time_s: float) -> float:
    """Voltage still across the open main contact when a pre-charge ends, ``V e^(-t/RC)``. [V]"""
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    require_positive("capacitance, F,", capacitance_f, SOURCE)
    require("time, s,", time_s, 0.0, math.inf, SOURCE)
    return supply_v * math.exp(-time_s / (resistance_ohm * capacitance_f))


def resistor_power(supply_v: float, resistance_ohm: float) -> float:
    """Power of a pre-charge resistor at the moment of closing, ``V^2 / R``. [W]"""
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    return supply_v**2 / resistance_ohm
