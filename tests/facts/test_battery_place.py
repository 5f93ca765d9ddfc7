"""Where a battery stands: in the wet, under the body, at the engine."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

IN_TRAY = ("equipment.house.place", "tray")
ENGINE = ("places.bay.kind", "engine space")


def tray(more: str = "") -> tuple[str, str]:
    return ("places.tray", "{kind: battery box, inside: underbody%s}" % more)  # noqa: UP031


def test_a_box_under_the_body_stands_under_the_body() -> None:
    assert ask("equipment", "house", "below_the_body") is False
    assert ask("equipment", "house", "below_the_body", tray(), IN_TRAY) is True
    assert isinstance(ask("equipment", "house", "below_the_body", ("equipment.house.place", "unknown")), Unknown)


def test_a_box_in_the_wet_is_dry_only_where_that_is_told() -> None:
    assert ask("equipment", "house", "in_the_wet") is False
    assert isinstance(ask("equipment", "house", "in_the_wet", tray(), IN_TRAY), Unknown)
    assert isinstance(ask("equipment", "house", "in_the_wet", tray(", wet: unknown"), IN_TRAY), Unknown)
    assert ask("equipment", "house", "in_the_wet", tray(", wet: damp"), IN_TRAY) is False
    assert ask("equipment", "house", "in_the_wet", tray(", wet: jets"), IN_TRAY) is True
    assert ask("equipment", "house", "in_the_wet", ("equipment.house.place", "underbody")) is True


def test_the_engine_space_of_a_van_is_open_and_that_of_a_boat_is_not() -> None:
    assert ask("equipment", "house", "at_open_engine") is False
    assert ask("equipment", "house", "at_open_engine", ENGINE) is True
    assert ask("equipment", "house", "at_open_engine", ENGINE, ("vehicle.kind", "boat")) is False
    assert isinstance(ask("equipment", "house", "at_open_engine", ("places.bay.kind", "unknown")), Unknown)


def test_what_starts_the_engine_is_what_its_bank_is_for() -> None:
    assert ask("equipment", "house", "starts_the_engine") is False
    assert ask("equipment", "house", "starts_the_engine", ("equipment.house.purpose", "starting")) is True
    assert isinstance(ask("equipment", "house", "starts_the_engine", ("equipment.house.purpose", "unknown")), Unknown)
    assert ask("equipment", "FH", "starts_the_engine") is False


def test_what_does_not_belong_to_a_battery_makes_its_compartment_shared() -> None:
    assert ask("equipment", "house", "foreign_beside") is False
    fridge = ("equipment.cooler", "{kind: fridge, works by: compressor, power: 50 W, place: bay}")
    assert ask("equipment", "house", "foreign_beside", fridge) is True
    shelf = ("places.shelf", "{inside: bay}")
    pump = "{kind: motor, running: 5 A, voltage: 10..15 V, place: %s}"
    assert ask("equipment", "house", "foreign_beside", shelf, ("equipment.pump", pump % "shelf")) is True
    assert ask("equipment", "house", "foreign_beside", shelf, ("equipment.pump", pump % "cabin")) is False
    assert isinstance(ask("equipment", "house", "foreign_beside", ("equipment.pump", pump % "unknown")), Unknown)
    can = ("places.can", "{kind: fuel, fuel: petrol, inside: bay}")
    assert ask("equipment", "house", "foreign_beside", can) is True
    assert isinstance(ask("equipment", "house", "foreign_beside", ("equipment.house.place", "unknown")), Unknown)
    assert ask("equipment", "FH", "foreign_beside", fridge) is False


def test_a_battery_under_the_body_hangs_as_low_as_its_own_box_where_that_is_lower() -> None:
    below = (("equipment.house.place", "underbody"), ("places.underbody.ground clearance", "250 mm"))
    assert ask("equipment", "house", "ground_clearance", *below) == pytest.approx(0.25)
    low = ("equipment.house.box.at", "[1.1 m, -0.9 m, 0.1 m]")
    assert ask("equipment", "house", "ground_clearance", *below, low) == pytest.approx(0.1)
    perhaps = ask("equipment", "house", "ground_clearance", below[0], low)
    assert (perhaps.low, perhaps.high) == (0.0, pytest.approx(0.1))
    assert ask("equipment", "house", "ground_clearance") is None


def test_a_box_within_an_engine_space_stands_at_the_engine() -> None:
    around = (("places.engine-bay", "{kind: engine space}"), ("places.bay.inside", "engine-bay"))
    assert ask("equipment", "house", "at_the_engine", *around) is True
    assert ask("equipment", "house", "at_the_engine") is False
