"""A dead fault to earth at a mains load: loop, current, and the time by which a breaker opens."""

from __future__ import annotations

import pytest

from checker.facts.subject import trace
from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

NO_RCD = {"circuits.board-feed.run": "[0.3 m via locker, S1]"}
AMPS, SECONDS = "equipment.inverter.ac.fault current", "equipment.inverter.ac.fault time"
# 2.5 mm2 flexible, class 5: 7.98 ohm/km at 20 °C (IEC 60228 table 3), at 70 °C times 1 + 0.00393 * 50
PER_METRE = 7.98e-3 * 1.1965


def test_the_loop_aboard_is_every_circuit_on_the_way_there_and_back() -> None:
    # by the bypass: shore-in 1 m, bypass 0.5 m, board-feed 0.3 m, heating 3 m
    found = subject(COACH, "supply", "heater on inlet", NO_RCD).loop_impedance_aboard
    assert found == pytest.approx(2 * 4.8 * PER_METRE, rel=1e-3)
    # from the inverter: normal 0.5 m, board-feed 0.3 m, heating 3 m
    found = subject(COACH, "supply", "heater on inverter", NO_RCD).loop_impedance_aboard
    assert found == pytest.approx(2 * 3.8 * PER_METRE, rel=1e-3)


def test_on_shore_the_site_and_the_lead_are_added() -> None:
    edits = NO_RCD | {"vehicle.supply.loop impedance": "0.5 Ω"}
    found = subject(COACH, "supply", "heater on inlet", edits)
    assert found.loop_impedance == pytest.approx(0.5 + 2 * (25 + 4.8) * PER_METRE, rel=1e-3)
    assert found.earth_fault_current == pytest.approx(0.95 * 230 / found.loop_impedance)


def test_a_strong_site_opens_the_breaker_at_once_and_a_weak_one_does_not() -> None:
    # C curve, 10 A: instantaneous above 10 times the rating, 0.1 s promised (IEC 60898-1 table 7)
    strong = subject(COACH, "supply", "heater on inlet", NO_RCD | {"vehicle.supply.loop impedance": "0.5 Ω"})
    assert strong.breaker_clears_by == strong.disconnection_time == pytest.approx(0.1)
    weak = subject(COACH, "supply", "heater on inlet", NO_RCD | {"vehicle.supply.loop impedance": "3 Ω"})
    assert weak.disconnection_time > 1.0


def test_a_site_of_which_nothing_is_said_leaves_the_time_open_and_names_the_entry() -> None:
    found = subject(COACH, "supply", "heater on inlet", NO_RCD)
    assert isinstance(found.disconnection_time, Unknown)
    paths = [leaf.path for leaf in trace(found, "disconnection_time").leaves()]
    assert "vehicle.supply.loop impedance" in paths


def test_an_inverter_that_gives_up_before_the_breaker_opens_never_clears() -> None:
    found = subject(COACH, "supply", "heater on inverter", NO_RCD | {AMPS: "30 A", SECONDS: "0.5 s"})
    assert found.earth_fault_current == 30.0
    assert found.breaker_clears_by == float("inf")


def test_an_inverter_that_holds_a_large_current_opens_the_breaker() -> None:
    found = subject(COACH, "supply", "heater on inverter", NO_RCD | {AMPS: "200 A", SECONDS: "0.5 s"})
    assert found.breaker_clears_by == pytest.approx(0.1)


def test_how_long_the_inverter_lasts_must_be_known() -> None:
    found = subject(COACH, "supply", "heater on inverter", NO_RCD | {AMPS: "200 A"})
    assert isinstance(found.breaker_clears_by, Unknown)
    assert isinstance(subject(COACH, "supply", "heater on inverter", NO_RCD).breaker_clears_by, Unknown)


def test_without_a_link_of_neutral_and_earth_no_current_is_promised() -> None:
    edits = NO_RCD | {AMPS: "200 A", SECONDS: "0.5 s", "equipment.inverter.bond.when": "never"}
    assert isinstance(subject(COACH, "supply", "heater on inverter", edits).earth_fault_current, Unknown)


def test_an_earth_that_runs_elsewhere_is_not_worked_out() -> None:
    edits = NO_RCD | {"circuits.heating.earth": "none"}
    assert isinstance(subject(COACH, "supply", "heater on inverter", edits).loop_impedance_aboard, Unknown)
