"""What was added at points of the maker of the vehicle."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask


def test_circuits_that_start_at_a_board_of_the_maker_are_added_up() -> None:
    assert ask("equipment", "board", "of_the_maker", {"equipment.board.own": "factory"}) is True
    # Lamps 40 W on 12 V, pump 6 A.
    assert ask("equipment", "board", "added_draw") == pytest.approx(40 / 12 + 6)
    theirs = {"circuits.pumping.own": "factory"}
    assert ask("equipment", "board", "added_draw", theirs) == pytest.approx(40 / 12)


def test_what_leads_to_a_point_takes_nothing_from_it() -> None:
    assert ask("equipment", "gas-alarm", "added_draw") == 0.0


def test_a_battery_of_the_maker_has_a_rule_of_its_own() -> None:
    assert ask("equipment", "start-battery", "of_the_maker") is False


def test_what_the_maker_permits_is_not_guessed() -> None:
    assert isinstance(ask("equipment", "board", "permitted_draw"), Unknown)
    assert ask("equipment", "board", "permitted_draw", {"equipment.board.allows": "20 A"}) == 20.0


def test_added_circuits_that_return_by_the_chassis_are_added_up() -> None:
    found = ask("circuit", "start-neg", "added_return")
    assert isinstance(found, float)
    assert found > 0.0
    assert ask("circuit", "start-neg", "added_return", {"circuits.link.return": "same"}) == 0.0
    assert ask("circuit", "lamps", "added_return") is None


SPLICE = {
    "joints.tap": "{kind: joint, place: engine-bay}",
    "circuits.charging.run": "[0.5 m via engine-bay, tap, 0.5 m via engine-bay, FE, 0.2 m via engine-bay]",
}


def test_a_splice_in_a_cable_of_the_maker_is_a_point_of_the_maker() -> None:
    assert ask("equipment", "tap", "of_the_maker", SPLICE) is True
    assert ask("equipment", "tap", "of_the_maker", {**SPLICE, "circuits.charging.own": "fitter"}) is False
    assert isinstance(ask("equipment", "tap", "of_the_maker", {**SPLICE, "circuits.charging.own": "unknown"}), Unknown)
