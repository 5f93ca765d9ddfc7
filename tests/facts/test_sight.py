"""An isolator is seen from what it isolates when it stands in the same place, or when the file says so."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask


def test_one_in_the_same_place_is_in_sight() -> None:
    assert ask("bank", "bank", "isolator_in_sight") is True
    assert ask("array", "panels", "isolator_at_controller") is True


def test_one_in_another_place_asks_until_it_is_told() -> None:
    away = {"equipment.isolator.place": "cabin", "equipment.sun-switch.place": "cabin"}
    assert isinstance(ask("bank", "bank", "isolator_in_sight", away), Unknown)
    assert isinstance(ask("array", "panels", "isolator_at_controller", away), Unknown)
    seen = {"equipment.isolator.in sight of": "[bank]", "equipment.sun-switch.in sight of": "[sun]"}
    assert ask("bank", "bank", "isolator_in_sight", away | seen) is True
    assert ask("array", "panels", "isolator_at_controller", away | seen) is True
    other = {"equipment.isolator.in sight of": "[sun]", "equipment.sun-switch.in sight of": "[bank]"}
    assert ask("bank", "bank", "isolator_in_sight", away | other) is False
    assert ask("array", "panels", "isolator_at_controller", away | other) is False


def test_an_unknown_place_decides_nothing() -> None:
    assert isinstance(ask("bank", "bank", "isolator_in_sight", {"equipment.isolator.place": "unknown"}), Unknown)
    assert isinstance(ask("bank", "bank", "isolator_in_sight", {"equipment.bank.place": "unknown"}), Unknown)
    perhaps = {"equipment.isolator.place": "cabin", "equipment.isolator.in sight of": "[unknown]"}
    assert isinstance(ask("bank", "bank", "isolator_in_sight", perhaps), Unknown)


def test_the_fewest_poles_count_and_a_hidden_switch_leaves_them_open() -> None:
    assert ask("bank", "bank", "isolator_poles") == 1
    assert ask("bank", "bank", "isolator_poles", {"equipment.isolator.poles": "2"}) == 2
    assert ask("bank", "bank", "isolator_poles", {"circuits.main.run": "[0.15 m, F1, 0.5 m]"}) is None
    assert isinstance(ask("bank", "bank", "isolator_poles", {"circuits.main.run": "[0.15 m, F1, unknown]"}), Unknown)


def test_an_array_without_an_isolator_has_none_in_sight() -> None:
    assert ask("array", "panels", "isolator_at_controller", {"circuits.sun-in.run": "[3.5 m via roof]"}) is False
    hidden = {"circuits.sun-in.run": "[3 m via roof, unknown]"}
    assert isinstance(ask("array", "panels", "isolator_at_controller", hidden), Unknown)


def test_a_battery_of_which_nobody_knows_the_place_may_be_in_sight() -> None:
    lost = {"equipment.bank.place": "unknown"}
    assert isinstance(ask("bank", "bank", "isolator_in_sight", lost), Unknown)
