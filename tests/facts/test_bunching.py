"""Conductors side by side: counted by the loom, by the chamber of a duct, by the cables in parallel."""

from __future__ import annotations

import math

import pytest

from checker.facts.subject import Subject
from checker.quantities import Range, Unknown
from tests.facts.coach import one

NO_LOOM = ("looms.duct-elv", "(remove)")


def coach(id: str, *edits: tuple[str, str]) -> Subject:
    return one("conductor", id, *edits)


def test_a_duct_without_a_loom_counts_the_circuits_of_its_chamber() -> None:
    # coach-feed, converter-high, heating and slide-lights share the chamber for extra-low voltage: 4 pairs.
    assert coach("coach-feed", NO_LOOM).bunched == 8.0
    # Mains circuits lie in a chamber of their own and are not among them.
    assert coach("fridge-feed", NO_LOOM, ("looms.duct-mains", "(remove)")).bunched == 8.0


def test_its_capacity_is_the_published_cell_times_the_published_factors() -> None:
    # 33 CFR 183.425 Table 5, 105 °C: 210 A at 33.63 mm2 and 245 A at 42.41 mm2, straight on log-log paper at 35 mm2;
    # air of 45 °C: sqrt((105 - 45) / (105 - 30)); 7 to 24 conductors: 0.5.
    share = math.log(35 / 33.6308) / math.log(42.4077 / 33.6308)
    cell = 210 * (245 / 210) ** share
    by_hand = cell * math.sqrt(60 / 75) * 0.5
    found = coach("coach-feed", NO_LOOM, ("places.seat-base.temperature", "0..45 °C"))
    assert found.table_capacity == pytest.approx(by_hand, rel=1e-3)
    assert found.carrying_capacity <= found.table_capacity
    assert cell <= 245


def test_a_loom_that_counts_comes_before_the_chamber() -> None:
    assert coach("coach-feed", ("looms.duct-elv.bunched", "2")).bunched == 4.0
    assert (
        coach("coach-feed", ("looms.duct-elv.place", "inverter-locker"), ("looms.duct-elv.bunched", "2")).bunched == 8.0
    )


def test_several_chambers_of_one_band_leave_the_number_open() -> None:
    found = coach("coach-feed", NO_LOOM, ("places.floor-duct.chambers.elv", "2"))
    assert found.bunched == Range(2.0, 8.0)


def test_a_duct_without_chambers_holds_all_of_both_bands() -> None:
    edits = (NO_LOOM, ("looms.duct-mains", "(remove)"), ("places.floor-duct.chambers", "(remove)"))
    assert coach("coach-feed", *edits).bunched == 16.0


def test_control_wires_do_not_warm_their_neighbours() -> None:
    assert coach("coach-feed", NO_LOOM, ("circuits.slide-lights.duty", "control")).bunched == 6.0


def test_a_circuit_of_several_cables_bunches_its_own() -> None:
    assert coach("inverter-feed", ("looms.locker-elv", "(remove)"), ("circuits.inverter-feed.loom", "(remove)"),
                 ("circuits.inverter-feed.in parallel", "3")).bunched == 6.0  # fmt: skip


def test_an_unknown_loom_leaves_it_open() -> None:
    assert isinstance(coach("coach-feed", ("circuits.coach-feed.loom", "unknown")).bunched, Unknown)
