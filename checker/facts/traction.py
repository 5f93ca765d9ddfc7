"""Batteries that drive the vehicle: what was added to them, and what is asked of the outlets that their maker gives."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.elements import Edge, Source, Wire
from checker.circuit.supply import joined
from checker.design.given import RatedVoltage
from checker.facts.bank import home
from checker.facts.catalogue import fact
from checker.facts.contacts import contacts
from checker.facts.currents import draws_alone, draws_in
from checker.facts.subject import Subject
from checker.quantities import (
    Number,
    Truth,
    Unknown,
    both,
    divide,
    equal,
    greater,
    greatest,
    least,
    negate,
    perhaps,
    show,
    some,
    total,
)

HIGH_V = 60.0
"""Above this a battery of the vehicle may be a traction battery: UN Regulation 100, from memory."""


@fact(
    "bank",
    "is_traction",
    type="yes/no",
    says="It drives the vehicle.",
    method="its purpose; untold, what the vehicle maker put in and reaches more than 60 V may be one",
    source="UN Regulation 100, electric power train safety, 03 series (from memory)",
)
def is_traction(s: Subject) -> Truth:
    purpose = s.purpose
    if isinstance(purpose, str):
        return purpose == "traction"
    may_be = both(equal(s.own, "factory"), greater(s.highest_voltage, HIGH_V))
    return False if may_be is False else Unknown(f"whether {s.id} drives the vehicle is not told")


@fact(
    "bank",
    "feeds_added_wiring",
    type="yes/no",
    says="Wiring that did not come with the vehicle hangs on it, with no converter between.",
    method="graph, every contact closed: whose work each circuit is",
)
def feeds_added_wiring(s: Subject) -> Truth:
    network = s.facts.network
    circuits: dict[str, Any] = {}
    for node in joined(network, [home(s.facts, s.item)]):
        for edge, _ in network.near.get(node, ()):
            if isinstance(edge, Wire):
                circuits.setdefault(edge.conductor.circuit.name, edge.conductor.circuit)
    return some(negate(equal(s.read(circuit, "own"), "factory")) for circuit in circuits.values())


@fact(
    "equipment",
    "outlet_limit",
    unit="A",
    says="Current that the maker of an electric vehicle lets be taken from an outlet of the traction battery; none for "
    "other equipment.",
    method="the lesser of its rating and of its power over its voltage, as far as both are told",
)
def outlet_limit(s: Subject) -> Any:
    if s.item.kind != "traction outlet":
        return None
    volts, rating = s.read(s.item, "voltage"), s.read(s.item, "rating")
    if not s.item.has("power") and s.item.has("rating"):
        return rating
    by_power = divide(s.read(s.item, "power"), volts.volts if isinstance(volts, RatedVoltage) else volts)
    return least(rating, by_power) if s.item.has("rating") else by_power


@fact(
    "equipment",
    "outlet_asked",
    unit="A",
    says="Greatest lasting current that is asked of an outlet of the traction battery; none for other equipment.",
    method="graph: what runs behind it in each mode, summed, and each load by itself; where another source "
    "stands there too, nobody knows how they share",
)
def outlet_asked(s: Subject) -> Any:
    if s.item.kind != "traction outlet":
        return None
    found: list[Number] = [0.0]
    for source in s.facts.network.sources:
        if source.equipment is s.item:
            for mode in s.facts.design.modes.values():
                at = contacts(s.facts, mode)
                found.append(total([0.0, *_behind(s, source, draws_in(s.facts, mode), at.perhaps, at.surely)]))
                s.note(_said(mode.name, found[-1]))
            found.extend(_behind(s, source, draws_alone(s.facts), always, always))
    return greatest(found)


def always(edge: Edge) -> bool:
    """Every contact closed."""
    return True


def _behind(
    s: Subject, source: Source, draws: dict[str, Number], may: Callable[[Edge], bool], does: Callable[[Edge], bool]
) -> list[Number]:
    """What is drawn behind an outlet; perhaps, where a contact is in doubt or another source stands there too."""
    network = s.facts.network
    near, sure = joined(network, [source.live], may), joined(network, [source.live], does)
    shared = any(one.live in near for one in network.sources if one is not source)
    return [asked if node in sure and not shared else perhaps(asked) for node, asked in draws.items() if node in near]


def _said(mode: str, asked: Number) -> Callable[[], str]:
    return lambda: f"in the mode {mode} {show(asked, 'A')} are asked"
