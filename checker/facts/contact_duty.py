"""What contacts must stand: what their protection lets through, and closing onto capacitors after a pre-charge."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Wire
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.physics.capacitor import charged_share, time_constant
from checker.quantities import Number, Truth, Unknown, corners, greatest

CIRCUIT = "capacitor charged through a resistor (circuit theory)"
KEYS = ("precharge resistance", "precharge time")


@fact(
    "switch",
    "overload_current",
    unit="A",
    says="Greatest current that can flow in it for long before a device opens or its sources give no more.",
    method="conductor.overload_current of the live conductors at its terminals",
)
@where_it_stands
def overload_current(s: Subject) -> Any:
    most: Number = 0.0
    network = s.facts.network
    wires = [edge for node in network.nodes_of(s.item.name) for edge, _ in network.near[node] if isinstance(edge, Wire)]
    for conductor in dict.fromkeys(wire.conductor for wire in wires if wire.conductor.role == LIVE):
        twin = s.facts.of("conductor", conductor)
        current = Unknown(f"{conductor.id} is not known") if twin is None else twin.overload_current
        most = current if isinstance(current, Unknown) else greatest(most, current)
    return most


@fact(
    "switch",
    "precharge_is_told",
    type="yes/no",
    says="The file gives resistor and time of its pre-charge, or they are the fitter's choice and must be given.",
    method="a pre-charge by hand or separate, or an entry of its resistor or time; one that is built in is its maker's",
)
def precharge_is_told(s: Subject) -> Truth:
    if not s.item.allows("precharge"):
        return False
    if any(s.item.has(key) for key in KEYS):
        return True
    word = s.read(s.item, "precharge")
    return word if isinstance(word, Unknown) else word in ("by hand", "separate")


@fact(
    "switch",
    "precharge_share",
    unit="%",
    says="Part of the full voltage that the capacitors have reached when the pre-charge ends; none without capacitors.",
    method="1 - e^(-t/RC)",
    source=CIRCUIT,
)
def precharge_share(s: Subject) -> Any:
    if s.capacitance_behind is None:
        return None
    tau = corners(time_constant, s.precharge_resistance, s.capacitance_behind)
    return corners(charged_share, s.precharge_time, tau)


@fact(
    "switch",
    "making_current",
    unit="A",
    says="Peak current that its contact makes when it closes onto the capacitors behind it; none without capacitors.",
    method="switch.closing_current where it has no pre-charge, else switch.precharged_current",
    source="resistance, inductance and capacitance in series (circuit theory)",
)
def making_current(s: Subject) -> Any:
    word = s.precharge
    if isinstance(word, Unknown):
        return word
    return s.closing_current if word is None else s.precharged_current


@fact("switch", "precharge_rating", unit="W", says="Power that the resistor of its pre-charge stands for ever.")
def precharge_rating(s: Subject) -> Any:
    return s.read(s.item, "precharge power") if s.item.allows("precharge power") else None
