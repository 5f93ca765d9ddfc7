"""What hangs on one branch of the mains: all that its breaker feeds, however many cables leave it."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.facts.catalogue import fact
from checker.facts.least_fault import zones_of
from checker.facts.subject import Subject
from checker.facts.zone_loads import hanging
from checker.quantities import Number, Unknown


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
