"""Where an alarm is heard or seen: that of a battery management, that of a smoke or heat detector."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.bank import of_unit
from checker.facts.catalogue import fact
from checker.facts.space import LIVING
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, either, some


def _among_people(s: Subject, names: Any, what: str) -> Truth:
    """Whether one of the places named is part of the living space."""
    if names is None:
        return False
    if not isinstance(names, tuple):
        return Unknown(f"where {what} is heard or seen is not told")
    places = s.facts.design.places
    return some(_holds_people(s, places[name]) for name in names if name in places)


def _holds_people(s: Subject, place: Item) -> Truth:
    """Whether people are in a place: a locker within the living space is not where they are."""
    kind = s.read(place, "kind")
    return kind if isinstance(kind, Unknown) else kind in LIVING


@fact(
    "bank",
    "alarm_heard",
    type="yes/no",
    says="The warning of its management is heard or seen where people are.",
    method="the places told under `bms.alarm`, one of them a living space, bed or seat",
)
def alarm_heard(s: Subject) -> Truth:
    return _among_people(s, of_unit(s, s.item, "bms.alarm.heard in"), f"the alarm of {s.id}")


@fact(
    "place",
    "detection_announced",
    type="yes/no",
    says="The alarm of a smoke or heat detector in it is heard or seen where people are.",
    method="the places told with the detector, one of them a living space, bed or seat; an alarm among people is heard",
)
def detection_announced(s: Subject) -> Truth:
    stated = s.read(s.item, "detector")
    answers: list[Truth] = []
    if isinstance(stated, Unknown) or stated in ("smoke", "heat"):
        answers.append(_among_people(s, s.read(s.item, "detector heard in"), f"the detector in {s.id}"))
    for one in s.holds:
        if one.item.kind in ("alarm", "detector"):
            detects = s.read(one.item, "detects")
            if isinstance(detects, Unknown) or "smoke" in detects or "heat" in detects:
                answers.append(_one_heard(s, one.item))
    return some(answers) if answers else False


def _one_heard(s: Subject, item: Item) -> Truth:
    """An alarm sounds where it stands and where it is told to; a detector only where it is told to."""
    told = _among_people(s, s.read(item, "heard in"), item.name)
    return either(_holds_people(s, s.item), told) if item.kind == "alarm" else told
