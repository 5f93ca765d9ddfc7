"""Boxes against positions tried one by one."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.geometry import (
    Cuboid,
    clearance,
    contains,
    cuboid,
    distance,
    first_touch,
    line_distance,
    moved,
    overlap,
    swept,
    swing,
)

# Whole centimetres, so that the brute force below compares whole numbers and meets faces exactly.
PLACE = st.integers(-6, 6)
SIZE = st.integers(1, 5)
BOXES = st.builds(
    lambda x, y, z, a, b, c: Cuboid((x, y, z), (x + a, y + b, z + c)), PLACE, PLACE, PLACE, SIZE, SIZE, SIZE
)
ALONG = st.sampled_from(["x", "y", "z", "-x", "-y", "-z"])


def cells(box: Cuboid) -> set[tuple[int, int, int]]:
    """The unit cubes a box of whole sizes is made of."""
    spans = [range(int(low), int(high)) for low, high in zip(box.low, box.high, strict=True)]
    return {(x, y, z) for x in spans[0] for y in spans[1] for z in spans[2]}


def sampled_positions(box: Cuboid, along: str, travel: int) -> list[Cuboid]:
    """The box at every whole step of its way."""
    return [moved(box, along, float(step)) for step in range(travel + 1)]


@given(BOXES, ALONG, st.integers(0, 6))
def test_the_swept_space_is_what_the_box_fills_somewhere_on_its_way(box: Cuboid, along: str, travel: int) -> None:
    filled = set().union(*(cells(position) for position in sampled_positions(box, along, travel)))
    assert cells(swept(box, along, float(travel))) == filled


@given(BOXES, BOXES)
def test_boxes_overlap_when_they_share_a_cell(a: Cuboid, b: Cuboid) -> None:
    assert overlap(a, b) == bool(cells(a) & cells(b))


@given(BOXES, BOXES)
def test_a_box_contains_another_when_it_has_all_its_cells(a: Cuboid, b: Cuboid) -> None:
    assert contains(a, b) == (cells(b) <= cells(a))


def corners_and_faces(box: Cuboid) -> list[tuple[int, int, int]]:
    """Every whole point of a box, its faces included."""
    spans = [range(int(low), int(high) + 1) for low, high in zip(box.low, box.high, strict=True)]
    return [(x, y, z) for x in spans[0] for y in spans[1] for z in spans[2]]


@given(BOXES, BOXES)
def test_the_distance_is_the_least_over_all_pairs_of_points(a: Cuboid, b: Cuboid) -> None:
    # Boxes of whole size: the nearest points of two such boxes can be taken at whole coordinates.
    least = min(math.dist(p, q) for p in corners_and_faces(a) for q in corners_and_faces(b))
    assert distance(a, b) == pytest.approx(least)


@given(BOXES, ALONG, st.integers(0, 6), BOXES)
def test_the_clearance_is_the_least_distance_over_the_travel(
    box: Cuboid, along: str, travel: int, other: Cuboid
) -> None:
    least = min(distance(position, other) for position in sampled_positions(box, along, travel))
    assert clearance(box, along, float(travel), other) == pytest.approx(least)


def test_boxes_that_touch_do_not_overlap_and_have_no_distance() -> None:
    a, b = cuboid((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), cuboid((1.0, 0.0, 0.0), (1.0, 1.0, 1.0))
    assert not overlap(a, b)
    assert distance(a, b) == 0.0


def test_a_negative_size_and_a_negative_travel_are_refused() -> None:
    with pytest.raises(OutOfRange, match="size along y"):
        cuboid((0.0, 0.0, 0.0), (1.0, -1.0, 1.0))
    with pytest.raises(OutOfRange, match="travel"):
        swept(cuboid((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), "x", -0.1)


@given(BOXES, ALONG, st.integers(0, 6), BOXES)
def test_the_first_touch_is_the_last_step_before_they_share_space(
    box: Cuboid, along: str, travel: int, other: Cuboid
) -> None:
    hits = [step for step, position in enumerate(sampled_positions(box, along, travel)) if overlap(position, other)]
    touch = first_touch(box, along, float(travel), other)
    assert touch == (math.inf if not hits else max(0, hits[0] - 1) if hits[0] else 0.0)


@given(BOXES, st.sampled_from(["x", "y", "z"]), PLACE, PLACE, PLACE, st.floats(-math.pi, math.pi))
def test_a_box_around_a_swing_holds_every_corner_at_every_angle(
    box: Cuboid, along: str, x: int, y: int, z: int, angle: float
) -> None:
    at = (float(x), float(y), float(z))
    around = swing(box, at, along)
    axis = "xyz".index(along)
    first, second = (i for i in range(3) if i != axis)
    for corner in ((a, b, c) for a in (0, 1) for b in (0, 1) for c in (0, 1)):
        point = [(box.low, box.high)[corner[i]][i] for i in range(3)]
        u, v = point[first] - at[first], point[second] - at[second]
        turned = list(point)
        turned[first] = at[first] + u * math.cos(angle) - v * math.sin(angle)
        turned[second] = at[second] + u * math.sin(angle) + v * math.cos(angle)
        assert all(around.low[i] - 1e-9 <= turned[i] <= around.high[i] + 1e-9 for i in range(3))


@given(BOXES, PLACE, PLACE, PLACE, PLACE, PLACE, PLACE)
def test_the_distance_to_a_line_is_the_least_over_points_along_it(
    box: Cuboid, x1: int, y1: int, z1: int, x2: int, y2: int, z2: int
) -> None:
    start, end = (float(x1), float(y1), float(z1)), (float(x2), float(y2), float(z2))
    points = [tuple(a + (b - a) * share / 500 for a, b in zip(start, end, strict=True)) for share in range(501)]
    least = min(distance(box, Cuboid(point, point)) for point in points)  # type: ignore[arg-type]
    assert least - 0.05 <= line_distance(box, start, end) <= least + 1e-7
