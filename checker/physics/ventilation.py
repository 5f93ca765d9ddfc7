"""Air and heat in a place: hydrogen from batteries, flow by warm air rising, temperature of a box.

Flows are m3/s. Warm air rising needs a low and a high opening; a closed box has none.
"""

from __future__ import annotations

import math

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.tables import table

HOUR_S = 3600.0
HYDROGEN_M3_PER_AH = 0.42e-3  # EN 50272-2, at 0 °C [seen]
DILUTION = 24.0  # EN 50272-2: hydrogen kept below 4 % by volume [seen]
SAFETY = 5.0  # EN 50272-2 [seen]
FLOW_M3_PER_AH = 0.05  # their product as the standard prints it, 0.0504 rounded [seen]
VENT_M2_PER_M3_S = 28e-4 * HOUR_S  # EN 50272-2: 28 cm2 for each m3/h, inlet and again outlet [seen]
FREE_VOLUME_PER_FLOW = 2.5  # EN 50272-3: m3 for each m3/h [seen]
HYDROGEN_SOURCE = "EN 50272-2 / IEC 62485-2 [seen]"
GRAVITY_M_S2 = 9.80665
AIR_J_PER_KGK = 1006.0  # general handbook value, from memory
AIR_DENSITY_K = 353.0  # density of air = 353 / absolute temperature, sea level [from memory]
KELVIN_AT_0C = 273.15
DISCHARGE = 0.6  # sharp-edged opening; general handbook value, from memory
WALL_W_PER_M2K = 5.0  # thin wall in still air inside and out; common practice, no source
STACK_SOURCE = "stack effect between two openings [from memory]"
BOX_SOURCE = "steady heat balance of a box, wall 5 W/(m2 K): common practice, no source"
CLOSE_MM = 28.8  # EN 50272-2 / IEC 62485-2 [from memory]


def gassing_current(standard: str, cell_type: str, charge_mode: str, capacity_as: float) -> float:
    """Current of a cell that turns water into gas while charging. [A]

    ``I = I_gas C``

    Parameters
    ----------
    standard, cell_type, charge_mode : a row of the table of gassing currents.
    capacity_as : capacity of the cell. [A s]

    Source
    ------
    EN 50272-2 [from memory], EN 50272-3 [seen].
    """
    published = table("battery_gassing_current")
    for row in published.rows:
        if (row["standard"], row["cell_type"], row["charge_mode"]) == (standard, cell_type, charge_mode):
            return float(row["igas_ma_per_ah"]) * 1e-3 * capacity_as / HOUR_S
    known = "; ".join(f"{row['standard']}, {row['cell_type']}, {row['charge_mode']}" for row in published.rows)
    raise OutOfRange("cell", f"{standard}, {cell_type}, {charge_mode}", f"the rows {known}", published.source)


def hydrogen_airflow(cells: int, gassing_a: float) -> float:
    """Air needed to keep the hydrogen of a battery below 4 % by volume, five times over. [m3/s]

    ``Q = 0.05 n I_gas`` m3/h with I_gas in A

    Parameters
    ----------
    cells : cells in series; strings in parallel count by their summed capacity. [1]
    gassing_a : gassing current of a cell. [A]

    Source
    ------
    EN 50272-2 / IEC 62485-2. [seen]
    """
    require("number of cells", cells, 1, 10_000, HYDROGEN_SOURCE)
    require("gassing current, A,", gassing_a, 0.0, math.inf, HYDROGEN_SOURCE)
    return FLOW_M3_PER_AH * cells * gassing_a / HOUR_S


def hydrogen_flow_constant(dilution: float, hydrogen_m3_per_ah: float, safety: float) -> float:
    """Air for each ampere of gassing current and cell, ``v q s``. [m3/h per A and cell]"""
    return dilution * hydrogen_m3_per_ah * safety


def hydrogen_evolved(cells: int, current_a: float, volume_per_ah: float) -> float:
    """Hydrogen made in an hour by an overcharge current, ``n I q``. [volume of volume_per_ah, per hour]"""
    return cells * current_a * volume_per_ah


def hydrogen_per_ampere_hour(faraday_c_per_mol: float, molar_m3: float) -> float:
    """Hydrogen evolved per ampere-hour and cell, two electrons a molecule. [m3/Ah]

    ``q = 3600 V_m / (2 F)``
    """
    require_positive("Faraday constant, C/mol,", faraday_c_per_mol, "Faraday's law")
    return HOUR_S * molar_m3 / (2.0 * faraday_c_per_mol)


def hydrogen_vent_area(airflow_m3_s: float) -> float:
    """Free area of the inlet, and again of the outlet, for natural ventilation. [m2]

    ``A = 28 cm2`` for each m3/h. Source: EN 50272-2 / IEC 62485-2. [seen]
    """
    require("airflow, m3/s,", airflow_m3_s, 0.0, math.inf, HYDROGEN_SOURCE)
    return VENT_M2_PER_M3_S * airflow_m3_s


def opening_for_flow(airflow_m3_s: float, speed_m_s: float) -> float:
    """Free area through which a flow passes at a speed, ``A = Q / v``. [m2]"""
    require_positive("air speed, m/s,", speed_m_s, STACK_SOURCE)
    return airflow_m3_s / speed_m_s


def hydrogen_free_volume(airflow_m3_s: float) -> float:
    """Least free volume of a battery room, 2.5 times the hourly flow. [m3]

    Source: EN 50272-3. [seen]
    """
    return FREE_VOLUME_PER_FLOW * airflow_m3_s * HOUR_S


def hydrogen_close_range(gassing_a: float) -> float:
    """Distance from a cell vent within which nothing may spark. [m]

    ``d = 28.8 mm * cbrt(I_gas C)`` with the product in mA. Source: EN 50272-2 / IEC 62485-2. [from memory]
    """
    require("gassing current, A,", gassing_a, 0.0, math.inf, HYDROGEN_SOURCE)
    return CLOSE_MM * 1e-3 * math.cbrt(gassing_a * 1e3)


def stack_flow(low_m2: float, high_m2: float, height_m: float, inside_c: float, outside_c: float) -> float:
    """Air that rises through a place by its warmth. [m3/s]

    ``Q = C_d A sqrt(2 g h (T_in - T_out) / T_in)`` with ``A`` from ``1/A^2 = 1/A_low^2 + 1/A_high^2``;
    temperatures absolute.

    Parameters
    ----------
    low_m2, high_m2 : free areas of the low and the high opening. [m2]
    height_m : between the middles of the openings. [m]
    inside_c, outside_c : air temperatures, inside not below outside. [°C]

    Valid for
    ---------
    Still air outside, two openings to the same air, -60 to 150 °C.

    Source
    ------
    Stack effect with a discharge coefficient of 0.6. [from memory]
    """
    require("opening, m2,", low_m2, 0.0, math.inf, STACK_SOURCE)
    require("opening, m2,", high_m2, 0.0, math.inf, STACK_SOURCE)
    require("height between openings, m,", height_m, 0.0, 20.0, STACK_SOURCE)
    require("outside temperature, °C,", outside_c, -60.0, 150.0, STACK_SOURCE)
    require("inside temperature, °C,", inside_c, outside_c, 150.0, STACK_SOURCE)
    if low_m2 == 0.0 or high_m2 == 0.0:
        return 0.0
    area = low_m2 * high_m2 / math.hypot(low_m2, high_m2)
    inside_k = inside_c + KELVIN_AT_0C
    speed = math.sqrt(2.0 * GRAVITY_M_S2 * height_m * (inside_c - outside_c) / inside_k)
    return DISCHARGE * area * speed


def closed_box_rise(loss_w: float, wall_m2: float) -> float:
    """Rise of the air in a closed box above the air around it. [K]

    ``dT = P / (U A)`` with U = 5 W/(m2 K)

    Parameters
    ----------
    loss_w : heat made inside. [W]
    wall_m2 : walls that give heat off; leave out those against insulation or ground. [m2]

    Valid for
    ---------
    Thin walls, steady state; rises up to 100 K. Sun is not included.

    Source
    ------
    U: common practice, no source.
    """
    require("loss, W,", loss_w, 0.0, math.inf, BOX_SOURCE)
    require_positive("wall area, m2,", wall_m2, BOX_SOURCE)
    return require("rise, K,", loss_w / (WALL_W_PER_M2K * wall_m2), 0.0, 100.0, BOX_SOURCE)


def vented_box_rise(
    loss_w: float, wall_m2: float, low_m2: float, high_m2: float, height_m: float, outside_c: float
) -> float:
    """Rise of the air in a box with a low and a high opening above the air outside. [K]

    Solves ``P = U A dT + rho c Q(dT) dT`` for dT by halving, Q by `stack_flow`.

    Parameters, validity and sources: as `closed_box_rise` and `stack_flow`; rises up to 100 K.
    """
    require("wall area, m2,", wall_m2, 0.0, math.inf, BOX_SOURCE)
    found = steady_rise(loss_w, WALL_W_PER_M2K * wall_m2, low_m2, high_m2, height_m, 0.0, outside_c)
    if found > 100.0:
        raise OutOfRange("loss, W,", loss_w, "losses that warm the box by at most 100 K", BOX_SOURCE)
    return found


def steady_rise(
    loss_w: float,
    walls_w_k: float,
    low_m2: float,
    high_m2: float,
    height_m: float,
    fan_m3_s: float,
    outside_c: float,
) -> float:
    """Rise of the air in a place above the air around it, once it changes no more. [K]

    Solves ``P = H dT + rho c (Q_stack(dT) + Q_fan) dT`` for dT by halving. Infinite when even air of 150 °C does
    not carry the loss away, which is where the flow formula ends.

    Parameters
    ----------
    loss_w : heat made inside. [W]
    walls_w_k : conductance of all its walls, area times transmittance. [W/K]
    low_m2, high_m2, height_m : openings and the height between them. [m2], [m2], [m]
    fan_m3_s : air that a fan moves through it, 0 without one. [m3/s]
    outside_c : the air around it and at its openings. [°C]

    Valid for
    ---------
    Well mixed air, no sun on the walls, no wind; the two flows are taken to add.

    Source
    ------
    Steady balance of heat; stack effect as in `stack_flow`.
    """
    require("loss, W,", loss_w, 0.0, math.inf, BOX_SOURCE)
    require("conductance of the walls, W/K,", walls_w_k, 0.0, math.inf, BOX_SOURCE)
    require("flow of the fan, m3/s,", fan_m3_s, 0.0, math.inf, BOX_SOURCE)
    require("air around, °C,", outside_c, -60.0, 150.0, BOX_SOURCE)
    if loss_w == 0.0 or math.inf in (walls_w_k, fan_m3_s):
        return 0.0
    heat_j_m3k = AIR_DENSITY_K / (outside_c + KELVIN_AT_0C) * AIR_J_PER_KGK

    def carried(rise_k: float) -> float:
        flow = stack_flow(low_m2, high_m2, height_m, outside_c + rise_k, outside_c) + fan_m3_s
        return (walls_w_k + heat_j_m3k * flow) * rise_k

    low, high = 0.0, 150.0 - outside_c
    if carried(high) < loss_w:
        return math.inf
    for _ in range(60):
        middle = (low + high) / 2.0
        low, high = (middle, high) if carried(middle) < loss_w else (low, middle)
    return high


def airflow_for_rise(loss_w: float, rise_k: float, density_kg_m3: float, heat_j_per_kgk: float) -> float:
    """Air that carries a loss away at a temperature rise, ``P / (rho c dT)``. [m3/s]"""
    require_positive("rise, K,", rise_k, BOX_SOURCE)
    return loss_w / (density_kg_m3 * heat_j_per_kgk * rise_k)


def wind_flow(opening_m2: float, speed_m_s: float, coefficient: float) -> float:
    """Air driven through open openings by wind, ``k v A``. [m3/s]"""
    require("coefficient", coefficient, 0.0, 1.0, "wind-driven ventilation")
    return coefficient * speed_m_s * opening_m2


def air_changes(airflow_m3_s: float, volume_m3: float) -> float:
    """Air changes per hour. [1/h]"""
    require_positive("volume, m3,", volume_m3, "definition of air changes")
    return airflow_m3_s * HOUR_S / volume_m3


def orifice_flow(area_m2: float, coefficient: float, pressure_pa: float, density_kg_m3: float) -> float:
    """Flow through a sharp opening under a small pressure, ``C_d A sqrt(2 dp / rho)``. [m3/s]"""
    require("pressure, Pa,", pressure_pa, 0.0, math.inf, "flow through an orifice")
    require_positive("density, kg/m3,", density_kg_m3, "flow through an orifice")
    return coefficient * area_m2 * math.sqrt(2.0 * pressure_pa / density_kg_m3)
