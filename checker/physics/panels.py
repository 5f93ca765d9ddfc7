"""Heat through flat panels, and panels in the sun: steady state, one dimension."""

from __future__ import annotations

import math

from checker.outofrange import require, require_positive

INSIDE_M2K_W = 0.13  # resistance of the still air at an inner surface, ISO 6946, heat flowing sideways [seen]
OUTSIDE_M2K_W = 0.04  # of moving air at an outer surface, ISO 6946 [seen]
ABSORBED = 0.9  # dark surface; general handbook value, from memory
BRIGHT_SUN_W_M2 = 1000.0  # the irradiance of standard test conditions of solar modules, IEC 61215 [from memory]
SOURCE = "ISO 6946, thermal transmittance of a panel [seen: U = 1 / (R_si + d/λ + R_se)]"
SUN_SOURCE = "sol-air temperature [seen], exchange with the sky left out"

CONDUCTIVITY_W_MK = {
    "steel": (50.0, 50.0),
    "aluminium": (160.0, 160.0),
    "plywood": (0.09, 0.24),
    "timber": (0.12, 0.18),
    "plastic": (0.16, 0.5),
    "mineral board": (0.16, 0.35),
    "foam": (0.022, 0.045),
    "composite": (0.03, 0.35),
}
"""Material -> least and greatest conductivity. After the design values of ISO 10456, from memory; composite: from a
foam core with thin skins to solid laminate, common practice, no source."""


def panel_transmittance(thickness_m: float, conductivity_w_mk: float, outer_m2k_w: float = INSIDE_M2K_W) -> float:
    """Heat through a panel for each square metre and kelvin. [W/(m2 K)]

    ``U = 1 / (R_si + d / λ + R_outer)``

    Parameters
    ----------
    thickness_m, conductivity_w_mk : of the panel. [m], [W/(m K)]
    outer_m2k_w : resistance of the air at its other face: 0.13 in still air within the vehicle, 0.04 outside. [m2 K/W]

    Valid for
    ---------
    One even layer; frames and screws, which let more heat through, are not included.

    Source
    ------
    ISO 6946. [seen]
    """
    require("thickness, m,", thickness_m, 0.0, math.inf, SOURCE)
    require_positive("conductivity, W/(m K),", conductivity_w_mk, SOURCE)
    require_positive("resistance of the outer air, m2 K/W,", outer_m2k_w, SOURCE)
    return 1.0 / (INSIDE_M2K_W + thickness_m / conductivity_w_mk + outer_m2k_w)


def box_surface(x_m: float, y_m: float, z_m: float) -> float:
    """The six faces of a box. [m2]"""
    for name, size in (("x", x_m), ("y", y_m), ("z", z_m)):
        require(f"size along {name}, m,", size, 0.0, math.inf, SOURCE)
    return 2.0 * (x_m * y_m + y_m * z_m + x_m * z_m)


def sun_rise(absorbed: float = ABSORBED, sun_w_m2: float = BRIGHT_SUN_W_M2) -> float:
    """How much warmer than the air a surface in the sun gets at most. [K]

    ``ΔT = α I R_se``, the part of the sol-air temperature above the air; wind as in ISO 6946 (about 4 m/s).
    """
    require("absorbed share", absorbed, 0.0, 1.0, SUN_SOURCE)
    require("sunshine, W/m2,", sun_w_m2, 0.0, 1500.0, SUN_SOURCE)
    return absorbed * sun_w_m2 * OUTSIDE_M2K_W
