"""Whether what a converter feeds by the chassis finds its way back."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask

BY_CHASSIS = {"circuits.alarm.cable": "red-35", "circuits.alarm.return": "chassis"}


def test_a_load_on_the_chassis_asks_for_the_negative_there() -> None:
    assert ask("converter", "alarm-supply", "feeds_by_the_chassis") is False
    assert ask("converter", "alarm-supply", "feeds_by_the_chassis", BY_CHASSIS) is True
    assert ask("converter", "alarm-supply", "output_on_the_chassis", BY_CHASSIS) is False
    assert ask("converter", "converter", "output_on_the_chassis") is True


def test_a_return_that_nobody_saw_leaves_it_open() -> None:
    unseen = {"circuits.alarm.cable": "red-35", "circuits.alarm.return": "unknown"}
    assert isinstance(ask("converter", "alarm-supply", "feeds_by_the_chassis", unseen), Unknown)
    assert isinstance(ask("converter", "alarm-supply", "output_on_the_chassis", unseen), Unknown)


def test_a_charger_of_the_sun_is_no_dc_converter() -> None:
    assert ask("converter", "sun", "feeds_by_the_chassis") is False
