"""How the work shifts the vehicle sideways, and what hangs out behind its rear axle."""

from __future__ import annotations

from math import sqrt
from typing import Any

from checker.design.given import Box
from checker.facts.axles import position, sense
from checker.facts.catalogue import fact
from checker.facts.masses import added, limit_or_load, mass_of
from checker.facts.outline import outline
from checker.facts.space import lower, stands, upper
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Unknown, add, corners, divide, multiply, subtract
from checker.quantities.values import between


@fact(
    "design",
    "side_difference",
    unit="%",
    says="Difference of what the added equipment lays on the two sides, as a share of the permitted mass.",
    method="sum of mass × distance from the middle over half the width; what has no box stands anywhere across",
    source="lever rule over the width of the body; common practice, no source",
)
def side_difference(s: Subject) -> Any:
    around = s.read(s.item.vehicle, "envelope")
    if not isinstance(around, Box):
        return Unknown("the envelope of the vehicle is not told")
    half = multiply(around.size[1], 0.5)
    middle = add(around.at[1], half)
    moment: Number = 0.0
    for item in added(s):
        here = stands(s, item)
        if here is None:
            across = _span(around.at[1], add(around.at[1], around.size[1]))
        elif here.exact:
            across = multiply(add(here.low[1], here.high[1]), 0.5)
        else:
            across = _span(here.low[1], here.high[1])
        moment = add(moment, multiply(mass_of(s, item), subtract(across, middle)))
    shifted = divide(moment, half)
    if isinstance(shifted, Unknown):
        return shifted
    ends = abs(lower(shifted)), abs(upper(shifted))
    apart = between(0.0 if lower(shifted) <= 0.0 <= upper(shifted) else min(ends), max(ends))
    return divide(apart, limit_or_load(s, "gross"))


def _span(low: Number, high: Number) -> Number:
    """From the one to the other; unknown when either is."""
    unknown = next((one for one in (low, high) if isinstance(one, Unknown)), None)
    return between(lower(low), upper(high)) if unknown is None else unknown


@fact(
    "design",
    "rear_overhang",
    unit="m",
    says="Length of the vehicle behind its rear axle.",
    method="end of the envelope, or of a box behind it, less the wheelbase; the axes start at the front axle",
)
def rear_overhang(s: Subject) -> Any:
    around = s.read(s.item.vehicle, "envelope")
    way = s.read(s.item.vehicle, "axes.x")
    if not isinstance(around, Box) or not isinstance(way, str):
        return Unknown("the envelope of the vehicle or its axes are not told")
    low, high = outline(s, 0)
    end = high if way == "rearward" else subtract(0.0, low)
    return subtract(end, limit_or_load(s, "wheelbase"))


@fact("design", "wheelbase", unit="m", says="Distance of the axles.")
def wheelbase(s: Subject) -> Any:
    return limit_or_load(s, "wheelbase")


@fact(
    "design",
    "added_yaw_radius",
    unit="m",
    says="Mean distance from the axle of what was added: mass by mass, the root of the mean square; none without any.",
    method="√(sum of mass × distance² / sum of mass) along the vehicle; what has no box lies anywhere in its place; "
    "the axle where it is told, else at the origin of the axes where they start at an axle",
)
def added_yaw_radius(s: Subject) -> Any:
    axle = axle_at(s)
    moment: Number = 0.0
    mass: Number = 0.0
    for item in added(s):
        moment = add(moment, multiply(mass_of(s, item), _squared(subtract(position(s, item), axle))))
        mass = add(mass, mass_of(s, item))
    if isinstance(mass, float) and mass == 0.0:
        return None
    return corners(lambda one, all_of_it: sqrt(one / all_of_it) if all_of_it > 0.0 else 0.0, moment, mass)


def axle_at(s: Subject) -> Number:
    """Where the axle of a caravan is along the vehicle, m: as told, else at the origin where that is an axle."""
    if s.item.vehicle.has("masses.axle at"):
        return multiply(s.read(s.item.vehicle, "masses.axle at"), sense(s, 0))
    origin = s.read(s.item.vehicle, "axes.origin")
    if isinstance(origin, str) and "axle" in origin.lower():
        return 0.0
    s.read(s.item.vehicle, "masses.axle at")
    return Unknown("where the axle is along the vehicle is not told")


def _squared(value: Number) -> Number:
    if isinstance(value, Range) and value.low < 0.0 < value.high:
        return Range(0.0, max(value.low**2, value.high**2))
    return corners(lambda one: one * one, value)


@fact(
    "design",
    "even_yaw_radius",
    unit="m",
    says="The same distance for a body as long as the vehicle and evenly filled.",
    method="length of the envelope / √12",
    source="moment of inertia of a rod about its middle",
)
def even_yaw_radius(s: Subject) -> Any:
    around = s.read(s.item.vehicle, "envelope")
    if not isinstance(around, Box):
        return Unknown("the envelope of the vehicle is not told")
    return divide(around.size[0], sqrt(12.0))
