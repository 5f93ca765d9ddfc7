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
