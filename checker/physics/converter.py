"""Converters and inverters: input current, power balance, loss, choppers."""

from __future__ import annotations

import math

from checker.outofrange import require, require_positive

SOURCE = "power balance of a converter"


def dc_input_current(output_w: float, input_v: float, efficiency: float) -> float:
    """Direct current a converter draws, greatest at its lowest input voltage. [A]

    ``I = P / (eta U)``

    Parameters
    ----------
    output_w : power delivered. [W]
    input_v : voltage at the input terminals. [V]
    efficiency : at this load, above 0, up to 1. [1]

    Ripple current and the draw at no load are not included.
    """
    require_positive("efficiency", efficiency, SOURCE)
    require("efficiency", efficiency, 0.0, 1.0, SOURCE)
    require_positive("input voltage, V,", input_v, SOURCE)
    return output_w / (efficiency * input_v)


def output_power(input_w: float, efficiency: float) -> float:
    """Power delivered, ``P_out = eta P_in``. [W]"""
    require("efficiency", efficiency, 0.0, 1.0, SOURCE)
    return input_w * efficiency


def loss(output_w: float, efficiency: float) -> float:
    """Heat a converter makes while delivering a power, ``P (1/eta - 1)``. [W]"""
    require_positive("efficiency", efficiency, SOURCE)
    require("efficiency", efficiency, 0.0, 1.0, SOURCE)
    return output_w * (1.0 / efficiency - 1.0)


def part_load_output(input_w: float, rated_input_w: float, nominal: float, reference: float) -> float:
    """Power an inverter delivers at part load. [W]

    ``P = P_dc eta``, ``eta = eta_nom / eta_ref (-0.0162 z - 0.0059 / z + 0.9858)``, ``z = P_dc / P_dc0``

    Valid for
    ---------
    z above 0 up to 1: no clipping here.

    Source
    ------
    Dobos, PVWatts version 5 manual, 2014. [from memory]
    """
    share = require("share of rated input", input_w / rated_input_w, 1e-3, 1.0, "PVWatts version 5 inverter curve")
    return input_w * nominal / reference * (-0.0162 * share - 0.0059 / share + 0.9858)


def chopper_duty(input_v: float, output_v: float) -> float:
    """Share of time a step-down chopper conducts, ``d = U_out / U_in``. [1]"""
    require_positive("input voltage, V,", input_v, SOURCE)
    return require("duty", output_v / input_v, 0.0, 1.0, SOURCE)


def chopper_mean(input_v: float, duty: float, switch_drop_v: float = 0.0) -> float:
    """Mean output voltage of a step-down chopper, ``d (U - U_switch)``. [V]"""
    require("duty", duty, 0.0, 1.0, SOURCE)
    return duty * (input_v - switch_drop_v)


def chopper_rms(input_v: float, duty: float, switch_drop_v: float = 0.0) -> float:
    """Rms output voltage of a step-down chopper without filter, ``sqrt(d) (U - U_switch)``. [V]"""
    require("duty", duty, 0.0, 1.0, SOURCE)
    return math.sqrt(duty) * (input_v - switch_drop_v)
