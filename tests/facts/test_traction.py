"""Batteries that drive the vehicle."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask

START = "equipment.start-battery"


def test_a_battery_is_for_traction_when_it_says_so() -> None:
    assert ask("bank", "start-battery", "is_traction", {f"{START}.purpose": "traction"}) is True
    assert ask("bank", "start-battery", "is_traction") is False
    assert ask("bank", "bank", "is_traction") is False


def test_a_high_battery_of_the_factory_may_drive_the_vehicle_when_its_purpose_is_not_told() -> None:
    high = {f"{START}.purpose": "unknown", f"{START}.nominal": "96 V"}
    assert isinstance(ask("bank", "start-battery", "is_traction", high), Unknown)
    assert ask("bank", "start-battery", "is_traction", {f"{START}.purpose": "unknown"}) is False


def test_wiring_of_the_fitter_on_a_battery_is_added() -> None:
    assert ask("bank", "start-battery", "feeds_added_wiring") is True
    added = ("link", "low", "feed", "lamps", "pumping", "neg-12")
    edits = {f"circuits.{name}.own": "factory" for name in added}
    assert ask("bank", "start-battery", "feeds_added_wiring", edits) is False
    assert isinstance(
        ask("bank", "start-battery", "feeds_added_wiring", {**edits, "circuits.link.own": "unknown"}), Unknown
    )


OUTLET = "{kind: traction outlet, voltage: 48 V DC, %s, place: locker}"
HEATER = {
    "equipment.heater": "{kind: load, power: 960 W, voltage: 40..60 V, place: cabin}",
    "circuits.heating": "{from: drive, to: heater, run: [3 m via cabin], cable: red-35, return: same}",
}


def test_an_outlet_of_the_traction_battery_gives_the_lesser_of_rating_and_power() -> None:
    for told, amps in (("rating: 10 A", 10.0), ("power: 480 W", 10.0), ("rating: 30 A, power: 480 W", 10.0)):
        assert ask("equipment", "drive", "outlet_limit", {"equipment.drive": OUTLET % told}) == amps
    for told in ("mass: 1 kg", "rating: unknown", "rating: unknown, power: unknown"):
        assert isinstance(ask("equipment", "drive", "outlet_limit", {"equipment.drive": OUTLET % told}), Unknown)
    assert ask("equipment", "inverter", "outlet_limit") is None


def test_what_hangs_on_an_outlet_of_the_traction_battery_is_asked_of_it_and_flows_in_its_cable() -> None:
    given = {"equipment.drive": OUTLET % "rating: 30 A"}
    assert ask("equipment", "drive", "outlet_asked", given) == 0.0
    assert ask("equipment", "drive", "outlet_asked", {**given, **HEATER}) == 20.0
    assert ask("conductor", "heating", "design_current", {**given, **HEATER}) == 20.0
    assert ask("conductor", "heating", "overload_current", {**given, **HEATER}) == 30.0
    assert ask("equipment", "inverter", "outlet_asked") is None


def test_where_another_source_stands_too_nobody_knows_what_is_asked_of_the_outlet() -> None:
    given = {"equipment.drive": OUTLET % "rating: 30 A", **HEATER}
    shared = {
        **given,
        "circuits.drive": "{from: drive, to: bar-48, run: [1 m via locker], cable: red-35, return: same}",
    }
    asked = ask("equipment", "drive", "outlet_asked", shared)
    assert asked.low == 0.0
    assert asked.high > 20.0
