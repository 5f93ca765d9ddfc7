"""What a changeover has to stand, and sources side by side."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def test_the_site_gives_most_into_a_short_unless_the_file_says_otherwise() -> None:
    assert subject(COACH, "changeover", "K2").fault_current == 6000.0
    assert subject(COACH, "changeover", "K2", {"vehicle.supply.fault current": "1 kA"}).fault_current == 1000.0
    assert isinstance(subject(COACH, "changeover", "K2").withstand, Unknown)
    assert isinstance(subject(COACH, "changeover", "inverter").withstand, Unknown)
    stated = {"equipment.inverter.transfer.withstand": "6 kA"}
    assert subject(COACH, "changeover", "inverter", stated).withstand == 6000.0


def test_two_sources_made_for_each_other_run_side_by_side_and_others_do_not() -> None:
    joined = {"circuits.inverting.to": "out", "equipment.inverter.synchronises with": "[inlet, genset]"}
    assert subject(VAN, "ac_source", "inverter", joined).runs_beside_another is True
    assert subject(VAN, "ac_source", "inverter").runs_beside_another is False
    alone = {"circuits.inverting.to": "out"}
    assert subject(VAN, "ac_source", "inverter", alone).runs_beside_another is False
    assert subject(VAN, "ac_source", "inlet").parts_on_loss is None
