"""Metal that may become live and can be touched: whether it is joined to the earth; splices: whether they are bare."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import CHASSIS
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.equipment import told
from checker.facts.subject import Subject
from checker.facts.winding_aboard import chassis_on_the_windings, joined
from checker.quantities import Truth, either, every, negate

METHOD = "graph of earth and bonding conductors"


@fact(
    "inlet",
    "chassis_is_earthed",
    type="yes/no",
    says="The metal of the vehicle is joined to the earth pin of the inlet, or to the earth of each transformer where "
    "the inlet feeds nothing else.",
    method=METHOD,
)
def chassis_is_earthed(s: Subject) -> Truth:
    return either(joined(s, f"{s.id}:PE", CHASSIS), chassis_on_the_windings(s))


@fact(
    "inlet",
    "metal_parts_are_earthed",
    type="yes/no",
    says="Every metal part that can be touched is joined to the metal of the vehicle or to the earth pin of the inlet; "
    "none where the file names no metal part.",
    method=METHOD,
)
def metal_parts_are_earthed(s: Subject) -> Truth | None:
    parts = [item for item in s.facts.design.equipment.values() if item.kind == "metal part"]
    return every(_out_of_reach_or_earthed(s, item) for item in parts) if parts else None


def _out_of_reach_or_earthed(s: Subject, part: Equipment) -> Truth:
    node = f"{part.name}:PE"
    found = either(joined(s, node, CHASSIS), joined(s, node, f"{s.id}:PE"))
    return found if found is True else either(negate(s.read(part, "exposed")), found)


@fact("equipment", "box_earthed", type="yes/no", says="The metal box around a joint or board is joined to its earth.")
def box_earthed(s: Subject) -> Any:
    return told(s, "box earthed")


@fact("equipment", "splice_insulated", type="yes/no", says="A splice or tee is insulated; none for what is no splice.")
def splice_insulated(s: Subject) -> Any:
    return told(s, "insulated") if s.item.kind == "joint" else None
