"""A device that feeds only motors with a thermal cut-out of their own; one rated for its full current for ever."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask

CUT_OUT = {"equipment.pump.thermal cut-out": "true"}


def test_it_is_yes_only_when_every_load_is_a_guarded_motor() -> None:
    assert isinstance(ask("device", "board.pump", "guards_cut_out_motors"), Unknown)
    assert ask("device", "board.pump", "guards_cut_out_motors", CUT_OUT) is True
    assert ask("device", "board.lights", "guards_cut_out_motors", CUT_OUT) is False
    assert ask("device", "F4", "guards_cut_out_motors", CUT_OUT) is False


def test_full_duty_is_not_taken_for_granted() -> None:
    assert ask("device", "F4", "full_duty") is False
    assert ask("device", "F4", "full_duty", {"equipment.F4.full duty": "true"}) is True
    assert isinstance(ask("device", "F4", "full_duty", {"equipment.F4.full duty": "unknown"}), Unknown)
