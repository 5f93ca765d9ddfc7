"""Direct-current motors and other loads that draw more at the start than when running."""

from __future__ import annotations

from checker.outofrange import require, require_positive

SOURCE = "direct-current motor as back electromotive force behind a resistance"


def running_current(output_w: float, voltage_v: float, efficiency: float) -> float:
    """Current of a motor at an output, ``I = P / (eta U)``. [A]

    Parameters
    ----------
    output_w : power at the shaft. [W]
    voltage_v : at the terminals. [V]
    efficiency : above 0, up to 1. [1]
    """
    require_positive("efficiency", efficiency, SOURCE)
    require("efficiency", efficiency, 0.0, 1.0, SOURCE)
    require_positive("voltage, V,", voltage_v, SOURCE)
    return output_w / (efficiency * voltage_v)


def back_emf(voltage_v: float, current_a: float, resistance_ohm: float) -> float:
    """Back electromotive force of a running motor, ``E = U - I R``. [V]"""
    return voltage_v - current_a * resistance_ohm


def locked_current(voltage_v: float, resistance_ohm: float) -> float:
    """Current of a motor at standstill, ``I = U / R`` with all resistance of the path. [A]"""
    require_positive("resistance, ohm,", resistance_ohm, SOURCE)
    return voltage_v / resistance_ohm


def starting_resistance(voltage_v: float, start_a: float, armature_ohm: float) -> float:
    """Resistance to add so that a motor starts with a current, ``R = U / I - R_a``. [ohm]"""
    require_positive("starting current, A,", start_a, SOURCE)
    return voltage_v / start_a - armature_ohm


def cold_current(running_a: float, hot_ohm: float, cold_ohm: float) -> float:
    """Switch-on current of a filament, ``I = I_run R_hot / R_cold``. [A]"""
    require_positive("cold resistance, ohm,", cold_ohm, "Ohm's law")
    return running_a * hot_ohm / cold_ohm


def hydraulic_energy(volume_m3: float, head_m: float) -> float:
    """Energy to lift water, ``rho g h V`` with 1000 kg/m3 and 9.81 m/s2. [J]"""
    return 1000.0 * 9.81 * head_m * volume_m3


def voltage_at_limit(setting_v: float, limit_a: float, asked_a: float) -> float:
    """Voltage that a source which limits its current leaves a motor at standstill, ``U I_limit / I_asked``. [V]

    The motor is a resistance until it turns: what it asks at the setting of the source tells which.
    Up to the limit the setting is held.

    Parameters
    ----------
    setting_v : voltage the source holds. [V]
    limit_a : greatest current it gives. [A]
    asked_a : current asked at the setting, above 0. [A]
    """
    require_positive("current asked, A,", asked_a, SOURCE)
    return setting_v if asked_a <= limit_a else setting_v * limit_a / asked_a
