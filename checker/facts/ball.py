"""Loads of tow ball and axle: what they carried before, and what each thing put in or out lays on them by its lever."""

from __future__ import annotations

from math import inf
from typing import Any

from checker.design.given import Box
from checker.facts.axles import ALONG, Share, position, sense
from checker.facts.balance import axle_at
from checker.facts.catalogue import fact
from checker.facts.masses import added, limit_or_load, mass_of
from checker.facts.space import lower, upper
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Unknown, add, corners, multiply, show, subtract, total
from checker.quantities.values import between


@fact(
    "design",
    "ball_load",
    unit="kg",
    says="Load of the tow ball with the work done.",
    method="load before + sum of mass × distance ahead of the axle / distance of ball and axle; where the ball is not "
    "told it lies at the front end of the body or ahead of it, where the axle is not told a mass adds or takes off at "
    "most itself",
)
def ball_load(s: Subject) -> Any:
    before, moved = limit_or_load(s, "before.ball"), _moved(s)
    amount = total(one.mass for one in moved) if moved else 0.0
    if isinstance(before, Unknown) or isinstance(amount, Unknown):
        return amount if isinstance(amount, Unknown) and not isinstance(before, Unknown) else before
    parts = [_lays(s, one) for one in moved]
    return total([before, *parts])


def _moved(s: Subject) -> list[Share]:
    """All that was put in and taken out, with where it lies along the vehicle; what went out counts below nothing."""
    found = [Share(item.name, mass_of(s, item), position(s, item)) for item in added(s)]
    if s.item.vehicle.has("masses.cables"):
        found.append(Share("cables", limit_or_load(s, "cables"), Unknown("where cables lie")))
    if s.item.vehicle.has("masses.removed"):
        point = s.read(s.item.vehicle, "masses.removed at") if s.item.vehicle.has("masses.removed at") else None
        where = multiply(point[ALONG], sense(s, ALONG)) if isinstance(point, tuple) else Unknown("where it was")
        found.append(Share("what was taken out", multiply(limit_or_load(s, "removed"), -1.0), where))
    return found


def _lays(s: Subject, one: Share) -> Number:
    """What a mass lays on the ball, kg."""
    axle = axle_at(s)
    ahead, lever = subtract(axle, one.at), _lever(s, axle)
    if not isinstance(ahead, float | Range) or not isinstance(lever, float | Range) or lower(lever) <= 0.0:
        most = max(abs(lower(one.mass)), abs(upper(one.mass)))
        return between(-most, most) if most else 0.0
    load = multiply(one.mass, corners(lambda far, length: far / length, ahead, lever))
    s.note(lambda: f"{one.name}: {show(one.mass, 'kg')}, {show(ahead, 'm')} ahead of the axle: {show(load, 'kg')}")
    return load


def _lever(s: Subject, axle: Number) -> Number:
    """Distance of ball and axle, m: as told, else at least from the axle to the front end of the body."""
    if s.item.vehicle.has("masses.ball to axle"):
        return s.read(s.item.vehicle, "masses.ball to axle")  # type: ignore[no-any-return]
    s.read(s.item.vehicle, "masses.ball to axle")
    around = s.read(s.item.vehicle, "envelope")
    untold = Unknown("how far the tow ball is from the axle is not told")
    if not isinstance(around, Box):
        return untold
    ends = [multiply(end, sense(s, ALONG)) for end in (around.at[0], add(around.at[0], around.size[0]))]
    least = [lower(subtract(axle, end)) for end in ends if isinstance(subtract(axle, end), float | Range)]
    return Range(max(least), inf) if len(least) == len(ends) else untold


@fact("design", "ball_limit", unit="kg", says="Greatest load of the tow ball.")
def ball_limit(s: Subject) -> Any:
    return limit_or_load(s, "ball limit")


@fact("design", "axle_load", unit="kg", says="Load of the axle of a caravan, or of several, with all aboard.",
      method="gross mass − load of the tow ball")  # fmt: skip
def axle_load(s: Subject) -> Any:
    return subtract(s.gross_mass, s.ball_load)


@fact("design", "axle_limit", unit="kg", says="Greatest load of the axle of a caravan, or of several together.")
def axle_limit(s: Subject) -> Any:
    return limit_or_load(s, "axle limit")
