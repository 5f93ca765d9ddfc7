"""Low-voltage cut-offs of a bank: what gets around them, at which voltage they act, whether an alarm goes with them."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.sources import LOADS
from checker.circuit.supply import is_live
from checker.design.model import Equipment
from checker.facts.bank import home, loose_bank, of_unit, series_parallel, some_gap
from checker.facts.bank_isolation import guards
from checker.facts.catalogue import fact
from checker.facts.contacts import signal_means
from checker.facts.darkness import goes_dark, live_node
from checker.facts.essential import ending_at
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    both,
    equal,
    greatest,
    least,
    less_equal,
    multiply,
    negate,
    some,
)

CUTTING = ("battery low", "discharge allowed")
SHORT_RUN_S = 1800.0
"""What runs for at most half an hour at a time, as a winch does, empties no bank: common practice, no source."""


def cuts(s: Subject, item: Equipment) -> Truth:
    """Whether a piece of equipment in a run opens at a low voltage."""
    if item.kind == "voltage monitor":
        trips = s.read(item, "trips below")
        return Unknown(f"where {item.name} opens is not told") if isinstance(trips, Unknown) else trips is not None
    if item.kind == "combiner":
        return True  # it parts before the battery behind it is drained by this one
    if item.kind not in ("relay", "switch"):
        return False
    if not item.has("driven by"):
        return False
    named = s.read(item, "driven by")
    if named is None or isinstance(named, Unknown):
        return False if named is None else Unknown(f"what drives {item.name} is not told")
    means = signal_means(s.facts, named)
    return means if isinstance(means, Unknown) else means in CUTTING


def _reached(s: Subject, perhaps: bool) -> list[str]:
    """Live nodes reached from the terminals of a bank without a cut-off; with `perhaps` through what may be none."""
    start = home(s.facts, s.item)
    seen, todo = {start: None}, [start]
    while todo:
        node = todo.pop()
        for edge, far in s.facts.network.near.get(node, ()):
            if far not in seen and is_live(edge) and _open(s, edge, node, perhaps):
                seen[far] = None
                todo.append(far)
    return list(seen)


def _open(s: Subject, edge: Edge, node: str, perhaps: bool) -> bool:
    if not isinstance(edge, Link):
        return True
    if edge.one_way and node == edge.b:
        return False
    answer = cuts(s, edge.equipment)
    return answer is False or (perhaps and answer is not True)


def _drains(s: Subject, item: Equipment, node: str) -> Truth:
    """Whether a consumer can empty the bank: it has no stop of its own, guards nobody, and runs for long."""
    if item.kind in ("inverter", "inverter-charger", "dc converter"):
        if not node.endswith(("dc+", "low+", "high+")):
            return False
        stop = s.read(item, "settings.low stop") if item.allows("settings.low stop") else UNKNOWN
        if isinstance(stop, float | Range):
            return False
        return True if stop is None else Unknown(f"whether {item.name} stops at a low voltage is not told")
    if item.kind not in LOADS:
        return False
    load = s.facts.subject("load", item.name)
    if load is None:
        return False
    time = s.read(item, "run time") if item.allows("run time") else None
    brief: Truth = less_equal(time, SHORT_RUN_S) if isinstance(time, float | Range) else False
    return negate(some((brief, item.kind in ("alarm", "detector"), _exempt(load))))


def _exempt(load: Subject) -> Truth:
    """Silence on the purpose of a load is no duty, so that it counts; a purpose written as unknown may be one.

    A circuit told for safety is taken at its word here: what a wrong word harms is the battery alone.
    """
    if some(equal(one.value("duty"), "safety") for one in ending_at(load.facts, load.id)) is True:
        return True
    answer = guards(load)
    written = load.item.allows("purpose") and load.item.has("purpose")
    surely = some((load.guards_people, load.is_essential))
    return answer if written or not isinstance(answer, Unknown) else surely


@fact(
    "bank",
    "uncut",
    of="equipment",
    type="list",
    says="What can drain it flat: on it with no cut-off between, no stop of its own, and neither guarding people nor "
    "brief.",
    method="walk from its terminal up to voltage monitors, and relays told by a low battery or the leave to discharge",
    source="half an hour: common practice, no source",
)
def uncut(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    if some_gap(s.facts):
        return Unknown("part of some run was not seen and may hide a device that acts")
    found: dict[str, Any] = {}
    doubts: list[Unknown] = []
    sure = set(_reached(s, False))
    for node in _reached(s, True):
        for item in s.facts.network.sinks.get(node, ()):
            answer = both(
                _drains(s, item, node), node in sure or Unknown("whether a device before it cuts is not told")
            )
            if isinstance(answer, Unknown):
                doubts.append(answer)
            elif answer:
                found.setdefault(item.name, s.facts.subject("equipment", item.name))
    if doubts and not found:
        return doubts[0]
    return tuple(one for one in found.values() if one is not None)


@fact("bank", "cells_in_series", unit="each", says="Cells in one string, those of all units of it.",
      method="cells of a unit times units in series")  # fmt: skip
def cells_in_series(s: Subject) -> Any:
    return multiply(s.cells, series_parallel(s, s.item)[0])


@fact(
    "bank",
    "cut_off_voltage",
    unit="V",
    says="Voltage down to which loads drain it: where its management stops, or the lowest of the monitors on its bus; "
    "none where neither is told.",
    method="the higher of the two",
)
def cut_off_voltage(s: Subject) -> Any:
    stop = multiply(of_unit(s, s.item, "bms.under voltage"), series_parallel(s, s.item)[0])
    if stop is None or s.has_management is False or (isinstance(stop, Unknown) and s.is_managed is False):
        return _monitors(s)
    monitors = _monitors(s)
    return stop if monitors is None else greatest(stop, monitors)


def _monitors(s: Subject) -> Number:
    reached = set(_reached(s, True))
    found: list[Number] = []
    for item in _cutting(s.facts):
        on_it = not reached.isdisjoint(s.facts.network.nodes_of(item.name))
        if item.kind == "voltage monitor" and on_it and cuts(s, item) is not False:
            found.append(s.read(item, "trips below"))
    return least(found) if found else None


def _cutting(facts: Facts) -> list[Equipment]:
    return [item for item in facts.network.equipment.values() if item.kind in ("voltage monitor", "relay", "switch")]


@fact(
    "load",
    "dark_by_cut_off",
    type="yes/no",
    says="A voltage monitor, or a relay told by a low battery, that opens takes every battery away from it.",
    method="each taken out in turn; walk from every battery, contacts as in each mode",
)
def dark_by_cut_off(s: Subject) -> Truth:
    node = live_node(s.facts, s.item)
    if node is None:
        return Unknown(f"{s.id} is not connected")
    answers: list[Truth] = [False]
    for item in _cutting(s.facts):
        acts = cuts(s, item)
        if acts is not False:
            answers.append(both(acts, goes_dark(s.facts, node, (item.name,))))
    return some(answers)
