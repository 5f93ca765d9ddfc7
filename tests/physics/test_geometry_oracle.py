"""Swept volumes, clearances and first touches against positions drawn with another geometry library.

shapely knows shapes in a plane: a box is its outline seen from above together with its stretch of height, and two
boxes share space when both do. Positions on the way are sampled; what lies between two samples is bounded by the step.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon, affinity, box

from checker.physics.geometry import (
    Cuboid,
    clearance,
    first_touch,
    line_distance,
    moved,
    overlap,
    swept,
    swing,
    widest_on_swing,
    widest_on_travel,
)

STEPS = 40
# Centimetres up to some metres, so that faces meet exactly now and then.
PLACE = st.integers(-300, 300).map(lambda one: one / 100)
SIZE = st.integers(5, 200).map(lambda one: one / 100)
BOXES = st.builds(
    lambda x, y, z, a, b, c: Cuboid((x, y, z), (x + a, y + b, z + c)), PLACE, PLACE, PLACE, SIZE, SIZE, SIZE
)
ALONG = st.sampled_from(["x", "y", "z", "-x", "-y", "-z"])
TRAVEL = st.integers(0, 200).map(lambda one: one / 100)
POINTS = st.tuples(PLACE, PLACE, PLACE)


def outline(one: Cuboid) -> Polygon:
    """The box seen from above."""
    return box(one.low[0], one.low[1], one.high[0], one.high[1])


def height(one: Cuboid) -> LineString:
    """Its stretch of height, drawn as an upright line."""
    return LineString([(0.0, one.low[2]), (0.0, one.high[2])])


def shares_space(a: Cuboid, b: Cuboid) -> bool:
    return outline(a).intersection(outline(b)).area > 1e-9 and height(a).intersection(height(b)).length > 1e-9


def apart(a: Cuboid, b: Cuboid) -> float:
    return math.hypot(outline(a).distance(outline(b)), height(a).distance(height(b)))


def positions(one: Cuboid, along: str, travel: float) -> list[Cuboid]:
    return [moved(one, along, travel * step / STEPS) for step in range(STEPS + 1)]


@given(BOXES, ALONG, TRAVEL, BOXES)
def test_what_any_position_meets_lies_in_the_swept_space(a: Cuboid, along: str, travel: float, b: Cuboid) -> None:
    met = any(shares_space(position, b) for position in positions(a, along, travel))
    if met:
        assert overlap(swept(a, along, travel), b)
    # Between two samples it moves by one step only: what no sample comes nearer to than that is not met for long.
    if overlap(swept(a, along, travel), b):
        assert met or min(apart(one, b) for one in positions(a, along, travel)) <= travel / STEPS + 1e-9


@given(BOXES, ALONG, TRAVEL, BOXES)
def test_the_clearance_is_the_least_over_all_positions(a: Cuboid, along: str, travel: float, b: Cuboid) -> None:
    least = min(apart(position, b) for position in positions(a, along, travel))
    found = clearance(a, along, travel, b)
    assert found <= least + 1e-9
    assert least <= found + travel / STEPS + 1e-9


@given(BOXES, ALONG, TRAVEL, BOXES)
def test_it_is_free_up_to_the_first_touch_and_not_beyond(a: Cuboid, along: str, travel: float, b: Cuboid) -> None:
    at = first_touch(a, along, travel, b)
    if math.isinf(at):
        assert not any(shares_space(position, b) for position in positions(a, along, travel))
        return
    assert at == 0.0 or not any(shares_space(position, b) for position in positions(a, along, at - 1e-6))
    if at + 1e-3 <= travel:
        assert at == 0.0 or shares_space(moved(a, along, at + 1e-3), b)


def turned(one: Cuboid, axis: int, at: tuple[float, float, float], degrees: float) -> Polygon:
    """The outline of a box across the hinge, turned about it; y of the plane is the later of the two axes."""
    u, v = (i for i in range(3) if i != axis)
    flat = box(one.low[u], one.low[v], one.high[u], one.high[v])
    return affinity.rotate(flat, degrees, origin=(at[u], at[v]))


@given(BOXES, POINTS, st.sampled_from(["x", "y", "z"]))
def test_no_angle_of_a_swing_leaves_the_space_taken_for_it(
    a: Cuboid, at: tuple[float, float, float], along: str
) -> None:
    axis = "xyz".index(along)
    u, v = (i for i in range(3) if i != axis)
    around = swing(a, at, along)
    taken = box(around.low[u], around.low[v], around.high[u], around.high[v]).buffer(1e-9)
    angles = [360.0 * step / STEPS for step in range(STEPS)]
    assert all(taken.covers(turned(a, axis, at, angle)) for angle in angles)
    # And it is not larger than it must be: the farthest corner comes to its sides.
    reach = max(Point(at[u], at[v]).distance(Point(corner)) for corner in turned(a, axis, at, 0.0).exterior.coords)
    assert taken.bounds == pytest.approx((at[u] - reach, at[v] - reach, at[u] + reach, at[v] + reach), abs=1e-6)


@given(POINTS, POINTS, POINTS, st.sampled_from(["x", "y", "z"]))
def test_the_widest_span_on_a_swing_is_reached_by_some_angle_and_passed_by_none(
    fixed: tuple[float, float, float], rides: tuple[float, float, float], at: tuple[float, float, float], along: str
) -> None:
    axis = "xyz".index(along)
    u, v = (i for i in range(3) if i != axis)
    still, start = Point(fixed[u], fixed[v]), Point(rides[u], rides[v])
    rise = fixed[axis] - rides[axis]
    angles = [360.0 * step / 720 for step in range(720)]
    spans = [math.hypot(affinity.rotate(start, one, origin=(at[u], at[v])).distance(still), rise) for one in angles]
    found = widest_on_swing(fixed, rides, at, along)
    assert max(spans) <= found + 1e-9
    assert found <= max(spans) + 0.01


@given(POINTS, POINTS, ALONG, TRAVEL)
def test_the_span_on_a_straight_travel_is_widest_at_an_end(
    fixed: tuple[float, float, float], rides: tuple[float, float, float], along: str, travel: float
) -> None:
    way = [moved(Cuboid(rides, rides), along, travel * step / STEPS).low for step in range(STEPS + 1)]
    spans = [math.hypot(Point(one[:2]).distance(Point(fixed[:2])), one[2] - fixed[2]) for one in way]
    assert widest_on_travel(fixed, rides, along, travel) == pytest.approx(max(spans), abs=1e-9)


@settings(max_examples=60)
@given(BOXES, PLACE, PLACE, PLACE, PLACE)
def test_the_distance_to_a_level_line_is_that_in_the_plane_where_the_heights_meet(
    a: Cuboid, x1: float, y1: float, x2: float, y2: float
) -> None:
    level = (a.low[2] + a.high[2]) / 2.0
    found = line_distance(a, (x1, y1, level), (x2, y2, level))
    assert found == pytest.approx(outline(a).distance(LineString([(x1, y1), (x2, y2)])), abs=1e-6)
