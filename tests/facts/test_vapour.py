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


BILGE = "{kind: engine space%s}"
IN_BILGE = ("equipment.FS.place", "bilge")
BOAT = ("vehicle.kind", "boat")


def test_a_tank_within_the_place_fills_it_unless_sealed() -> None:
    within = ("places.tank.inside", "bilge")
    assert reaches(PETROL, ("places.bilge", BILGE % ""), within, IN_BILGE) is True
    assert reaches(PETROL, ("places.bilge", BILGE % ", sealed from: tank"), within, IN_BILGE) is False


def test_on_a_boat_a_place_beside_the_tank_needs_a_word_of_the_wall() -> None:
    near = ", box: {at: [1.5 m, 0.2 m, 0.3 m], size: [0.45 m, 0.5 m, 0.3 m]}"
    assert isinstance(reaches(PETROL, BOAT, ("places.bilge", BILGE % near), IN_BILGE), Unknown)
    assert isinstance(reaches(PETROL, BOAT, ("places.bilge", BILGE % ""), IN_BILGE), Unknown)
    assert reaches(PETROL, BOAT, ("places.bilge", BILGE % near.replace("[1.5", "[0.9")), IN_BILGE) is False
    assert reaches(PETROL, ("places.bilge", BILGE % near), IN_BILGE) is False


def test_a_line_of_petrol_fills_the_closed_place_it_passes() -> None:
    line = "{feed: {carries: %s, along: [[0 m, %s m, 0.5 m], [3 m, %s m, 0.5 m]]}}"
    bay = [("equipment.FS.place", "bay"), ("places.bay.inside", "outer skin")]
    assert reaches(("services", line % ("petrol", "-0.8", "-0.8")), *bay) is True
    assert reaches(("services", line % ("diesel", "-0.8", "-0.8")), *bay) is False
    assert reaches(("services", line % ("petrol", "0.8", "0.8")), *bay) is False
    assert isinstance(reaches(("services", "{feed: {carries: petrol}}"), *bay), Unknown)
    assert reaches(("services", line % ("petrol", "-0.8", "-0.8")), ("equipment.FS.place", "underbody")) is False


def stands_in_it(*edits: tuple[str, str]) -> object:
    return ask("equipment", "FS", "fuel_burns_easily", *edits)


GENERATOR = "{kind: generator, power: 2 kW, fuel: %s, place: bay}"
IN_BAY = ("equipment.FS.place", "bay")


def test_what_is_shut_in_with_a_petrol_generator_stands_in_its_vapour() -> None:
    assert stands_in_it(IN_BAY, ("equipment.genset", GENERATOR % "petrol")) is True
    assert stands_in_it(IN_BAY, ("equipment.genset", GENERATOR % "diesel")) is False
    assert isinstance(stands_in_it(IN_BAY, ("equipment.genset", GENERATOR % "unknown")), Unknown)
    nowhere = ("equipment.genset", (GENERATOR % "petrol").replace("bay", "unknown"))
    assert isinstance(stands_in_it(IN_BAY, nowhere), Unknown)


def test_a_generator_is_asked_for_itself_on_a_boat_alone() -> None:
    genset = ("equipment.genset", GENERATOR % "petrol")
    assert ask("equipment", "genset", "fuel_burns_easily", genset) is False
    assert ask("equipment", "genset", "fuel_burns_easily", genset, ("vehicle.kind", "boat")) is True


def test_the_vapour_of_a_generator_goes_through_an_open_hole() -> None:
    genset = ("equipment.genset", GENERATOR % "petrol")
    hole = (("passes.bay-hole.sealed", "false"), ("places.bay.sealed from", "none"))
    assert reaches(genset) is False
    assert reaches(genset, *hole) is True


def test_the_engine_of_a_boat_burns_what_its_space_tells_or_perhaps_what_a_tank_holds() -> None:
    afloat = (("vehicle.kind", "boat"), ("equipment.FS.place", "bilge"))
    bilge = "{kind: engine space%s}"
    assert stands_in_it(*afloat, ("places.bilge", bilge % ", fuel: petrol")) is True
    assert stands_in_it(*afloat, ("places.bilge", bilge % ", fuel: diesel"), PETROL) is False
    assert stands_in_it(*afloat, ("places.bilge", bilge % "")) is False
    assert isinstance(stands_in_it(*afloat, ("places.bilge", bilge % ""), PETROL), Unknown)
    assert stands_in_it(("equipment.FS.place", "bilge"), ("places.bilge", bilge % ", fuel: petrol")) is False
