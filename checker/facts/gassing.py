"""Hydrogen of lead-acid batteries in a place, and the openings that carry it off."""

from __future__ import annotations

from typing import Any

from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.equipment import LEAD, chemistry_of
from checker.facts.place import batteries
from checker.facts.subject import Subject
from checker.physics.ventilation import gassing_current, hydrogen_airflow, hydrogen_vent_area
from checker.quantities import Number, Unknown, add, corners, divide, multiply, show

STANDARD = "EN 50272-3 / IEC 62485-3 (traction)"
VOLTS_PER_LEAD_CELL = 2.0
FLOODED, SEALED = "lead-acid vented", "lead-acid valve regulated"
CHARGE = "IU to 2.4 V/cell"
"""House batteries are cycled as traction batteries are: the figures for those, which are the higher ones."""


@fact(
    "place",
    "gas_flow_needed",
    unit="m3/h",
    says="Air that keeps the hydrogen of the lead-acid batteries in it below 4 per cent, five times over.",
    method="Q = 0.05 n I_gas for each battery, charged to 2.4 V a cell, added up",
    source="IEC 62485-2 / EN 50272-2, 7.2 (seen); gassing currents of IEC 62485-3 / EN 50272-3 (seen)",
)
def gas_flow_needed(s: Subject) -> Any:
    found: Number = 0.0
    for item in batteries(s):
        chemistry = chemistry_of(s, item)
        if isinstance(chemistry, Unknown):
            return Unknown(f"the chemistry of {item.name} is not told")
        if chemistry in LEAD:
            found = add(found, _flow(s, item, str(chemistry)))
    return found


def _flow(s: Subject, item: Equipment, chemistry: str) -> Any:
    """Air for one battery or bank, m3/s."""
    one = item.base if item.kind == "bank" and item.base is not None else item
    series, parallel = 1.0, 1.0
    if item.kind == "bank":
        arrangement = s.read(item, "arrangement")
        if not isinstance(arrangement, tuple):
            return Unknown(f"the arrangement of {item.name} is not told")
        series, parallel = float(arrangement[0]), float(arrangement[1])
    cells = s.read(one, "cells") if one.has("cells") else divide(s.read(one, "nominal"), VOLTS_PER_LEAD_CELL)
    capacity = multiply(s.read(one, "capacity"), parallel)
    kind = FLOODED if chemistry == "flooded lead acid" else SEALED

    def flow(count: float, capacity_as: float) -> float:
        return hydrogen_airflow(round(count), gassing_current(STANDARD, kind, CHARGE, capacity_as))

    found = corners(flow, multiply(cells, series), capacity)
    count = multiply(cells, series)
    s.note(lambda: f"{item.name}: 0.05 × {show(count, 'count')} cells × I_gas = {show(found, 'm3/h')}")
    return found


@fact(
    "place",
    "vent_needed",
    unit="cm2",
    says="Free area that each of its two openings needs for the hydrogen.",
    method="28 cm2 for each m3/h, natural draught",
    source="IEC 62485-2 / EN 50272-2, 7.2 (seen)",
)
def vent_needed(s: Subject) -> Any:
    return corners(hydrogen_vent_area, s.gas_flow_needed)
