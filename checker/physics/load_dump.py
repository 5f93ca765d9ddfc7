"""An alternator that loses its battery while charging: its pulse, its inner resistance, what a clamp must swallow."""

from __future__ import annotations

import math
from typing import NamedTuple

from checker.outofrange import OutOfRange, require, require_positive

SOURCE = "ISO 16750-2, load dump [seen in public quotations of its table and formula]"
RATED_RPM = 6000.0  # ISO 8854, the speed of the rating [from memory]


class Pulse(NamedTuple):
    """Least and greatest peak voltage [V], inner resistance [ohm] and duration [s]; `base_v` is the running system."""

    peak_v: tuple[float, float]
    resistance_ohm: tuple[float, float]
    duration_s: tuple[float, float]
    base_v: float


PULSES = {
    12.0: Pulse((79.0, 101.0), (0.5, 4.0), (0.04, 0.4), 14.0),
    24.0: Pulse((151.0, 202.0), (1.0, 8.0), (0.1, 0.35), 28.0),
}


def pulse(nominal_v: float) -> Pulse:
    """The pulse of a system without suppression, by nominal voltage. [V], [ohm], [s]

    Raises
    ------
    OutOfRange : no system of 12 V or 24 V.
    """
    found = PULSES.get(nominal_v)
    if found is None:
        raise OutOfRange("nominal voltage, V,", nominal_v, "12 or 24", SOURCE)
    return found


def inner_resistance(nominal_v: float, rated_a: float, speed_rpm: float = RATED_RPM) -> float:
    """Inner resistance of an alternator during the pulse, ``10 U_n n / (0.8 I_r 12000)``. [ohm]

    Parameters
    ----------
    rated_a : rated current at 6000 rev/min. [A]
    speed_rpm : speed of the alternator. [rev/min]
    """
    require_positive("rated current, A,", rated_a, SOURCE)
    require_positive("speed, rev/min,", speed_rpm, SOURCE)
    return 10.0 * nominal_v * speed_rpm / (0.8 * rated_a * 12000.0)


def clamp_current(peak_v: float, clamp_v: float, resistance_ohm: float) -> float:
    """Greatest current into a clamp, ``(U_s - U_c) / R_i``; nothing below the clamp. [A]"""
    require_positive("inner resistance, ohm,", resistance_ohm, SOURCE)
    return max(0.0, peak_v - clamp_v) / resistance_ohm


def clamp_energy(peak_v: float, base_v: float, clamp_v: float, resistance_ohm: float, duration_s: float) -> float:
    """Energy that a clamp swallows of one pulse. [J]

    The pulse falls as ``(U_s - U_A) e^(-t/tau) + U_A``; its duration is counted to 10 %, so ``tau = t_d / ln 10``.
    ``W = U_c (tau (U_s - U_c) - (U_c - U_A) t_0) / R_i`` with ``t_0 = tau ln((U_s - U_A) / (U_c - U_A))``.

    Parameters
    ----------
    clamp_v : above the running system, so that it does not conduct in use. [V]
    """
    require_positive("clamp above the running system, V,", clamp_v - base_v, SOURCE)
    require_positive("inner resistance, ohm,", resistance_ohm, SOURCE)
    require("duration, s,", duration_s, 0.0, math.inf, SOURCE)
    if peak_v <= clamp_v:
        return 0.0
    tau = duration_s / math.log(10.0)
    until = tau * math.log((peak_v - base_v) / (clamp_v - base_v))
    return clamp_v * (tau * (peak_v - clamp_v) - (clamp_v - base_v) * until) / resistance_ohm
