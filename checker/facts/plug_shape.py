"""Whether a plug of another voltage enters an outlet: its shape against what it carries."""

from __future__ import annotations

from checker.design.given import RatedVoltage
from checker.facts.catalogue import fact
from checker.facts.levels import level_at
from checker.facts.low_voltage import MOST_V
from checker.facts.mains_fault import circuits_ending_at
from checker.facts.nominal import system_voltage_of
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, either, equal, every, less_equal, negate, some

LOW_VOLTAGE_SHAPES = {"12 V socket": 12.0, "24 V socket": 24.0, "two-pole 48 V": 48.0, "USB": None,
                      "hard wired": None}  # fmt: skip
"""Shapes that no mains plug enters, with their one voltage; USB has its own, a fixed wire takes no plug."""


@fact(
    "outlet",
    "is_low_alternating",
    type="yes/no",
    says="It gives a low alternating voltage from a winding of its own.",
    method="circuit.is_low_alternating of each circuit that ends at it; where none does, a rated voltage up to 50 V",
    source="IEC 60364-4-41, 414.4.5, 2005 (from memory)",
)
def is_low_alternating(s: Subject) -> Truth:
    if s.is_mains is False:
        return False
    circuits = circuits_ending_at(s.facts, s.id)
    if circuits:
        return every(circuit.is_low_alternating for circuit in circuits)
    rated = s.read(s.item, "voltage")
    return less_equal(rated.volts, MOST_V["ac"]) if isinstance(rated, RatedVoltage) and s.is_mains is True else False


@fact("outlet", "shape_told", type="yes/no", says="The file tells its shape.", method="its entry")
def shape_told(s: Subject) -> bool:
    return bool(s.item.has("shape"))


@fact(
    "outlet",
    "takes_foreign_plugs",
    type="yes/no",
    says="A plug of another voltage enters it.",
    method="an extra-low-voltage outlet needs a shape that belongs to the voltage it is rated for and to that of its "
    "circuit; a mains outlet one that belongs to no extra-low voltage",
)
def takes_foreign_plugs(s: Subject) -> Truth:
    shape = s.shape
    if isinstance(shape, Unknown) or shape is None:
        return Unknown(f"the shape of {s.id} is not known")
    mains: Truth = negate(either(negate(s.is_mains), s.is_low_alternating))
    if isinstance(mains, Unknown):
        return mains
    if mains:
        return LOW_VOLTAGE_SHAPES.get(shape) is not None or shape == "USB"
    if shape not in LOW_VOLTAGE_SHAPES:
        return True
    stands_for = LOW_VOLTAGE_SHAPES[shape]
    return False if stands_for is None else some(negate(equal(volts, stands_for)) for volts in _voltages(s))


def _voltages(s: Subject) -> list[Number]:
    """The voltage an outlet is rated for, and that of its circuit where one reaches it."""
    rated = s.read(s.item, "voltage")
    told = rated.volts if isinstance(rated, RatedVoltage) else Unknown(f"the rated voltage of {s.id} is not told")
    levels = (level_at(s.facts, f"{s.id}:{pole}") for pole in ("+", "L"))
    return [system_voltage_of(one) for one in (told, *(level.nominal for level in levels if level is not None))]
