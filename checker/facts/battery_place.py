"""Where a battery stands: in the wet, under the body, at the engine."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.space import chain, is_kind, place_of
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, equal, some

WET_KINDS = ("wet room", "outside", "under body")
DRY = ("dry", "damp")


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
