"""Vapour gets to a place through openings and through holes that are not sealed."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.van import ask

PETROL = ("places.tank.fuel", "petrol")
HOLE = ("passes.floor-hole.between", "[cabin, tank]")


def reaches(*edits: tuple[str, str]) -> object:
    return ask("equipment", "FS", "vapour_reaches", *edits)


def test_a_hole_lets_it_through_unless_it_is_sealed() -> None:
    assert reaches(PETROL, HOLE) is False
    assert reaches(PETROL, HOLE, ("passes.floor-hole.sealed", "false")) is True
    assert isinstance(reaches(PETROL, HOLE, ("passes.floor-hole.sealed", "unknown")), Unknown)
    assert reaches(HOLE, ("passes.floor-hole.sealed", "false")) is False


def test_openings_that_lead_to_the_tank_let_it_in_unless_the_place_is_sealed_from_it() -> None:
    vents = ("places.cabin.vents", "{low: 20 cm2, to: tank}")
    assert reaches(PETROL, vents) is True
    assert reaches(PETROL, vents, ("places.cabin.sealed from", "tank")) is False
    assert reaches(PETROL, ("places.tank.vents", "{low: 20 cm2, to: cabin}")) is True


def test_a_fuel_or_a_place_that_is_not_known_decides_nothing() -> None:
    open_hole = (HOLE, ("passes.floor-hole.sealed", "false"))
    assert isinstance(reaches(("places.tank.fuel", "unknown"), *open_hole), Unknown)
    assert isinstance(reaches(PETROL, *open_hole, ("equipment.FS.place", "unknown")), Unknown)
