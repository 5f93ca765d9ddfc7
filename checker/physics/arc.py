"""Opening a contact on direct current: the arc that carries on, and the energy it takes."""

from __future__ import annotations

from checker.outofrange import require, require_positive

SOURCE = "arc of constant voltage in a circuit of resistance and inductance (circuit theory)"


def loop_inductance(length_m: float, per_metre_h: float) -> float:
    """Inductance of a run there and back. [H]"""
    require("length, m,", length_m, 0.0, float("inf"), SOURCE)
    return length_m * per_metre_h


def arc_time(arc_v: float, supply_v: float, current_a: float, inductance_h: float) -> float:
    """Time until an arc has died, ``t = L I / (U_a - U)``, the load left out. [s]

    Parameters
    ----------
    arc_v : voltage of the arc, above the supply; otherwise it never dies and there is no number. [V]
    """
    over_v = require_positive("arc voltage above the supply, V,", arc_v - supply_v, SOURCE)
    require("inductance, H,", inductance_h, 0.0, float("inf"), SOURCE)
    return inductance_h * current_a / over_v


def arc_energy(arc_v: float, supply_v: float, current_a: float, inductance_h: float) -> float:
    """Energy of the arc, ``W = L I^2 / 2 · U_a / (U_a - U)``: more than the inductance held, the source adds. [J]

    Parameters as `arc_time`. The current falls in a straight line, the resistance of the load left out, so the answer
    errs upwards.
    """
    return arc_v * current_a * arc_time(arc_v, supply_v, current_a, inductance_h) / 2.0
