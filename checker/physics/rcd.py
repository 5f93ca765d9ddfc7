"""Residual-current devices: trip limits and the rating an electrode allows."""

from __future__ import annotations

from typing import NamedTuple

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.tables import table

TRIP = "rcd_trip_limits"
TOUCH_LIMIT_V = 50.0  # IEC 60364-4-41, dry places [from memory]


class TripLimits(NamedTuple):
    """Least and greatest trip time at a residual current; either None where no limit is set. [s]"""

    min_s: float | None
    max_s: float | None


def trip_limits(device: str, standard: str, multiple: float) -> TripLimits:
    """Limits of the trip time at a tabulated multiple of the rated residual current. [s]

    Parameters
    ----------
    device : for instance 'general (no delay)' or 'selective S'.
    standard : for instance 'IEC 61008-1 / 61009-1'.
    multiple : 1, 2 or 5 as the standard prints; nothing is taken between. [1]

    Source
    ------
    The standard named, marks by row. At half the rated current a device must not trip.
    """
    published = table(TRIP)
    for row in published.rows:
        if (row["device"], row["standard"]) == (device, standard) and float(row["multiple"]) == multiple:
            return TripLimits(_number(row["min_s"]), _number(row["max_s"]))
    known = "; ".join(f"{row['device']}, {row['standard']}, {row['multiple']}" for row in published.rows)
    raise OutOfRange(
        "residual-current device", f"{device}, {standard}, {multiple:g}", f"the rows {known}", published.source
    )


def ground_fault_interrupter_time(current_a: float) -> float:
    """Longest trip time of a class A ground-fault interrupter. [s]

    ``t = (20 mA / I)^1.43``; valid from 6 mA to 264 mA. Source: UL 943. [from memory]
    """
    require("residual current, A,", current_a, 0.006, 0.264, "UL 943 [from memory]")
    return float((0.020 / current_a) ** 1.43)


def greatest_rating(electrode_ohm: float, touch_limit_v: float) -> float:
    """Greatest rated residual current for an earth electrode, ``I = U_L / R_A``. [A]

    Parameters
    ----------
    electrode_ohm : electrode and protective conductor together. [ohm]
    touch_limit_v : 50 V in dry places. [V]

    Source
    ------
    IEC 60364-4-41 411.5.3. [from memory]
    """
    require_positive("resistance of the electrode, ohm,", electrode_ohm, "IEC 60364-4-41 411.5.3 [from memory]")
    return touch_limit_v / electrode_ohm


def _number(cell: str) -> float | None:
    return float(cell) if cell else None
