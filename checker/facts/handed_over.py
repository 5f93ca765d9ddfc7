"""For whose hands the vehicle is, and how many kinds of source feed it."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.subject import Subject


@fact(
    "design", "used_as", words=("own", "hired"), says="Whose hands it is in: the owner's, or hired out and used hard."
)
def used_as(s: Subject) -> Any:
    return s.read(s.item.vehicle, "use")


@fact("design", "kinds_of_source", unit="count",
      says="Kinds of source aboard: shore, generator, house battery, solar, alternator or towing vehicle.",
      method="equipment by its kind")  # fmt: skip
def kinds_of_source(s: Subject) -> int:
    found = {_SOURCES[item.kind] for item in s.item.equipment.values() if item.kind in _SOURCES}
    return len(found) + (1 if s.has_house_battery is True else 0)


_SOURCES = {
    "shore inlet": "shore", "generator": "generator", "solar array": "solar", "alternator": "engine",
    "vehicle coupling": "engine",
}  # fmt: skip
