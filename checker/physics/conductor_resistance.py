"""Direct-current resistance of copper conductors, by standard size or by formula.

Resistance is that of one conductor per metre of its own length: a two-wire circuit
counts go and return. Areas are m2 of nominal cross-section unless said otherwise.
"""

from __future__ import annotations

from functools import cache

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.tables import table

COPPER_RESISTIVITY_20C_OHM_M = 1.7241e-8  # IEC 60028, as used in the NBS copper wire tables [seen]
COPPER_PER_K_AT_20C = 0.00393  # the same [seen]
COPPER_C_RANGE = (-60.0, 260.0)  # the straight line in temperature; common practice, no source
COPPER_SOURCE = "annealed copper, IEC 60028 as used in the NBS copper wire tables [seen]"
FORMULA_SOURCE = "resistivity over area; " + COPPER_SOURCE
AREA_MATCH = 1e-6  # relative: rounding of unit conversion, not a tolerance on size

COLUMNS = {
    "class 2": ("conductor_resistance_iec60228", "class2_plain"),
    "class 2 tinned": ("conductor_resistance_iec60228", "class2_tinned"),
    "class 5": ("conductor_resistance_iec60228", "class5_plain"),
    "class 5 tinned": ("conductor_resistance_iec60228", "class5_tinned"),
    "road vehicle": ("conductor_resistance_iso6722", "bare"),
}


def copper_resistivity(conductor_c: float) -> float:
    """Resistivity of annealed copper at a temperature. [ohm m]

    ``rho(T) = rho20 * (1 + alpha20 * (T - 20))``

    Parameters
    ----------
    conductor_c : temperature of the conductor, not of the air. [°C]

    Valid for
    ---------
    Annealed copper (100 % IACS), -60 to 260 °C.

    Source
    ------
    rho20 = 1.7241e-8 ohm m and alpha20 = 0.00393 /K: IEC 60028, NBS copper wire tables. [seen]
    """
    return COPPER_RESISTIVITY_20C_OHM_M * copper_temperature_factor(conductor_c)


def copper_temperature_factor(conductor_c: float) -> float:
    """Resistance at a temperature over resistance at 20 °C, copper. [1]

    ``1 + alpha20 * (T - 20)``; parameters, validity and source as `copper_resistivity`.
    """
    require("conductor temperature, °C,", conductor_c, *COPPER_C_RANGE, COPPER_SOURCE)
    return 1.0 + COPPER_PER_K_AT_20C * (conductor_c - 20.0)


def resistance_at_temperature(
    resistance_ohm: float, reference_c: float, conductor_c: float, per_k_at_reference: float
) -> float:
    """Resistance of a conductor brought from one temperature to another. [ohm]

    ``R = R0 * (1 + alpha0 * (T - T0))``

    Parameters
    ----------
    resistance_ohm : resistance at the reference temperature. [ohm]
    reference_c : temperature at which resistance and coefficient are given. [°C]
    conductor_c : temperature wanted. [°C]
    per_k_at_reference : temperature coefficient at the reference temperature. [1/K]

    Valid for
    ---------
    Metals where the straight line holds; the result must be above zero.

    Source
    ------
    Definition of the temperature coefficient of resistance.
    """
    factor = 1.0 + per_k_at_reference * (conductor_c - reference_c)
    require_positive("resistance factor", factor, "straight line in temperature")
    return resistance_ohm * factor


def temperature_from_resistance(
    resistance_ohm: float, reference_ohm: float, reference_c: float, per_k_at_reference: float
) -> float:
    """Temperature of a conductor from its resistance. [°C]

    ``T = T0 + (R/R0 - 1) / alpha0``: the reverse of `resistance_at_temperature`.
    """
    require_positive("reference resistance, ohm,", reference_ohm, "straight line in temperature")
    return reference_c + (resistance_ohm / reference_ohm - 1.0) / per_k_at_reference


def resistance_of(resistivity_ohm_m: float, length_m: float, area_m2: float) -> float:
    """Resistance of a conductor of uniform section. [ohm]

    ``R = rho * L / A``, with rho in ohm m, L in m along the conductor, A in m2 of metal.
    """
    require_positive("conductor area, m2,", area_m2, FORMULA_SOURCE)
    return resistivity_ohm_m * length_m / area_m2


def copper_resistance_per_metre(area_m2: float, conductor_c: float) -> float:
    """Resistance per metre of pure copper of a true metal area, for gauge sizes. [ohm/m]

    ``R' = rho(T) / A``

    Parameters
    ----------
    area_m2 : area of metal, not the nominal size of a metric cable. [m2]
    conductor_c : temperature of the conductor. [°C]

    Valid for
    ---------
    Annealed copper, -60 to 260 °C, direct current. Not included: lay of the strands and
    tinning, which add 2 to 16 % in cables as sold.

    Source
    ------
    As `copper_resistivity`.
    """
    require_positive("conductor area, m2,", area_m2, FORMULA_SOURCE)
    return copper_resistivity(conductor_c) / area_m2


def table_resistance_per_metre(area_m2: float, kind: str, conductor_c: float) -> float:
    """Greatest resistance per metre a cable of a standard nominal area may have. [ohm/m]

    ``R' = R'20(table) * (1 + alpha20 * (T - 20))``

    Parameters
    ----------
    area_m2 : nominal area; must be a size of the table, nothing is taken between sizes. [m2]
    kind : 'class 2', 'class 2 tinned', 'class 5', 'class 5 tinned' or 'road vehicle'.
    conductor_c : temperature of the conductor. [°C]

    Valid for
    ---------
    The sizes of the table, direct current, -60 to 260 °C.

    Source
    ------
    IEC 60228:2004 tables 2 and 3 [seen]; ISO 6722-1 for 'road vehicle' [from memory].
    """
    if kind not in COLUMNS:
        raise OutOfRange("kind of conductor", kind, ", ".join(COLUMNS), "tables of conductor resistance")
    for area, resistance in _column(kind):
        if abs(area - area_m2) <= AREA_MATCH * area:
            return resistance * copper_temperature_factor(conductor_c)
    sizes = ", ".join(f"{area * 1e6:g}" for area, _ in _column(kind))
    raise OutOfRange("conductor area, mm2,", area_m2 * 1e6, f"the sizes {sizes}", resistance_source(kind))


def table_sizes(kind: str) -> tuple[float, ...]:
    """Nominal areas of a table of resistance, rising. [m2]"""
    return tuple(area for area, _ in _column(kind))


def resistance_source(kind: str) -> str:
    """Document behind a kind of conductor, ready to print."""
    return table(COLUMNS[kind][0]).source


@cache
def _column(kind: str) -> tuple[tuple[float, float], ...]:
    name, column = COLUMNS[kind]
    return tuple((area, ohm_per_km * 1e-3) for area, ohm_per_km in table(name).pairs("area_mm2", column, -6))
