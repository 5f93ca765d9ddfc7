"""Batteries that drive the vehicle: what was added to them."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Wire
from checker.circuit.supply import joined
from checker.facts.bank import home
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, equal, greater, negate, some

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
