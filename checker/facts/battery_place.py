"""Where a battery stands: in the wet, under the body, at the engine."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.space import chain, extent, is_kind, overlaps, place_of, stands
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, equal, least, some
from checker.quantities.values import perhaps

WET_KINDS = ("wet room", "outside", "under body")
DRY = ("dry", "damp")
FOREIGN = ("fridge", "air conditioner", "outlet", "motor", "generator")
"""What has no business in the compartment of a battery: it moves, gets hot, or is reached for by anybody."""


@fact(
    "equipment",
    "below_the_body",
    type="yes/no",
    says="It stands under the body, or in a box that hangs there.",
    method="the kind of its place and of the places around it",
)
def below_the_body(s: Subject) -> Truth:
    places = chain(s, place_of(s, s.item))
    if not places:
        return Unknown(f"the place of {s.id} is not told")
    return some(is_kind(s, one, "under body") for one in places)


@fact(
    "equipment",
    "ground_clearance",
    unit="mm",
    says="Height above the ground of a battery under the body, or of the box it hangs in; none for others.",
    method="that of its place, or the underside of its own box where that is told and lower",
)
def ground_clearance(s: Subject) -> Any:
    if s.below_the_body is False:
        return None
    place = s.place
    hung = place.ground_clearance if isinstance(place, Subject) else Unknown(f"the place of {s.id} is not told")
    here = stands(s, s.item) if s.item.has("box") else None
    if here is None or not here.exact:
        return hung
    own = here.low[2]
    return perhaps(own) if isinstance(hung, Unknown) else least(hung, own)


@fact(
    "equipment",
    "in_the_wet",
    type="yes/no",
    says="Rain, spray or jets reach it where it stands.",
    method="the kind of its place and the water that the place is told to see; a box that stands in the wet keeps it "
    "off only where that is told",
)
def in_the_wet(s: Subject) -> Truth:
    places = chain(s, place_of(s, s.item))
    if not places:
        return Unknown(f"the place of {s.id} is not told")
    near = places[0]
    wet = s.read(near, "wet") if near.has("wet") else None
    splashed = wet if isinstance(wet, Unknown) else wet is not None and wet not in DRY
    own = some((is_kind(s, near, *WET_KINDS), splashed))
    if own is not False or wet is not None:
        return own
    around = some(is_kind(s, one, *WET_KINDS) for one in places[1:])
    return False if around is False else Unknown(f"whether water reaches {near.name} in what is around it is not told")


@fact("equipment", "starts_the_engine", type="yes/no", says="It is the battery that starts the engine.",
      method="what it is for, as its bank; no for what is no battery")  # fmt: skip
def starts_the_engine(s: Subject) -> Truth:
    bank = s.facts.subject("bank", s.id)
    return False if bank is None else equal(bank.purpose, "starting")


@fact("equipment", "at_the_engine", type="yes/no", says="It stands in the space of an engine, or in a box there.",
      method="the kind of its place and of the places around it")  # fmt: skip
def at_the_engine(s: Subject) -> Truth:
    places = chain(s, place_of(s, s.item))
    if not places:
        return Unknown(f"the place of {s.id} is not told")
    return some(is_kind(s, one, "engine space") for one in places)


@fact(
    "equipment",
    "at_open_engine",
    type="yes/no",
    says="It stands at the engine of a road vehicle, where the air passes; on a boat that is a closed space.",
    method="the kind of its place and of the vehicle",
)
def at_open_engine(s: Subject) -> Any:
    kind = s.place_kind
    if isinstance(kind, Unknown):
        return kind
    place = s.place
    return kind == "engine space" and (place.open_to_air if place is not None else False)


@fact(
    "equipment",
    "foreign_beside",
    type="yes/no",
    says="An appliance, motor, outlet or generator stands in the compartment of a battery, or gas or fuel; no for what "
    "is no battery.",
    method="equipment by its place, places within the compartment by their kind; what the battery itself needs is none",
)
def foreign_beside(s: Subject) -> Truth:
    around = chain(s, place_of(s, s.item)) if s.is_battery else []
    if not around:
        return Unknown(f"the place of {s.id} is not told") if s.is_battery else False
    own = around[0]
    standing = (_stands_in(s, one, own) for one in s.facts.design.equipment.values() if one.kind in FOREIGN)
    inner = (one for one in s.facts.design.places.values() if own in chain(s, one.name))
    return some([*standing, *(is_kind(s, one, "gas locker", "fuel") for one in inner if _perhaps_kind(one))])


def _perhaps_kind(place: Item) -> bool:
    """Whether a place may be one of gas or fuel: a shelf or corner of which no kind is told is none."""
    return place.has("kind") or place.has("cylinders")


def _stands_in(s: Subject, item: Equipment, place: Item) -> Truth:
    name = place_of(s, item)
    if isinstance(name, Unknown):
        clear = overlaps(extent(s, place), stands(s, item)) is False
        return False if clear or not item.has("place") else Unknown(f"where {item.name} stands is not told")
    return place in chain(s, name)
