"""What a source drives into the conductor it reaches, and what that conductor lies on before its first device."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.device import norton
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, either, equal, every, least, total

BURNS = ("wood", "plastic", "composite")
"""What a cable may be fixed to that burns. Common practice, no source."""


@fact(
    "approach",
    "source_fault_current",
    unit="A",
    says="Greatest short-circuit current of the source alone.",
    method="as stated for it, else full voltage over internal resistance; the units of a bank together",
)
def source_fault_current(s: Subject) -> Number:
    found = [norton(s.facts, source).current for source in s.item.sources]
    for source in s.item.sources:
        one = source.equipment.base or source.equipment
        for key in ("short circuit current", "internal resistance"):
            if one.allows(key):
                s.read(one, key)
    return total(found)


@fact(
    "approach",
    "fused_at_towing_vehicle",
    type="yes/no",
    says="The contact of the plug to a towing vehicle has a fuse over there; none for another source.",
    method="as told of each contact",
)
def fused_at_towing_vehicle(s: Subject) -> Truth | None:
    plugs = [source for source in s.item.sources if source.equipment.kind == "vehicle coupling"]
    fuses = [s.read(plug.equipment, f"supplies.{plug.port}.fuse") for plug in plugs]
    return every(fuse if isinstance(fuse, Unknown) else fuse is not None for fuse in fuses) if plugs else None


@fact("approach", "contact_fuse", unit="A",
      says="Least rating of the fuse over there of a contact of the plug to a towing vehicle; none without one.",
      method="as told of each contact")  # fmt: skip
def contact_fuse(s: Subject) -> Any:
    plugs = [source for source in s.item.sources if source.equipment.kind == "vehicle coupling"]
    fuses = [s.read(plug.equipment, f"supplies.{plug.port}.fuse") for plug in plugs]
    told = [fuse for fuse in fuses if fuse is not None]
    return least(told) if told else None


@fact("approach", "from_inlet", type="yes/no", says="The source is a shore inlet.", method="kind of source")
def from_inlet(s: Subject) -> bool:
    return any(source.equipment.kind == "shore inlet" for source in s.item.sources)


@fact(
    "approach",
    "off_combustible",
    type="yes/no",
    says="Up to its first device nothing that burns carries the conductor, or metal conduit is around it.",
    method="covering; what each circuit walked is fixed to, else the surface and the walls of the places passed",
)
def off_combustible(s: Subject) -> Truth:
    return every(does_not_burn(s, owner.circuit, stretch.place) for owner, stretch in s.item.reach.stretches)


def does_not_burn(s: Subject, circuit: Any, place: str | None) -> Truth:
    """Whether a circuit lies on nothing that burns in a place, or in metal conduit."""
    metal = equal(s.read(circuit, "covering"), "metal conduit")
    return metal if metal is True else either(metal, _stands_off(s, circuit, place))


def _stands_off(s: Subject, circuit: Any, place: str | None) -> Truth:
    """Whether what a circuit is fixed to in a place does not burn."""
    fixed = s.read(circuit, "fixed to")
    if isinstance(fixed, str):
        return fixed not in BURNS
    if place is None:
        return Unknown(f"what {circuit.name} is fixed to is not told")
    here = s.facts.design.places[place]
    surface = s.read(here, "surface")
    if isinstance(surface, str):
        return surface not in BURNS
    burns = s.read(here, "combustible")
    return Unknown(f"what {circuit.name} is fixed to is not told") if isinstance(burns, Unknown) else burns is not True
