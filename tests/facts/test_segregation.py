"""Insulation of cables that lie beside mains."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject


def test_every_cable_must_be_rated_for_the_highest_voltage_in_the_place() -> None:
    assert subject(COACH, "place", "duct").insulated_for_highest is True
    assert subject(COACH, "place", "duct", {"cables.pair-4.voltage": "229 V"}).insulated_for_highest is False
    assert subject(COACH, "place", "duct", {"cables.pair-4.voltage": "230 V"}).insulated_for_highest is True


def test_a_rating_that_nobody_read_leaves_it_open() -> None:
    found = subject(COACH, "place", "duct", {"cables.pair-4.voltage": "unknown"})
    assert isinstance(found.insulated_for_highest, Unknown)


def test_a_cable_whose_run_was_not_seen_may_pass_there_too() -> None:
    thin = {"cables.pair-4.voltage": "60 V", "circuits.lighting.run": "[unknown]"}
    assert isinstance(subject(COACH, "place", "duct", thin).insulated_for_highest, Unknown)


def test_a_loom_of_both_bands_keeps_no_distance_whatever_is_told() -> None:
    told = {
        "circuits.lighting.run": "[0.2 m via locker, F2, 4 m via cabin]",
        "circuits.lighting.apart": "50 mm",
        "circuits.heating.run": "[3 m via cabin]",
    }
    assert subject(COACH, "place", "cabin", told).bands_apart is True
    for place, apart in (("cabin", False), ("skirt", True)):
        loom = {"looms.both": f"{{carries: [heating, lighting], place: {place}}}"}
        assert subject(COACH, "place", "cabin", told | loom).bands_apart is apart
    assert (
        subject(COACH, "place", "cabin", told | {"looms.both": "{carries: [heating, lighting]}"}).bands_apart is False
    )
