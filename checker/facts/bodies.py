"""Bodies against each other and against the place they are said to be in."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.design.given import Box
from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.space import Extent, chain, extent, holds, is_kind, overlaps, place_of, stands
from checker.facts.subject import Facts, Subject
from checker.quantities import Range, Truth, Unknown, both, negate

FINE_M = 1e-6
"""Boxes that share less than this only touch: lengths in a file are round, their sums in floating point are not."""
OPEN = ("outside", "under body", "exit")
"""Places whose box says where they are about, and walls nothing in."""


class Body(NamedTuple):
    """A piece of equipment with a box, and where it begins and ends for certain or perhaps, m."""

    subject: Subject
    here: Extent
    low: tuple[float, ...]
    high: tuple[float, ...]
    exact: bool


def bodies(facts: Facts) -> tuple[Body, ...]:
    """Equipment with a box of its own, by where it begins along x."""
    found: tuple[Body, ...] | None = facts.store.get("bodies")
    if found is None:
        every = [_body(one) for one in facts.subjects("equipment")]
        known = [one for one in every if one is not None]
        found = facts.store["bodies"] = tuple(sorted(known, key=lambda one: (one.low[0], one.subject.id)))
    return found


def _body(s: Subject) -> Body | None:
    here = extent(s, s.item)
    if here is None:
        return None
    low = tuple(one.low if isinstance(one, Range) else float(one) for one in here.low)  # type: ignore[arg-type]
    high = tuple(one.high if isinstance(one, Range) else float(one) for one in here.high)  # type: ignore[arg-type]
    return Body(s, here, low, high, all(isinstance(one, float) for one in (*here.low, *here.high)))


def _near(a: Body, b: Body) -> bool:
    """Whether two bodies may share space."""
    return all(a.low[i] + FINE_M < b.high[i] and b.low[i] + FINE_M < a.high[i] for i in range(3))


@fact(
    "equipment",
    "shares_space_with",
    of="equipment",
    type="list",
    says="Equipment whose box shares space with its own.",
    method="boxes; those that only touch are left out",
)
def shares_space_with(s: Subject) -> Any:
    mine = _body(s)
    if mine is None:
        return Unknown(f"the box of {s.id} is not told")
    found = []
    for other in bodies(s.facts):
        if other.low[0] >= mine.high[0]:
            break  # they stand in the order in which they begin
        if other.subject.id == s.id or not _near(mine, other):
            continue
        if not (mine.exact and other.exact):
            answer = overlaps(mine.here, other.here)
            if isinstance(answer, Unknown):
                return Unknown(f"whether {s.id} and {other.subject.id} share space depends on lengths that are ranges")
            if answer is False:
                continue
        s.note(_met(s.id, other.subject.id))
        found.append(other.subject)
    return tuple(found)


def _met(one: str, other: str) -> Any:
    return lambda: f"the boxes of {one} and {other} share space"


@fact(
    "equipment",
    "bodies_settled",
    type="yes/no",
    says="Its box shares, or may share, space with another, or all equipment has a box or a point of its own.",
)
def bodies_settled(s: Subject) -> Truth:
    known = s.box_known
    if known is not True:
        return known  # type: ignore[no-any-return]
    found = s.shares_space_with
    return isinstance(found, Unknown) or bool(found) or all_placed(s.facts)


def all_placed(facts: Facts) -> bool:
    """Whether every piece of equipment has a box or a point of its own."""
    found: bool | None = facts.store.get("all placed")
    if found is None:
        spots = (stands(one, one.item) for one in facts.subjects("equipment"))
        found = facts.store["all placed"] = all(here is not None and here.exact for here in spots)
    return found


@fact("equipment", "place_box_told", type="yes/no", says="Its box and that of the place it is said to be in are told.",
      method="places open on all sides left out")  # fmt: skip
def place_box_told(s: Subject) -> Truth:
    if extent(s, s.item) is not None and _walls(s) is not None:
        return True
    if not _has_box(s.item):
        return False
    name = place_of(s, s.item)
    places = chain(s, name)
    if isinstance(name, Unknown) and s.item.has("place"):
        return Unknown(f"where {s.id} stands is not told")
    if not places or not _has_box(places[0]):
        return False
    walled = negate(is_kind(s, places[0], *OPEN))
    return both(walled, Unknown(f"part of the box of {s.id} or of {places[0].name} is not told"))


def _has_box(item: Item) -> bool:
    """Whether a box is written, all of it or a part."""
    return item.allows("box") and isinstance(item.value("box"), Box)


def _walls(s: Subject) -> Extent | None:
    """The box of the innermost place around it that has walls."""
    places = chain(s, place_of(s, s.item))
    if not places or is_kind(s, places[0], *OPEN) is not False:
        return None
    return extent(s, places[0])


@fact("equipment", "inside_its_place", type="yes/no", says="Its box lies in that of its place.", method="boxes")
def inside_its_place(s: Subject) -> Truth:
    here, around = extent(s, s.item), _walls(s)
    if here is None or around is None:
        return Unknown(f"the box of {s.id} or of its place is not told")
    return holds(_widened(around), here)


def _widened(around: Extent) -> Extent:
    from checker.facts.space import widened

    by = (FINE_M, FINE_M, FINE_M)
    return widened(around, by, by)
