"""Solar modules and strings: voltage when cold, currents for conductors and fuses, cell temperature, power.

Standard test conditions are 1000 W/m2 and a cell at 25 °C.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.outofrange import require, require_positive

STC_C = 25.0
STC_W_M2 = 1000.0
CONTINUOUS = 1.25  # NFPA 70 690.8(A) and (B): each 125 %; a practice elsewhere too [from memory]
CELL_C_RANGE = (-60.0, 120.0)  # straight line in temperature; common practice, no source
SOURCE = "solar module at standard test conditions, straight line in cell temperature"
NOCT_AMBIENT_C, NOCT_W_M2 = 20.0, 800.0  # IEC 61215 [from memory]


def voltage_at(stc_v: float, per_k: float, cell_c: float) -> float:
    """Voltage of a module or string at a cell temperature. [V]

    ``V = V_stc (1 + beta (T - 25))``; for the open voltage take the lowest temperature, since a cell
    is as cold as the air at sunrise.

    Parameters
    ----------
    stc_v : voltage at standard test conditions. [V]
    per_k : relative temperature coefficient, negative, for instance -0.003. [1/K]
    cell_c : temperature of the cell. [°C]

    Valid for
    ---------
    -60 to 120 °C, coefficients -0.01 to 0 per K.

    Source
    ------
    Definition of the temperature coefficient, IEC 61215. [from memory]
    """
    require("cell temperature, °C,", cell_c, *CELL_C_RANGE, SOURCE)
    require("temperature coefficient of voltage, 1/K,", per_k, -0.01, 0.0, SOURCE)
    return stc_v * (1.0 + per_k * (cell_c - STC_C))


def string_voltage(module_v: float, in_series: int) -> float:
    """Voltage of equal modules in series. [V]"""
    require("modules in series", in_series, 1, 1000, SOURCE)
    return module_v * in_series


def array_current(string_a: float, in_parallel: int) -> float:
    """Current of equal strings in parallel. [A]"""
    require("strings in parallel", in_parallel, 1, 1000, SOURCE)
    return string_a * in_parallel


def greatest_current(short_circuit_a: float) -> float:
    """Current to reckon with under bright sky, 1.25 times the short-circuit current. [A]

    Source: NFPA 70 690.8(A). [from memory]
    """
    return CONTINUOUS * short_circuit_a


def conductor_current(short_circuit_a: float) -> float:
    """Current a conductor or fuse of a solar circuit must be rated for, 1.25 x 1.25 times. [A]

    Source: NFPA 70 690.8(A) and (B). [from memory]
    """
    return CONTINUOUS * greatest_current(short_circuit_a)


def reverse_string_current(strings: int, short_circuit_a: float) -> float:
    """Greatest current the other strings can push back into a faulted one. [A]

    ``I = (n - 1) 1.25 I_sc``; 0 for a single string. What a battery can push back is not included.
    Source: IEC 62548 6.3.5, the factor as in `greatest_current`. [from memory]
    """
    require("strings in parallel", strings, 1, 1000, SOURCE)
    return (strings - 1) * greatest_current(short_circuit_a)


def cell_temperature(irradiance_w_m2: float, air_c: float, noct_c: float) -> float:
    """Temperature of the cells of a free-standing module. [°C]

    ``T = T_air + (NOCT - 20) G / 800``; flat on a roof it is hotter.

    Parameters
    ----------
    irradiance_w_m2 : in the plane of the module, 0 to 1400. [W/m2]
    air_c : temperature of the air. [°C]
    noct_c : nominal operating cell temperature. [°C]

    Source
    ------
    Definition of NOCT, IEC 61215. [from memory]
    """
    require("irradiance, W/m2,", irradiance_w_m2, 0.0, 1400.0, SOURCE)
    return air_c + cell_temperature_rise(irradiance_w_m2, noct_c)


def cell_temperature_in_wind(
    irradiance_w_m2: float, air_c: float, wind_m_s: float, noct_c: float, efficiency: float
) -> float:
    """Temperature of the cells from NOCT, corrected for wind and for the power taken out. [°C]

    ``T = T_air + G/800 (NOCT - 20) (1 - eta/0.9) 9.5 / (5.7 + 3.8 * 0.51 v)``; wind at 10 m height,
    module low above the ground, air moving freely behind it.

    Source
    ------
    Gilman and others, SAM photovoltaic model technical reference, 2018. [from memory]
    """
    require("irradiance, W/m2,", irradiance_w_m2, 0.0, 1400.0, SOURCE)
    require("wind, m/s,", wind_m_s, 0.0, 60.0, SOURCE)
    require("efficiency", efficiency, 0.0, 0.9, SOURCE)
    loss = 9.5 / (5.7 + 3.8 * 0.51 * wind_m_s)
    return cell_temperature_rise(irradiance_w_m2, noct_c) * (1.0 - efficiency / 0.9) * loss + air_c


def cell_temperature_rise(irradiance_w_m2: float, noct_c: float) -> float:
    """Rise of the cells above the air by NOCT alone, ``(NOCT - 20) G / 800``. [K]"""
    return (noct_c - NOCT_AMBIENT_C) * irradiance_w_m2 / NOCT_W_M2


def module_temperature_in_wind(
    irradiance_w_m2: float, air_c: float, wind_m_s: float, still: float, per_wind: float
) -> float:
    """Temperature of a module from heat loss factors, ``T = T_air + G / (u0 + u1 v)``. [°C]

    ``still`` is u0 [W/(m2 K)], ``per_wind`` u1 [W s/(m3 K)]. Source: Faiman, 2008. [from memory]
    """
    require("irradiance, W/m2,", irradiance_w_m2, 0.0, 1400.0, SOURCE)
    loss = require_positive("heat loss factor, W/(m2 K),", still + per_wind * wind_m_s, SOURCE)
    return air_c + irradiance_w_m2 / loss


def module_power(stc_w: float, irradiance_w_m2: float, cell_c: float, per_k: float) -> float:
    """Power of a module or array at its best point. [W]

    ``P = P_stc G / 1000 (1 + gamma (T - 25))``; ``per_k`` the relative coefficient of power. [1/K]
    """
    require("cell temperature, °C,", cell_c, *CELL_C_RANGE, SOURCE)
    require("irradiance, W/m2,", irradiance_w_m2, 0.0, 1400.0, SOURCE)
    return stc_w * irradiance_w_m2 / STC_W_M2 * (1.0 + per_k * (cell_c - STC_C))


def combined_loss(losses: Sequence[float]) -> float:
    """Loss of several losses one after the other, ``1 - prod(1 - l)``. [1]"""
    for loss in losses:
        require("loss", loss, 0.0, 1.0, SOURCE)
    return 1.0 - math.prod(1.0 - loss for loss in losses)
