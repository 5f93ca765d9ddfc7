"""Energy and charge over time: loads in a day, autonomy, depth of discharge, recharge.

Energy in joule, charge in ampere-second, time in second.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.outofrange import require, require_positive

SOURCE = "energy and charge over time"


def energy_used(loads: Sequence[tuple[float, float]]) -> float:
    """Energy of loads, each power [W] times its time [s]. [J]"""
    return sum(power_w * time_s for power_w, time_s in loads)


def charge_moved(current_a: float, time_s: float) -> float:
    """Charge of a steady current, ``Q = I t``. [A s]"""
    return current_a * time_s


def usable(capacity: float, depth: float) -> float:
    """What may be taken of a capacity at a depth of discharge, in the unit of the capacity."""
    require("depth of discharge", depth, 0.0, 1.0, SOURCE)
    return capacity * depth


def capacity_needed(wanted: float, depth: float) -> float:
    """Capacity that gives what is wanted at a depth of discharge, in the unit of what is wanted."""
    require("depth of discharge", depth, math.nextafter(0.0, 1.0), 1.0, SOURCE)
    return wanted / depth


def time_left(charge_as: float, taken_as: Sequence[float], current_a: float) -> float:
    """Time a current can still be drawn after charges have been taken. [s]

    ``t = (Q - sum Q_k) / I``; the charges taken may not exceed what there is.
    """
    left = charge_as - sum(taken_as)
    require("charge left, A s,", left, 0.0, math.inf, SOURCE)
    require_positive("current, A,", current_a, SOURCE)
    return left / current_a


def autonomy(energy_j: float, power_w: float) -> float:
    """Time an energy feeds a steady power, ``t = E / P``. [s]"""
    require_positive("power, W,", power_w, SOURCE)
    return energy_j / power_w


def battery_energy(capacity_as: float, voltage_v: float) -> float:
    """Energy of a charge at its mean voltage, ``E = Q V``. [J]"""
    return capacity_as * voltage_v


def recharge_current(charge_as: float, factor: float, time_s: float, standing_a: float = 0.0) -> float:
    """Charging current that returns a charge in a time beside a standing load. [A]

    ``I = Q f / t + I_standing``

    Parameters
    ----------
    charge_as : charge taken. [A s]
    factor : charge put in over charge taken, 1 or more. [1]
    time_s : time of charging. [s]
    standing_a : load fed meanwhile. [A]
    """
    require("recharge factor", factor, 1.0, 3.0, SOURCE)
    require_positive("time, s,", time_s, SOURCE)
    return charge_as * factor / time_s + standing_a


def recharge_time(charge_as: float, current_a: float, absorption_s: float = 0.0) -> float:
    """Time to return a charge at a steady current, and an absorption stage after it. [s]

    ``t = Q / I + t_absorption``: charge efficiency is not included.
    """
    require_positive("charging current, A,", current_a, SOURCE)
    return charge_as / current_a + absorption_s


def charge_efficiency(out_as: float, in_as: float) -> float:
    """Charge taken out over charge put in. [1]"""
    require_positive("charge put in, A s,", in_as, SOURCE)
    return out_as / in_as


def load_factor(energy_j: float, greatest_w: float, time_s: float) -> float:
    """Mean power over greatest power. [1]"""
    require_positive("greatest power times time, J,", greatest_w * time_s, SOURCE)
    return energy_j / (greatest_w * time_s)
