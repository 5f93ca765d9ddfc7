"""The whole line from a charger to a battery."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask


def test_circuits_one_behind_the_other_add_up() -> None:
    short = ask("bank", "bank", "charging_drop")
    longer = ask("bank", "bank", "charging_drop", {"circuits.sun-out.run": "[40 m via locker, F8, 0.1 m via locker]"})
    assert 0.0 < short < longer
    alone = ask("circuit", "sun-out", "own_drop", {"circuits.sun-out.run": "[40 m via locker, F8, 0.1 m via locker]"})
    assert longer > alone


def test_a_length_that_is_not_known_leaves_it_open() -> None:
    unseen = {"circuits.sun-out.run": "[unknown via locker, F8, 0.1 m via locker]"}
    assert isinstance(ask("bank", "bank", "charging_drop", unseen), Unknown)
