"""The plug to a towing vehicle as the bus of an alternator."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask

PLUG = "{kind: vehicle coupling, supplies: {charge: {nominal: 12 V, current: 15 A}}, source end: {load dump: 35 V}}"
LAMP = "{kind: lamp, power: 10 W, transient level: 60 V, jump start: 16 V, place: cabin}"
TOWED = {
    "equipment.coupling": PLUG,
    "equipment.tow-light": LAMP,
    "circuits.tow": "{from: coupling.charge, to: tow-light, run: [1 m via cabin], cable: pair-4}",
}


def test_the_weakest_behind_the_plug_is_found() -> None:
    assert ask("equipment", "coupling", "dump_at_plug", TOWED) == 35.0
    assert ask("equipment", "coupling", "weakest_transient_behind", TOWED) == 60.0
    assert ask("equipment", "coupling", "jump_start_at_plug", TOWED) == 24.0
    assert ask("equipment", "coupling", "weakest_in_jump_start_behind", TOWED) == 16.0


def test_other_equipment_has_no_plug() -> None:
    for name in ("dump_at_plug", "weakest_transient_behind", "jump_start_at_plug", "weakest_in_jump_start_behind"):
        assert ask("equipment", "bar-12", name) is None


def test_what_is_not_told_of_the_towing_vehicle_is_not_known() -> None:
    silent = {**TOWED, "equipment.coupling": "{kind: vehicle coupling}"}
    assert isinstance(ask("equipment", "coupling", "dump_at_plug", silent), Unknown)
    assert isinstance(ask("equipment", "coupling", "jump_start_at_plug", silent), Unknown)
