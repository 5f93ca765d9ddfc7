"""Boxes in vehicle axes: overlap, distance, containment, and the space a box sweeps when it moves.

A box has its faces square to the axes. All lengths are metres. Boxes that only touch do not overlap.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from checker.outofrange import require

SOURCE = "geometry of boxes square to the axes"
AXES = ("x", "y", "z")
Point = tuple[float, float, float]


class Cuboid(NamedTuple):
    """A box by its least and its greatest corner. [m]"""

    low: Point
    high: Point


def cuboid(at: Point, size: Point) -> Cuboid:
    """The box with its least corner at ``at`` and a size along each axis. [m]

    Raises
    ------
    OutOfRange : a size is negative.
    """
    for axis, extent in zip(AXES, size, strict=True):
        require(f"size along {axis}, m,", extent, 0.0, math.inf, SOURCE)
    return Cuboid(at, (at[0] + size[0], at[1] + size[1], at[2] + size[2]))


def axis_of(along: str) -> tuple[int, float]:
    """Number of the axis and the sense of a travel such as ``y`` or ``-x``."""
    return AXES.index(along.removeprefix("-")), -1.0 if along.startswith("-") else 1.0


def moved(box: Cuboid, along: str, distance_m: float) -> Cuboid:
    """The box after it has travelled a distance along an axis. [m]"""
    axis, sense = axis_of(along)
    step = [0.0, 0.0, 0.0]
    step[axis] = sense * distance_m
    low = (box.low[0] + step[0], box.low[1] + step[1], box.low[2] + step[2])
    high = (box.high[0] + step[0], box.high[1] + step[1], box.high[2] + step[2])
    return Cuboid(low, high)


def swept(box: Cuboid, along: str, distance_m: float) -> Cuboid:
    """All the space a box passes through while it travels straight along an axis. [m]

    For a travel along an axis the swept space is itself a box, so this is exact.

    Parameters
    ----------
    along : x, y or z, with a minus when the travel goes against the axis.
    distance_m : not negative. [m]
    """
    require("travel, m,", distance_m, 0.0, math.inf, SOURCE)
    far = moved(box, along, distance_m)
    low = (min(box.low[0], far.low[0]), min(box.low[1], far.low[1]), min(box.low[2], far.low[2]))
    high = (max(box.high[0], far.high[0]), max(box.high[1], far.high[1]), max(box.high[2], far.high[2]))
    return Cuboid(low, high)


def axis_gap(a_low_m: float, a_high_m: float, b_low_m: float, b_high_m: float) -> float:
    """Free length between two stretches of one axis, zero when they meet. [m]"""
    return max(0.0, b_low_m - a_high_m, a_low_m - b_high_m)


def distance(a: Cuboid, b: Cuboid) -> float:
    """Shortest distance between two boxes, zero when they touch or overlap. [m]"""
    return math.hypot(*(axis_gap(a.low[i], a.high[i], b.low[i], b.high[i]) for i in range(3)))


def diagonal(x_m: float, y_m: float, z_m: float) -> float:
    """Length of the diagonal over three gaps. [m]"""
    return math.hypot(x_m, y_m, z_m)


def overlap(a: Cuboid, b: Cuboid) -> bool:
    """Whether two boxes share space; boxes that only touch do not."""
    return all(a.low[i] < b.high[i] and b.low[i] < a.high[i] for i in range(3))


def contains(outer: Cuboid, inner: Cuboid) -> bool:
    """Whether the inner box lies wholly in the outer one, faces included."""
    return all(outer.low[i] <= inner.low[i] and inner.high[i] <= outer.high[i] for i in range(3))


def clearance(box: Cuboid, along: str, distance_m: float, other: Cuboid) -> float:
    """Least distance between a moving box and one that stands still, over the whole travel. [m]"""
    return distance(swept(box, along, distance_m), other)


def first_touch(box: Cuboid, along: str, distance_m: float, other: Cuboid) -> float:
    """How far a box has travelled when it first meets one that stands still. [m]

    Infinite when it never does. Faces that only slide along each other do not meet.
    """
    axis, sense = axis_of(along)
    if not overlap(swept(box, along, distance_m), other):
        return math.inf
    ahead = other.low[axis] - box.high[axis] if sense > 0 else box.low[axis] - other.high[axis]
    return max(0.0, ahead)


def swing(box: Cuboid, at: Point, along: str) -> Cuboid:
    """A box around all the space that a box fills when it turns about a hinge by any angle. [m]

    The farthest corner from the hinge sets its reach to all sides, so this is larger than what is really swept.

    Parameters
    ----------
    at : a point of the hinge. [m]
    along : x, y or z, the axis along which the hinge lies.
    """
    axis = AXES.index(along)
    across = [i for i in range(3) if i != axis]
    reach = math.hypot(*(max(abs(box.low[i] - at[i]), abs(box.high[i] - at[i])) for i in across))
    low, high = list(box.low), list(box.high)
    for i in across:
        low[i], high[i] = at[i] - reach, at[i] + reach
    return Cuboid((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def line_distance(box: Cuboid, start: Point, end: Point) -> float:
    """Shortest distance from a box to a straight line between two points, zero when it meets the box. [m]

    The distance to a box is convex along a line, so thirds are taken away until it is found to far below a micrometre.
    """

    def at(share: float) -> float:
        point = [start[i] + (end[i] - start[i]) * share for i in range(3)]
        return math.hypot(*(axis_gap(box.low[i], box.high[i], point[i], point[i]) for i in range(3)))

    low, high = 0.0, 1.0
    while high - low > 1e-9:
        first, second = low + (high - low) / 3.0, high - (high - low) / 3.0
        low, high = (low, second) if at(first) <= at(second) else (first, high)
    return min(at(0.0), at(1.0), at((low + high) / 2.0))


def widest_on_travel(fixed: Point, rides: Point, along: str, distance_m: float) -> float:
    """Widest distance between a fixed point and one that travels straight, anywhere on its way. [m]

    The distance is convex along a straight way, so it is widest at one of the two ends.
    """
    axis, sense = axis_of(along)
    far = list(rides)
    far[axis] += sense * distance_m
    return max(math.dist(fixed, rides), math.dist(fixed, far))


def widest_on_swing(fixed: Point, rides: Point, at: Point, along: str) -> float:
    """Widest distance between a fixed point and one that turns about a hinge by any angle. [m]

    Opposite each other seen from the hinge they are as far apart as their two distances from it together; between two
    ends of a swing they may be further apart than at either.
    """
    axis = AXES.index(along)
    across = [i for i in range(3) if i != axis]
    arms = [math.hypot(*(point[i] - at[i] for i in across)) for point in (fixed, rides)]
    return math.hypot(sum(arms), fixed[axis] - rides[axis])
