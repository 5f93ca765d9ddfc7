"""Starts and stalls against the published bands of the devices before them."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown
from tests.circuit.designs import battery, design

BLADE = "  F1: {kind: fuse, family: blade, rating: 20 A, voltage: 32 V DC, breaking capacity: 2 kA}"
MOTOR = "  pump: {kind: motor, running: 10 A, start: {current: 40 A, time: START}, stall: STALL, voltage: 10..15 V}"
FEED = "  feed: {from: bank, to: pump, run: [0.2 m via cabin, F1, 3 m via cabin], cable: red, return: same}"


def facts(stall: str = "40 A", start: str = "0.1 s", fuse: str = BLADE, more: str = "") -> Facts:
    motor = MOTOR.replace("STALL", stall).replace("START", start)
    return Facts(design("\n".join([battery("bank"), fuse, motor, more]), FEED))


def of(found: Facts, kind: str, id: str) -> Subject:
    subject = found.subject(kind, id)
    assert subject is not None
    return subject


def test_a_stall_at_twice_the_rating_clears_as_the_band_promises() -> None:
    # Blade fuse, medium, at 200 %: within 5 s (ISO 8820-3).
    assert of(facts(), "load", "pump").stall_clears_by == pytest.approx(5.0)


def test_a_stall_below_the_first_promise_never_clears() -> None:
    assert of(facts(stall="21 A"), "load", "pump").stall_clears_by == float("inf")


def test_a_motor_without_a_device_never_clears() -> None:
    bare = FEED.replace(", F1, 3 m via cabin", "")
    found = Facts(
        design("\n".join([battery("bank"), BLADE, MOTOR.replace("STALL", "40 A").replace("START", "1 s")]), bare)
    )
    assert of(found, "load", "pump").protected_by == ()
    assert of(found, "load", "pump").stall_clears_by == float("inf")


def test_a_stall_that_nobody_told_stays_unknown() -> None:
    assert isinstance(of(facts(stall="unknown"), "load", "pump").stall_clears_by, Unknown)


def test_the_device_of_a_motor_is_the_next_one_towards_the_battery() -> None:
    assert [one.id for one in of(facts(), "load", "pump").protected_by] == ["F1"]


@pytest.mark.parametrize(("time", "held"), [("0.15 s", True), ("0.16 s", False)])
def test_a_start_is_held_as_long_as_the_lower_edge_of_the_band(time: str, held: bool) -> None:
    # Blade fuse, medium, at 200 %: not before 0.15 s (ISO 8820-3).
    device = of(facts(start=time), "device", "F1")
    assert device.has_starts is True
    assert device.greatest_start == 40.0
    assert device.holds_starts is held


def test_a_start_within_the_rating_is_held_for_ever() -> None:
    weak = MOTOR.replace("STALL", "40 A").replace("START", "1 h").replace("current: 40 A", "current: 18 A")
    found = Facts(design("\n".join([battery("bank"), BLADE, weak]), FEED))
    assert of(found, "device", "F1").holds_starts is True


def test_a_start_that_is_perhaps_within_the_rating_is_perhaps_held() -> None:
    weak = MOTOR.replace("STALL", "40 A").replace("START", "1 h").replace("current: 40 A", "current: 18..40 A")
    found = Facts(design("\n".join([battery("bank"), BLADE, weak]), FEED))
    assert isinstance(of(found, "device", "F1").holds_starts, Unknown)


def test_the_start_of_a_motor_that_is_not_told_is_not_taken_for_none() -> None:
    silent = "  pump: {kind: motor, running: 10 A, voltage: 10..15 V}"
    device = of(Facts(design("\n".join([battery("bank"), BLADE, silent]), FEED)), "device", "F1")
    assert device.has_starts is True
    assert isinstance(device.holds_starts, Unknown)


@pytest.mark.parametrize(("joined", "known"), [("bar", True), ("unknown", False)])
def test_what_starts_behind_a_bank_is_unknown_while_its_joint_is(joined: str, known: bool) -> None:
    # A bank whose units meet nobody knows where may stand behind any device.
    module = "{chemistry: AGM lead acid, nominal: 12 V, capacity: 50 Ah, internal resistance: 9 mΩ}"
    bank = f"  bank: {{kind: bank, units: 2, of: module, arrangement: 1s2p, joined by: {joined}}}"
    bar = "  bar: {kind: bar, poles: [+, -], rating: 200 A}"
    feed = FEED.replace("from: bank", "from: bar")
    parts = f"parts: {{module: {{kind: battery, {module[1:]}}}"
    found = Facts(
        design("\n".join([bank, bar, BLADE, MOTOR.replace("STALL", "40 A").replace("START", "1 s")]), feed, parts)
    )
    device = of(found, "device", "F1")
    assert (device.has_starts is True) is known
    assert isinstance(device.has_starts, Unknown) is not known
