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


def test_a_monitor_watches_a_winding_aboard_of_a_unit_and_no_insulated_site() -> None:
    insulated = UNIT | {"vehicle.supply.earthing": "IT"} | MONITOR
    assert subject(COACH, "ac_source", "inlet", insulated).earthing_is_declared is False
    behind = (
        UNIT
        | MONITOR
        | {
            "equipment.T": "{kind: transformer, primary: {voltage: 230 V AC}, secondary: {voltage: 230 V AC}, "
            "windings: separate, isolation: reinforced, place: locker}",
            "circuits.shore-in": "{from: inlet, to: T.primary, run: [1 m via locker, Q1], cable: flex-2.5}",
            "circuits.isolated": "{from: T.secondary, to: shore-joint, run: [0.5 m via locker], cable: flex-2.5}",
        }
    )
    assert subject(COACH, "ac_source", "T", behind).earthing_is_declared is True
    del behind["circuits.watching-it"]
    assert subject(COACH, "ac_source", "T", behind).earthing_is_declared is False


def test_a_separated_source_aboard_needs_none() -> None:
    edits = UNIT | {
        "equipment.genset.bond": "{when: never}",
        "circuits.generator.shock protection": "separated",
    }
    assert subject(VAN, "ac_source", "genset", edits).earthing_is_declared is True
    del edits["circuits.generator.shock protection"]
    assert subject(VAN, "ac_source", "genset", edits).earthing_is_declared is False


WINDING = {
    "equipment.T": "{kind: transformer, primary: {voltage: 230 V AC, current: 5 A}, "
    "secondary: {voltage: 230 V AC, current: 5 A}, power: 1 kW, windings: separate, place: locker}",
    "circuits.kitchen.to": "[kitchen-outlets]",
    "equipment.board.ways.shaver": "{part: mcb, rating: 10 A}",
    "circuits.winding-in": "{from: board.shaver, to: T.primary, run: [1 m via locker], cable: flex-2.5}",
    "circuits.winding-out": "{from: T.secondary, to: step-outlet, run: [1 m via locker], cable: flex-2.5, "
    "shock protection: separated}",
}


def test_one_outlet_alone_on_a_separated_winding_needs_no_device_and_no_earth() -> None:
    outlet = subject(COACH, "outlet", "step-outlet", WINDING)
    assert outlet.is_separated is True
    assert outlet.residual_current == 0.0
    assert subject(COACH, "supply", "step-outlet on T", WINDING).needs_earth is False


def test_two_outlets_a_winding_not_declared_or_an_unknown_winding_are_not_separated() -> None:
    assert subject(COACH, "outlet", "step-outlet", WINDING | {"equipment.step-outlet.count": "2"}).is_separated is False
    plain = WINDING | {"circuits.winding-out.shock protection": "(remove)"}
    assert subject(COACH, "outlet", "step-outlet", plain).is_separated is False
    hidden = WINDING | {"equipment.T.windings": "unknown"}
    assert isinstance(subject(COACH, "outlet", "step-outlet", hidden).is_separated, Unknown)
