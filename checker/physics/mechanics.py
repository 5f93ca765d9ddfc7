"""Levers, masses and belts: axle loads, restraint of equipment, belt speed."""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.outofrange import require, require_positive

GRAVITY_M_S2 = 9.80665
LEVER_SOURCE = "balance of moments"


def support_shares(position_m: float, wheelbase_m: float) -> tuple[float, float]:
    """Shares of a mass that stand on the near and on the far support. [1]

    ``far = x / L``, ``near = 1 - x / L``: beyond either support one share is negative.

    Parameters
    ----------
    position_m : from the near support towards the far one. [m]
    wheelbase_m : between the supports. [m]
    """
    require_positive("distance between supports, m,", wheelbase_m, LEVER_SOURCE)
    far = position_m / wheelbase_m
    return 1.0 - far, far


def axle_masses(masses: Sequence[tuple[float, float]], wheelbase_m: float) -> tuple[float, float]:
    """Mass on the front and on the rear axle of masses along the vehicle. [kg]

    Lever rule. ``masses`` holds mass [kg] and its distance behind the front axle [m] (negative: ahead).
    The vehicle stands level and at rest; front positions raise the front load.
    """
    rear = sum(mass_kg * support_shares(position_m, wheelbase_m)[1] for mass_kg, position_m in masses)
    return sum(mass_kg for mass_kg, _ in masses) - rear, rear


def balance_distance(moments_kgm: float, mass_kg: float) -> float:
    """Distance from a pivot at which a mass balances a moment, ``r = M / m``. [m]"""
    require_positive("mass, kg,", mass_kg, LEVER_SOURCE)
    return moments_kgm / mass_kg


def weight(mass_kg: float, gravity_m_s2: float = GRAVITY_M_S2) -> float:
    """Weight of a mass, ``F = m g``. [N]"""
    return mass_kg * gravity_m_s2


def restraint_force(mass_kg: float, acceleration_g: float) -> float:
    """Force a restraint must hold when a mass is decelerated. [N]

    ``F = m a g``

    Parameters
    ----------
    mass_kg : mass held. [kg]
    acceleration_g : in multiples of 9.80665 m/s2; the code of practice says which. [1]

    Friction is not counted on.
    """
    require("acceleration, g,", acceleration_g, 0.0, 100.0, "Newton's second law")
    return mass_kg * acceleration_g * GRAVITY_M_S2


def driven_speed(driver_speed: float, driver_diameter_m: float, driven_diameter_m: float, slip: float = 0.0) -> float:
    """Speed of a driven pulley, in the unit of the driver's speed.

    ``n2 = n1 d1 / d2 (1 - slip)``

    Parameters
    ----------
    driver_speed : rev/min or any other unit of rotation.
    driver_diameter_m, driven_diameter_m : pitch diameters. [m]
    slip : share of speed lost in the belt, 0 to below 1. [1]
    """
    require_positive("driven diameter, m,", driven_diameter_m, "belt drive")
    require("slip", slip, 0.0, math.nextafter(1.0, 0.0), "belt drive")
    return driver_speed * driver_diameter_m / driven_diameter_m * (1.0 - slip)


def lifting_energy(mass_kg: float, height_m: float, gravity_m_s2: float = GRAVITY_M_S2) -> float:
    """Energy to lift a mass, ``m g h``. [J]"""
    return mass_kg * gravity_m_s2 * height_m


def motion_energy(mass_kg: float, speed_m_s: float) -> float:
    """Energy of a moving mass, ``m v^2 / 2``. [J]"""
    return mass_kg * speed_m_s**2 / 2.0
