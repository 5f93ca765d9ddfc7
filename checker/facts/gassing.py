"""Hydrogen of lead-acid batteries in a place, and the openings that carry it off."""

from __future__ import annotations

from math import inf
from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.bank import home
from checker.facts.battery_body import LEAD, chemistry_of
from checker.facts.catalogue import fact
from checker.facts.charging import Output, outputs_to, towing_contacts
from checker.facts.contacts import signal_means
from checker.facts.place import fan_of, perhaps_batteries
from checker.facts.space import apart, stands
from checker.facts.sparks import parted, switches_beside
from checker.facts.subject import Subject
from checker.physics.ventilation import gassing_current, hydrogen_airflow, hydrogen_close_range, hydrogen_vent_area
from checker.quantities import (
    Number,
    Truth,
    Unknown,
    add,
    both,
    corners,
    divide,
    either,
    every,
    least,
    multiply,
    negate,
    perhaps,
    show,
    some,
)
from checker.quantities.values import or_more

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
    for item, here in perhaps_batteries(s):
        chemistry = chemistry_of(s, item)
        if isinstance(chemistry, Unknown):
            return Unknown(f"the chemistry of {item.name} is not told")
        if chemistry in LEAD:
            flow = _flow(s, item)
            found = add(found, flow if here is True else perhaps(flow))
    return found


def cell_gassing(s: Subject, item: Equipment) -> Any:
    """Gassing current of a cell of a lead-acid battery or bank, parallel units together, A."""
    one = item.base if item.kind == "bank" and item.base is not None else item
    parallel = _arrangement(s, item)[1]
    chemistry = chemistry_of(s, item)
    if isinstance(chemistry, Unknown):
        return Unknown(f"the chemistry of {item.name} is not told")
    kind = FLOODED if chemistry == "flooded lead acid" else SEALED
    capacity = multiply(s.read(one, "capacity"), parallel)
    return corners(lambda capacity_as: gassing_current(STANDARD, kind, CHARGE, capacity_as), capacity)


def _arrangement(s: Subject, item: Equipment) -> tuple[Number, Number]:
    """Units in series and in parallel."""
    if item.kind != "bank":
        return 1.0, 1.0
    told = s.read(item, "arrangement")
    missing = Unknown(f"the arrangement of {item.name} is not told")
    return (float(told[0]), float(told[1])) if isinstance(told, tuple) else (missing, missing)


def _flow(s: Subject, item: Equipment) -> Any:
    """Air for one battery or bank, m3/s."""
    one = item.base if item.kind == "bank" and item.base is not None else item
    cells = s.read(one, "cells") if one.has("cells") else divide(s.read(one, "nominal"), VOLTS_PER_LEAD_CELL)
    count = multiply(cells, _arrangement(s, item)[0])
    found = corners(lambda cells, gassing_a: hydrogen_airflow(round(cells), gassing_a), count, cell_gassing(s, item))
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


@fact(
    "equipment",
    "close_range",
    unit="mm",
    says="Distance from a lead-acid battery within which nothing may spark while it charges; none for others.",
    method="28.8 mm × cube root of the gassing current in mA",
    source="IEC 62485-2 / EN 50272-2, 7.4 (from memory); gassing currents of IEC 62485-3 (seen)",
)
def close_range(s: Subject) -> Any:
    if s.is_lead is False:
        return None
    return corners(hydrogen_close_range, cell_gassing(s, s.item))


@fact(
    "equipment",
    "nearest_spark",
    unit="mm",
    says="Distance from a lead-acid battery to the nearest equipment that sparks in use, no limit where nothing does; "
    "none for others.",
    method="between boxes; what stands in the space that the place of the battery is sealed from is left out; at the "
    "engine of a road vehicle the chargers and contacts of the fitter that stand there too",
)
def nearest_spark(s: Subject) -> Any:
    if s.is_lead is False:
        return None
    here, aired = stands(s, s.item), s.at_open_engine
    found: Number = inf
    for one in s.facts.subjects("equipment"):
        counts = both(both(one.sparks, negate(parted(s, one.item))), either(negate(aired), switches_beside(s, one)))
        if one.id == s.id or counts is False:
            continue
        distance = apart(here, stands(s, one.item))
        if isinstance(distance, Unknown):
            return Unknown(f"the box of {s.id} or of {one.id} is not told")
        found = least(found, distance if counts is True else or_more(distance))
    return found


@fact(
    "place",
    "fan_guarded",
    type="yes/no",
    says="When the air of its fan fails, every charger of the lead-acid batteries in it stops.",
    method="the fan senses its flow; each charger is named by it, is stopped or enabled by a signal of flowing air, or "
    "charges through a relay driven by one",
)
def fan_guarded(s: Subject) -> Truth:
    fan = fan_of(s)
    if not isinstance(fan, Equipment):
        return Unknown(f"the fan of {s.id} is not told") if isinstance(fan, Unknown) else False
    sensed = s.read(fan, "flow sensed")
    stopped = [
        _stops_without_air(s, fan, item, output)
        for item, _ in perhaps_batteries(s)
        if isinstance(chemistry := chemistry_of(s, item), Unknown) or chemistry in LEAD
        for output in outputs_to(s.facts, item)
    ]
    stopped += [
        home(s.facts, item) not in joined(s.facts.network, [plug.live], _without(_driven_by_air(s)))
        for item, _ in perhaps_batteries(s)
        for plug in towing_contacts(s.facts, item)
    ]
    named = s.read(fan, "stops charging of")
    told = named if isinstance(named, Unknown) else named is not None
    return both(False if sensed is None else sensed, every(stopped) if stopped else told)


def _stops_without_air(s: Subject, fan: Equipment, battery: Equipment, output: Output) -> Truth:
    """Whether one output no longer charges a battery when the air of a fan fails."""
    charger = output.source.equipment
    named = s.read(fan, "stops charging of")
    if isinstance(named, tuple) and charger.name in named:
        return True
    answers: list[Truth] = [named if isinstance(named, Unknown) else False]
    answers.extend(
        _means_air(s, s.read(charger, key)) for key in ("charge stop.by", "enabled by") if charger.allows(key)
    )
    onward = joined(s.facts.network, [output.source.live], _without(_driven_by_air(s)))
    answers.append(home(s.facts, battery) not in onward)
    return some(answers)


def _driven_by_air(s: Subject) -> list[Equipment]:
    """The relays that a signal of flowing air drives."""
    relays = [item for item in s.facts.network.equipment.values() if item.kind == "relay"]
    return [item for item in relays if _means_air(s, s.read(item, "driven by")) is True]


def _means_air(s: Subject, name: Any) -> Truth:
    if name is None:
        return False
    means = name if isinstance(name, Unknown) else signal_means(s.facts, name)
    return means if isinstance(means, Unknown) else bool(means == "air flowing")


def _without(relays: list[Equipment]) -> Any:
    def kept(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and any(edge.equipment is one for one in relays))

    return kept
