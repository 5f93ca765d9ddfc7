"""Continuous current of mains cables as installed: tables by method, with ambient and grouping factors.

Reference methods of IEC 60364-5-52: A1 and A2 in an insulated wall, B1 and B2 in conduit or
trunking, C clipped to a surface, E multi-core in free air. The number 1 means single cores
in conduit, 2 a multi-core cable.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from checker.outofrange import OutOfRange, require
from checker.physics.carrying_capacity import BASE_C, Factor, insulated_length_factor
from checker.physics.interpolation import linear, log_log, nearest_key, row_at_or_above
from checker.physics.tables import table

INSTALLED = "carrying_capacity_installed"
AMBIENT = "ambient_factor_installed"
GROUPING = "grouping_factor_installed"
SAME_SIZE = 1e-6  # relative: rounding of unit conversion
METHODS = ("A1", "A2", "B1", "B2", "C", "E")
ARRANGEMENTS = (
    "bunched_in_air_or_enclosed",
    "single_layer_wall_floor_unperforated_tray",
    "single_layer_under_ceiling",
    "single_layer_perforated_tray",
    "single_layer_ladder_cleats",
)


class InstalledCapacity(NamedTuple):
    """Capacity of a cable as installed and how it came about. [A]"""

    current_a: float
    table_a: float
    factors: tuple[Factor, ...]
    source: str


def insulation_column(insulation_c: float) -> str:
    """Table column for a temperature rating: 'XLPE_90C' from 90 °C on, else 'PVC_70C' from 70 °C on."""
    require("insulation temperature rating, °C,", insulation_c, 70.0, 250.0, table(INSTALLED).source)
    return "XLPE_90C" if insulation_c >= 90.0 else "PVC_70C"


def table_capacity(area_m2: float, insulation_c: float, method: str, loaded_conductors: int) -> float:
    """Tabulated current of a copper cable, alone, in air of 30 °C. [A]

    A size between two rows is taken on the straight line between them on log-log paper, so it
    stays at or below the next larger row.

    Parameters
    ----------
    area_m2 : nominal cross-section of one conductor. [m2]
    insulation_c : temperature rating; 90 °C and above use the 90 °C column, 70 °C to 90 °C the 70 °C one. [°C]
    method : 'A1', 'A2', 'B1', 'B2', 'C' or 'E'.
    loaded_conductors : 2 (direct current, single-phase) or 3. [1]

    Valid for
    ---------
    1.5 to 120 mm2.

    Source
    ------
    IEC 60364-5-52 tables B.52.2 to B.52.5, B.52.10, B.52.12. [seen or from memory, by row]
    """
    if method not in METHODS:
        raise OutOfRange("reference method", method, ", ".join(METHODS), table(INSTALLED).source)
    require("loaded conductors", loaded_conductors, 2, 3, table(INSTALLED).source)
    column = _column(insulation_column(insulation_c), method, loaded_conductors)
    size_m2 = nearest_key(area_m2, column, SAME_SIZE)
    return log_log("conductor area, m2,", size_m2, column, table(INSTALLED).source)


def ambient_factor(insulation_c: float, ambient_c: float) -> float:
    """Published factor by temperature of the air, above 1 in cooler air. [1]

    Straight line between rows. Valid from 10 °C to 60 °C (70 °C insulation) or 80 °C (90 °C insulation).
    Source: IEC 60364-5-52 table B.52.14. [from memory]
    """
    column = "xlpe_90" if insulation_column(insulation_c) == "XLPE_90C" else "pvc_70"
    published = table(AMBIENT)
    return linear("ambient temperature, °C,", ambient_c, published.pairs("ambient_c", column), published.source)


def grouping_factor(circuits: int, arrangement: str) -> float:
    """Published factor for circuits grouped together; between rows the next row up. [1]

    Parameters
    ----------
    circuits : loaded circuits or multi-core cables together, this one included. [1]
    arrangement : 'bunched_in_air_or_enclosed' or one of the single layers in ARRANGEMENTS.

    Source
    ------
    IEC 60364-5-52 table B.52.17. [from memory]
    """
    published = table(GROUPING)
    pairs = tuple(
        sorted(
            (float(row["circuits"]), float(row["factor"]))
            for row in published.rows
            if row["arrangement"] == arrangement
        )
    )
    if not pairs:
        raise OutOfRange("arrangement", arrangement, ", ".join(ARRANGEMENTS), published.source)
    require("number of circuits", circuits, 1, pairs[-1][0], published.source)
    return row_at_or_above("number of circuits", circuits, pairs, published.source)


def installed_capacity(
    area_m2: float,
    insulation_c: float,
    method: str,
    loaded_conductors: int,
    ambient_c: float,
    circuits: int,
    in_insulation_m: float = 0.0,
) -> InstalledCapacity:
    """Current a mains cable may carry for ever where it lies, with the working. [A]

    ``I = I_table * k_ambient * k_grouping * k_insulation``; below 30 °C no credit is taken.

    Parameters
    ----------
    area_m2, insulation_c, method, loaded_conductors : as `table_capacity`.
    ambient_c : highest temperature of the air around the cable. [°C]
    circuits : loaded circuits bunched together, this one included. [1]
    in_insulation_m : length wholly surrounded by thermal insulation. [m]

    Source
    ------
    IEC 60364-5-52 [by row]; BS 7671 table 52.2 for thermal insulation [from memory].
    """
    table_a = table_capacity(area_m2, insulation_c, method, loaded_conductors)
    ambient = 1.0 if ambient_c <= BASE_C else ambient_factor(insulation_c, ambient_c)
    factors = (
        Factor("ambient", ambient, table(AMBIENT).source),
        Factor("grouping", grouping_factor(circuits, ARRANGEMENTS[0]), table(GROUPING).source),
        Factor(
            "thermal insulation", insulated_length_factor(in_insulation_m), table("thermal_insulation_factor").source
        ),
    )
    current_a = table_a
    for factor in factors:
        current_a *= factor.value
    return InstalledCapacity(current_a, table_a, factors, table(INSTALLED).source)


@cache
def _column(insulation: str, method: str, loaded_conductors: int) -> tuple[tuple[float, float], ...]:
    return tuple(
        sorted(
            (float(row["area_mm2"] + "e-6"), float(row["current_a"]))
            for row in table(INSTALLED).rows
            if (row["insulation"], row["method"], row["loaded_conductors"])
            == (insulation, method, str(loaded_conductors))
        )
    )
