"""Least bending radius of a cable by standard, and the length a moving loop needs."""

from __future__ import annotations

import math

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.tables import table

BEND = "cable_bend_radius"


def bend_factor(outer_diameter_m: float, rule: str, cable: str, use: str) -> float:
    """Least inner bending radius over the outer diameter. [1]

    Parameters
    ----------
    outer_diameter_m : over the sheath or the insulation. [m]
    rule, cable, use : a row of the table of bending radii, for instance 'DIN VDE 0298-3',
        'flexible to 0.6/1 kV', 'free movement'.

    Source
    ------
    The rule itself; marks by row.
    """
    require_positive("outer diameter, m,", outer_diameter_m, rule)
    published = table(BEND)
    diameter_mm = outer_diameter_m * 1e3
    for row in published.rows:
        if (row["rule"], row["cable"], row["use"]) != (rule, cable, use):
            continue
        if diameter_mm > float(row["above_mm"]) and (not row["up_to_mm"] or diameter_mm <= float(row["up_to_mm"])):
            return float(row["radius_over_diameter"])
    known = "; ".join(dict.fromkeys(f"{row['rule']}, {row['cable']}, {row['use']}" for row in published.rows))
    raise OutOfRange("bending case", f"{rule}, {cable}, {use}", f"the rows {known}", published.source)


def bend_radius(outer_diameter_m: float, rule: str, cable: str, use: str) -> float:
    """Least inner bending radius, `bend_factor` times the outer diameter. [m]"""
    return bend_factor(outer_diameter_m, rule, cable, use) * outer_diameter_m


def flexible_radius(outer_diameter_m: float, use: str) -> float:
    """Least inner bending radius of a flexible cable up to 0.6/1 kV. [m]

    ``use`` is a row of the table: fixed, free movement, drag chain. Source: DIN VDE 0298-3. [seen]
    """
    return bend_radius(outer_diameter_m, "DIN VDE 0298-3", "flexible to 0.6/1 kV", use)


def loop_radius(free_length_m: float, span_m: float) -> float:
    """Radius of a hanging half-circle loop between two fixed points at the same side. [m]

    A loop of free length L whose ends stand a span s apart along the travel: the half circle
    takes what the straight parts leave, ``r = (L - s) / pi``.

    Valid for
    ---------
    Span 0 to the free length; weight and stiffness of the cable not included.
    """
    require("span of the loop, m,", span_m, 0.0, free_length_m, "geometry of a half-circle loop")
    return (free_length_m - span_m) / math.pi
