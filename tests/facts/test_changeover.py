"""Changeovers and transfers between sources."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, ids, subject


def test_a_changeover_and_the_transfer_of_an_inverter_charger_are_subjects() -> None:
    assert sorted(ids(COACH, "changeover")) == ["K2", "inverter"]
    assert subject(COACH, "changeover", "inverter").is_built_in is True


def test_throws_of_one_source_are_between_no_sources() -> None:
    assert subject(VAN, "changeover", "KG").is_between_sources is True
    same = {"circuits.generator.to": "KG.shore", "circuits.inverting.to": "KG.shore"}
    assert subject(VAN, "changeover", "KG", same).is_between_sources is False


def test_a_transfer_breaks_before_make_as_far_as_feeding_back_is_blocked() -> None:
    assert subject(COACH, "changeover", "inverter").breaks_before_make is True
    edits = {"equipment.inverter.transfer.backfeed": "unknown"}
    assert isinstance(subject(COACH, "changeover", "inverter", edits).breaks_before_make, Unknown)


def test_the_source_current_is_the_largest_that_can_stand_at_a_throw() -> None:
    # generator 2 kW / 230 V = 8.7 A, inverter 1 kW / 230 V = 4.3 A, inlet 16 A
    assert subject(VAN, "changeover", "KG").source_current == 16.0
    edits = {"equipment.genset.power": "4.6 kW"}
    assert subject(VAN, "changeover", "KG", edits).source_current == pytest.approx(20.0)
