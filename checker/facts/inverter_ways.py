"""The ways into an inverter: what cuts it from every battery, and how much a fault to its case lets through."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.bank import KINDS, home, loose_bank, some_gap
from checker.facts.bank_isolation import isolating
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, greatest, some

INVERTERS = ("inverter", "inverter-charger")


def _without(item: Equipment) -> Any:
    def passes(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and edge.equipment is item)

    return passes


@fact("converter", "cut_from_batteries", type="yes/no",
      says="One switch or isolating breaker, opened alone, parts an inverter from every battery.",
      method="each device taken out in turn: graph with everything closed that can close")  # fmt: skip
def cut_from_batteries(s: Subject) -> Truth:
    if s.item.kind not in INVERTERS:
        return False
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    network, start = s.facts.network, f"{s.id}:dc+"
    homes = {home(s.facts, item) for item in s.facts.design.equipment.values() if item.kind in KINDS}
    near = joined(network, [start])
    if not homes.intersection(near):
        return Unknown(f"no battery reaches {s.id}") if some_gap(s.facts) else True
    names = dict.fromkeys(node.split(":", 1)[0] for node in near)
    candidates = [item for name in names if (item := network.equipment.get(name)) is not None]
    answers: list[Truth] = []
    for item in candidates:
        serves = isolating(s.facts, item)
        if serves is not False and not homes.intersection(joined(network, [start], _without(item))):
            answers.append(serves)
    found = some(answers)
    if found is False and some_gap(s.facts):
        return Unknown("part of a way was not seen and may hide a switch")
    return found


def _of_case(s: Subject) -> list[Any]:
    found = [one for one in s.facts.network.conductors if one.role == "bonding"]
    return [one for one in found if f"{s.item.name}:case" in (one.start, one.end)]


@fact("converter", "case_bond_stands", unit="A2s",
      says="Energy of a short circuit that the best bond of its case stands; none without one.",
      method="conductor.short_time_limit of the bonding circuits at its case")  # fmt: skip
def case_bond_stands(s: Subject) -> Any:
    most: Number = None
    for one in _of_case(s):
        subject = s.facts.of("conductor", one)
        energy = Unknown("") if subject is None else subject.short_time_limit
        most = energy if most is None else greatest(most, energy)
    return most


@fact("converter", "case_fault_lets_through", unit="A2s",
      says="Energy that a fault of the battery side to its case lets through before the fuse of its cable has opened.",
      method="device.let_through of the devices in its battery cables, the greatest")  # fmt: skip
def case_fault_lets_through(s: Subject) -> Any:
    lines = s.input_conductors
    if isinstance(lines, Unknown):
        return lines
    found: Number = None
    for line in lines:
        circuit = line.circuit
        for device in () if isinstance(circuit, Unknown) else circuit.devices:
            found = device.let_through if found is None else greatest(found, device.let_through)
    return Unknown(f"no device stands in the battery cable of {s.id}") if found is None else found
