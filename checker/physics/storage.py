"""Lead-acid batteries: rested voltage by state of charge, and how much charge they still take."""

from __future__ import annotations

from checker.outofrange import require

HOUR_S = 3600.0
SOURCE = "usual data of lead-acid batteries"
CHARGE_CELL_V = 2.4  # absorption voltage of a cell; common practice, no source
FULL_V, HALF_V = (2.10, 2.142), (2.00, 2.042)  # 12.6 to 12.85 V and 12.0 to 12.25 V for six cells [from memory]


def lead_acid_cell_voltage(soc: float) -> tuple[float, float]:
    """Rested voltage of one lead-acid cell, least and greatest. [V]

    A straight line through the voltages of a full and a half charged battery.

    Parameters
    ----------
    soc : state of charge, 0 to 1. [1]

    Valid for
    ---------
    25 °C, rested for hours; below 20 % the line is a guess.

    Source
    ------
    Usual data of makers: 12.6 to 12.85 V full, 12.0 to 12.25 V half charged, for six cells. [from memory]
    """
    require("state of charge", soc, 0.0, 1.0, SOURCE)
    part = (soc - 0.5) / 0.5
    return HALF_V[0] + part * (FULL_V[0] - HALF_V[0]), HALF_V[1] + part * (FULL_V[1] - HALF_V[1])


def lead_acid_acceptance(capacity_as: float, soc: float) -> float:
    """Current a lead-acid battery takes at 2.4 V a cell. [A]

    ``I = (0.01 + 0.25 (1 - soc)) C / 1 h``: a full one takes a hundredth of its capacity an hour.

    Parameters
    ----------
    capacity_as : rated capacity. [A s]
    soc : state of charge, 0 to 1. [1]

    Source
    ------
    Common practice, no source; age and temperature change it by a factor.
    """
    require("state of charge", soc, 0.0, 1.0, SOURCE)
    return (0.01 + 0.25 * (1.0 - soc)) * capacity_as / HOUR_S
