"""Short peaks in a conductor."""

from __future__ import annotations

import pytest

from checker.physics.adiabatic import k_from_temperatures
from checker.quantities import Unknown
from tests.facts.house import ask

START = "equipment.pump.start"


def test_the_room_for_a_peak_lies_between_running_temperature_and_the_insulation() -> None:
    ambient, capacity, current = (
        ask("conductor", "pumping", fact) for fact in ("ambient", "carrying_capacity", "design_current")
    )
    running = ambient + (90 - ambient) * (current / capacity) ** 0.5
    k = k_from_temperatures("copper", running, 90.0)
    assert ask("conductor", "pumping", "peak_limit") == pytest.approx((k * 4e-6) ** 2)


def test_two_starts_in_a_row_must_fit_in() -> None:
    room = ask("conductor", "pumping", "peak_limit")
    time = room / 60**2 / 2
    for factor, stands in ((0.99, True), (1.01, False)):
        start = {START: f"{{current: 60 A, time: {time * factor:.4f} s}}"}
        assert ask("conductor", "pumping", "stands_starts", start) is stands


def test_a_start_within_the_carrying_capacity_may_last() -> None:
    assert ask("conductor", "pumping", "stands_starts", {START: "{current: 10 A, time: 1 h}"}) is True


def test_what_is_not_told_of_a_start_leaves_a_question() -> None:
    assert isinstance(ask("conductor", "pumping", "stands_starts", {START: "{current: 60 A, time: unknown}"}), Unknown)
    assert isinstance(ask("conductor", "pumping", "stands_starts", {START: "{current: unknown, time: 1 s}"}), Unknown)


def test_a_branch_of_lamps_has_no_start() -> None:
    assert ask("conductor", "lamps", "has_starts") is False
    assert ask("conductor", "pumping", "has_starts") is True
