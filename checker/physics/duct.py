"""Cables in a duct: how much of its opening they fill, and the width they need beside each other."""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.outofrange import require, require_positive

SOURCE = "geometry of round cables in an opening"


def round_area(diameter_m: float) -> float:
    """Area of a circle, ``pi d^2 / 4``. [m2]"""
    require("diameter, m,", diameter_m, 0.0, math.inf, SOURCE)
    return math.pi * diameter_m**2 / 4.0


def fill(diameters_m: Sequence[float], opening_m2: float) -> float:
    """Share of an opening that round cables fill, the sum of their areas over its own. [1]

    ``sum(pi d^2 / 4) / A``; over 1 they do not go in. Air between round cables is not counted as filled.
    """
    require_positive("clear opening, m2,", opening_m2, SOURCE)
    return sum(round_area(one) for one in diameters_m) / opening_m2


def width_beside(diameters_m: Sequence[float], play: float) -> float:
    """Width that cables need beside each other, each with some play. [m]

    ``sum(d (1 + play))``

    Parameters
    ----------
    play : of the diameter of each, 0.1 for a tenth. [1]
    """
    require("play", play, 0.0, 1.0, SOURCE)
    return sum(diameters_m) * (1.0 + play)
