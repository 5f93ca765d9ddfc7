"""Time-current bands of fuses and breakers by family, from published test limits.

A band is the least time a device carries a current and the time by which it has opened.
Currents are multiples of the rating. Between two published points each edge is the straight
line on log-log paper; where the document is silent the band is as wide as silence allows:
nothing promised before the first point of an edge, the neighbour's promise after it, since
no device opens later at a larger current. The curve of the device itself always decides.
The B, C and D curves hold for alternating current: on direct current the magnetic release of
many breakers needs about 1.4 times the current (common practice, no source), not included here.
"""

from __future__ import annotations

import math
from functools import cache
from typing import NamedTuple

from checker.outofrange import OutOfRange, require_positive
from checker.physics.interpolation import log_log
from checker.physics.tables import table

CURVES = "fuse_time_current"
NO_PUBLISHED_BAND = ("factory link",)
BREAKERS = ("B curve", "C curve", "D curve", "thermal", "dc hydraulic-magnetic")
Edge = tuple[tuple[float, float], ...]


class Band(NamedTuple):
    """Least and greatest time until a device has opened; either may be no promise (0, infinite). [s]"""

    min_s: float
    max_s: float


class Series(NamedTuple):
    """One published curve: the points of its two edges over the multiple of the rating."""

    series: str
    least: Edge
    greatest: Edge
    source: str

    @property
    def first(self) -> float:
        """Smallest multiple of the rating with a published point. [1]"""
        return min(edge[0][0] for edge in (self.least, self.greatest) if edge)

    @property
    def last(self) -> float:
        """Largest multiple of the rating with a published point. [1]"""
        return max(edge[-1][0] for edge in (self.least, self.greatest) if edge)


def families() -> tuple[str, ...]:
    """All families by name, those without a published band at the end."""
    return (*dict.fromkeys(row["family"] for row in table(CURVES).rows), *NO_PUBLISHED_BAND)


def operating_time(family: str, rating_a: float, current_a: float) -> Band:
    """Time band of a device at a current within its published points. [s]

    Parameters
    ----------
    family : name of the family, see `families`.
    rating_a : rated current. [A]
    current_a : steady current through the device. [A]

    Valid for
    ---------
    Currents between the first and the last published multiple of the rating, 25 °C ambient as far as known.
    A family with several series holding the rating gives the envelope of all.

    Source
    ------
    Table of time-current limits, row by row: `band_source`.

    Raises
    ------
    OutOfRange : unknown family, no band for the rating, or a current outside the published points.
    """
    held = series_of(family, rating_a)
    multiple = _multiple(current_a, rating_a)
    first, last = max(one.first for one in held), min(one.last for one in held)
    if not first <= multiple <= last:
        raise OutOfRange(
            f"current, A, through {family} {rating_a:g} A,",
            current_a,
            (first * rating_a, last * rating_a),
            band_source(family, rating_a),
        )
    return _envelope(held, multiple)


def time_bounds(family: str, rating_a: float, current_a: float) -> Band:
    """Time band of a device at any current, as far as its published points bound it. [s]

    As `operating_time`, but beyond the points the band is bounded by the law alone that a larger
    current never takes longer: below the first point ``max`` is infinite, above the last ``min`` is 0
    and ``max`` that of the last point. Nothing is extrapolated.
    """
    held = series_of(family, rating_a)
    return _envelope(held, _multiple(current_a, rating_a))


def let_through_energy(family: str, rating_a: float, current_a: float) -> Band:
    """Bounds of the let-through energy ``I^2 t`` at a fault current. [A2 s]

    Within the published points ``I^2 t`` of the band. Above the last point the greatest value of a
    fuse is that of its last point, because the energy needed to melt an element does not rise with
    the current; a breaker, whose opening time is mechanical, keeps the time of its last point instead.
    Not included: energy of the arc beyond that in the published times, which grows in an inductive circuit.

    Parameters and errors as `operating_time`; any current above 0.
    The two numbers of the band are energies here, least and greatest.
    """
    held = series_of(family, rating_a)
    multiple = _multiple(current_a, rating_a)
    band = _envelope(held, multiple)
    greatest = band.max_s * current_a**2
    if family not in BREAKERS and math.isfinite(band.max_s):
        greatest = max(_greatest_fuse_energy(one, multiple) for one in held) * rating_a**2
    return Band(band.min_s * current_a**2, greatest)


def conventional_factor(family: str, rating_a: float) -> float:
    """Smallest multiple of the rating at which the device is promised to open at all. [1]

    Overload protection counts on this current, not on the rating. Parameters and errors as `operating_time`.
    """
    return max(one.greatest[0][0] for one in series_of(family, rating_a))


def conventional_current(family: str, rating_a: float) -> float:
    """Smallest current at which the device is promised to open, `conventional_factor` times the rating. [A]"""
    return conventional_factor(family, rating_a) * rating_a


def surge_energy(current_a: float, time_s: float) -> float:
    """Energy of a steady current over a time, ``I^2 t``. [A2 s]"""
    return current_a**2 * time_s


def time_for_energy(energy_a2s: float, current_a: float) -> float:
    """Time in which a steady current reaches an energy, ``t = E / I^2``. [s]"""
    require_positive("current, A,", current_a, "definition of I2t")
    return energy_a2s / current_a**2


def fusing_current(wire_diameter: float, constant: float) -> float:
    """Current that melts a bare wire in still air, ``I = K d^1.5``. [A]

    The constant fixes the unit of the diameter. Long straight wire; a rule of thumb of 1884.
    """
    require_positive("wire diameter", wire_diameter, "wire fusing rule I = K d^1.5")
    return constant * math.pow(wire_diameter, 1.5)


def fusing_diameter_ratio(current_ratio: float) -> float:
    """Ratio of wire diameters for a ratio of fusing currents, ``(I2/I1)^(2/3)``. [1]"""
    require_positive("ratio of currents", current_ratio, "wire fusing rule I = K d^1.5")
    return math.pow(current_ratio, 2.0 / 3.0)


def band_source(family: str, rating_a: float) -> str:
    """Documents behind the band of a device, ready to print."""
    return "; ".join(dict.fromkeys(one.source for one in series_of(family, rating_a)))


@cache
def series_of(family: str, rating_a: float) -> tuple[Series, ...]:
    """Published series of a family that hold a rating.

    Raises
    ------
    OutOfRange : unknown family, a family without published band, or a rating none of its series holds.
    """
    published = table(CURVES)
    if family in NO_PUBLISHED_BAND:
        raise OutOfRange("device family", family, "the families with a published band", published.head["title"])
    rows = [row for row in published.rows if row["family"] == family]
    if not rows:
        raise OutOfRange("device family", family, ", ".join(families()), published.head["title"])
    held: dict[str, list[tuple[float, str, str, str]]] = {}
    for row in rows:
        if float(row["rating_from_a"]) <= rating_a <= float(row["rating_to_a"]):
            source = row["document"] if row["mark"] == "practice" else f"{row['document']} [{row['mark']}]"
            held.setdefault(row["series"], []).append((float(row["multiple"]), row["min_s"], row["max_s"], source))
    if not held:
        ratings = ", ".join(dict.fromkeys(f"{row['rating_from_a']}..{row['rating_to_a']}" for row in rows))
        raise OutOfRange(f"rating, A, of {family}", rating_a, f"the ratings {ratings}", published.head["title"])
    return tuple(_series(name, points) for name, points in held.items())


def _multiple(current_a: float, rating_a: float) -> float:
    # Ten digits, like the table, so that a current on a published point meets it.
    return float(f"{require_positive('current, A,', current_a, CURVES) / rating_a:.10g}")


def _series(name: str, points: list[tuple[float, str, str, str]]) -> Series:
    points.sort()
    least = tuple((multiple, float(min_s)) for multiple, min_s, _, _ in points if min_s)
    greatest = tuple((multiple, float(max_s)) for multiple, _, max_s, _ in points if max_s)
    return Series(name, least, greatest, "; ".join(dict.fromkeys(point[3] for point in points)))


def _envelope(held: tuple[Series, ...], multiple: float) -> Band:
    return Band(min(_least(one, multiple) for one in held), max(_greatest(one, multiple) for one in held))


def _least(one: Series, multiple: float) -> float:
    edge = one.least
    if not edge or multiple > edge[-1][0]:
        return 0.0
    if multiple < edge[0][0]:
        return edge[0][1]
    return log_log("multiple of the rating", multiple, edge, one.source)


def _greatest(one: Series, multiple: float) -> float:
    edge = one.greatest
    if not edge or multiple < edge[0][0]:
        return math.inf
    if multiple > edge[-1][0]:
        return edge[-1][1]
    return log_log("multiple of the rating", multiple, edge, one.source)


def _greatest_fuse_energy(one: Series, multiple: float) -> float:
    last, last_s = one.greatest[-1]
    reached = min(multiple, last)
    return _greatest(one, reached) * reached**2 if multiple <= last else last_s * last**2
