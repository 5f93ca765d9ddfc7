"""In-rush through devices: the energy of charging against what a fuse stands."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.coach import coach, one

HARD = ("equipment.bank-isolator.precharge", "none")


def test_by_hand_the_charge_of_a_capacitor_through_the_resistance_of_battery_and_leads() -> None:
    # I2t = C U^2 / 2R, R being full voltage over the greatest short-circuit current at the switch.
    switch = one("switch", "bank-isolator", HARD)
    by_hand = 15e-3 * 58.4**2 / (2 * switch.path_resistance)
    assert one("device", "F6", HARD).inrush_let_through == pytest.approx(by_hand, rel=1e-6)


def test_only_devices_in_the_way_of_an_inverter_are_asked() -> None:
    hit = [one.id for one in coach(HARD).subjects("device") if one.inrush_let_through is not None]
    assert hit == ["F1", "F6"]


def test_with_a_precharge_nothing_is_let_through_hard() -> None:
    assert one("device", "F6").inrush_let_through is None
    assert isinstance(one("device", "F6", ("equipment.bank-isolator.precharge", "unknown")).inrush_let_through, Unknown)


def test_a_fuse_surely_stands_a_quarter_of_its_last_point_and_surely_not_its_let_through() -> None:
    # Bolt-down high voltage strip of 125 A: the last point of its lower edge is 6 times for 0.1 s.
    device = one("device", "F6", HARD)
    found = device.inrush_withstand
    assert isinstance(found, Range)
    assert found.low == pytest.approx(0.25 * (6 * 125) ** 2 * 0.1)
    assert found.high == device.let_through.high


def test_of_a_breaker_nothing_is_known_for_so_short_a_time() -> None:
    breaker = "{kind: breaker, family: dc hydraulic-magnetic, rating: 125 A, voltage: 80 V DC}"
    assert isinstance(one("device", "F6", HARD, ("equipment.F6", breaker)).inrush_withstand, Unknown)
