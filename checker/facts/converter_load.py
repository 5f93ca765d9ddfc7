"""What is asked of a converter that holds a bus up by itself, and what it is rated for there."""

from __future__ import annotations

from typing import Any

from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.charging import rating_key
from checker.facts.contacts import contacts
from checker.facts.converter_bus import Alone, alone
from checker.facts.currents import draws_in
from checker.facts.levels import level_at
from checker.facts.loads import rated_current
from checker.facts.subject import Subject
from checker.quantities import UNKNOWN, Number, Unknown, greatest, multiply, perhaps, total

ALWAYS_ON = ("alarm", "detector")
"""Loads that no mode has to name: they run as long as they are fed."""


def fed_power(s: Subject) -> Number | None:
    """Greatest power that a bus without a battery asks in any mode, W; None where it holds up none."""
    found = [_asked(s, one) for one in alone(s.facts, s.item)]
    return greatest(found) if found else None


def _asked(s: Subject, one: Alone) -> Number:
    """What runs on the bus in the mode, W: as the mode says, alarms always."""
    near = joined(s.facts.network, [one.source.live], contacts(s.facts, one.mode).perhaps)
    draws = draws_in(s.facts, one.mode)
    found: list[Number] = []
    for node in near:
        if node.startswith(f"{s.id}:"):
            continue
        level = level_at(s.facts, node)
        volts: Number = UNKNOWN if level is None else level.nominal
        asked = [draws[node]] if node in draws else [rated_current(item, volts) for item in _on(s, node)]
        found.extend(multiply(current, volts) for current in asked)
    power = total(found)
    return power if one.sure else perhaps(power)


def _on(s: Subject, node: str) -> list[Equipment]:
    return [item for item in s.facts.network.sinks.get(node, ()) if item.kind in ALWAYS_ON]


def fed_rating(s: Subject) -> Number | None:
    """Power it is rated for at the outputs with which it holds a bus up, W; None where there are none."""
    sources = {one.source.port: one.source for one in alone(s.facts, s.item)}.values()
    found: list[Number] = []
    for source in sources:
        volts: Any = s.read(s.item, "settings.feed voltage") if s.item.allows("settings.feed voltage") else UNKNOWN
        if isinstance(volts, Unknown):
            volts = s.read(s.item, "settings.charge voltage")
        level = level_at(s.facts, source.live)
        if isinstance(volts, Unknown) and level is not None:
            volts = level.nominal
        found.append(multiply(s.read(s.item, rating_key(source)), volts))
    return greatest(found) if found else None
