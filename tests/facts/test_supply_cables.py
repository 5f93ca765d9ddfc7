"""The cables of arrays and inverters, and what is taken from the vehicle."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask, ids


def test_the_run_of_an_array_and_of_an_inverter_is_found() -> None:
    assert ids(ask("array", "panels", "conductors")) == ["sun-in"]
    assert ids(ask("converter", "inverter", "input_conductors")) == ["inverting"]
    assert isinstance(ask("converter", "inverter", "input_conductors", {"circuits.inverting": "(remove)"}), Unknown)


def test_an_inverter_draws_most_at_its_lowest_voltage() -> None:
    assert ask("converter", "inverter", "full_input_current") == pytest.approx(2000 / 0.92 / 44)
    without_stop = {"equipment.inverter.settings.low stop": "(remove)"}
    assert ask("converter", "inverter", "full_input_current", without_stop) == pytest.approx(2000 / 0.92 / 42)
    assert ask("converter", "converter", "full_input_current") is None


def test_what_is_taken_at_the_starting_battery_stands_against_what_is_permitted() -> None:
    # 20 A x 56 V / 0.94 at 12 V, below the 150 A of that side.
    assert ask("converter", "converter", "drawn_current") == pytest.approx(20 * 56 / 0.94 / 12)
    assert ask("bank", "start-battery", "permitted_draw", {"equipment.start-battery.allows": "80 A"}) == 80.0
    assert isinstance(ask("bank", "start-battery", "permitted_draw"), Unknown)


def test_only_steering_and_brakes_are_efforts_of_the_road() -> None:
    brakes = {
        "equipment.brakes": "{kind: brake, current: 12 A, voltage: 9..15 V}",
        "circuits.brakes": "{from: start-battery, to: brakes, run: [4 m], cable: pair-4}",
    }
    assert ask("circuit", "brakes", "feeds_road_effort", brakes) is True
    assert ask("circuit", "lamps", "feeds_road_effort") is False
    assert isinstance(ask("circuit", "brakes", "overload_alarm", brakes), Unknown)


SECOND = {
    "equipment.second": "{kind: solar array, modules: 3, arrangement: 3s1p, open voltage: 24.3 V, short current: 8 A}",
    "joints.roof-box": "{kind: terminal block}",
    "circuits.sun-in.from": "roof-box",
    "circuits.sun-1": "{from: panels, to: roof-box, run: [1 m via roof], cable: sun-4, return: same}",
    "circuits.sun-2": "{from: second, to: roof-box, run: [1 m via roof], cable: sun-4, return: same}",
}


def test_a_cable_that_arrays_share_carries_their_sum_and_each_own_cable_its_own() -> None:
    assert ask("conductor", "sun-in", "array_current") == pytest.approx(10.4)
    assert ask("conductor", "sun-in", "array_current", SECOND) == pytest.approx(18.4)
    assert ask("conductor", "sun-2", "array_current", SECOND) == pytest.approx(8.0)
    assert ask("conductor", "main", "array_current", SECOND) is None
    untold = SECOND | {"equipment.panels.short current": "unknown"}
    assert isinstance(ask("conductor", "sun-in", "array_current", untold), Unknown)


def test_the_output_cable_of_a_controller_starts_at_its_battery_terminals() -> None:
    assert [one.id for one in ask("converter", "sun", "output_conductors")] == ["sun-out"]
    assert ask("converter", "converter", "output_conductors") == ()
