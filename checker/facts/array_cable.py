"""Cables of solar arrays: the voltage on them, what shares their bundles, whether they are marked along the run."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, equal, negate

ARRAY = "solar array"


def _array(s: Subject) -> Subject | None:
    """The array at which a circuit starts."""
    item = s.facts.network.equipment.get(s.item.start.equipment)
    return s.facts.subject("array", item.name) if item is not None and item.kind == ARRAY else None


@fact(
    "circuit",
    "array_voltage",
    unit="V",
    says="Open-circuit voltage of the array that it comes from; none for other circuits.",
    method="array.open_voltage",
)
def array_voltage(s: Subject) -> Any:
    array = _array(s)
    return None if array is None else array.open_voltage


@fact(
    "circuit",
    "is_marked_along",
    type="yes/no",
    says="It is marked along its length.",
    method="the interval at which it is marked",
)
def is_marked_along(s: Subject) -> Truth:
    return negate(equal(s.read(s.item, "marked every"), None))


@fact(
    "circuit",
    "runs_with_others",
    type="yes/no",
    says="A circuit that comes from no array shares a bundle with it; none for what comes from no array.",
    method="looms that carry it, by their lists and by what circuits name",
)
def runs_with_others(s: Subject) -> Any:
    if _array(s) is None:
        return None
    unsure: Unknown | None = None
    named = s.read(s.item, "loom")
    if isinstance(named, Unknown) and s.item.has("loom"):
        unsure = named
    named_by = _named_by(s)
    for loom in s.facts.design.looms.values():
        members = _members(s, loom, named_by.get(loom.name, set()))
        if isinstance(members, Unknown):
            unsure = members
        elif s.id in members and any(not _from_array(s, name) for name in members if name != s.id):
            return True
    return False if unsure is None else unsure


def _named_by(s: Subject) -> dict[str, set[str]]:
    """Loom -> the circuits that name it; found once."""
    found: dict[str, set[str]] | None = s.facts.shared.get("circuits naming a loom")
    if found is None:
        found = s.facts.shared["circuits naming a loom"] = {}
        for circuit in s.facts.design.circuits.values():
            loom = circuit.value("loom")
            if isinstance(loom, str):
                found.setdefault(loom, set()).add(circuit.name)
    return found


def _members(s: Subject, loom: Item, named: set[str]) -> set[str] | Unknown:
    carries = s.read(loom, "carries")
    if isinstance(carries, Unknown) and loom.has("carries"):
        return Unknown(f"which circuits {loom.name} carries is not known")
    found = {name for name in carries if isinstance(name, str)} if isinstance(carries, tuple) else set()
    return found | named


def _from_array(s: Subject, name: str) -> bool:
    circuit = s.facts.design.circuits.get(name)
    item = None if circuit is None else s.facts.network.equipment.get(circuit.start.equipment)
    return item is not None and item.kind == ARRAY
