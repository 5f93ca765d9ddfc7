"""One device that cuts everything from a source."""

from __future__ import annotations

import pytest

from checker.facts.subject import trace
from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def test_the_main_breaker_cuts_all_that_the_shore_feeds() -> None:
    inlet = subject(COACH, "ac_source", "inlet")
    assert inlet.has_main_switch is True
    assert trace(inlet, "has_main_switch").notes == ("Q1 opens all of it",)


@pytest.mark.parametrize("edit", [{"equipment.Q1.poles": "1"}, {"equipment.Q1.isolates": "false"}])
def test_one_pole_or_no_isolation_is_no_main_switch(edit: dict[str, str]) -> None:
    assert subject(COACH, "ac_source", "inlet", edit).has_main_switch is False


def test_breakers_of_single_circuits_are_no_main_switch() -> None:
    edits = {"equipment.KG.isolates": "false"}
    assert subject(VAN, "ac_source", "inlet", edits).has_main_switch is False


def test_what_the_device_does_when_open_may_be_unknown() -> None:
    edits = {"equipment.KG.isolates": "unknown"}
    assert isinstance(subject(VAN, "ac_source", "inlet", edits).has_main_switch, Unknown)


def test_the_input_of_an_inverter_charger_counts_as_fed() -> None:
    edits = {"circuits.bypass.to": "K2.inverter", "circuits.normal.to": "K2.shore"}
    assert subject(COACH, "ac_source", "inlet", edits).feeds_fixed_wiring is True


def test_the_primary_of_a_transformer_counts_as_fed() -> None:
    edits = {
        "equipment.T1": "{kind: transformer, windings: separate, power: 3 kW, place: locker}",
        "circuits.shore": "{from: inlet, to: T1.primary, run: [0.3 m via locker], cable: flex-2.5}",
        "circuits.behind": "{from: T1.secondary, to: KG.shore, run: [0.3 m via locker], cable: flex-2.5}",
    }
    inlet = subject(VAN, "ac_source", "inlet", edits)
    assert inlet.feeds_fixed_wiring is True
    assert inlet.has_main_switch is False
