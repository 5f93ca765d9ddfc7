"""Capacitors: pre-charge through a resistor, discharge, stored energy.

A capacitor bank starts empty unless said otherwise; the source is stiff.
"""

from __future__ import annotations

import math

from checker.outofrange import require, require_positive

SOURCE = "capacitor charged through a resistor"


def time_constant(resistance_ohm: float, capacitance_f: float) -> float:
    """Time constant of resistor and capacitor, ``tau = R C``. [s]"""
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    require_positive("capacitance, F,", capacitance_f, SOURCE)
    return resistance_ohm * capacitance_f


def first_current(voltage_v: float, resistance_ohm: float) -> float:
    """Current at the moment of closing on an empty capacitor, ``V / R``. [A]"""
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    return voltage_v / resistance_ohm


def charged_voltage(supply_v: float, time_s: float, tau_s: float) -> float:
    """Voltage of a capacitor some time after closing, ``V (1 - exp(-t/tau))``. [V]"""
    return supply_v * charged_share(time_s, tau_s)


def charged_share(time_s: float, tau_s: float) -> float:
    """Share of the final voltage reached after a time, ``1 - exp(-t/tau)``. [1]"""
    return 1.0 - remaining_share(time_s, tau_s)


def remaining_share(time_s: float, tau_s: float) -> float:
    """Share left of a discharging voltage, or of a charging current, ``exp(-t/tau)``. [1]"""
    require_positive("time constant, s,", tau_s, SOURCE)
    require("time, s,", time_s, 0.0, math.inf, SOURCE)
    return math.exp(-time_s / tau_s)


def time_to_charge(share: float, tau_s: float) -> float:
    """Time until a share of the final voltage is reached, ``-tau ln(1 - share)``. [s]

    Parameters
    ----------
    share : of the final voltage, 0 to below 1. [1]
    tau_s : time constant. [s]
    """
    require("share of the final voltage", share, 0.0, math.nextafter(1.0, 0.0), SOURCE)
    return -tau_s * math.log1p(-share)


def time_to_discharge(start_v: float, end_v: float, tau_s: float) -> float:
    """Time in which a voltage falls through a resistor, ``tau ln(V0/V)``. [s]"""
    require_positive("end voltage, V,", end_v, SOURCE)
    require("end voltage, V,", end_v, 0.0, start_v, SOURCE)
    return tau_s * math.log(start_v / end_v)


def stored_energy(capacitance_f: float, voltage_v: float) -> float:
    """Energy in a capacitor, ``C V^2 / 2``; charging through a resistor heats it by as much. [J]"""
    return capacitance_f * voltage_v**2 / 2.0


def stored_charge(capacitance_f: float, voltage_v: float) -> float:
    """Charge in a capacitor, ``C V``. [A s]"""
    return capacitance_f * voltage_v


def voltage_for_energy(capacitance_f: float, energy_j: float) -> float:
    """Voltage at which a capacitor holds an energy, ``sqrt(2 E / C)``. [V]"""
    require_positive("capacitance, F,", capacitance_f, SOURCE)
    require("energy, J,", energy_j, 0.0, math.inf, SOURCE)
    return math.sqrt(2.0 * energy_j / capacitance_f)


def capacitance_for_energy(energy_j: float, voltage_v: float) -> float:
    """Capacitance that holds an energy at a voltage, ``2 E / V^2``. [F]"""
    require_positive("voltage, V,", voltage_v, SOURCE)
    return 2.0 * energy_j / voltage_v**2


def capacitance_for_time_constant(tau_s: float, resistance_ohm: float) -> float:
    """Capacitance that gives a time constant with a resistor, ``tau / R``. [F]"""
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    return tau_s / resistance_ohm
