"""Alternators: share of rating asked, typical output by speed."""

from __future__ import annotations

from checker.outofrange import require, require_positive
from checker.physics.interpolation import linear
from checker.physics.tables import table

CURVE = "alternator_output_curve"
HOT_SHARES = (0.75, 0.85)  # hot output over cold at 90 to 105 °C air; general practice, from memory, low confidence
HOT_SOURCE = "hot output over cold, general practice [from memory]"


def duty(asked_a: float, rated_a: float) -> float:
    """Current asked of an alternator over what it can give. [1]"""
    require_positive("rated current, A,", rated_a, "definition of duty")
    return asked_a / rated_a


def cold_output(rated_a: float, speed_rpm: float) -> tuple[float, float]:
    """Output of a typical alternator by its own speed, least and greatest. [A]

    Straight lines between the rows of the typical curve.

    Parameters
    ----------
    rated_a : rated current, at 6000 rev/min and 23 °C. [A]
    speed_rpm : speed of the alternator, not of the engine. [rev/min]

    Valid for
    ---------
    1000 to 8000 rev/min, cold. The curve of the machine itself decides.

    Source
    ------
    General practice, rating point of ISO 8854. [from memory]
    """
    published = table(CURVE)
    name = "alternator speed, rev/min,"
    least = linear(name, speed_rpm, published.pairs("speed_rpm", "low"), published.source)
    greatest = linear(name, speed_rpm, published.pairs("speed_rpm", "high"), published.source)
    return rated_a * least, rated_a * greatest


def hot_output(rated_a: float, speed_rpm: float) -> tuple[float, float]:
    """Output of a typical alternator under a hot bonnet, least and greatest. [A]

    `cold_output` times 0.75 (least) and 0.85 (greatest), at 90 to 105 °C air.
    Source: general practice. [from memory]
    """
    least, greatest = cold_output(rated_a, speed_rpm)
    return least * HOT_SHARES[0], greatest * HOT_SHARES[1]


def output_from_points(points: tuple[tuple[float, float], ...], speed_rpm: float) -> float:
    """Output at a speed from the machine's own curve, straight lines between its points. [A]

    ``points`` holds speed [rev/min] and current [A], speeds rising. Outside them there is no number.
    """
    require("number of points", float(len(points)), 2, float("inf"), "curve of the machine")
    return linear("alternator speed, rev/min,", speed_rpm, points, "curve of the machine")


def shaft_power(output_w: float, efficiency: float) -> float:
    """Shaft power an output takes, ``P / eta``. [W]"""
    require_positive("efficiency", efficiency, "power balance")
    require("efficiency", efficiency, 0.0, 1.0, "power balance")
    return output_w / efficiency
