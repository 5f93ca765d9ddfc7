"""What hangs on one branch of the mains: all that its breaker feeds, however many cables leave it."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.feeding import consumers, live_node
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.least_fault import zones_of
from checker.facts.site_load import charger_current
from checker.facts.subject import Subject
from checker.facts.zone_loads import hanging
from checker.quantities import Number, Unknown, divide, total


@fact(
    "circuit",
    "branch_loads",
    of="load",
    type="list",
    says="The loads behind the device that serves it, on this run or another, with no further device between.",
    method="graph",
)
def branch_loads(s: Subject) -> tuple[Any, ...]:
    live = s.facts.network.conductor(s.item.name, LIVE)
    if live is None:
        return ()
    found = (s.facts.subject("load", item.name) for item, _ in hanging(s.facts, zones_of(s.facts).of(live.end)))
    return tuple(dict.fromkeys(load for load in found if load is not None))


@fact(
    "circuit",
    "branch_rating",
    unit="A",
    says="Rating of the device that serves the branch it belongs to.",
    method="the one device between that branch and the rest",
)
def branch_rating(s: Subject) -> Number:
    live = s.facts.network.conductor(s.item.name, LIVE)
    borders = () if live is None else zones_of(s.facts).borders(zones_of(s.facts).of(live.end))
    names = dict.fromkeys(border.link.equipment.name for border in borders)
    device = s.facts.subject("device", next(iter(names))) if len(names) == 1 else None
    if device is None:
        return Unknown(f"which one device serves {s.id} is not known")
    return device.rating  # type: ignore[no-any-return]


@fact(
    "circuit",
    "branch_appliance_current",
    unit="A",
    says="Current of the appliances and chargers behind the device that serves it, lamps and outlets left out.",
    method="running current, current, or power over voltage, as stated; of a charger its mains current",
)
def branch_appliance_current(s: Subject) -> Number:
    live = s.facts.network.conductor(s.item.name, LIVE)
    zones = zones_of(s.facts)
    fixed = (item for item in consumers(s.facts.network) if item.kind not in ("lamp", "outlet"))
    here = [] if live is None else [item for item in fixed if zones.of(live_node(item)) == zones.of(live.end)]
    return total([_takes(s, item) for item in here])


def _takes(s: Subject, item: Equipment) -> Number:
    if item.kind == "charger":
        return charger_current(s, item, s.voltage)
    for key in ("running", "current"):
        if item.allows(key) and item.has(key):
            return s.read(item, key)  # type: ignore[no-any-return]
    return divide(s.read(item, "power"), s.voltage) if item.allows("power") else Unknown(f"what {item.name} takes")
