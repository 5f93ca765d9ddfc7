"""Voltages a battery may be charged at, by chemistry and number of cells."""

from __future__ import annotations

import math

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.tables import table

TABLE = "battery_charge_voltage"
LABEL_SLACK = 1.07  # a "12 V" lithium iron phosphate battery has 12.8 V; common practice, no source
CHEMISTRIES = "the chemistries of the table of charge voltages"


def cell_voltage(chemistry: str, column: str) -> float:
    """Voltage of one cell: `column` is nominal, full (rested) or highest (while charging). [V]

    Valid for
    ---------
    The chemistries of the table, 25 °C.

    Raises
    ------
    OutOfRange : the table has no such chemistry.
    """
    published = table(TABLE)
    for row in published.rows:
        if row["chemistry"] == chemistry:
            return float(row[column])
    raise OutOfRange("chemistry", chemistry, CHEMISTRIES, published.source)


def charge_window(chemistry: str, cells: float) -> tuple[float, float]:
    """Least voltage that can fill a battery and greatest it may see while charging. [V]

    ``U = n u``; below the rested voltage of a full battery a charger never fills it.

    Parameters
    ----------
    chemistry : as in the table of charge voltages.
    cells : cells in series. [1]

    Source
    ------
    Usual data of battery makers; common practice, no source.
    """
    require("cells in series", cells, 1, 1000, table(TABLE).source)
    return cells * cell_voltage(chemistry, "full"), cells * cell_voltage(chemistry, "highest")


def cells_for(chemistry: str, nominal_v: float) -> tuple[int, int]:
    """Fewest and most cells in series that a nominal voltage can stand for. [1]

    The name of a battery may be lower than its true nominal voltage by some percent: 12 V for 12.8 V. 48 V of
    lithium iron phosphate may be 15 or 16 cells.

    Raises
    ------
    OutOfRange : no number of cells of this chemistry makes that voltage.
    """
    require_positive("nominal voltage, V,", nominal_v, "number of cells")
    cell = cell_voltage(chemistry, "nominal")
    fewest = math.ceil(nominal_v / cell - 1e-9)
    most = math.floor(nominal_v * LABEL_SLACK / cell + 1e-9)
    if most < fewest:
        raise OutOfRange("nominal voltage, V,", nominal_v, f"a whole number of cells of {cell:g} V", "number of cells")
    return fewest, most
