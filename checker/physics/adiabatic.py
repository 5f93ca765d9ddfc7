"""Short-time heating of a conductor by fault current, no heat leaving it.

``I^2 t = k^2 S^2``. Holds while the current flows too briefly for heat to escape: up to 5 s.
"""

from __future__ import annotations

import math

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.tables import table

LONGEST_S = 5.0
SOURCE = "adiabatic equation, IEC 60364-4-43 434.5.2 [from memory]"
PVC_FINAL_C = 160.0  # PVC up to 300 mm2, end of a short circuit [seen]
THERMOSET_FINAL_C = 250.0  # XLPE and EPR [seen]
THERMOSET_FROM_C = 125.0  # no PVC is rated so high; common practice, no source
INSULATION_RANGE_C = (60.0, 200.0)


def k_constant(use: str, insulation: str) -> float:
    """Published constant k of a copper conductor. [A s^0.5 / m2]

    Parameters
    ----------
    use : 'live conductor or core in cable', 'separate protective conductor', or a bare case of the table.
    insulation : name as in the table of k, for instance 'PVC 70 C up to 300 mm2'.

    Source
    ------
    IEC 60364-4-43 table 43A and IEC 60364-5-54 annex A. [from memory]
    """
    published = table("adiabatic_k")
    for row in published.rows:
        if row["use"] == use and row["insulation"] == insulation:
            return float(row["k"]) * 1e6
    known = "; ".join(f"{row['use']}, {row['insulation']}" for row in published.rows)
    raise OutOfRange("use and insulation", f"{use}, {insulation}", f"the rows {known}", published.source)


def k_from_temperatures(metal: str, start_c: float, final_c: float) -> float:
    """Constant k from the temperatures before and after the fault. [A s^0.5 / m2]

    ``k = sqrt(Qc (beta + 20) / rho20 * ln((beta + T_final) / (beta + T_start)))``

    Parameters
    ----------
    metal : 'copper', 'aluminium', 'lead' or 'steel'.
    start_c : temperature before the fault. [°C]
    final_c : temperature the insulation stands for a short time. [°C]

    Valid for
    ---------
    Start -60 °C to final, final up to 500 °C.

    Source
    ------
    IEC 60364-5-54 annex A, equation and constants. [seen]
    """
    published = table("adiabatic_constants")
    rows = {row["metal"]: row for row in published.rows}
    if metal not in rows:
        raise OutOfRange("metal", metal, ", ".join(rows), published.source)
    require("final temperature, °C,", final_c, -60.0, 500.0, published.source)
    require("start temperature, °C,", start_c, -60.0, final_c, published.source)
    beta = float(rows[metal]["beta_c"])
    heat_j_per_k_m3 = float(rows[metal]["volumetric_heat_j_per_c_mm3"]) * 1e9
    resistivity_ohm_m = float(rows[metal]["resistivity_20c_ohm_mm"]) * 1e-3
    rise = math.log((beta + final_c) / (beta + start_c))
    return math.sqrt(heat_j_per_k_m3 * (beta + 20.0) / resistivity_ohm_m * rise)


def k_for_insulation(insulation_c: float) -> float:
    """Constant k of a live copper conductor of which only the temperature rating is known. [A s^0.5 / m2]

    The conductor starts at its full rating. It ends at 160 °C, the limit of PVC, because the
    material is not known, or at 250 °C from a rating of 125 °C on, which no PVC reaches.

    Parameters
    ----------
    insulation_c : temperature rating of the insulation. [°C]

    Valid for
    ---------
    60 to 200 °C, up to 300 mm2. Not monotone at 125 °C: do not take it at the ends of a range.

    Source
    ------
    IEC 60364-5-54 annex A, equation, constants and final temperatures. [seen]
    """
    require("insulation temperature rating, °C,", insulation_c, *INSULATION_RANGE_C, SOURCE)
    final_c = PVC_FINAL_C if insulation_c < THERMOSET_FROM_C else THERMOSET_FINAL_C
    return k_from_temperatures("copper", insulation_c, final_c)


def withstand_energy(area_m2: float, k: float) -> float:
    """Greatest let-through energy a conductor stands, ``k^2 S^2``. [A2 s]

    Parameters: area S [m2], k [A s^0.5 / m2]. Valid where the device opens within 5 s.
    Source: IEC 60364-4-43 434.5.2. [from memory]
    """
    require_positive("conductor area, m2,", area_m2, SOURCE)
    return (k * area_m2) ** 2


def withstand_time(area_m2: float, k: float, fault_a: float) -> float:
    """Longest time a conductor stands a fault current. [s]

    ``t = (k S / I)^2``

    Parameters
    ----------
    area_m2 : cross-section S of metal. [m2]
    k : constant of conductor and insulation. [A s^0.5 / m2]
    fault_a : steady rms or direct fault current I. [A]

    Valid for
    ---------
    Results up to 5 s: after that heat escapes and the equation no longer describes it.

    Source
    ------
    IEC 60364-4-43 434.5.2. [from memory]
    """
    require_positive("fault current, A,", fault_a, SOURCE)
    time_s = withstand_energy(area_m2, k) / fault_a**2
    return require("withstand time, s,", time_s, 0.0, LONGEST_S, SOURCE)


def least_area(fault_a: float, time_s: float, k: float) -> float:
    """Smallest cross-section that stands a fault current for a time. [m2]

    ``S = I sqrt(t) / k``

    Parameters
    ----------
    fault_a : steady rms or direct fault current. [A]
    time_s : time until the device has opened, up to 5 s. [s]
    k : constant of conductor and insulation. [A s^0.5 / m2]

    Source
    ------
    IEC 60364-4-43 434.5.2. [from memory]
    """
    require("time, s,", time_s, 0.0, LONGEST_S, SOURCE)
    require_positive("k, A s^0.5/m2,", k, SOURCE)
    return fault_a * math.sqrt(time_s) / k


def adiabatic_rise(energy_j: float, mass_kg: float, specific_heat_j_per_kgk: float) -> float:
    """Temperature rise of a mass that keeps all the heat put into it. [K]

    ``dT = E / (m c)``
    """
    require_positive("heat capacity, J/K,", mass_kg * specific_heat_j_per_kgk, "heat balance without losses")
    return energy_j / (mass_kg * specific_heat_j_per_kgk)
