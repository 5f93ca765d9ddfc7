"""Cables of solar arrays: the voltage on them, what shares their bundles, whether they are marked along the run."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.bunching import CLOSE
from checker.facts.catalogue import fact
from checker.facts.chamber import ELV, WORDS, bands
from checker.facts.space import is_kind
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, equal, negate, some

ARRAY = "solar array"


def _array(s: Subject) -> Subject | None:
    """The array at which a circuit starts."""
    item = s.facts.network.equipment.get(s.item.start.equipment)
    return s.facts.subject("array", item.name) if item is not None and item.kind == ARRAY else None


@fact(
    "circuit",
    "array_voltage",
    unit="V",
    says="Open-circuit voltage on the coldest morning of the array that it comes from; none for other circuits.",
    method="array.open_voltage_cold",
)
def array_voltage(s: Subject) -> Any:
    array = _array(s)
    return None if array is None else array.open_voltage_cold


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
    says="A circuit that comes from no array shares a bundle or a duct with it; none for what comes from no array.",
    method="looms that carry it, by their lists and by what circuits name; ducts and moving loops of its run, by the "
    "chambers for each voltage",
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
    beside = some(_beside_in(s, place) for place in s.facts.subjects("place"))
    return beside if unsure is None or beside is True else unsure


def _beside_in(s: Subject, place: Subject) -> Truth:
    """Whether a circuit that comes from no array lies beside it in a duct or moving loop."""
    passing = bands(place)
    close = is_kind(place, place.item, *CLOSE)
    if s.id not in passing or close is False:
        return False
    chambers = place.read(place.item, "chambers.elv") if place.item.has("chambers.elv") else 1.0
    divided = all(place.item.has(f"chambers.{word}") for word in WORDS)
    others = [name for name, band in passing.items() if not _from_array(s, name) and (band == ELV or not divided)]
    if not others:
        return False
    if chambers != 1.0:
        return Unknown(f"in which chamber of {place.id} {s.id} lies is not told")
    return close


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
