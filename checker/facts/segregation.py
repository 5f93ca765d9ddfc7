"""Cables of different voltages in one place: is each insulated for the highest?"""

from __future__ import annotations

from typing import Any

from checker.design.model import Circuit
from checker.facts.catalogue import fact
from checker.facts.chamber import bands
from checker.facts.levels import level_at
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, every, greater_equal, greatest


@fact(
    "place",
    "insulated_for_highest",
    type="yes/no",
    says="Every cable that passes it is rated for the highest nominal voltage of any of them.",
    method="rated voltage of the cables against the nominal voltages of the circuits",
)
def insulated_for_highest(s: Subject) -> Any:
    here = bands(s)
    circuits = [circuit for circuit in s.facts.network.circuits if circuit.name in here]
    highest: Number = 0.0
    for circuit in circuits:
        live = s.facts.network.conductor(circuit.name, "live")
        level = None if live is None else level_at(s.facts, live.start)
        volts = Unknown(f"the voltage of {circuit.name} is not known") if level is None else level.nominal
        highest = greatest(highest, volts)
    return every([_rated(s, circuit, highest) for circuit in circuits])


def _rated(s: Subject, circuit: Circuit, highest: Number) -> Truth:
    if circuit.cable is None:
        return Unknown(f"the cable of {circuit.name} is not known")
    return greater_equal(s.read(circuit.cable, "voltage"), highest)
