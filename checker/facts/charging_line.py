"""The whole line from a charger to a battery, when it consists of several circuits one behind the other."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Wire
from checker.design.model import Circuit
from checker.facts.bank import home, loose_bank
from checker.facts.catalogue import fact
from checker.facts.charging import Output, charge_current, outputs_to
from checker.facts.subject import Subject
from checker.quantities import Number, add, equal, greatest, least, multiply, show


@fact(
    "bank",
    "charging_drop",
    unit="V",
    says="Voltage lost between a charger and it, where the line has several circuits: the worst of its chargers; none "
    "where each line is one circuit.",
    method="charging current, or what a circuit carries when that is less, times the loop resistance of each circuit "
    "on the way; circuits of the factory and of the road vehicle left out",
    source="Ohm's law; resistance as conductor.resistance",
)
def charging_drop(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    found: list[Number] = []
    for output in outputs_to(s.facts, s.item):
        line = [one for circuit in _way(s, output) if (one := s.facts.subject("circuit", circuit.name)) is not None]
        counted = [one for one in line if _is_fitters(one)]
        if len(counted) < 2:
            continue
        current = charge_current(s, output)
        lost: Number = 0.0
        for circuit in counted:
            lost = add(lost, multiply(least(current, circuit.load_current), circuit.loop_resistance))
        names = ", ".join(one.id for one in counted)
        s.note(lambda lost=lost, names=names: f"{show(lost, 'V')} along {names}")  # type: ignore[misc]
        found.append(lost)
    return greatest(found) if found else None


def _is_fitters(circuit: Subject) -> bool:
    return equal(circuit.own, "factory") is not True and equal(circuit.scope, "automotive") is not True


def _way(s: Subject, output: Output) -> list[Circuit]:
    """The circuits on the shortest live way from an output to the battery, every contact closed."""
    network, goal = s.facts.network, home(s.facts, s.item)
    todo: list[tuple[str, tuple[Circuit, ...]]] = [(output.source.live, ())]
    seen = {output.source.live}
    for node, passed in todo:
        if node == goal:
            return list(dict.fromkeys(passed))
        for edge, far in network.near.get(node, ()):
            role = edge.conductor.role if isinstance(edge, Wire) else edge.pole
            if role == LIVE and far not in seen:
                seen.add(far)
                todo.append((far, (*passed, edge.conductor.circuit) if isinstance(edge, Wire) else passed))
    return []
