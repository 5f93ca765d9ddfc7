"""What burns gas or fuel aboard, and the alarm for the carbon monoxide it may give off."""

from __future__ import annotations

from typing import Any

from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.equipment import GLOWS_C
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, equal, greater, negate, some

ALARMS = ("alarm", "detector")


@fact(
    "design",
    "burners",
    of="equipment",
    type="list",
    says="Equipment that burns gas or fuel: what closes or keeps a gas valve, absorption fridges, generators.",
    method="by its kind, `gas safe` and `works by`",
)
def burners(s: Subject) -> Any:
    return tuple(one for one in s.facts.subjects("equipment") if _burns(s, one))


def _burns(s: Subject, one: Subject) -> bool:
    item: Equipment = one.item
    if item.kind in ("generator", "valve"):
        return item.kind == "generator" or item.says("purpose", "gas system")
    if item.allows("works by") and equal(s.read(item, "works by"), "absorption") is True:
        return True
    return bool(item.allows("gas safe") and item.has("gas safe") and item.value("gas safe") is not None)


@fact(
    "equipment",
    "ignites_gas",
    type="yes/no",
    says="It can light gas that drifts to it: it sparks, burns, is an inlet that is plugged in and out, or is hot.",
    method="what sparks by its kind, what burns, shore inlets, surfaces above 300 °C; open for a load of no closer "
    "kind and no told heat; not what is told to be ignition protected",
    source="surface temperature of class T2 for LP gas: IEC 60079-20-1 (from memory)",
)
def ignites_gas(s: Subject) -> Truth:
    said = s.ignition_protected if s.item.allows("ignition protected") and s.item.has("ignition protected") else False
    inlet = s.item.kind == "shore inlet"
    able = some([s.sparks, inlet, _burns(s, s), greater(s.hot_surface, GLOWS_C), _may_glow(s)])
    return both(negate(said), able)


def _may_glow(s: Subject) -> Truth:
    """Whether a load sparks or glows, of which the file says only that it is one."""
    if s.item.kind != "load":
        return False
    if s.item.has("ignition protected"):
        return negate(s.ignition_protected)
    return False if s.item.has("hot surface") else Unknown(f"whether {s.id} sparks or glows is not told")


@fact("equipment", "to_the_outside", type="yes/no",
      says="It stands in the open air or in a place whose openings or door lead there, or its face does.",
      method="its place and use, where the openings of its place lead, and the side that an inlet faces")  # fmt: skip
def to_the_outside(s: Subject) -> Truth:
    faces = equal(s.read(s.item, "faces"), "outside") if s.item.allows("faces") else False
    place = s.place
    if not isinstance(place, Subject):
        return some([s.outdoors, faces])
    door = equal(place.opens, "outside") if place.item.has("opens") else False
    return some([s.outdoors, faces, equal(place.vent_to, "outside"), door])


@fact(
    "design",
    "carbon_monoxide_watched",
    type="yes/no",
    says="An alarm or detector for carbon monoxide is aboard.",
    method="what the alarms and detectors of the file detect; in a survey one may not have been seen",
)
def carbon_monoxide_watched(s: Subject) -> Truth:
    answers = [_detects(s, one) for one in s.facts.subjects("equipment") if one.item.kind in ALARMS]
    found = some(answers)
    if found is False and is_word(s.purpose, "survey") is not False:
        return Unknown("an alarm for carbon monoxide may not have been seen")
    return found


def _detects(s: Subject, one: Subject) -> Truth:
    detects = s.read(one.item, "detects")
    if not isinstance(detects, tuple):
        return Unknown(f"what {one.id} detects is not told")
    return "carbon monoxide" in detects
