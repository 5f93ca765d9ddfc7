"""Single-phase alternating current: rms, power factor, impedance, fault loop, touch voltage, disconnection.

Voltages and currents are rms unless the name says peak.
"""

from __future__ import annotations

import math

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.tables import table

SOURCE = "sinusoidal single-phase current"
LOOP_SOURCE = "earth fault loop, IEC 60364-4-41 [from memory]"
BODY_CONSTANT = {50.0: 0.116, 70.0: 0.157}  # A s^0.5 by body mass in kg, IEEE 80 [from memory]


def peak_from_rms(rms: float) -> float:
    """Peak of a sine from its rms value, ``sqrt(2) x``. [unit of the argument]"""
    return math.sqrt(2.0) * rms


def reactance(inductance_h: float, frequency_hz: float) -> float:
    """Reactance of an inductance, ``2 pi f L``. [ohm]"""
    return 2.0 * math.pi * frequency_hz * inductance_h


def impedance(resistance_ohm: float, reactance_ohm: float) -> float:
    """Impedance of resistance and reactance in series, ``sqrt(R^2 + X^2)``. [ohm]"""
    return math.hypot(resistance_ohm, reactance_ohm)


def current_through(voltage_v: float, impedance_ohm: float) -> float:
    """Current through an impedance, ``U / Z``. [A]"""
    require_positive("impedance, ohm,", impedance_ohm, SOURCE)
    return voltage_v / impedance_ohm


def apparent_power(voltage_v: float, current_a: float) -> float:
    """Apparent power, ``U I``. [VA]"""
    return voltage_v * current_a


def power_factor(power_w: float, apparent_va: float) -> float:
    """Power over apparent power. [1]"""
    require_positive("apparent power, VA,", apparent_va, SOURCE)
    return require("power factor", power_w / apparent_va, 0.0, 1.0 + 1e-12, SOURCE)


def active_current(power_w: float, voltage_v: float) -> float:
    """Part of a current in phase with the voltage, ``P / U``. [A]"""
    require_positive("voltage, V,", voltage_v, SOURCE)
    return power_w / voltage_v


def reactive_current(current_a: float, active_a: float) -> float:
    """Part of a current a quarter period off, ``sqrt(I^2 - I_w^2)``. [A]"""
    require("active current, A,", abs(active_a), 0.0, abs(current_a), SOURCE)
    return math.sqrt(current_a**2 - active_a**2)


def loop_impedance(source_ohm: float, line_ohm: float, protective_ohm: float) -> float:
    """Earth fault loop of resistances: source, line and protective conductor up to the fault. [ohm]

    ``Z = Z_source + R_line + R_protective`` at the temperature of the fault; reactance is left out,
    which is right for conductors up to 35 mm2. Source: IEC 60364-4-41. [from memory]
    """
    return source_ohm + line_ohm + protective_ohm


def earth_fault_current(voltage_v: float, loop_ohm: float) -> float:
    """Current of a fault of no impedance to earth, ``U_0 / Z_s``. [A]

    A source that limits its current, such as an inverter, gives less.
    """
    require_positive("loop impedance, ohm,", loop_ohm, LOOP_SOURCE)
    return voltage_v / loop_ohm


def touch_voltage(fault_a: float, protective_ohm: float) -> float:
    """Voltage of a faulty case against the source's earth point, ``I_f R_pe``. [V]"""
    return fault_a * protective_ohm


def disconnection_time(system: str, voltage_to_earth_v: float, kind: str) -> float:
    """Longest time to automatic disconnection of a final circuit. [s]

    Parameters
    ----------
    system : 'TN' or 'TT'.
    voltage_to_earth_v : nominal, above 50 V. [V]
    kind : 'ac' or 'dc'.

    Valid for
    ---------
    Above 50 V. No time is set for direct current up to 120 V. Later editions are believed to print
    1 s for direct current in TN at 120 to 230 V, where this one prints 5 s.

    Source
    ------
    IEC 60364-4-41 table 41.1 as printed in BS 7671:2008. [seen]
    """
    published = table("disconnection_times")
    for row in published.rows:
        if row["system"] != system or row["kind"] != kind or not row["above_v"]:
            continue
        upper = float(row["up_to_v"]) if row["up_to_v"] else math.inf
        if float(row["above_v"]) < voltage_to_earth_v <= upper:
            if not row["max_s"]:
                break
            return float(row["max_s"])
    valid = "TN or TT, ac above 50 V or dc above 120 V"
    raise OutOfRange("supply", f"{system}, {kind}, {voltage_to_earth_v:g} V to earth", valid, published.source)


def tolerable_touch_voltage(time_s: float, soil_ohm_m: float, body_kg: float) -> float:
    """Touch voltage a person bears for a time, standing on soil. [V]

    ``(1000 + 1.5 rho) k / sqrt(t)``, k 0.116 for 50 kg, 0.157 for 70 kg; metal to metal with rho 0.
    Valid from 0.03 to 3 s, no surface layer. Source: IEEE 80. [from memory]
    """
    return (1000.0 + 1.5 * soil_ohm_m) * _body_current(time_s, body_kg)


def tolerable_step_voltage(time_s: float, soil_ohm_m: float, body_kg: float) -> float:
    """Step voltage a person bears for a time, ``(1000 + 6 rho) k / sqrt(t)``. [V]

    Validity and source as `tolerable_touch_voltage`.
    """
    return (1000.0 + 6.0 * soil_ohm_m) * _body_current(time_s, body_kg)


def _body_current(time_s: float, body_kg: float) -> float:
    require("time, s,", time_s, 0.03, 3.0, "IEEE 80 [from memory]")
    if body_kg not in BODY_CONSTANT:
        raise OutOfRange("body mass, kg,", body_kg, "50 or 70", "IEEE 80 [from memory]")
    return BODY_CONSTANT[body_kg] / math.sqrt(time_s)
