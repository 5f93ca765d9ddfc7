"""Alternators and what charges from them."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask

ASKED = 20 * 56 / 0.94 / 13.8 + 20
STIFF = {"equipment.converter.settings.holds low above": "none"}


def test_charging_asks_its_power_over_efficiency_and_the_lowest_voltage() -> None:
    # 20 A x 56 V / 0.94 / 13.8 V, and 20 A that the vehicle itself asks
    assert ask("converter", "alternator", "asked_current") == pytest.approx(ASKED)
    untold = ask("converter", "alternator", "asked_current", {"equipment.alternator.base load": "unknown"})
    assert isinstance(untold, Unknown)


def test_idle_is_the_lowest_speed_of_the_curve() -> None:
    assert ask("converter", "alternator", "hot_output") == 70.0
    assert ask("converter", "alternator", "hot_output", {"modes.idling.engine": "1375 rpm"}) == pytest.approx(110.0)
    assert isinstance(ask("converter", "alternator", "hot_output", {"modes.idling.engine": "500 rpm"}), Unknown)


def test_a_stiff_converter_overloads_it_at_idle_and_one_that_gives_way_does_not() -> None:
    assert ask("converter", "alternator", "continuous_share", STIFF) == pytest.approx(ASKED / 70)
    assert ask("converter", "alternator", "continuous_share") == 1.0


def test_whether_it_gives_way_is_worth_the_whole_difference() -> None:
    found = ask(
        "converter", "alternator", "continuous_share", {"equipment.converter.settings.holds low above": "unknown"}
    )
    assert isinstance(found, Range)
    assert (found.low, found.high) == (1.0, pytest.approx(ASKED / 70))


def test_a_curve_of_the_shaft_says_nothing_of_the_engine() -> None:
    assert isinstance(
        ask("converter", "alternator", "continuous_share", {"equipment.alternator.rpm": "shaft"}), Unknown
    )


def test_a_voltage_sensing_relay_does_not_suit_a_smart_alternator() -> None:
    assert ask("converter", "alternator", "works_over_set_voltage") is True
    combiner = {"equipment.K1": "{kind: combiner, rating: 200 A, voltage: 24 V DC, senses: voltage, place: cabin}"}
    assert ask("converter", "alternator", "works_over_set_voltage", combiner) is False
