"""Devices of the mains side."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def test_the_shore_feeds_what_lies_behind_the_inlet_in_some_state() -> None:
    assert subject(COACH, "device", "Q1").is_fed_from_shore is True
    assert subject(COACH, "device", "board.kitchen").is_fed_from_shore is True
    assert subject(COACH, "device", "F1").is_fed_from_shore is False


def test_the_first_device_from_the_shore_is_found_along_the_live_conductor() -> None:
    assert subject(COACH, "device", "Q1").is_first_from_shore is True
    assert subject(COACH, "device", "Q2").is_first_from_shore is False
    assert subject(VAN, "device", "Q1").is_first_from_shore is True


def test_the_weakest_part_before_the_main_breaker_counts() -> None:
    assert subject(COACH, "device", "Q1").shore_rating == 16.0
    assert subject(COACH, "device", "Q1", {"equipment.lead.rating": "10 A"}).shore_rating == 10.0
    assert subject(COACH, "device", "Q1", {"vehicle.site outlet": "6 A"}).shore_rating == 6.0


@pytest.mark.parametrize(
    ("kind", "shape", "suits"),
    [
        ("AC", "ac", False), ("A", "pulsating", True), ("A", "smooth dc", False), ("A", "high frequency", False),
        ("F", "high frequency", True), ("F", "smooth dc", False), ("B", "smooth dc", True),
    ],
)  # fmt: skip
def test_a_type_sees_the_residual_currents_it_is_made_for(kind: str, shape: str, suits: bool) -> None:
    # IEC 60364-5-53, 531.3.3 (memory)
    edits = {"equipment.Q2.type": kind, "equipment.charger.leakage waveform": shape}
    assert subject(VAN, "device", "Q2", edits).type_suits_loads is suits


def test_a_charger_that_says_nothing_leaves_the_type_open_except_for_type_b() -> None:
    silent = {"equipment.charger.leakage waveform": "unknown"}
    assert isinstance(subject(VAN, "device", "Q2", silent).type_suits_loads, Unknown)
    assert subject(VAN, "device", "Q2", {**silent, "equipment.Q2.type": "B"}).type_suits_loads is True


def test_the_slowest_trip_counts() -> None:
    two = "[{test: rcd trip, at: R1, time: 24 ms}, {test: rcd trip, at: R1, time: 41 ms}]"
    assert subject(COACH, "device", "R1", {"readings": two}).trip_time_shown == pytest.approx(0.041)
    assert isinstance(subject(COACH, "device", "Q1").trip_time_shown, Unknown)
    for doubt in (two.replace("at: R1, time: 41", "at: unknown, time: 41"), two.replace("24 ms", "unknown")):
        shown = subject(COACH, "device", "R1", {"readings": doubt}).trip_time_shown
        assert isinstance(shown, Range)
        assert shown.low <= 0.041 <= shown.high


def test_a_trip_test_tells_its_current_and_a_button_that_failed_once_is_not_proven() -> None:
    two = (
        "[{test: rcd trip, at: R1, time: 24 ms, current: 20 mA}, {test: rcd trip, at: R1, time: 9 ms, current: 60 mA}]"
    )
    assert subject(COACH, "device", "R1", {"readings": two}).trip_current_shown == pytest.approx(0.06)
    untold = "[{test: rcd trip, at: R1, time: 24 ms}]"
    assert isinstance(subject(COACH, "device", "R1", {"readings": untold}).trip_current_shown, Unknown)
    pressed = "[{test: test button, at: R1, result: right}, {test: test button, at: R1, result: wrong}]"
    assert subject(COACH, "device", "R1", {"readings": pressed}).button_proven is False
    assert isinstance(subject(COACH, "device", "R1", {"readings": "[]"}).button_proven, Unknown)


def test_loads_behind_a_residual_current_device_are_counted() -> None:
    assert subject(COACH, "device", "R1").protects_mains_loads == 3.0
    assert subject(COACH, "device", "Q1").protects_mains_loads == 0.0
