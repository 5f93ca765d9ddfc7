"""Declared scopes, spacing from mains, chargers on a battery place."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

CHARGER = (
    "equipment.charger",
    "{kind: charger, dc: {nominal: 12 V, current: 20 A}, settings: {charge voltage: 14.4 V}, place: cabin}",
)
WIRE = (
    "circuits.charging",
    "{from: charger.dc, to: plus, run: [0.5 m via cabin], cable: pair-4, duty: charge}",
)


def test_a_scope_said_under_usual_counts_for_every_circuit() -> None:
    assert ask("design", "design", "scopes_told") is False
    assert ask("design", "design", "scopes_told", ("usual.scope", "habitation")) is True
    unknown = (("usual.scope", "habitation"), ("circuits.drive.scope", "unknown"))
    assert isinstance(ask("design", "design", "scopes_told", *unknown), Unknown)


def test_a_cable_is_beside_mains_where_both_pass_one_open_place() -> None:
    assert ask("conductor", "trunk", "beside_mains") is True  # the cabin
    # The duct alone, whose looms keep the bands in chambers of their own:
    assert (
        ask("conductor", "lights", "beside_mains", ("circuits.lights.run", "[0.1 m via duct, FL, 2 m via duct]"))
        is False
    )


def test_the_power_of_chargers_counts_for_the_place_of_the_battery() -> None:
    assert ask("place", "bay", "charger_power") == 0.0
    assert ask("place", "bay", "charger_power", CHARGER, WIRE) == pytest.approx(14.4 * 20)


def test_a_place_is_well_aired_by_openings_low_and_high_to_the_outside() -> None:
    assert ask("place", "bay", "well_aired") is True
    assert ask("place", "bay", "well_aired", ("places.bay.vents.high", "none")) is False
    assert ask("place", "bay", "well_aired", ("places.bay.vents.to", "cabin")) is False
    assert isinstance(ask("place", "bay", "well_aired", ("places.bay.vents", "unknown")), Unknown)
    assert ask("place", "underbody", "well_aired") is True


def test_energy_of_lithium_is_capacity_times_voltage() -> None:
    assert ask("design", "design", "lithium_energy") == pytest.approx(100 * 3600 * 12)  # J
    assert ask("design", "design", "lithium_energy", ("equipment.house.chemistry", "AGM lead acid")) is None


def test_a_shield_that_is_not_told_is_asked_for() -> None:
    assert isinstance(ask("equipment", "slide-motor", "shielded"), Unknown)
    assert ask("equipment", "slide-motor", "shielded", ("places.underbody.shield", "none")) is False
    assert ask("equipment", "slide-motor", "shielded", ("places.underbody.shield", "true")) is True


def test_the_distance_from_mains_is_the_lesser_of_what_both_are_told_to_keep() -> None:
    trunk = ("circuits.trunk.apart", "20 mm")
    assert ask("conductor", "trunk", "apart", trunk) == pytest.approx(0.02)
    assert ask("conductor", "trunk", "apart", trunk, ("circuits.shore.apart", "2 mm")) == pytest.approx(0.002)
    assert isinstance(ask("conductor", "trunk", "apart", trunk, ("circuits.shore.apart", "unknown")), Unknown)
    elsewhere = ("circuits.shore.run", "[4.5 m via duct, RB, 3 m via duct]")
    assert ask("conductor", "trunk", "apart", trunk, ("circuits.shore.apart", "2 mm"), elsewhere) == pytest.approx(0.02)
