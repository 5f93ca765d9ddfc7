"""How the current of what a converter feeds comes back to it."""

from __future__ import annotations

from checker.circuit.elements import CHASSIS, LIVE
from checker.circuit.supply import joined
from checker.design.model import Circuit
from checker.facts.catalogue import fact
from checker.facts.converter import returning_to, unless_unseen
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, every, some


def _fed(s: Subject, port: str) -> list[Circuit]:
    """The circuits on the live side of one of its outputs."""
    near = joined(s.facts.network, [f"{s.id}:{port}+"])
    found = []
    for circuit in s.facts.network.circuits:
        live = s.facts.network.conductor(circuit.name, LIVE)
        if live is not None and near.keys() & {live.start, live.end}:
            found.append(circuit)
    return found


def _outputs(s: Subject) -> list[str]:
    return [one.port for one in s.facts.network.sources if one.equipment is s.item and one.system == "dc"]


@fact(
    "converter",
    "feeds_by_the_chassis",
    type="yes/no",
    says="Something on the bus that a dc converter feeds returns by the chassis.",
    method="returns of the circuits that its outputs reach, every contact closed",
)
def feeds_by_the_chassis(s: Subject) -> Truth:
    if s.item.kind != "dc converter":
        return False
    ways = [circuit.returns.how for port in _outputs(s) for circuit in _fed(s, port)]
    untold = Unknown("how some circuit returns is not told")
    return some([untold if how == "unknown" else how == "chassis" for how in ways])


@fact(
    "converter",
    "output_on_the_chassis",
    type="yes/no",
    says="The negative of each output of a dc converter whose bus returns by the chassis is joined to the chassis.",
    method="graph: return and bonding conductors from the negative of that output",
)
def output_on_the_chassis(s: Subject) -> Truth:
    answers: list[Truth] = []
    for port in _outputs(s):
        if any(circuit.returns.how in ("chassis", "unknown") for circuit in _fed(s, port)):
            answers.append(True if CHASSIS in returning_to(s, port) else unless_unseen(s, answer=False))
    return every(answers)
