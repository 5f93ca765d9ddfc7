"""What sparks in the air of a battery that gives off gas."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.van import ask

WET = ("equipment.house.chemistry", "flooded lead acid")
ABOVE = ("equipment.main.box.at", "[1.15 m, -0.85 m, 0.9 m]")
OPEN = ("places.bay.sealed from", "none")
QUIET = ("equipment.FH.ignition protected", "true")
SHELF = ("places.shelf", "{inside: bay}")


def test_only_a_battery_that_gives_off_gas_is_asked_for_sparks_above_it() -> None:
    assert ask("equipment", "house", "spark_above", ABOVE) is None
    assert ask("equipment", "house", "spark_above", WET, ABOVE, OPEN) is True


def test_what_may_stand_anywhere_in_the_cabin_leaves_a_question() -> None:
    nowhere = ("equipment.main.box", "unknown")
    assert isinstance(ask("equipment", "house", "spark_above", WET, nowhere, OPEN), Unknown)


def test_what_the_place_is_sealed_from_does_not_count_and_a_third_place_leaves_a_question() -> None:
    cabin = ("equipment.main.place", "cabin")
    fuse = ("equipment.FH.place", "cabin")
    assert ask("equipment", "house", "spark_above", WET, ABOVE, cabin, fuse) is False
    below = ("equipment.main.place", "underbody")
    assert isinstance(ask("equipment", "house", "spark_above", WET, ABOVE, below, fuse), Unknown)
    assert ask("equipment", "house", "spark_above", WET, ABOVE, below, fuse, OPEN) is True


def test_a_shelf_in_the_place_is_a_part_of_it_and_a_sealed_locker_is_not() -> None:
    on_it = ("equipment.main.place", "shelf")
    assert ask("place", "bay", "sparks_in_it", QUIET) is False
    assert ask("place", "bay", "sparks_in_it", QUIET, SHELF, on_it) is True
    tight = ("places.shelf", "{kind: locker, inside: bay, sealed from: bay}")
    assert ask("place", "bay", "sparks_in_it", QUIET, tight, on_it) is False
    perhaps = ("places.shelf", "{kind: locker, inside: bay}")
    assert isinstance(ask("place", "bay", "sparks_in_it", QUIET, perhaps, on_it), Unknown)


def test_what_stands_nobody_knows_where_leaves_a_question_unless_its_box_lies_elsewhere() -> None:
    lost = ("equipment.main.place", "(remove)")
    assert ask("place", "bay", "sparks_in_it", QUIET, lost) is False
    nowhere = ("equipment.main.box", "(remove)")
    assert isinstance(ask("place", "bay", "sparks_in_it", QUIET, lost, nowhere), Unknown)


def test_at_the_engine_of_a_road_vehicle_a_contact_of_the_fitter_counts_and_one_of_the_factory_does_not() -> None:
    engine, there = ("places.bay.kind", "engine space"), ("equipment.main.place", "bay")
    over = (WET, engine, there, ABOVE)
    assert ask("equipment", "house", "spark_above", *over) is True
    assert ask("equipment", "house", "spark_above", *over, ("equipment.main.own", "factory")) is False
    assert isinstance(ask("equipment", "house", "spark_above", *over, ("equipment.main.own", "unknown")), Unknown)
    unsure = ("places.bay.kind", "unknown")
    assert ask("equipment", "house", "spark_above", WET, unsure, there, ABOVE) is True


def test_a_battery_on_a_shelf_breathes_the_air_around_the_shelf() -> None:
    on_it, beside = ("equipment.house.place", "shelf"), ("equipment.main.place", "bay")
    assert ask("place", "shelf", "sparks_in_it", QUIET, SHELF, on_it, beside) is True
    assert ask("place", "shelf", "sparks_in_it", QUIET, SHELF, on_it) is False
