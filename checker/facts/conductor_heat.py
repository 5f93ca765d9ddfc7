"""Heat at and beside conductors: the terminals along them, and hot parts that they pass."""

from __future__ import annotations

from math import inf, sqrt
from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.space import lower, upper
from checker.facts.subject import Subject
from checker.quantities import Range, Truth, Unknown, between, corners, equal, least, less


def _told_along(s: Subject) -> list[Item | None]:
    """The terminals it touches, from end to end; None for one of which no limit is told."""
    ends = (s.item.start, s.item.end, *(end for wire in s.item.wires for end in (wire.a, wire.b)))
    found: list[Item | None] = []
    for node in dict.fromkeys(ends):
        owner, _, name = node.partition(":")
        item = s.facts.network.equipment.get(owner)
        terminal = item.terminals.get(name) if item is not None else None
        found.append(terminal if terminal is not None and terminal.has("limit") else None)
    return found


@fact("conductor", "terminal_limit_told", type="yes/no", says="The limit of a terminal along it is told.")
def terminal_limit_told(s: Subject) -> bool:
    return any(one is not None for one in _told_along(s))


LEAST_TERMINAL_C = 60.0
LEAST_LARGE_TERMINAL_C, LARGE_M2 = 75.0, 42.4e-6
"""What a terminal without a marking stands: 60 °C, for conductors above 1 AWG 75 °C; NFPA 70, 110.14(C)(1)."""


ABSOLUTE_ZERO_C = -273.15
"""Where any temperature may lie above."""


def _written_unknown(s: Subject) -> bool:
    """Whether a limit along it is written, and written as unknown."""
    vehicle = s.facts.design.vehicle
    along = _told_along(s)
    written = [one.value("limit") for one in along if one is not None]
    if None in along and vehicle.has("terminal limit"):
        written.append(vehicle.value("terminal limit"))
    return any(isinstance(one, Unknown) for one in written)


@fact(
    "conductor",
    "terminal_limit",
    unit="°C",
    says="Lowest temperature that a lug, holder or terminal at its ends or along it may reach.",
    method="least of the limits told with the terminals and for all of them; where one is not told, anything from "
    "60 °C, or 75 °C above 1 AWG, up to that",
    source="NFPA 70, 110.14(C)(1) (from memory)",
)
def terminal_limit(s: Subject) -> Any:
    told = [s.read(terminal, "limit") for terminal in _told_along(s) if terminal is not None]
    if None in _told_along(s):
        told.append(s.read(s.facts.design.vehicle, "terminal limit"))
    known = [one for one in told if isinstance(one, float | Range)]
    if known and len(known) == len(told):
        return least(known)
    top = upper(least(known)) if known else inf
    if _written_unknown(s):
        return between(ABSOLUTE_ZERO_C, top)  # what somebody could not read has no stand-in
    floor = LEAST_LARGE_TERMINAL_C if less(LARGE_M2, s.area) is True else LEAST_TERMINAL_C
    return between(min(floor, lower(least(known))) if known else floor, top) if top > floor else least(known)


@fact(
    "conductor",
    "capacity_at_terminals",
    unit="A",
    says="Current at which it gets no hotter than the terminals along it allow.",
    method="carrying capacity × square root of ((terminal limit - ambient) / (insulation limit - ambient))",
    source="heat of a conductor grows with the square of its current; common practice, no source",
)
def capacity_at_terminals(s: Subject) -> Any:
    limit = s.terminal_limit

    def scaled(capacity: float, terminal_c: float, insulation_c: float, ambient_c: float) -> float:
        if terminal_c >= insulation_c or ambient_c >= insulation_c:
            return capacity
        return capacity * sqrt(max(0.0, (terminal_c - ambient_c) / (insulation_c - ambient_c)))

    return corners(scaled, s.carrying_capacity, limit, s.insulation_limit, s.ambient)


@fact(
    "conductor",
    "hot_distance",
    unit="mm",
    says="Least distance to an exhaust, heater, flue or cooker; none where the file says there are none.",
)
def hot_distance(s: Subject) -> Any:
    return s.read(s.item.circuit, "from hot parts")


@fact("conductor", "hot_distance_told", type="yes/no", says="How far it lies from hot parts is written.")
def hot_distance_told(s: Subject) -> bool:
    return bool(s.item.circuit.has("from hot parts"))


@fact("conductor", "heat_shield", type="yes/no", says="A shield stands between it and what is hot there.")
def heat_shield(s: Subject) -> Truth:
    found = s.read(s.item.circuit, "heat shield")
    return False if found is None else found


@fact("design", "hot_distances_told", type="yes/no",
      says="Every circuit that is no wiring of the factory says how far it lies from hot parts.",
      method="`from hot parts` with the circuit or under `usual`")  # fmt: skip
def hot_distances_told(s: Subject) -> bool:
    own = [one for one in s.item.circuits.values() if equal(one.value("own"), "factory") is not True]
    return bool(own) and all(one.has("from hot parts") for one in own)


@fact("design", "has_alternator", type="yes/no", says="An alternator is aboard.", method="equipment of that kind")
def has_alternator(s: Subject) -> bool:
    return any(item.kind == "alternator" for item in s.item.equipment.values())
