"""Voltage and power lost along conductors in steady state.

``length_m`` is one-way along the route unless the name says ``loop``; resistance per metre
is that of one conductor unless it says ``loop``. A negative current flows back to the source
and turns the sign of the drop. Fuses, switches and joints are not included.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from checker.outofrange import require, require_positive

SOURCE = "Ohm's law along a uniform conductor"


def drop_over(resistance_ohm: float, current_a: float) -> float:
    """Voltage lost in a resistance, ``V = I R``. [V]"""
    return resistance_ohm * current_a


def loss_in(resistance_ohm: float, current_a: float) -> float:
    """Power lost in a resistance, ``P = I^2 R``. [W]"""
    return current_a**2 * resistance_ohm


def dc_voltage_drop(current_a: float, length_m: float, resistance_ohm_per_m: float) -> float:
    """Voltage lost in the two conductors of a direct-current circuit. [V]

    ``V = 2 I L R'``

    Parameters
    ----------
    current_a : steady current. [A]
    length_m : one-way length along the route, 0 or more. [m]
    resistance_ohm_per_m : resistance of one conductor at its working temperature; both alike. [ohm/m]

    Source
    ------
    Ohm's law.
    """
    require("length, m,", length_m, 0.0, math.inf, SOURCE)
    return 2.0 * current_a * length_m * resistance_ohm_per_m


def single_wire_drop(current_a: float, length_m: float, resistance_ohm_per_m: float) -> float:
    """Voltage lost in one conductor over its whole length, ``V = I L R'``; also for a loop length. [V]"""
    require("length, m,", length_m, 0.0, math.inf, SOURCE)
    return current_a * length_m * resistance_ohm_per_m


def ac_voltage_drop(
    current_a: float, length_m: float, resistance_ohm_per_m: float, reactance_ohm_per_m: float, power_factor: float
) -> float:
    """Voltage lost in a single-phase circuit, lagging load. [V]

    ``V = 2 I L (R' cos phi + X' sin phi)``: the drop in phase with the voltage at the load.

    Parameters
    ----------
    current_a : rms current. [A]
    length_m : one-way length along the route, 0 or more. [m]
    resistance_ohm_per_m, reactance_ohm_per_m : of one conductor. [ohm/m]
    power_factor : displacement power factor of the load, 0 to 1, lagging. [1]

    Source
    ------
    IEC 60364-5-52 annex G, with b = 2 for single-phase. [from memory]
    """
    require("length, m,", length_m, 0.0, math.inf, SOURCE)
    require("power factor", power_factor, 0.0, 1.0, SOURCE)
    sine = math.sqrt(1.0 - power_factor**2)
    return 2.0 * current_a * length_m * (resistance_ohm_per_m * power_factor + reactance_ohm_per_m * sine)


def drop_share(drop_v: float, nominal_v: float) -> float:
    """Drop over the nominal voltage of the circuit. [1]"""
    require_positive("nominal voltage, V,", nominal_v, SOURCE)
    return drop_v / nominal_v


def resistance_for_loss_share(voltage_v: float, current_a: float, share: float) -> float:
    """Resistance that loses a share of a voltage at a current, ``R = share V / I``. [ohm]"""
    require_positive("current, A,", current_a, SOURCE)
    return share * voltage_v / current_a


def area_for_drop(current_a: float, length_m: float, resistivity_ohm_m: float, drop_v: float) -> float:
    """Cross-section of metal that keeps a two-wire drop at a value. [m2]

    ``A = 2 rho I L / V``

    Parameters
    ----------
    current_a, length_m : as `dc_voltage_drop`.
    resistivity_ohm_m : of the metal at its working temperature. [ohm m]
    drop_v : allowed drop, above 0. [V]
    """
    require_positive("allowed drop, V,", drop_v, SOURCE)
    return 2.0 * resistivity_ohm_m * current_a * length_m / drop_v


def uniform_load_drop(load_a_per_m: float, length_m: float, loop_ohm_per_m: float, fed_at_both_ends: bool) -> float:
    """Greatest drop along a feeder loaded evenly over its length. [V]

    ``V = q r L^2 / 2`` at the far end when fed at one end, ``q r L^2 / 8`` in the middle when
    fed at both ends at equal voltage.

    Parameters
    ----------
    load_a_per_m : current taken per metre. [A/m]
    length_m : route length. [m]
    loop_ohm_per_m : resistance of go and return together. [ohm/m]
    """
    require("length, m,", length_m, 0.0, math.inf, SOURCE)
    return load_a_per_m * loop_ohm_per_m * length_m**2 / (8.0 if fed_at_both_ends else 2.0)


def tapped_feeder_drop(
    taps: Sequence[tuple[float, float]], load_a_per_m: float, length_m: float, loop_ohm_per_m: float, at_m: float
) -> float:
    """Drop from the fed end to a point of a feeder with tapped and evenly spread loads. [V]

    ``V(x) = r (sum I_k min(x_k, x) + q (L x - x^2 / 2))``

    Parameters
    ----------
    taps : distance from the fed end and current of each tapped load. [m], [A]
    load_a_per_m : further load spread over the whole length. [A/m]
    length_m : route length. [m]
    loop_ohm_per_m : resistance of go and return together. [ohm/m]
    at_m : where the drop is wanted, 0 to the length. [m]

    Source
    ------
    Ohm's law, loads superposed.
    """
    require("distance, m,", at_m, 0.0, length_m, SOURCE)
    tapped = sum(current_a * min(distance_m, at_m) for distance_m, current_a in taps)
    spread = load_a_per_m * (length_m * at_m - at_m**2 / 2.0)
    return loop_ohm_per_m * (tapped + spread)
