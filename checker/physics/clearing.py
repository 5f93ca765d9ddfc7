"""When a protective device opens, and what it lets through, from its own curve or from the band of its family.

A characteristic is one or several published curves. Where it is not known which of several holds, answers span all.
Laws beyond the points: a larger current never takes longer; a fuse element needs no more energy to melt at a larger
current; a breaker, whose opening is mechanical, keeps its time. Nothing else is extrapolated.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from checker.outofrange import OutOfRange, require, require_positive
from checker.physics.adiabatic import LONGEST_S
from checker.physics.fuse_curves import BREAKERS, Band, Edge, Series, series_of
from checker.physics.interpolation import log_log

JUST_ABOVE = 1.0001
"""Where a step of a curve lies: two points at one current would be none."""
OWN_CURVE = "curve of the device, as written in the design file"


class Characteristic(NamedTuple):
    """Curves over multiples of `unit_a`, the rating (1 for a curve written in ampere)."""

    series: tuple[Series, ...]
    unit_a: float
    mechanical: bool

    @property
    def source(self) -> str:
        """Documents behind it, ready to print."""
        return "; ".join(dict.fromkeys(one.source for one in self.series))


def of_family(family: str, rating_a: float) -> Characteristic:
    """The published band of a family. Raises OutOfRange where there is none for it or for the rating."""
    return Characteristic(series_of(family, rating_a), rating_a, family in BREAKERS)


def of_points(points: Sequence[tuple[float, float, float]], *, mechanical: bool) -> Characteristic:
    """The device's own curve: current [A], least and greatest time to open [s], in any order.

    Raises
    ------
    OutOfRange : no point, a value not above 0, two times at one current, or a time that rises with the current.
    """
    ordered = sorted(points)
    require("points of the curve", float(len(ordered)), 1.0, math.inf, OWN_CURVE)
    for current, least, greatest in ordered:
        require_positive("current of the curve, A,", current, OWN_CURVE)
        require_positive("time of the curve, s,", least, OWN_CURVE)
        require("greatest time of a point, s,", greatest, least, math.inf, OWN_CURVE)
    for before, after in pairwise(ordered):
        falls = before[0] < after[0] and before[1] >= after[1] and before[2] >= after[2]
        if not falls:
            raise OutOfRange("time at a larger current, s,", after[2], f"at most {before[2]:g}", OWN_CURVE)
    edges = tuple((amps, low) for amps, low, _ in ordered), tuple((amps, high) for amps, _, high in ordered)
    return Characteristic((Series("own curve", edges[0], edges[1], OWN_CURVE),), 1.0, mechanical)


def at_once(held: Characteristic, above_a: float | None, within_s: float) -> Characteristic:
    """The same breaker with what its maker says of opening at once: from a current on, within a time.

    Left out, the current is the last published point of the family. Only the promise gets shorter, and only beyond it.

    Raises
    ------
    OutOfRange : a current or a time not above 0.
    """
    require_positive("time, s,", within_s, OWN_CURVE)
    made = []
    for one in held.series:
        first = one.greatest[-1][0] if one.greatest else math.inf
        if above_a is not None:
            first = require_positive("current, A,", above_a, OWN_CURVE) / held.unit_a
        if first == math.inf:
            made.append(one)
            continue
        until = _greatest(one, first)
        kept = tuple(point for point in one.greatest if point[0] < first)
        edge = (*kept, (first, until), (first * JUST_ABOVE, min(within_s, until))) if until < math.inf else ()
        made.append(one._replace(greatest=edge or ((first * JUST_ABOVE, within_s),)))
    return held._replace(series=tuple(made))


def opening(held: Characteristic, current_a: float) -> Band:
    """Least and greatest time until it has opened at a current, over all its curves. [s]

    No promise is 0 and infinite. Valid for any current above 0.
    """
    multiple = _multiple(held, current_a)
    return Band(min(_least(one, multiple) for one in held.series), max(_greatest(one, multiple) for one in held.series))


def promised(held: Characteristic, current_a: float) -> Band:
    """Time by which it is promised to have opened: the shortest and the longest promise of its curves. [s]

    One curve gives one time; infinite where nothing is promised.
    """
    multiple = _multiple(held, current_a)
    times = [_greatest(one, multiple) for one in held.series]
    return Band(min(times), max(times))


def held_for(held: Characteristic, current_a: float) -> Band:
    """Time for which it is promised to stay closed: the shortest and the longest promise of its curves. [s]

    One curve gives one time; 0 where nothing is promised.
    """
    multiple = _multiple(held, current_a)
    times = [_least(one, multiple) for one in held.series]
    return Band(min(times), max(times))


def let_through(held: Characteristic, greatest_a: float, within_s: float = LONGEST_S) -> Band:
    """Bounds of the greatest ``I^2 t`` over all fault currents up to `greatest_a`. [A2 s]

    Only the first `within_s` of a current count, because after some seconds heat leaves the conductor and the
    overload rules speak. The upper bound holds for every device of the family, the lower for each as well.

    Parameters
    ----------
    greatest_a : greatest prospective current. [A]
    within_s : time up to which heating is adiabatic. [s]
    """
    multiple = _multiple(held, greatest_a)
    require_positive("time, s,", within_s, "definition of I2t")
    scale = held.unit_a**2
    least = min(_most(one.least, multiple, within_s, 0.0) for one in held.series)
    greatest = 0.0
    for one in held.series:
        reached = multiple
        if not held.mechanical and one.greatest:
            reached = min(multiple, one.greatest[-1][0])
        after = one.greatest[-1][1] if one.greatest else within_s
        greatest = max(greatest, _most(one.greatest, reached, within_s, after, before=within_s))
    return Band(least * scale, greatest * scale)


def energy_at(held: Characteristic, current_a: float) -> float:
    """Upper bound of ``I^2 t`` at one current; a fuse beyond its points keeps the energy of its last. [A2 s]

    Infinite where nothing is promised.
    """
    multiple = _multiple(held, current_a)
    found = []
    for one in held.series:
        reached = multiple
        if not held.mechanical and one.greatest:
            reached = min(multiple, one.greatest[-1][0])
        found.append(reached**2 * _greatest(one, reached))
    return max(found) * held.unit_a**2


def is_published(held: Characteristic, current_a: float) -> bool:
    """Whether a current lies between the first and the last point of both edges of all its curves."""
    multiple = _multiple(held, current_a)
    edges = [edge for one in held.series for edge in (one.least, one.greatest)]
    return all(edge and edge[0][0] <= multiple <= edge[-1][0] for edge in edges)


def _most(edge: Edge, multiple: float, within_s: float, after_s: float, before: float | None = None) -> float:
    """Greatest of ``m^2 min(t, within)`` up to a multiple on one edge; `after_s` is the time beyond its last point."""
    points = [point for point in edge if point[0] <= multiple]
    found = [m * m * min(t, within_s) for m, t in points]
    found.extend(m * m * within_s for m in _crossings(edge, within_s) if m <= multiple)
    if before is not None and (not edge or multiple < edge[0][0]):
        found.append(multiple * multiple * before)
    elif before is not None:
        found.append(edge[0][0] ** 2 * before)
    if edge and edge[0][0] <= multiple <= edge[-1][0]:
        found.append(multiple * multiple * min(log_log("multiple of the rating", multiple, edge, ""), within_s))
    elif edge and multiple > edge[-1][0]:
        found.append(multiple * multiple * min(after_s, within_s))
    elif edge and before is None:
        found.append(multiple * multiple * min(edge[0][1], within_s))
    return max(found, default=0.0)


def _crossings(edge: Edge, time_s: float) -> list[float]:
    """Multiples at which an edge crosses a time."""
    found = []
    for (m0, t0), (m1, t1) in pairwise(edge):
        if t0 > time_s > t1:
            share = math.log(t0 / time_s) / math.log(t0 / t1)
            found.append(m0 * (m1 / m0) ** share)
    return found


def _multiple(held: Characteristic, current_a: float) -> float:
    # Ten digits, like the table, so that a current on a published point meets it.
    return float(f"{require_positive('current, A,', current_a, held.source) / held.unit_a:.10g}")


def _least(one: Series, multiple: float) -> float:
    edge = one.least
    if not edge or multiple > edge[-1][0]:
        return 0.0
    return edge[0][1] if multiple < edge[0][0] else log_log("multiple of the rating", multiple, edge, one.source)


def _greatest(one: Series, multiple: float) -> float:
    edge = one.greatest
    if not edge or multiple < edge[0][0]:
        return math.inf
    return edge[-1][1] if multiple > edge[-1][0] else log_log("multiple of the rating", multiple, edge, one.source)
