"""Boxes in doubt: whatever exact boxes hide behind the doubt, the answer holds for them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from checker.facts.space import Extent, apart, overlaps
from checker.physics.geometry import Cuboid, distance, overlap
from checker.quantities import Number, Range, Unknown

PLACE = st.integers(-6, 6)
SIZE = st.integers(1, 5)
DOUBT = st.integers(0, 3)


@st.composite
def doubtful_box(draw: st.DrawFn) -> tuple[Cuboid, Extent]:
    """An exact box and what a file with ranges says of it."""
    low = tuple(float(draw(PLACE)) for _ in range(3))
    high = tuple(corner + draw(SIZE) for corner in low)

    def seen(corner: float) -> Number:
        below, above = draw(DOUBT), draw(DOUBT)
        return Range(corner - below, corner + above) if below + above else corner

    told = Extent((seen(low[0]), seen(low[1]), seen(low[2])), (seen(high[0]), seen(high[1]), seen(high[2])), True)
    return Cuboid((low[0], low[1], low[2]), (high[0], high[1], high[2])), told


@st.composite
def box_in_a_room(draw: st.DrawFn) -> tuple[Cuboid, Extent]:
    """An exact box and a room that it stands in somewhere, which is all that is told of it."""
    box, _ = draw(doubtful_box())
    low = tuple(corner - draw(DOUBT) for corner in box.low)
    high = tuple(corner + draw(DOUBT) for corner in box.high)
    return box, Extent((low[0], low[1], low[2]), (high[0], high[1], high[2]), False)


ANY = st.one_of(doubtful_box(), box_in_a_room())


@given(ANY, ANY)
def test_a_decided_overlap_holds_for_the_boxes_behind_the_doubt(
    a: tuple[Cuboid, Extent], b: tuple[Cuboid, Extent]
) -> None:
    said = overlaps(a[1], b[1])
    assert isinstance(said, Unknown) or said == overlap(a[0], b[0])


@given(ANY, ANY)
def test_the_distance_told_holds_the_real_one(a: tuple[Cuboid, Extent], b: tuple[Cuboid, Extent]) -> None:
    said, real = apart(a[1], b[1]), distance(a[0], b[0])
    low, high = (said.low, said.high) if isinstance(said, Range) else (said, said)
    assert isinstance(low, float) and isinstance(high, float)
    assert low - 1e-9 <= real <= high + 1e-9


def test_without_a_box_nothing_is_decided() -> None:
    box = Extent((0.0, 0.0, 0.0), (1.0, 1.0, 1.0), True)
    assert isinstance(overlaps(None, box), Unknown)
    assert isinstance(apart(box, None), Unknown)
