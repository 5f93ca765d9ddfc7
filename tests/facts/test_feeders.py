"""Devices in series: what stands before one and also feeds other loads."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask

SECOND = {
    "equipment.FB": "{kind: fuse, family: blade, rating: 20 A, breaking capacity: 5 kA, place: cabin}",
    "equipment.bar-b": "{kind: bar, poles: [+, -], rating: 100 A, place: cabin}",
    "equipment.buffer": "{kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 20 Ah, purpose: house}",
    "circuits.to-b": "{from: buffer, to: bar-b, run: [0.1 m, FB, 1 m], cable: red-35, return: same}",
    "equipment.L1": "{kind: lamp, power: 10 W, place: cabin}",
    "equipment.L2": "{kind: lamp, power: 10 W, place: cabin}",
    "equipment.F1b": "{kind: fuse, family: blade, rating: 10 A, breaking capacity: 5 kA, place: cabin}",
    "circuits.one": "{from: bar-b, to: L1, run: [0.1 m, F1b, 1 m], cable: pair-4}",
}
OTHER = {"circuits.two": "{from: bar-b, to: L2, run: [1 m], cable: pair-4}"}


def test_a_fuse_of_all_that_hangs_there_shares_with_nobody() -> None:
    assert ask("device", "F1b", "shares_a_feeder", SECOND) is False


def test_the_fuse_before_that_also_feeds_another_lamp_is_a_feeder() -> None:
    assert ask("device", "F1b", "shares_a_feeder", {**SECOND, **OTHER}) is True
    assert ask("device", "F1b", "below_its_feeders", {**SECOND, **OTHER}) is True
    assert ask("device", "F1b", "below_its_feeders", {**SECOND, **OTHER, "equipment.FB.rating": "10 A"}) is False
    unknown = {**SECOND, **OTHER, "equipment.FB.rating": "unknown"}
    assert isinstance(ask("device", "F1b", "below_its_feeders", unknown), Unknown)


def test_what_another_battery_keeps_alight_goes_not_dark() -> None:
    spare = {
        "equipment.spare": "{kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 20 Ah, purpose: house}",
        "circuits.spare": "{from: spare, to: L2, run: [1 m], cable: pair-4}",
    }
    cut_off = {**SECOND, **spare}
    assert ask("device", "F1b", "shares_a_feeder", cut_off) is False
