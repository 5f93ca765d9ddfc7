"""Demand on a supply shared by loads that do not all run at once."""

from __future__ import annotations

from collections.abc import Sequence

from checker.outofrange import require, require_positive

SOURCE = "definitions of demand and diversity factor"


def demand(connected_w: float, demand_factor: float) -> float:
    """Greatest demand of a connected load, ``P * demand factor``. [W]"""
    require("demand factor", demand_factor, 0.0, 1.0, SOURCE)
    return connected_w * demand_factor


def group_demand(greatest_w: Sequence[float], diversity_factor: float) -> float:
    """Demand of a group from the greatest demands of its members. [W]

    ``D = sum(P_k) / F`` with the diversity factor F of 1 or more.
    """
    require("diversity factor", diversity_factor, 1.0, 100.0, SOURCE)
    return sum(greatest_w) / diversity_factor


def diversity_factor(greatest_w: Sequence[float], together_w: float) -> float:
    """Sum of the members' greatest demands over the greatest demand together. [1]"""
    require_positive("demand together, W,", together_w, SOURCE)
    return sum(greatest_w) / together_w


def coincidence_factor(greatest_w: Sequence[float], together_w: float) -> float:
    """Greatest demand together over the sum of the members': 1 over the diversity factor. [1]"""
    require_positive("sum of demands, W,", sum(greatest_w), SOURCE)
    return together_w / sum(greatest_w)


def supply_current(power_w: float, voltage_v: float, power_factor: float = 1.0) -> float:
    """Current of a single-phase demand, ``I = P / (U cos phi)``. [A]"""
    require("power factor", power_factor, 1e-6, 1.0, SOURCE)
    require_positive("voltage, V,", voltage_v, SOURCE)
    return power_w / (voltage_v * power_factor)
