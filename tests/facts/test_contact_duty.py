"""What contacts must stand, by hand on the coach."""

from __future__ import annotations

import math

import pytest

from checker.facts.subject import Subject
from checker.quantities import Unknown
from tests.facts.coach import one

BY_HAND = (
    ("equipment.bank-isolator.precharge", "by hand"),
    ("equipment.bank-isolator.precharge resistance", "22 Ω"),
    ("equipment.bank-isolator.precharge time", "0.5 s"),
)


def isolator(*edits: tuple[str, str]) -> Subject:
    return one("switch", "bank-isolator", *edits)


def test_precharge_by_hand() -> None:
    # 15 mF behind 22 ohm: 0.33 s; after 0.5 s 1 - e^(-0.5/0.33) = 78.0 %; of 58.4 V 12.8 V are left.
    found = isolator(*BY_HAND)
    tau = 22 * 15e-3
    assert found.precharge_share == pytest.approx(1 - math.exp(-0.5 / tau))
    assert found.precharge_gap == pytest.approx(58.4 * math.exp(-0.5 / tau))
    # First moment: 58.4^2 / 22 = 155 W; the capacitors and the resistor each take C U^2 / 2 = 25.6 J.
    assert found.precharge_power == pytest.approx(58.4**2 / 22)
    assert found.closing_energy == pytest.approx(0.5 * 15e-3 * 58.4**2)


def test_the_blow_is_what_the_gap_drives_through_battery_and_leads() -> None:
    # Stiff source behind R and L with C: after the pre-charge the same circuit with the gap instead of all the voltage.
    hard, soft = isolator(("equipment.bank-isolator.precharge", "none")), isolator(*BY_HAND)
    share = math.exp(-0.5 / (22 * 15e-3))
    assert soft.making_current.high == pytest.approx(hard.making_current.high * share)
    assert hard.making_current == hard.closing_current
    # No inductance lets more through than U / R: three units of 58.4 V / 2.4 kA behind their leads.
    assert hard.making_current.high < 58.4 / hard.path_resistance
    assert hard.path_resistance > 58.4 / 7200


def test_a_precharge_is_told_when_it_is_the_fitters_or_has_numbers() -> None:
    assert isolator().precharge_is_told is False
    assert isolator(("equipment.bank-isolator.precharge time", "0.5 s")).precharge_is_told is True
    assert isolator(("equipment.bank-isolator.precharge", "separate")).precharge_is_told is True
    assert isinstance(isolator(("equipment.bank-isolator.precharge", "unknown")).precharge_is_told, Unknown)
    assert isinstance(isolator(("equipment.bank-isolator.precharge", "unknown")).making_current, Unknown)


def test_nothing_is_charged_where_no_capacitors_hang_behind() -> None:
    relay = one("switch", "K1")
    assert relay.precharge_share is None
    assert one("switch", "K2").precharge_is_told is False


def test_what_can_flow_before_a_device_opens_is_the_devices_rating() -> None:
    # K1 stands behind F3, 225 A; house-switch between F4 and ways that together let less through than 80 A.
    assert one("switch", "K1").overload_current == 225.0
    assert one("switch", "house-switch").overload_current < 80.0
    assert one("switch", "house-switch", ("equipment.F4.rating", "60 A")).overload_current == 60.0


def test_an_unknown_device_leaves_it_open() -> None:
    assert not isinstance(one("switch", "K1", ("equipment.F3.rating", "unknown")).overload_current, float)
