"""How many loaded conductors lie side by side: in a loom, in a chamber of a duct, as parallel cables of one circuit."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.chamber import WORDS, bands_by_place
from checker.facts.conductor_given import place_items
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Range, Unknown, between, equal, greatest, multiply

CLOSE = ("duct", "flexible loop")
"""Kinds of place in which cables cannot keep apart."""
IDLE = ("control", "sense", "arc free")
"""Duties whose conductors carry too little to warm their neighbours; common practice, no source."""


@fact(
    "conductor",
    "bunched",
    unit="each",
    says="Loaded live and return conductors side by side, its own pair included.",
    method="two for each circuit: those counted by the loom; in a duct or moving loop without a loom those in the same "
    "chamber; else its own parallel cables alone",
)
def bunched(s: Subject) -> Any:
    name = s.item.circuit.name
    looms = _looms(s.facts)
    own = s.parallel_legs
    told = any(loom.has("bunched") for loom in looms.carrying.get(name, ()))
    most: Number = 2.0 if told or not isinstance(own, float | Range) else multiply(own, 2.0)
    for loom in looms.carrying.get(name, ()):
        count = s.read(loom, "bunched")
        if isinstance(count, Unknown) and not loom.has("bunched"):
            count = looms.untold if looms.untold is not None else float(len(looms.members[loom.name]))
        most = greatest(most, multiply(count, 2.0))
    if isinstance(s.item.circuit.value("loom"), Unknown) and s.item.circuit.has("loom"):
        return Unknown(f"in which loom {name} runs is not known")
    if looms.untold is not None and name not in looms.carrying:
        return looms.untold
    for place in place_items(s):
        if place.says("kind", *CLOSE) and not _in_loom_there(looms.carrying.get(name, ()), place):
            most = greatest(most, multiply(_beside(s, place), 2.0))
    return most


def _in_loom_there(carrying: list[Item] | tuple[()], place: Item) -> bool:
    """Whether a loom of the circuit says how it lies in a place; one that names no place says it everywhere."""
    return any(not loom.has("place") or equal(loom.value("place"), place.name) is True for loom in carrying)


def _beside(s: Subject, place: Item) -> Number:
    """Loaded circuits in the chamber of a duct that a circuit takes, itself included."""
    band = bands_by_place(s.facts).get(place.name, {}).get(s.item.circuit.name, "")
    divided = all(place.has(f"chambers.{word}") for word in WORDS)
    loaded = _loaded(s.facts, place.name, band if divided else "")
    s.note(lambda: f"loaded circuits that share {place.name}: {', '.join(loaded)}")
    count = float(max(1, len(loaded)))
    chambers = s.read(place, f"chambers.{band}") if divided else 1.0
    several = not isinstance(chambers, float) or chambers > 1.0
    return between(1.0, count) if several and count > 1.0 else count


def _loaded(facts: Facts, place: str, band: str) -> list[str]:
    """Circuits of a band (empty: of both) that pass a place and warm it; found once for all of them."""
    kept: dict[tuple[str, str], list[str]] = facts.shared.setdefault("loaded circuits by chamber", {})
    if (place, band) not in kept:
        here = bands_by_place(facts).get(place, {})
        names = [name for name, word in here.items() if band in ("", word)]
        kept[place, band] = [name for name in names if not _idle(facts, name)]
    return kept[place, band]


def _idle(facts: Facts, name: str) -> bool:
    circuit = facts.design.circuits.get(name)
    return circuit is not None and circuit.says("duty", *IDLE)


class _Looms(NamedTuple):
    """Circuit -> its looms, loom -> its circuits, and why there may be more of both than the file tells."""

    carrying: dict[str, list[Item]]
    members: dict[str, dict[str, None]]
    untold: Unknown | None


def _looms(facts: Facts) -> _Looms:
    found: _Looms | None = facts.shared.get("looms")
    if found is None:
        found = facts.shared["looms"] = _find_looms(facts)
    return found


def _find_looms(facts: Facts) -> _Looms:
    """Worked out once for all circuits."""
    looms, circuits = facts.design.looms, facts.design.circuits
    found = _Looms({}, {name: {} for name in looms}, None)
    for loom in looms.values():
        carries = loom.value("carries")
        if isinstance(carries, Unknown) and loom.has("carries"):
            found = found._replace(untold=Unknown(f"which circuits {loom.name} carries is not known"))
        found.members[loom.name].update(dict.fromkeys(carries if isinstance(carries, tuple) else ()))
    for circuit in circuits.values():
        named = circuit.value("loom")
        if isinstance(named, str) and named in looms:
            found.members[named][circuit.name] = None
    for name, members in found.members.items():
        for member in members:
            found.carrying.setdefault(member, []).append(looms[name])
    return found
