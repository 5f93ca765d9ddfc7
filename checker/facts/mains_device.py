"""Protective devices of the mains side: what stands behind them, what the shore lets them carry, their poles."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import Any

from checker.circuit.elements import LIVE, Link, Wire
from checker.circuit.feeding import residual_path
from checker.circuit.states import Truth
from checker.design.given import MISSING, Given
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.mains import TOO_MANY, answer, ever, states_of, tell
from checker.facts.shown import greatest_shown, is_test, taken_at
from checker.facts.subject import Facts, Subject
from checker.facts.supply import supplies_of
from checker.facts.unseen import where_it_stands
from checker.quantities import Number, Range, Unknown, both, either, equal, every, least
from checker.quantities import Truth as Answer

UNTOLD = Range(0.0, inf)
"""A rated current that nobody told: it may be less than any other."""


@fact("device", "supply_is_polarised", type="yes/no", says="Live and neutral of the sites cannot be swapped.")
def supply_is_polarised(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.polarised")


@fact(
    "device",
    "is_fed_from_shore",
    type="yes/no",
    says="In some supply state the shore feeds it.",
    method="every reachable supply state",
)
@where_it_stands
def is_fed_from_shore(s: Subject) -> Any:
    links = [link for link in _live_links(s.facts).get(s.item.name, ()) if link.a in states_of(s.facts).mains.nodes]
    if not links:
        return False
    if not states_of(s.facts).complete:
        return TOO_MANY

    def fed(state: Any) -> Truth:
        found: Truth = False
        for link in links:
            sure, may = state.feeds_of(link.a)
            if any(not feed.aboard for feed in sure):
                return True
            found = None if any(not feed.aboard for feed in may) else found
        return found

    return answer(ever(states_of(s.facts).states, fed)[0], "whether the shore reaches it is not known")


def _live_links(facts: Facts) -> dict[str, list[Link]]:
    found: dict[str, list[Link]] | None = facts.store.get("live links")
    if found is None:
        found = facts.store["live links"] = {}
        for link in facts.network.links:
            if link.pole == LIVE:
                found.setdefault(link.equipment.name, []).append(link)
    return found


@fact(
    "device",
    "is_first_from_shore",
    type="yes/no",
    says="It is the first overcurrent device that the shore meets aboard.",
    method="walk along live conductors from each inlet",
)
@where_it_stands
def is_first_from_shore(s: Subject) -> Answer:
    found: tuple[set[str], set[str]] | None = s.facts.store.get("first from shore")
    if found is None:
        found = s.facts.store["first from shore"] = _first(s.facts, perhaps=False), _first(s.facts, perhaps=True)
    surely, perhaps = found
    if s.item.name in perhaps and s.item.name not in surely:
        return Unknown(f"part of what lies between the shore and {s.id} was not seen and may hide a device")
    return s.item.name in surely


def _first(facts: Facts, *, perhaps: bool) -> set[str]:
    """The devices met first on each way from an inlet; with `perhaps` past stretches that were not seen as well."""
    todo = [feed.live for feed in states_of(facts).mains.feeds if not feed.aboard]
    seen, found = set(todo), set()
    while todo:
        for edge, far in facts.network.near.get(todo.pop(), ()):
            pole = edge.conductor.role if isinstance(edge, Wire) else edge.pole
            if pole != LIVE or far in seen or (not perhaps and isinstance(edge, Wire) and edge.gap is not None):
                continue
            if isinstance(edge, Link) and edge.is_protective:
                found.add(edge.equipment.name)
                continue
            seen.add(far)
            todo.append(far)
    return found


@fact(
    "device",
    "shore_rating",
    unit="A",
    says="Lowest rated current of what lies upstream of it on the shore: inlet, lead, site outlet.",
    method="ratings as written; what is not written may be less than the others",
)
def shore_rating(s: Subject) -> Any:
    items = [item for item in s.facts.network.equipment.values() if item.kind in ("shore inlet", "supply lead")]
    if not items:
        return Unknown("there is no shore inlet")
    parts: list[Number] = [s.read(item, "rating") for item in items]
    if all(item.kind != "supply lead" for item in items):
        parts.append(UNTOLD)
    site = s.read(s.facts.design.vehicle, "site outlet") if s.facts.design.vehicle.has("site outlet") else UNTOLD
    parts.append(UNTOLD if isinstance(site, Unknown) else site)
    value = parts[0]
    for one in parts[1:]:
        value = least(value, one)
    return value


def _charging_through(s: Subject) -> Iterator[tuple[Equipment, Equipment]]:
    """Each residual-current device ahead of the input of an inverter-charger, which leaks as a load."""
    for item in s.facts.network.equipment.values():
        node = f"{item.name}:ac-inL"
        if item.kind != "inverter-charger" or node not in s.facts.network.near:
            continue
        for state in states_of(s.facts).states:
            sure, may = state.feeds_of(node)
            for feed in (*sure, *may):
                if feed.equipment is not item:
                    for device in residual_path(state, feed, node).devices:
                        yield device, item


def fed_through(s: Subject) -> dict[str, Equipment]:
    """What is fed through a residual-current device, by name."""
    found: dict[str, dict[str, Equipment]] | None = s.facts.store.get("behind residual devices")
    if found is None:
        found = s.facts.store["behind residual devices"] = {}
        for supply in supplies_of(s.facts):
            for device in supply.path.devices:
                found.setdefault(device.name, {})[supply.load.name] = supply.load
        for device, item in _charging_through(s):
            found.setdefault(device.name, {})[item.name] = item
    return found.get(s.item.name, {})


SMOOTH, FAST = "smooth dc", "high frequency"
MAY_HOLD_A_DRIVE = frozenset({"air conditioner", "fan", "motor", "joined unit"})
"""Loads of the mains that may turn a motor by a converter of their own; the usual waveform does not stand for them."""


@fact(
    "device",
    "type_suits_loads",
    type="yes/no",
    says="Its type responds to every residual current that the loads behind it can make.",
    method="type AC never; A for alternating and pulsating; F for high frequency as well; B for smooth direct current",
    source="IEC 60364-5-53, 531.3.3, 2019 (from memory)",
)
@where_it_stands
def type_suits_loads(s: Subject) -> Any:
    kind = s.residual_type
    if not isinstance(kind, str):
        return kind if isinstance(kind, Unknown) else Unknown("it has no residual-current function")
    if kind == "AC":
        return False
    covered = {"A": (), "F": (FAST,), "B": (FAST, SMOOTH)}[kind]
    doubt: Unknown | None = None
    for item in fed_through(s).values():
        if not item.allows("leakage waveform"):
            continue
        shape = s.read(item, "leakage waveform")
        if item.kind in MAY_HOLD_A_DRIVE and not item.has("leakage waveform"):
            shape = Unknown("whether it holds a drive of its own is not told")
        if isinstance(shape, Unknown):
            doubt = Unknown(f"the residual current that {item.name} can make is not known")
        elif shape in (SMOOTH, FAST) and shape not in covered:
            told = f"{item.name} can make {shape} residual current, which type {kind} does not see"
            tell(s, told)
            return False
    return True if doubt is None or kind == "B" else doubt


@fact(
    "device",
    "protects_mains_loads",
    unit="count",
    says="Outlets, appliances and inverter-chargers behind a residual-current device.",
)
@where_it_stands
def protects_mains_loads(s: Subject) -> float:
    return float(len(fed_through(s)))


@fact(
    "device",
    "trip_time_shown",
    unit="ms",
    says="Longest time that a trip test of a residual-current device showed.",
    method="readings of the test `rcd trip` at the device",
)
def trip_time_shown(s: Subject) -> Any:
    return _shown(s, "time", "ms")


@fact(
    "device",
    "trip_current_shown",
    unit="mA",
    says="Highest residual current at which a trip test of the device opened it.",
    method="readings of the test `rcd trip` at the device",
)
def trip_current_shown(s: Subject) -> Any:
    return _shown(s, "current", "mA")


def _at_it(s: Subject, reading: Item, test: str) -> Answer:
    return both(is_test(s, reading, test), taken_at(s, reading, s.item.name))


def _shown(s: Subject, key: str, unit: str) -> Any:
    value = greatest_shown(s, key, lambda reading: _at_it(s, reading, "rcd trip"))
    return _untested(s, "rcd trip", unit) if value is None else value


def _untested(s: Subject, test: str, unit: str = "") -> Any:
    missing = Unknown(f"no reading of the test {test} at {s.item.name} is written down")
    return s.use(f"readings: {test} at {s.item.name}", Given(missing, s.where, MISSING), unit)


@fact("device", "button_proven", type="yes/no", says="Its test button was pressed, and it opened.",
      method="readings of the test `test button` at the device, result right")  # fmt: skip
def button_proven(s: Subject) -> Any:
    about = [(one, _at_it(s, one, "test button")) for one in s.facts.design.readings]
    if not any(tells is True for _, tells in about):
        return _untested(s, "test button")
    # One that perhaps tells of this button may tell that it failed.
    right = [(equal(s.read(one, "result"), "right"), tells) for one, tells in about if tells is not False]
    return every([answer if tells is True else either(answer, tells) for answer, tells in right])


@fact("design", "residual_devices", of="device", type="list", says="Residual-current devices that guard mains loads.",
      method="device.protects_mains_loads")  # fmt: skip
def residual_devices(s: Subject) -> Any:
    found = [one for one in s.facts.subjects("device") if one.item.kind in ("rcd", "rcbo")]
    idle = {one.id: equal(one.protects_mains_loads, 0.0) for one in found}
    sure = tuple(one for one in found if idle[one.id] is False)
    perhaps = [answer for answer in idle.values() if isinstance(answer, Unknown)]
    return perhaps[0] if perhaps and not sure else sure
