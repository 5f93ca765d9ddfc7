"""How far equipment stands from exits, beds, fuel and gas."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.space import Extent, apart, chain, extent, lower, overlaps, place_of, places_of, stands, upper
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, both, least, less, less_equal, some
from checker.quantities.values import between


def nearest(s: Subject, kind: str) -> Any:
    """Least distance to the places of a kind, m; unknown when none is told or a box is missing."""
    here = stands(s, s.item)
    places = places_of(s, kind)
    if isinstance(places, Unknown):
        return places
    if not places:
        return Unknown(f"the file tells no place of kind {kind}")
    found: Number = None
    for one in places:
        distance = apart(here, extent(s, one))
        if isinstance(distance, Unknown):
            return Unknown(f"the box of {s.id} or of {one.name} is not told")
        found = distance if found is None else least(found, distance)
    return found


@fact("equipment", "distance_to_exit", unit="m", says="Distance to the nearest way out.", method="between boxes")
def distance_to_exit(s: Subject) -> Any:
    return nearest(s, "exit")


@fact("equipment", "distance_to_fuel", unit="mm", says="Distance to the nearest fuel tank or fitting.",
      method="between boxes")  # fmt: skip
def distance_to_fuel(s: Subject) -> Any:
    return nearest(s, "fuel")


@fact("equipment", "distance_to_petrol", unit="m",
      says="Distance to the nearest tank or fitting of petrol or gas fuel; none where there is none.",
      method="between boxes")  # fmt: skip
def distance_to_petrol(s: Subject) -> Any:
    here, places = stands(s, s.item), places_of(s, "fuel")
    if isinstance(places, Unknown):
        return places
    found: Number = None
    for one in places:
        fuel = s.read(one, "fuel")
        if isinstance(fuel, str) and fuel == "diesel":
            continue
        if isinstance(fuel, Unknown):
            return Unknown(f"what fuel {one.name} holds is not told")
        distance = apart(here, extent(s, one))
        if isinstance(distance, Unknown):
            return Unknown(f"the box of {s.id} or of {one.name} is not told")
        found = distance if found is None else least(found, distance)
    return found


@fact("equipment", "distance_to_gas", unit="m", says="Distance to the nearest gas locker.", method="between boxes")
def distance_to_gas(s: Subject) -> Any:
    return nearest(s, "gas locker")


@fact("equipment", "distance_to_bed", unit="m", says="Distance to the nearest bed.", method="between boxes")
def distance_to_bed(s: Subject) -> Any:
    return nearest(s, "bed")


@fact("equipment", "distance_to_seat", unit="m", says="Distance to the nearest seat.", method="between boxes")
def distance_to_seat(s: Subject) -> Any:
    return nearest(s, "seat")


@fact("equipment", "distance_to_bedding", unit="mm", says="Distance to the nearest bed or seat, whichever is told.",
      method="between boxes")  # fmt: skip
def distance_to_bedding(s: Subject) -> Any:
    told = {kind: places_of(s, kind) for kind in ("bed", "seat")}
    kinds = [kind for kind, places in told.items() if isinstance(places, Unknown) or places]
    if not kinds:
        return Unknown("the file tells no bed and no seat")
    return least([nearest(s, kind) for kind in kinds])


@fact(
    "equipment",
    "under_bed",
    type="yes/no",
    says="A bed lies right above it, or it stands within the box of a bed.",
    method="the boxes share ground and the bed reaches higher than where it begins; or its place lies within a bed",
)
def under_bed(s: Subject) -> Truth:
    here = stands(s, s.item)
    beds = places_of(s, "bed")
    if isinstance(beds, Unknown):
        return beds
    if not beds:
        return Unknown("the file tells no place of kind bed")
    around = chain(s, place_of(s, s.item))
    return some(bed in around or _reaches_over(here, extent(s, bed)) for bed in beds)


def _reaches_over(here: Extent | None, bed: Extent | None) -> Truth:
    """Whether a bed, with the box below its mattress, lies over something or around it."""
    if here is None or bed is None:
        return Unknown("a box is not told")
    bottom = here.low[2] if here.exact else between(lower(here.low[2]), upper(here.high[2]))
    return both(_share_ground(here, bed), less(bottom, bed.high[2]))


def above(low: Extent | None, high: Extent | None) -> Truth:
    """Whether the second thing lies right above the first; what lies somewhere within a box may be at any height."""
    if low is None or high is None:
        return Unknown("a box is not told")
    flat = _share_ground(low, high)
    top = low.high[2] if low.exact else between(lower(low.low[2]), upper(low.high[2]))
    bottom = high.low[2] if high.exact else between(lower(high.low[2]), upper(high.high[2]))
    return both(flat, less_equal(top, bottom))


def _share_ground(a: Extent, b: Extent) -> Truth:
    """Whether two things share ground, whatever their heights."""
    return overlaps(a._replace(low=(*a.low[:2], 0.0), high=(*a.high[:2], 1.0)),
                    b._replace(low=(*b.low[:2], 0.0), high=(*b.high[:2], 1.0)))  # fmt: skip
