"""What the hold of heavy equipment must stand when the vehicle crashes, and what it is made for."""

from __future__ import annotations

from typing import Any

from checker.design.vocabulary.words import SURFACES
from checker.facts.catalogue import fact
from checker.facts.equipment import place_name
from checker.facts.space import chain
from checker.facts.subject import Subject
from checker.physics.mechanics import GRAVITY_M_S2, restraint_force
from checker.quantities import UNKNOWN, Range, Truth, Unknown, corners, multiply, show

LIGHT_KG = 3500.0
HEAVY_KG = 12000.0
LIGHT_G, MIDDLE_G, HEAVY_G = 20.0, 10.0, 6.6
"""Acceleration along the vehicle, in g: up to 3.5 t, up to 12 t, beyond. UN R100, part II, annex 8C, mechanical shock
of vehicles of class 1, 2 and 3; from memory. Written for traction batteries; taken as the measure for all heavy."""


@fact(
    "equipment",
    "crash_acceleration",
    unit="m/s2",
    says="Acceleration along the vehicle that its hold must stand; none in what does not drive or is no road vehicle.",
    method="20 g up to 3.5 t of permitted mass, 10 g up to 12 t, 6.6 g beyond; a mass that is not told may be any",
    source="UN R100, part II, annex 8C, mechanical shock (from memory)",
)
def crash_acceleration(s: Subject) -> Any:
    vehicle = s.facts.design.vehicle
    kind = s.read(vehicle, "kind")
    if isinstance(kind, Unknown):
        return kind
    if kind in ("boat", "unit"):
        return None
    gross = s.read(vehicle, "masses.gross")
    if not isinstance(gross, float | Range):
        return Range(HEAVY_G * GRAVITY_M_S2, LIGHT_G * GRAVITY_M_S2)
    return corners(_asked, gross)


def _asked(gross_kg: float) -> float:
    steps = ((LIGHT_KG, LIGHT_G), (HEAVY_KG, MIDDLE_G))
    return next((many for top, many in steps if gross_kg <= top), HEAVY_G) * GRAVITY_M_S2


@fact("equipment", "hold_acceleration_told", type="yes/no",
      says="The mass or the acceleration its hold is made for is told.")  # fmt: skip
def hold_acceleration_told(s: Subject) -> Truth:
    return not (isinstance(s.restraint_mass, Unknown) and isinstance(s.restraint_acceleration, Unknown))


@fact(
    "equipment",
    "crash_force",
    unit="N",
    says="Force along the vehicle that its hold must stand in a crash.",
    method="F = m a; friction not counted on",
    source="Newton's second law",
)
def crash_force(s: Subject) -> Any:
    asked = s.crash_acceleration
    if asked is None:
        return None
    found = corners(lambda mass, a: restraint_force(mass, a / GRAVITY_M_S2), s.mass, asked)
    s.note(lambda: f"F = {show(s.mass, 'kg')} × {show(asked, 'g')} = {show(found, 'kN')}")
    return found


@fact("equipment", "hold_fixed_to", words=SURFACES, says="What its hold is fastened to.",
      method="given with the hold of the equipment, else of its place")  # fmt: skip
def hold_fixed_to(s: Subject) -> Any:
    if s.item.allows("restraint.fixed to") and s.item.has("restraint.fixed to"):
        return s.read(s.item, "restraint.fixed to")
    places = chain(s, place_name(s))
    return s.read(places[0], "restraint.fixed to") if places else UNKNOWN


@fact("equipment", "hold_force", unit="N", says="Force that its hold is made for.",
      method="the mass times the acceleration that the hold is made for")  # fmt: skip
def hold_force(s: Subject) -> Any:
    return multiply(s.restraint_mass, s.restraint_acceleration)
