"""Readings of joints under load."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask


def read(text: str) -> object:
    return ask("design", "design", "joints_read_loaded", {"readings": f"[{text}]"})


def test_a_reading_in_a_mode_was_taken_under_its_load() -> None:
    assert read("{at: F4, mode: parked, temperature: 40 °C}") is True


def test_a_reading_of_which_nothing_tells_the_load_leaves_it_open() -> None:
    assert isinstance(read("{at: F4, temperature: 40 °C}"), Unknown)


def test_a_current_far_below_the_greatest_is_no_full_load() -> None:
    # Lamps 40 W and pump 6 A on 12 V: some 9 A through F4.
    assert read("{test: voltage drop, at: F4, result: right, current: 8 A}") is True
    assert read("{test: voltage drop, at: F4, result: right, current: 1 A}") is False
    assert isinstance(read("{test: voltage drop, at: F4, result: right, current: unknown}"), Unknown)


def test_the_greatest_drop_of_several_joints_counts() -> None:
    both = "{test: voltage drop, at: F4, voltage: 20 mV}, {test: voltage drop, at: F1, voltage: 60 mV}"
    assert ask("design", "design", "greatest_joint_drop", {"readings": f"[{both}]"}) == 0.06
    assert ask("design", "design", "greatest_joint_drop") is None
