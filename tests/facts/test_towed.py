"""What is drawn from the battery of a towing vehicle."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask

LAMP = {
    "equipment.plug": "{kind: vehicle coupling, supplies: {fridge: {nominal: 12 V, current: 15 A, fuse: 20 A}}}",
    "equipment.tow-lamp": "{kind: lamp, power: 10 W, voltage: 10..15 V}",
    "circuits.tow": "{from: plug.fridge, to: tow-lamp, run: [5 m], cable: pair-4}",
}
HIDDEN = {**LAMP, "circuits.tow": "{from: plug.fridge, to: tow-lamp, run: [5 m, unknown], cable: pair-4}"}


def test_a_lamp_on_a_contact_draws_over_there() -> None:
    assert [one.id for one in ask("equipment", "plug", "draws_over_there", LAMP)] == ["tow-lamp"]


def test_what_was_not_seen_may_part_it() -> None:
    assert isinstance(ask("equipment", "plug", "draws_over_there", HIDDEN), Unknown)


def test_other_equipment_draws_nothing_over_there() -> None:
    assert ask("equipment", "F4", "draws_over_there") == ()
    assert ask("equipment", "F4", "parted_with_the_engine") is None


def test_a_plug_of_which_nobody_told_stays_open() -> None:
    assert isinstance(ask("equipment", "plug", "parted_with_the_engine", LAMP), Unknown)
