"""What the work adds to the vehicle: mass, axle loads, ball load, height."""

from __future__ import annotations

from typing import Any

from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.equipment import float_count, one_mass
from checker.facts.space import lower
from checker.facts.subject import Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Unknown,
    equal,
    less_equal,
    multiply,
    subtract,
    total,
)

HEAVY = ("battery", "bank", "inverter", "inverter-charger", "generator", "solar array", "transformer")
"""Kinds too heavy to leave out: without their mass the sum is not known. Cables, fuses and switches are left out when
their mass is not told."""


def added(s: Subject) -> list[Equipment]:
    """Equipment that the fitter put in, with a mass told or too heavy to have none; starting batteries belong to the
    vehicle."""
    found = []
    for one in s.facts.subjects("equipment"):
        item: Equipment = one.item
        own = s.read(item, "own") if item.allows("own") else "fitter"
        starting = item.allows("purpose") and equal(item.value("purpose"), "starting") is True
        if starting or equal(own, "factory") is True:
            continue
        if item.kind in HEAVY or (item.allows("mass") and item.has("mass")):
            found.append(item)
    return found


def mass_of(s: Subject, item: Equipment) -> Any:
    """Mass of all pieces under one name, kg."""
    found = multiply(one_mass(s, item), float_count(s, item))
    return Unknown(f"the mass of {item.name} is not told") if isinstance(found, Unknown) else found


@fact("design", "added_mass", unit="kg", says="Mass of the equipment that the fitter put in, less what was taken out.",
      method="sum of masses, and that of cables and small parts where it is told")  # fmt: skip
def added_mass(s: Subject) -> Any:
    cables = [limit_or_load(s, "cables")] if s.item.vehicle.has("masses.cables") else []
    put_in = total([*(mass_of(s, item) for item in added(s)), *cables])
    return subtract(put_in, limit_or_load(s, "removed")) if s.item.vehicle.has("masses.removed") else put_in


def limit_or_load(s: Subject, key: str) -> Any:
    """A mass of the vehicle."""
    return s.read(s.item.vehicle, f"masses.{key}")


@fact("design", "masses_told", type="yes/no", says="Some mass or limit of the vehicle is told.")
def masses_told(s: Subject) -> bool:
    return any(key.startswith("masses.") for key, _ in s.item.vehicle.written())


@fact(
    "design",
    "axles_count",
    type="yes/no",
    says="The loads of a front and a rear axle matter: a vehicle that drives itself, or one of which they are told.",
    method="kind of the vehicle; keys of its masses",
)
def axles_count(s: Subject) -> Any:
    keys = [key for key, _ in s.item.vehicle.written()]
    if any(key.startswith("masses.") and ("front" in key or "rear" in key) for key in keys):
        return True
    kind = s.read(s.item.vehicle, "kind")
    return kind if isinstance(kind, Unknown) else kind in ("motorhome", "campervan")


@fact("design", "gross_limit", unit="kg", says="Greatest permitted mass.")
def gross_limit(s: Subject) -> Any:
    return limit_or_load(s, "gross")


@fact(
    "design",
    "gross_mass",
    unit="kg",
    says="Mass of the vehicle with the work done and its payload.",
    method="total before (or both axles) + added mass + payload kept, people and water; without the payload, at least "
    "the rest",
)
def gross_mass(s: Subject) -> Any:
    before = limit_or_load(s, "before.total")
    if isinstance(before, Unknown):
        before = total(limit_or_load(s, "before.front"), limit_or_load(s, "before.rear"))
    kept = limit_or_load(s, "payload kept") if s.item.vehicle.has("masses.payload kept") else UNKNOWN
    carried = [limit_or_load(s, key) for key in ("people", "water") if s.item.vehicle.has(f"masses.{key}")]
    known = total(before, s.added_mass, *carried)
    return total(known, kept) if not isinstance(kept, Unknown) else _at_least(known)


def _at_least(value: Number) -> Any:
    """A load to which something not told is still to be added."""
    return Range(lower(value), float("inf")) if isinstance(value, float | Range) else value


@fact("design", "heavy_equipment", of="equipment", type="list",
      says="What the fitter put in that is heavy: batteries, inverters, generators, arrays.")  # fmt: skip
def heavy_equipment(s: Subject) -> tuple[Any, ...]:
    found = (s.facts.of("equipment", item) for item in added(s) if item.kind in HEAVY)
    return tuple(one for one in found if one is not None)


@fact("equipment", "is_heavy", type="yes/no", says="A battery, inverter, generator or array, or 10 kg and more.",
      method="by its kind and mass", source="common practice, no source")  # fmt: skip
def is_heavy(s: Subject) -> Any:
    if s.item.kind in HEAVY:
        return True
    if not (s.item.allows("mass") and s.item.has("mass")):
        return False
    return less_equal(10.0, s.mass)
