"""Whose gas an inverter breathes: the air of a lead-acid battery in the same, an outer or an inner place."""

from __future__ import annotations

from checker.facts.catalogue import fact
from checker.facts.space import chain
from checker.facts.sparks import breathes, sealed_within
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, either, equal, negate, some


@fact(
    "converter",
    "in_lead_gas",
    type="yes/no",
    says="It stands in the air of a place that holds a lead-acid battery.",
    method="the same place, a place within that of the battery, or one around it, unless a wall is told to seal them; "
    "in a living space itself gas is thinned",
)
def in_lead_gas(s: Subject) -> Truth:
    body = s.facts.subject("equipment", s.id)
    place = None if body is None else body.place
    if body is None or place is None or isinstance(place, Unknown):
        return Unknown(f"where {s.id} stands is not known")
    answers: list[Truth] = [place.holds_lead]
    for other in s.facts.subjects("place"):
        holds = False if other.id == place.id else other.holds_lead
        if holds is not False:
            answers.append(both(holds, either(_within(other, body), _around(place, other))))
    return some(answers)


def _within(other: Subject, body: Subject) -> Truth:
    """Whether equipment in a place within that of a battery has its air."""
    air = either(breathes(other, body.item), _open_ended(body, body.place.id))
    return both(_a_room(other), air)


def _around(place: Subject, other: Subject) -> Truth:
    """Whether the place of a battery lies within that of the equipment and opens into it."""
    around = chain(other, other.id)
    if place.item not in around:
        return both(_a_room(place), _open_ended(other, other.id))
    return both(_a_room(place), negate(sealed_within(other, around, place.id)))


def _open_ended(s: Subject, name: str) -> Truth:
    """Unknown where nobody knows in which place a place lies; else no."""
    last = chain(s, name)[-1]
    within = s.read(last, "inside") if last.has("inside") else None
    return Unknown(f"in which place {last.name} lies is not known") if isinstance(within, Unknown) else False


def _a_room(place: Subject) -> Truth:
    """Whether a place is small enough to hold gas: all but a living space."""
    return negate(equal(place.kind_of_place, "living space"))
