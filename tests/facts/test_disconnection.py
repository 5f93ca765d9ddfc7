"""How long a fault lasts, and the run from the inlet to the first residual-current device."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, VAN, subject

RCD = "{kind: rcd, rating: 25 A, trips at: 30 mA, type: A, poles: 2}"


def test_the_stated_time_of_the_device_counts() -> None:
    assert subject(COACH, "supply", "heater on inverter").disconnection_time == pytest.approx(0.04)


def test_a_device_without_a_stated_time_opens_within_the_published_limit() -> None:
    # IEC 61008-1 / 61009-1 at five times the rated residual current: 40 ms, selective devices 150 ms (seen).
    found = subject(VAN, "supply", "sockets on inlet")
    assert found.disconnection_time == Range(0.0, 0.15)


def test_without_a_working_device_the_time_is_not_known() -> None:
    for edits in (
        {"circuits.board-feed.run": "[0.3 m via locker, S1]"},
        {"equipment.inverter.bond.when": "never"},
        {"circuits.heating.earth": "none"},
    ):
        found = subject(COACH, "supply", "heater on inverter", edits)
        assert isinstance(found.disconnection_time, Unknown)


def test_only_the_shore_can_be_earthed_by_an_electrode() -> None:
    edits = {"vehicle.supply.earthing": "TT"}
    assert subject(COACH, "supply", "heater on inlet", edits).source_is_tt is True
    assert subject(COACH, "supply", "heater on inverter", edits).source_is_tt is False


def test_the_run_to_the_first_residual_device_is_summed() -> None:
    edits = {"circuits.shore-in.run": f"[1 m via locker, 0.5 m via locker, {RCD}, Q1]"}
    assert subject(COACH, "inlet", "inlet", edits).length_to_residual == pytest.approx(1.5)


def test_a_branch_that_meets_none_is_decided_absence_and_an_unseen_one_is_not() -> None:
    assert subject(COACH, "inlet", "inlet").length_to_residual is None
    edits = {"circuits.shore-in.run": f"[unknown, {RCD}, Q1]"}
    assert isinstance(subject(COACH, "inlet", "inlet", edits).length_to_residual, Unknown)


def test_the_first_devices_behind_the_inlet_are_read_for_their_rated_current() -> None:
    edits = {"circuits.shore-in.run": f"[1 m via locker, {RCD}, Q1]"}
    assert subject(COACH, "inlet", "inlet", edits).first_residual_current == pytest.approx(0.03)
    assert subject(COACH, "inlet", "inlet").first_residual_current is None
