"""Batteries: voltage under load, current into a short, rested voltage, discharge time.

Capacity is in ampere-seconds (1 Ah = 3600 A s). A discharging current is positive.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.outofrange import require, require_positive
from checker.physics.interpolation import linear
from checker.physics.tables import table

HOUR_S = 3600.0
SOURCE = "battery as a source of constant electromotive force behind a resistance"
PEUKERT_SOURCE = "Peukert's law"
PEUKERT_RANGE = (1.0, 1.6)  # exponents met in practice; common practice, no source


class Source(NamedTuple):
    """Electromotive force [V] behind a resistance [ohm]."""

    emf_v: float
    resistance_ohm: float


def series_parallel(unit: Source, series: int, parallel: int, link_ohm: float = 0.0) -> Source:
    """Equal units in series strings, strings in parallel. [V], [ohm]

    ``E = s e``, ``R = s r / p + R_links``

    Parameters
    ----------
    unit : electromotive force and resistance of one unit.
    series, parallel : units in a string, and strings. [1]
    link_ohm : further resistance of links and leads, in series with the whole. [ohm]

    Valid for
    ---------
    Equal units at equal state of charge.
    """
    require("units in series", series, 1, 10_000, SOURCE)
    require("strings in parallel", parallel, 1, 10_000, SOURCE)
    require("link resistance, ohm,", link_ohm, 0.0, float("inf"), SOURCE)
    return Source(series * unit.emf_v, series * unit.resistance_ohm / parallel + link_ohm)


def in_parallel(sources: tuple[Source, ...]) -> Source:
    """Unlike sources joined at their terminals, as one (Millman). [V], [ohm]

    ``R = 1 / sum(1/r)``, ``E = R sum(e/r)``; every resistance above 0.
    """
    conductance = 0.0
    current_a = 0.0
    for source in sources:
        require_positive("internal resistance, ohm,", source.resistance_ohm, SOURCE)
        conductance += 1.0 / source.resistance_ohm
        current_a += source.emf_v / source.resistance_ohm
    require_positive("number of sources", float(len(sources)), SOURCE)
    return Source(current_a / conductance, 1.0 / conductance)


def fault_current(emf_v: float, resistance_ohm: float) -> float:
    """Steady current of a source into a bolted short, ``I = E / R``. [A]

    Parameters
    ----------
    emf_v : electromotive force, rested voltage. [V]
    resistance_ohm : of source, links and conductors up to and back from the fault, above 0. [ohm]

    Not included: the disconnection by a battery management, arc voltage, inductance.
    """
    require_positive("resistance of the fault path, ohm,", resistance_ohm, SOURCE)
    return emf_v / resistance_ohm


def load_current(emf_v: float, internal_ohm: float, load_ohm: float) -> float:
    """Current of a source into a resistive load, ``I = E / (r + R)``. [A]"""
    return fault_current(emf_v, internal_ohm + load_ohm)


def terminal_voltage(emf_v: float, internal_ohm: float, current_a: float) -> float:
    """Voltage at the terminals, ``V = E - I r``; a charging current is negative. [V]"""
    return emf_v - current_a * internal_ohm


def internal_resistance(emf_v: float, terminal_v: float, current_a: float) -> float:
    """Internal resistance from rested voltage and voltage at a current, ``r = (E - V) / I``. [ohm]"""
    require("size of the current, A,", abs(current_a), 1e-12, float("inf"), SOURCE)
    return (emf_v - terminal_v) / current_a


def fault_time_constant(inductance_h: float, resistance_ohm: float) -> float:
    """Time constant of the rise of a direct fault current, ``L / R``. [s]"""
    require_positive("resistance of the fault path, ohm,", resistance_ohm, SOURCE)
    return inductance_h / resistance_ohm


def lfp_cell_voltage(soc: float) -> tuple[float, float]:
    """Rested voltage of one lithium iron phosphate cell, least and greatest. [V]

    Straight lines between the rows, plus and minus their uncertainty.

    Parameters
    ----------
    soc : state of charge, 0 to 1. [1]

    Valid for
    ---------
    25 °C, rested for hours. From 20 % to 95 % the curve is so flat that voltage says little of charge.

    Source
    ------
    General knowledge of the cell type. [from memory]
    """
    published = table("lfp_cell_voltage")
    percent = 100.0 * soc
    name = "state of charge, %,"
    middle = linear(name, percent, published.pairs("soc_percent", "cell_v"), published.source)
    spread = linear(name, percent, published.pairs("soc_percent", "plus_minus_v"), published.source)
    return middle - spread, middle + spread


def peukert_time(capacity_as: float, rated_time_s: float, current_a: float, exponent: float) -> float:
    """Time to discharge a battery at a steady current. [s]

    ``t = H (C / (H I))^k``

    Parameters
    ----------
    capacity_as : capacity at the rated discharge time. [A s]
    rated_time_s : rated discharge time H, for instance 20 h = 72000 s. [s]
    current_a : discharge current. [A]
    exponent : Peukert exponent k. [1]

    Valid for
    ---------
    Exponents 1 to 1.6, one steady current, the temperature of the rating.

    Source
    ------
    Peukert's law, in the form for a rated time.
    """
    require_positive("capacity, A s,", capacity_as, PEUKERT_SOURCE)
    require_positive("rated time, s,", rated_time_s, PEUKERT_SOURCE)
    require_positive("discharge current, A,", current_a, PEUKERT_SOURCE)
    require("Peukert exponent", exponent, *PEUKERT_RANGE, PEUKERT_SOURCE)
    return rated_time_s * float((capacity_as / (rated_time_s * current_a)) ** exponent)


def peukert_time_one_ampere(peukert_capacity_h: float, current_a: float, exponent: float) -> float:
    """Time to discharge, the capacity given as the one-ampere Peukert capacity. [s]

    ``t = Cp / I^k`` with Cp in A^k h: not the capacity at a rated time, see `peukert_time`.
    """
    require_positive("discharge current, A,", current_a, PEUKERT_SOURCE)
    require("Peukert exponent", exponent, *PEUKERT_RANGE, PEUKERT_SOURCE)
    return HOUR_S * peukert_capacity_h / float(current_a**exponent)


def delivered_capacity(time_s: float, current_a: float) -> float:
    """Charge delivered by a steady current, ``Q = I t``. [A s]"""
    return time_s * current_a
