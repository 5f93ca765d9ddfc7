"""What takes all that an inverter draws, between it and the batteries."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask


def _ids(name: str, *edits: dict[str, str]) -> list[str]:
    return sorted(one.id for one in ask("converter", "inverter", name, *edits))


def test_the_main_cable_and_its_fuse_take_all_and_the_fuses_of_the_units_a_share() -> None:
    assert _ids("way_conductors") == ["inverting", "main"]
    assert _ids("way_devices") == ["F1", "F6"]


def test_beside_a_second_cable_neither_takes_all() -> None:
    twin = {"circuits.twin": "{from: bar-bank, to: bar-48, run: [0.9 m via locker], cable: red-70, return: same}"}
    assert _ids("way_conductors", twin) == ["inverting"]
    assert _ids("way_devices", twin) == ["F6"]


def test_no_battery_leaves_nothing_and_one_that_hangs_nowhere_a_question() -> None:
    assert _ids("way_conductors", {"circuits.inverting": "(remove)"}) == []
    loose = {"equipment.spare": "{kind: battery, chemistry: AGM lead acid, nominal: 48 V}", "purpose": "survey"}
    found = ask("converter", "inverter", "way_devices", loose)
    assert isinstance(found, Unknown) or [one.id for one in found] == ["F6", "F1"]
    assert ask("converter", "sun", "way_devices") == ()
