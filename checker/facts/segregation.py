"""Cables of different voltages in one place: is each insulated for the highest?"""

from __future__ import annotations

from typing import Any

from checker.design.model import Circuit
from checker.facts.catalogue import fact
from checker.facts.chamber import WORDS, bands, shared_loom
from checker.facts.levels import level_at
from checker.facts.subject import Subject
from checker.facts.unseen import hiding_places
from checker.quantities import Number, Truth, Unknown, both, every, greater, greater_equal, greatest, negate, some


@fact(
    "place",
    "insulated_for_highest",
    type="yes/no",
    says="Every cable that passes it is rated for the highest nominal voltage of any of them.",
    method="rated voltage of the cables against the nominal voltages of the circuits",
)
def insulated_for_highest(s: Subject) -> Any:
    here, hiding = bands(s), hiding_places(s.facts)
    circuits = [circuit for circuit in s.facts.network.circuits if circuit.name in here]
    hidden = [one for one in s.facts.network.circuits if one.name in hiding and one.name not in here]
    found = _all_rated(s, circuits)
    if found is not True or not hidden or _all_rated(s, [*circuits, *hidden]) is True:
        return found
    return Unknown(f"{', '.join(one.name for one in hidden)} may pass {s.id} where the run was not seen")


def _all_rated(s: Subject, circuits: list[Circuit]) -> Truth:
    highest: Number = 0.0
    for circuit in circuits:
        live = s.facts.network.conductor(circuit.name, "live")
        if live is None:
            continue  # a negative to the chassis, at no voltage of its own
        level = level_at(s.facts, live.start)
        volts = Unknown(f"the voltage of {circuit.name} is not known") if level is None else level.nominal
        highest = greatest(highest, volts)
    return every([_rated(s, circuit, highest) for circuit in circuits])


def _rated(s: Subject, circuit: Circuit, highest: Number) -> Truth:
    if circuit.cable is None:
        return Unknown(f"the cable of {circuit.name} is not known")
    return greater_equal(s.read(circuit.cable, "voltage"), highest)


def _of_band(s: Subject, band: str) -> list[Circuit]:
    here = bands(s)
    return [circuit for circuit in s.facts.network.circuits if here.get(circuit.name) == band]


@fact(
    "place",
    "bands_screened",
    type="yes/no",
    says="Every cable of one of the two voltage bands in it has an earthed screen.",
    method="screen of the cables, of mains or of extra-low voltage",
)
def bands_screened(s: Subject) -> Truth:
    def screened(circuit: Circuit) -> Truth:
        if circuit.cable is None:
            return Unknown(f"the cable of {circuit.name} is not known")
        told: Truth = s.read(circuit.cable, "screen")
        return told

    return some(every([screened(one) for one in _of_band(s, band)]) for band in WORDS)


@fact(
    "place",
    "bands_apart",
    type="yes/no",
    says="Every circuit of one of the two voltage bands in it keeps a distance from the other.",
    method="`apart` of the circuits, of mains or of extra-low voltage; never where one loom carries both",
)
def bands_apart(s: Subject) -> Truth:
    told = some(every([greater(s.read(one, "apart"), 0.0) for one in _of_band(s, band)]) for band in WORDS)
    return both(negate(shared_loom(s)), told)
