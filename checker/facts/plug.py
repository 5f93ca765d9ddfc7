"""What hangs on the plug to a towing vehicle when its alternator loses the battery, or gets a jump start."""

from __future__ import annotations

from typing import Any

from checker.circuit.ports import SUPPLY_CONTACTS
from checker.facts.catalogue import fact
from checker.facts.load_dump import JUMP_V, weakest_at
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, greatest

LIVE_NODES = tuple(f"{contact}+" for contact in SUPPLY_CONTACTS)


@fact(
    "equipment",
    "dump_at_plug",
    unit="V",
    says="Voltage at the plug when the alternator of the towing vehicle loses its battery; none for other equipment.",
)
def dump_at_plug(s: Subject) -> Any:
    return s.read(s.item, "source end.load dump") if s.item.kind == "vehicle coupling" else None


@fact(
    "equipment",
    "weakest_transient_behind",
    unit="V",
    says="Transient that the weakest electronic equipment behind the plug endures; none for other equipment.",
    method="least of the stated transient levels of converters and electronic loads, factory equipment left out",
)
def weakest_transient_behind(s: Subject) -> Any:
    return _weakest(s, "transient level")


@fact(
    "equipment",
    "weakest_in_jump_start_behind",
    unit="V",
    says="Voltage of a jump start that the weakest electronic equipment behind the plug endures; none for others.",
    method="least of the stated levels of converters and electronic loads, factory equipment left out",
)
def weakest_in_jump_start_behind(s: Subject) -> Any:
    return _weakest(s, "jump start")


@fact(
    "equipment",
    "jump_start_at_plug",
    unit="V",
    says="Voltage that a jump start of the towing vehicle puts on the plug; none for others, and above 24 V nominal.",
    method="24 V at a contact of 12 V, 36 V at one of 24 V; the greatest",
    source="ISO 16750-2, 2023 (from memory)",
)
def jump_start_at_plug(s: Subject) -> Any:
    if s.item.kind != "vehicle coupling":
        return None
    found: list[Number] = []
    for contact in SUPPLY_CONTACTS:
        if s.item.has(f"supplies.{contact}.nominal"):
            nominal = s.read(s.item, f"supplies.{contact}.nominal")
            found.append(JUMP_V.get(nominal) if isinstance(nominal, float) else nominal)
    return greatest(found) if found else Unknown(f"no voltage of a contact of {s.id} is told")


def _weakest(s: Subject, key: str) -> Any:
    return weakest_at(s, [f"{s.id}:{node}" for node in LIVE_NODES], key) if s.item.kind == "vehicle coupling" else None
