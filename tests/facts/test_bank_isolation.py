"""The ways out of a bank and the switch on them."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask, ids


def test_the_first_switch_on_the_way_is_the_isolator_and_its_distance_is_walked() -> None:
    assert ask("bank", "bank", "isolator").id == "isolator"
    assert ask("bank", "bank", "isolator_distance") == pytest.approx(0.45)
    assert ask("bank", "bank", "has_isolator") is True


def test_no_switch_is_none_and_a_part_not_seen_is_unknown() -> None:
    bare = {"circuits.main.run": "[0.15 m, F1, 0.8 m]"}
    assert ask("bank", "bank", "isolator", bare) is None
    assert ask("bank", "bank", "has_isolator", bare) is False
    hidden = {"circuits.main.run": "[0.15 m, F1, unknown]"}
    assert isinstance(ask("bank", "bank", "isolator", hidden), Unknown)
    assert isinstance(ask("bank", "bank", "has_isolator", hidden), Unknown)


def test_one_way_without_a_switch_is_enough_to_fail() -> None:
    past = {
        "equipment.heater": "{kind: load, power: 100 W, voltage: 40..60 V}",
        "circuits.heater": "{from: bar-bank, to: heater, run: [2 m], cable: pair-4}",
    }
    assert ask("bank", "bank", "has_isolator", past) is False
    assert isinstance(ask("bank", "bank", "has_isolator", {**past, "circuits.heater.duty": "unknown"}), Unknown)


def test_safety_circuits_are_listed_ahead_and_need_no_switch() -> None:
    assert ids(ask("bank", "bank", "ahead_of_isolator")) == ["alarming"]
    assert ask("circuit", "alarming", "may_pass_isolator") is True
    assert ask("circuit", "main", "may_pass_isolator") is False


def test_the_switch_breaks_what_can_be_asked_but_no_more_than_its_fuse_passes() -> None:
    asked = ask("bank", "bank", "load_sum")
    assert ask("switch", "isolator", "current_to_break") == asked
    assert ask("switch", "isolator", "current_to_break", {"equipment.F1.rating": "80 A"}) == 80.0


def test_an_unknown_fuse_may_pass_less_than_is_asked() -> None:
    asked = ask("bank", "bank", "load_sum")
    assert ask("switch", "isolator", "current_to_break", {"equipment.F1.rating": "unknown"}) == Range(0.0, asked)


def test_an_unknown_load_leaves_the_fuse_as_the_upper_end() -> None:
    found = ask("switch", "isolator", "current_to_break", {"equipment.inverter.power": "unknown"})
    assert found == Range(0.0, 160.0)


def test_only_the_switch_of_a_bank_isolates_one() -> None:
    assert ask("switch", "isolator", "isolates_bank").id == "bank"
    assert ask("switch", "sun-switch", "isolates_bank") is None


def test_a_switch_that_may_stand_in_a_part_not_seen_is_not_ruled_out() -> None:
    hidden = {"circuits.main.run": "[0.15 m, F1, unknown]"}
    assert isinstance(ask("switch", "isolator", "isolates_bank", hidden), Unknown)
    assert isinstance(ask("switch", "isolator", "capacitors_behind", hidden), Unknown)
