"""What burns gas or fuel aboard, and the alarm for the carbon monoxide it may give off."""

from __future__ import annotations

from typing import Any

from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, equal, some

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
    return bool(item.allows("gas safe") and item.has("gas safe"))


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
