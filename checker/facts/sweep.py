"""Where a moving part first meets what stands still, and what it comes nearest to."""

from __future__ import annotations

from math import inf
from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.equipment import is_swept
from checker.facts.space import Extent, apart, carried, chain, extent, place_of, stands, swept_extent
from checker.facts.subject import Subject
from checker.physics.geometry import Cuboid, first_touch
from checker.quantities import Number, Range, Unknown, corners, least, show

NEVER = 1e9
"""A travel that no part has: it is not touched, m."""


def touch(s: Subject, part: Item, here: Extent | None) -> Number:
    """Travel of a moving part at which it first meets something, m; none when it does not."""
    box, along = extent(s, part), s.read(part, "travel.along")
    far = s.read(part, "travel.distance")
    if part.has("sweeps") or part.has("hinge.at"):
        return Unknown(f"{part.name} turns: only the box around its way is known")
    if box is None or here is None or not isinstance(along, str) or not here.exact:
        return Unknown(f"the box of {part.name} or of what is in its way is not told")

    def met(*numbers: float) -> float:
        a, b = Cuboid(numbers[0:3], numbers[3:6]), Cuboid(numbers[6:9], numbers[9:12])  # type: ignore[arg-type]
        return min(NEVER, first_touch(a, along, numbers[12], b))

    every = (*box.low, *box.high, *here.low, *here.high, far)
    if sum(isinstance(one, Range) for one in every) > 6:
        return Unknown("too many of the lengths are ranges")
    found = corners(met, *every)
    if isinstance(found, float) and found >= NEVER:
        return None
    if isinstance(found, Range) and found.high >= NEVER:
        return Unknown(f"whether {part.name} touches it depends on lengths that are ranges")
    return found


@fact(
    "equipment",
    "first_touch",
    unit="m",
    says="Travel of a moving part at which it first touches it; none when none does.",
    method="exact for boxes on straight travel: the gap between the facing sides",
    source="geometry of boxes",
)
def first_touch_of(s: Subject) -> Any:
    found: Number = None
    for part in s.facts.subjects("moving"):
        if is_swept(s, part.item, s.item) is False:
            continue
        at = touch(s, part.item, stands(s, s.item))
        s.note(_touched(s.id, part.id, at))
        found = at if found is None else least(found, at)
    return found


def _touched(name: str, part: str, at: Number) -> Any:
    words = "somewhere on its way" if isinstance(at, Unknown) else f"after {show(at, 'm')} of its travel"
    return lambda: f"{part} meets {name} {words}"


@fact("moving", "nearest", of="equipment", type="subject",
      says="The equipment that its way comes nearest to, of those with a box that it does not carry.",
      method="least distance between boxes over the whole travel")  # fmt: skip
def nearest(s: Subject) -> Any:
    way = swept_extent(s, s.item)
    best, name = inf, None
    for one in s.facts.subjects("equipment"):
        here = stands(s, one.item)
        if way is None or here is None or not here.exact or carried(s, s.item, _places(s, one.item)) is True:
            continue
        distance = apart(way, here)
        low = distance.low if isinstance(distance, Range) else distance if isinstance(distance, float) else inf
        if low < best:
            best, name = low, one
    return name


def _places(s: Subject, item: Any) -> list[Item]:
    return chain(s, place_of(s, item))
