"""How the work shifts the vehicle sideways, and what hangs out behind its rear axle."""

from __future__ import annotations

from typing import Any

from checker.design.given import Box
from checker.facts.catalogue import fact
from checker.facts.masses import added, limit_or_load, mass_of
from checker.facts.space import lower, stands, upper
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, add, divide, multiply, subtract
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
    method="end of the envelope less the wheelbase; the axes start at the front axle",
)
def rear_overhang(s: Subject) -> Any:
    around = s.read(s.item.vehicle, "envelope")
    way = s.read(s.item.vehicle, "axes.x")
    if not isinstance(around, Box) or not isinstance(way, str):
        return Unknown("the envelope of the vehicle or its axes are not told")
    end = add(around.at[0], around.size[0]) if way == "rearward" else subtract(0.0, around.at[0])
    return subtract(end, limit_or_load(s, "wheelbase"))


@fact("design", "wheelbase", unit="m", says="Distance of the axles.")
def wheelbase(s: Subject) -> Any:
    return limit_or_load(s, "wheelbase")
