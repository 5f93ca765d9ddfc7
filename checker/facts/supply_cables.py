"""The cables of inverters and controllers, and what is taken from the vehicle at the points its maker permits."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Conductor, Wire
from checker.circuit.supply import is_live
from checker.facts.alternator import converter_input
from checker.facts.bank_limits import inverter_current
from checker.facts.catalogue import fact
from checker.facts.converter import INVERTERS
from checker.facts.starter import drawn_from
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, greatest, least


def conductors_at(s: Subject, nodes: dict[str, None]) -> tuple[Any, ...]:
    """The live conductors of wires between the nodes, each once."""
    found: dict[str, Conductor] = {}
    for node in nodes:
        for edge, _ in s.facts.network.near.get(node, ()):
            if isinstance(edge, Wire) and is_live(edge) and edge.conductor.role == LIVE:
                found.setdefault(edge.conductor.id, edge.conductor)
    subjects = (s.facts.of("conductor", one) for one in found.values())
    return tuple(one for one in subjects if one is not None)


@fact(
    "converter",
    "full_input_current",
    unit="A",
    says="Current an inverter draws at full power and its lowest battery voltage.",
    method="power over efficiency and lowest voltage",
    source="power balance of a converter",
)
def full_input_current(s: Subject) -> Any:
    return inverter_current(s, s.item, peak=False) if s.item.kind in INVERTERS else None


@fact(
    "converter",
    "input_conductors",
    of="conductor",
    type="list",
    says="The live conductors at the battery terminals of an inverter.",
    method="graph",
)
def input_conductors(s: Subject) -> Any:
    if s.item.kind not in INVERTERS:
        return ()
    found = conductors_at(s, {f"{s.id}:dc+": None})
    return found or Unknown(f"nothing is connected to the battery terminals of {s.id}")


@fact(
    "converter",
    "output_conductors",
    of="conductor",
    type="list",
    says="The live conductors at the battery terminals of a solar controller.",
    method="graph",
)
def output_conductors(s: Subject) -> Any:
    if s.item.kind != "solar controller":
        return ()
    return conductors_at(s, {f"{s.id}:battery+": None}) or Unknown(f"nothing is connected to the output of {s.id}")


@fact("converter", "input_area", unit="mm2", says="Least cross-section at the battery terminals of an inverter.",
      method="conductor.area, parallel cables together")  # fmt: skip
def input_area(s: Subject) -> Any:
    found = s.input_conductors
    if isinstance(found, Unknown):
        return found
    areas = [one.area_in_parallel for one in found]
    return least(areas) if areas else None


@fact("converter", "input_length_allowed", unit="m", says="Longest battery cable that the maker of an inverter allows.")
def input_length_allowed(s: Subject) -> Any:
    return s.read(s.item, "dc.cable length") if s.item.allows("dc.cable length") else None


@fact("converter", "made_for", words=("fixed wiring", "own outlets"),
      says="What the mains output of an inverter is made for.",
      method="as its maker says; an inverter with a charger is made for fixed wiring")  # fmt: skip
def made_for(s: Subject) -> Any:
    return s.read(s.item, "made for") if s.item.allows("made for") else "fixed wiring"


@fact(
    "converter",
    "drawn_current",
    unit="A",
    says="Greatest current a dc converter takes from the side of the starting battery.",
    method="its charging power over efficiency and voltage, never above the rating of that side",
)
def drawn_current(s: Subject) -> Any:
    found: list[Number] = []
    for side, _ in drawn_from(s):
        found.append(converter_input(s, s.item, f"{s.id}:{side}+", s.read(s.item, f"sides.{side}.nominal")))
    return greatest(found) if found else None
