"""Circuits of the mains side."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def test_final_circuits_end_at_loads_outlets_or_chargers() -> None:
    assert subject(COACH, "circuit", "kitchen").feeds_mains_loads is True
    assert subject(VAN, "circuit", "charging").feeds_mains_loads is True
    assert subject(COACH, "circuit", "board-feed").feeds_mains_loads is False
    assert subject(COACH, "circuit", "lighting").feeds_mains_loads is False


def test_the_worst_source_decides_the_residual_protection() -> None:
    assert subject(COACH, "circuit", "kitchen").residual_current == 0.03
    past = {"circuits.normal.to": "board"}
    assert subject(COACH, "circuit", "kitchen", past).residual_current is None


def test_a_breaker_before_a_branch_is_nobodys_own() -> None:
    assert subject(COACH, "circuit", "kitchen").own_device.id == "board.kitchen"
    edits = {"circuits.sockets.run": "[3 m via cabin]", "circuits.common.run": "[0.3 m via locker, Q1]"}
    assert subject(VAN, "circuit", "sockets", edits).has_own_device is False


def test_a_breaker_in_the_feeder_of_one_circuit_alone_is_its_own() -> None:
    edits = {
        "circuits.charging": "{from: out.PE, to: earth, run: [0.2 m via locker], cable: green-6, duty: bonding}",
        "circuits.sockets.run": "[3 m via cabin]",
        "circuits.common.run": "[0.3 m via locker, Q1]",
    }
    assert subject(VAN, "circuit", "sockets", edits).own_device.id == "Q1"


def test_an_unseen_run_may_hold_the_breaker() -> None:
    edits = {"circuits.sockets.run": "[unknown]"}
    assert isinstance(subject(VAN, "circuit", "sockets", edits).has_own_device, Unknown)


@pytest.mark.parametrize(
    ("line", "earth"), [("2.5 mm2", 2.5e-6), ("16 mm2", 16e-6), ("25 mm2", 16e-6), ("50 mm2", 25e-6)]
)
def test_the_earth_follows_the_line_up_to_sixteen_square(line: str, earth: float) -> None:
    # IEC 60364-5-54, Table 54.2 (memory): S up to 16 mm2, then 16 mm2 up to 35 mm2, then S / 2.
    found = subject(COACH, "circuit", "kitchen", {"cables.flex-2.5.size": line})
    assert found.earth_area_needed == pytest.approx(earth)


def test_an_earth_core_without_a_size_of_its_own_is_like_the_line_whatever_that_is() -> None:
    found = subject(COACH, "circuit", "kitchen", {"cables.flex-2.5.size": "1.5..2.5 mm2"})
    assert found.earth_area == Range(1.5e-6, 2.5e-6)
    assert found.earth_is_like_line is True
    thin = subject(COACH, "circuit", "kitchen", {"cables.flex-2.5.earth size": "1.5 mm2"})
    assert (thin.earth_is_like_line, thin.earth_area) == (False, 1.5e-6)


def test_only_the_conductor_from_the_main_earth_bonds_the_chassis() -> None:
    assert subject(COACH, "circuit", "chassis-bond").bonds_chassis is True
    assert subject(COACH, "circuit", "case").bonds_chassis is False
    assert subject(COACH, "circuit", "battery").bonds_chassis is False


def test_an_earth_with_an_isolator_in_it_is_a_core_of_its_cable() -> None:
    own = {"circuits.heating.run": "[3 m via duct, 0.5 m via cabin]"}
    there = own | {"circuits.heating.earth": "{run: [3 m via duct, 0.5 m via cabin], size: 2.5 mm2}"}
    elsewhere = own | {"circuits.heating.earth": "{run: [3 m via duct, 0.5 m via locker], size: 2.5 mm2}"}
    assert subject(COACH, "circuit", "heating", there).earth_runs_with_it is True
    assert subject(COACH, "circuit", "heating", elsewhere).earth_runs_with_it is False
    for run in ("[unknown, 0.5 m via cabin]", "[3 m, 0.5 m via cabin]"):
        assert isinstance(
            subject(COACH, "circuit", "heating", there | {"circuits.heating.run": run}).earth_runs_with_it, Unknown
        )
    two = there | {"circuits.heating.cable": "pair-4"}
    assert subject(COACH, "circuit", "heating", two).earth_runs_with_it is False


def test_a_feeder_carries_mains_and_a_bond_does_not() -> None:
    assert subject(COACH, "circuit", "shore-in").carries_mains is True
    assert subject(COACH, "circuit", "chassis-bond").carries_mains is False
    assert subject(COACH, "circuit", "lighting").carries_mains is False


def test_what_opens_an_appliance_ahead_of_it_counts_by_its_most_poles() -> None:
    assert subject(COACH, "load", "heater").poles_opened_ahead == 2.0
    assert subject(COACH, "load", "heater", {"parts.mcb.poles": "1"}).poles_opened_ahead == 1.0
