"""How far a thin circuit of the mains runs before its own device, and whether it divides there."""

from __future__ import annotations

from typing import Any

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, subject

CORD = "{size: 1.5 mm2, cores: 3, insulation: 70 °C, voltage: 450 V}"
SMALL = "{kind: load, power: 20 W, voltage: 207..253 V, class: II, place: cabin}"
BASE = {
    "vehicle.ambient": "{high: 40 °C}",
    "equipment.Q1.rating": "32 A",
    "equipment.inlet.rating": "32 A",
    "vehicle.site outlet": "32 A",
    "equipment.QX": "{part: mcb, rating: 2 A}",
    "equipment.bell": SMALL,
}


def tap(run: str = "2 m via cabin, QX, 1 m via cabin", about: str = "tap on inlet", **more: str) -> Any:
    edits = BASE | {"circuits.tap": f"{{from: shore-joint, to: bell, run: [{run}], cable: {CORD}}}"} | more
    return subject(COACH, "short", about, edits)


def test_it_counts_up_to_its_own_device() -> None:
    assert tap().tap_length == 2.0


def test_behind_its_own_device_nothing_counts() -> None:
    assert tap("QX, 3 m via cabin").tap_length == 0.0


def test_it_is_a_tap_where_the_device_ahead_is_rated_above_what_it_carries() -> None:
    assert tap().is_tap is True
    assert tap(**{"equipment.Q1.rating": "10 A"}).is_tap is False
    assert isinstance(tap(**{"equipment.Q1.rating": "unknown"}).is_tap, Unknown)


def test_it_is_none_where_the_site_gives_no_more_than_it_carries() -> None:
    assert tap(**{"vehicle.site outlet": "6 A"}).is_tap is False
    assert isinstance(tap(**{"vehicle.site outlet": "unknown"}).is_tap, Unknown)


def test_a_thin_length_that_leads_up_to_it_counts_and_a_thick_one_does_not() -> None:
    joint = {
        "joints.tee": "{kind: terminal block, system: mains, place: cabin}",
        "circuits.on": f"{{from: tee, to: bell, run: [1 m via cabin, QX], cable: {CORD}}}",
    }
    before = "{from: shore-joint, to: tee, run: [4 m via cabin], cable: CABLE}"
    thin = joint | {"circuits.tap": before.replace("CABLE", CORD)}
    thick = joint | {"circuits.tap": before.replace("CABLE", CORD.replace("1.5 mm2", "10 mm2"))}
    unknown = joint | {"circuits.tap": before.replace("CABLE", CORD.replace("1.5 mm2", "unknown"))}
    lengths = [subject(COACH, "short", "on on inlet", BASE | one) for one in (thin, thick, unknown)]
    assert [one.run_from_device for one in lengths] == [5.0, 5.0, 5.0]
    assert lengths[0].tap_length == 5.0
    assert lengths[1].tap_length == 1.0
    assert repr(lengths[2].tap_length) == repr(Range(1.0, 5.0))


def test_a_length_that_nobody_saw_is_not_known() -> None:
    found = tap("unknown via locker, QX, 1 m via cabin").tap_length
    assert isinstance(found, Unknown) or (isinstance(found, Range) and found.high > 3.0)


def test_where_no_device_stands_ahead_there_is_none() -> None:
    assert subject(COACH, "short", "shore-in on inlet", BASE).tap_length is None


def test_it_divides_where_two_circuits_leave_it() -> None:
    joint = {
        "joints.tee": "{kind: terminal block, system: mains, place: cabin}",
        "circuits.tap": f"{{from: shore-joint, to: tee, run: [1 m via locker], cable: {CORD}}}",
        "circuits.on": f"{{from: tee, to: bell, run: [QX, 1 m via cabin], cable: {CORD}}}",
    }
    aside = {
        "circuits.aside": f"{{from: tee, to: other, run: [QY, 1 m via cabin], cable: {CORD}}}",
        "equipment.QY": "{part: mcb, rating: 2 A}",
        "equipment.other": SMALL,
    }
    assert subject(COACH, "short", "tap on inlet", BASE | joint).tap_divides is False
    assert subject(COACH, "short", "tap on inlet", BASE | joint | aside).tap_divides is True


def test_the_throws_of_a_changeover_are_one_way_on() -> None:
    assert subject(COACH, "short", "normal on inverter", BASE).tap_divides is False


def test_a_part_that_nobody_saw_may_divide() -> None:
    assert isinstance(tap("unknown via locker, QX, 1 m via cabin").tap_divides, Unknown)


def test_conduit_covers_it() -> None:
    text = f"{{from: shore-joint, to: bell, run: [2 m via locker, QX], cable: {CORD}, covering: conduit}}"
    assert tap(**{"circuits.tap": text}).tap_covered is True


def test_a_breaker_may_stand_where_nobody_saw() -> None:
    found = tap(**{"circuits.shore-in.run": "[1 m via locker, unknown]"})
    assert isinstance(found.is_tap, Unknown)
    assert isinstance(found.tap_length, Unknown)
    assert isinstance(found.run_from_device, Unknown)
