"""Steady heat balance of an insulated conductor in still air: what current holds it at a temperature.

Heat made in the metal crosses the insulation and leaves its surface by natural convection
and by radiation to surroundings at the temperature of the air. One horizontal conductor,
or a round bunch of equal conductors that all carry the same current.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from checker.outofrange import require, require_positive
from checker.physics.conductor_resistance import copper_resistance_per_metre

STEFAN_BOLTZMANN_W_M2K4 = 5.670374419e-8  # SI, exact
KELVIN_AT_0C = 273.15
GRAVITY_M_S2 = 9.80665
PRANDTL_AIR = 0.71  # dry air -40 to 150 °C; general handbook value, from memory
AIR_C_RANGE = (-40.0, 205.0)  # of air and surface, where the air properties below hold
RAYLEIGH_RANGE = (1e-5, 1e12)  # Churchill and Chu, horizontal cylinder
SURFACE_EMISSIVITY = 0.9  # plastics; common practice, no source
INSULATION_W_PER_MK = 0.17  # PVC; common practice, no source
STRAND_RATIO = 1.15  # diameter over that of a solid rod; common practice, no source
RESISTANCE_RATIO = 1.16  # greatest class 5 resistance over pure copper, IEC 60228:2004 [seen]
WALL_FLOOR_M = 0.5e-3  # insulation wall: floor plus a share of the diameter;
WALL_SHARE = 0.10  # general-purpose single cores, common practice, no source
BUNCH_FILLING = 0.7  # share of a bunch's circle that is cable; common practice, no source
SOURCE = "steady heat balance: Churchill and Chu (1975) natural convection and grey radiation [from memory]"


class Cable(NamedTuple):
    """Round single-core cable: diameters over the conductor and over the insulation. [m]"""

    conductor_m: float
    outer_m: float


def typical_cable(area_m2: float) -> Cable:
    """Diameters of an ordinary flexible single core of a metal area. [m]

    ``d = 1.15 * sqrt(4 A / pi)``, wall ``0.5 mm + 0.10 d``: common practice, no source.

    Parameters
    ----------
    area_m2 : cross-section of metal. [m2]
    """
    require_positive("conductor area, m2,", area_m2, SOURCE)
    conductor = STRAND_RATIO * math.sqrt(4.0 * area_m2 / math.pi)
    return Cable(conductor, conductor * (1.0 + 2.0 * WALL_SHARE) + 2.0 * WALL_FLOOR_M)


def convection_w_per_m2(surface_c: float, air_c: float, diameter_m: float) -> float:
    """Heat carried off by natural convection from a horizontal cylinder. [W/m2]

    ``Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2``, air taken at film temperature.

    Parameters
    ----------
    surface_c, air_c : temperature of surface and of still air; surface not below air. [°C]
    diameter_m : outer diameter. [m]

    Valid for
    ---------
    -40 to 205 °C, Rayleigh number 1e-5 to 1e12, sea level, no wind.

    Source
    ------
    Churchill and Chu, 1975; air properties by Sutherland's law. [from memory]
    """
    require("air temperature, °C,", air_c, *AIR_C_RANGE, SOURCE)
    require("surface temperature, °C,", surface_c, air_c, AIR_C_RANGE[1], SOURCE)
    require_positive("diameter, m,", diameter_m, SOURCE)
    rise = surface_c - air_c
    if rise == 0.0:
        return 0.0
    film_k = KELVIN_AT_0C + (surface_c + air_c) / 2.0
    viscosity_m2_s, conductivity = _air(film_k)
    rayleigh = GRAVITY_M_S2 * rise / film_k * diameter_m**3 / viscosity_m2_s**2 * PRANDTL_AIR
    # Below the range of the correlation the heat is carried by conduction alone (Nu tends to 0.36),
    # which the formula gives too; only the upper bound can mislead.
    require("Rayleigh number", rayleigh, 0.0, RAYLEIGH_RANGE[1], SOURCE)
    damping = (1.0 + (0.559 / PRANDTL_AIR) ** (9.0 / 16.0)) ** (8.0 / 27.0)
    nusselt: float = (0.60 + 0.387 * rayleigh ** (1.0 / 6.0) / damping) ** 2
    return nusselt * conductivity / diameter_m * rise


def radiation_w_per_m2(surface_c: float, surroundings_c: float, emissivity: float) -> float:
    """Net heat radiated by a small grey surface to large surroundings. [W/m2]

    ``q = epsilon * sigma * (Ts^4 - Ta^4)`` with absolute temperatures.
    """
    require("emissivity", emissivity, 0.0, 1.0, SOURCE)
    surface_k, surroundings_k = surface_c + KELVIN_AT_0C, surroundings_c + KELVIN_AT_0C
    return emissivity * STEFAN_BOLTZMANN_W_M2K4 * (surface_k**4 - surroundings_k**4)


def surface_heat_w_per_m(surface_c: float, air_c: float, diameter_m: float) -> float:
    """Heat leaving a metre of a round surface by convection and radiation. [W/m]"""
    flux = convection_w_per_m2(surface_c, air_c, diameter_m)
    flux += radiation_w_per_m2(surface_c, air_c, SURFACE_EMISSIVITY)
    return math.pi * diameter_m * flux


def heat_balance_current(area_m2: float, conductor_c: float, ambient_c: float, bunched: int) -> float:
    """Current each conductor can carry for ever when its metal may reach a temperature. [A]

    Per metre and conductor ``I^2 R'(T) = (T - Ts) / Rth`` with ``Rth = ln(D/d) / (2 pi k)``,
    and ``n I^2 R'(T) = pi D_n (q_convection(Ts) + q_radiation(Ts))``; solved for the surface
    temperature ``Ts`` by halving.

    Parameters
    ----------
    area_m2 : nominal cross-section of one conductor. [m2]
    conductor_c : temperature the metal may reach, that is the rating of the insulation. [°C]
    ambient_c : temperature of the air around. [°C]
    bunched : number of equally loaded conductors in one round bunch; 1 is a single one. [1]

    Valid for
    ---------
    Copper, still air at sea level, -40 to 205 °C, conductor not cooler than the air. Resistance is
    1.16 times that of pure copper of the nominal area, the worst of IEC 60228 class 5.
    Not included: heat flow inside a bunch (its middle runs warmer), sun, conduit, thermal insulation.

    Source
    ------
    Churchill and Chu (1975) [from memory]; diameters, wall and emissivity: common practice, no source.
    """
    require("ambient temperature, °C,", ambient_c, *AIR_C_RANGE, SOURCE)
    require("conductor temperature, °C,", conductor_c, ambient_c, AIR_C_RANGE[1], SOURCE)
    require("number of conductors in a bunch", bunched, 1, 1000, SOURCE)
    cable = typical_cable(area_m2)
    wall_k_per_w = math.log(cable.outer_m / cable.conductor_m) / (2.0 * math.pi * INSULATION_W_PER_MK)
    bunch_m = cable.outer_m * (math.sqrt(bunched / BUNCH_FILLING) if bunched > 1 else 1.0)
    low, high = ambient_c, conductor_c
    for _ in range(60):
        surface_c = (low + high) / 2.0
        leaving = surface_heat_w_per_m(surface_c, ambient_c, bunch_m) / bunched
        if leaving < (conductor_c - surface_c) / wall_k_per_w:
            low = surface_c
        else:
            high = surface_c
    heat = surface_heat_w_per_m(low, ambient_c, bunch_m) / bunched
    resistance = RESISTANCE_RATIO * copper_resistance_per_metre(area_m2, conductor_c)
    return math.sqrt(heat / resistance)


def wire_current(
    conductor: Cable, insulation_w_per_mk: float, surface_w_per_m2k: float, rise_k: float, resistance_ohm_per_m: float
) -> float:
    """Current that heats a covered wire by a rise, with a given heat loss of its surface. [A]

    ``I^2 R' = dT / (ln(D/d) / (2 pi k) + 1 / (pi D h))``

    Parameters
    ----------
    conductor : diameters over metal and over the cover. [m]
    insulation_w_per_mk : conductivity k of the cover. [W/(m K)]
    surface_w_per_m2k : heat loss h of the surface, convection and radiation together. [W/(m2 K)]
    rise_k : metal above air. [K]
    resistance_ohm_per_m : of the hot metal. [ohm/m]
    """
    require("rise, K,", rise_k, 0.0, math.inf, "steady heat balance")
    require_positive("resistance, ohm/m,", resistance_ohm_per_m, "steady heat balance")
    wall = math.log(conductor.outer_m / conductor.conductor_m) / (2.0 * math.pi * insulation_w_per_mk)
    surface = 1.0 / (math.pi * conductor.outer_m * surface_w_per_m2k)
    return math.sqrt(rise_k / (wall + surface) / resistance_ohm_per_m)


def conductor_temperature(ambient_c: float, limit_c: float, current_a: float, capacity_a: float) -> float:
    """Steady temperature of a conductor that carries part of its capacity. [°C]

    ``T = T_ambient + (T_limit - T_ambient) (I / I_capacity)^2``; the capacity is that at this
    ambient temperature. Slightly low for part load, since a cooler surface sheds heat less well.

    Parameters
    ----------
    ambient_c, limit_c : of the air, and of the metal at the capacity. [°C]
    current_a, capacity_a : current, 0 up to the capacity. [A]
    """
    require_positive("carrying capacity, A,", capacity_a, SOURCE)
    require("current, A,", abs(current_a), 0.0, capacity_a, SOURCE)
    return ambient_c + (limit_c - ambient_c) * (current_a / capacity_a) ** 2


def estimated_conductor_temperature(ambient_c: float, limit_c: float, current_a: float, capacity_a: float) -> float:
    """High estimate of the temperature of a loaded conductor. [°C]

    ``T = T_ambient + (T_limit - T_ambient) sqrt(I / I_capacity)``; parameters as `conductor_temperature`.
    Source: FAA AC 43.13-1B 11-66d(6). [from memory]
    """
    require_positive("carrying capacity, A,", capacity_a, SOURCE)
    require("current, A,", current_a, 0.0, capacity_a, SOURCE)
    return ambient_c + (limit_c - ambient_c) * math.sqrt(current_a / capacity_a)


def _air(film_k: float) -> tuple[float, float]:
    """Kinematic viscosity [m2/s] and thermal conductivity [W/(m K)] of dry air at sea level."""
    viscosity = 1.716e-5 * (film_k / 273.15) ** 1.5 * (273.15 + 110.4) / (film_k + 110.4)
    density = 353.0 / film_k
    return viscosity / density, viscosity * 1006.0 / PRANDTL_AIR
