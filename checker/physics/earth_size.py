"""Protective conductors sized by table from their line conductor.

Areas are SI, m²; the table is printed in mm².
"""

from __future__ import annotations

from checker.outofrange import OutOfRange
from checker.physics.tables import table


def earth_by_table(line_m2: float) -> float:
    """Least cross-section of a copper protective conductor for a copper line conductor. [m²]

    The row of the line; between two rows that of the next larger line, which never asks for less.

    Parameters
    ----------
    line_m2 : cross-section of the line conductor. [m²]

    Valid for
    ---------
    Copper, above 0 and up to 70 mm². Larger lines and other metals are not included.

    Source
    ------
    AS/NZS 3000, Table 5.1, 2018. [from memory]
    """
    published = table("earth_area_as_nzs")
    line_mm2 = line_m2 * 1e6
    if line_mm2 > 0:
        for row in published.rows:
            if line_mm2 <= float(row["line_mm2"]) * (1 + 1e-9):
                return float(row["earth_mm2"]) * 1e-6
    raise OutOfRange("line conductor", f"{line_mm2:g} mm2", "above 0 and up to 70 mm2", published.source)
