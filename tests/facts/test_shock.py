"""Protective measures of circuits, and how each supply of a transportable unit is earthed."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject

UNIT = {"vehicle.kind": "unit"}
MONITOR = {
    "equipment.watch": "{kind: insulation monitor, acts by: alarm, place: locker}",
    "circuits.watching-it": "{from: shore-joint, to: watch, run: [0.2 m via locker], cable: flex-2.5}",
}


def test_a_protective_conductor_stands_for_disconnection() -> None:
    assert subject(COACH, "circuit", "heating").shock_protection == "disconnection"


def test_class_two_loads_without_earth_are_insulated_and_others_are_a_question() -> None:
    bare = {"circuits.heating.earth": "none"}
    assert subject(COACH, "circuit", "heating", bare | {"equipment.heater.class": "II"}).shock_protection == "insulated"
    assert isinstance(subject(COACH, "circuit", "heating", bare).shock_protection, Unknown)


def test_what_is_declared_counts_before_what_is_drawn() -> None:
    edits = {"circuits.heating.shock protection": "obstacles"}
    assert subject(COACH, "circuit", "heating", edits).shock_protection == "obstacles"


def test_an_insulated_site_needs_a_monitor_in_a_unit() -> None:
    insulated = UNIT | {"vehicle.supply.earthing": "IT"}
    assert subject(COACH, "ac_source", "inlet", insulated).earthing_is_declared is False
    assert subject(COACH, "ac_source", "inlet", insulated | MONITOR).earthing_is_declared is True


def test_a_separated_source_aboard_needs_none() -> None:
    edits = UNIT | {
        "equipment.genset.bond": "{when: never}",
        "circuits.generator.shock protection": "separated",
    }
    assert subject(VAN, "ac_source", "genset", edits).earthing_is_declared is True
    del edits["circuits.generator.shock protection"]
    assert subject(VAN, "ac_source", "genset", edits).earthing_is_declared is False
