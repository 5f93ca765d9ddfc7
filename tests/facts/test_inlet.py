"""Shore inlets and leads."""

from __future__ import annotations

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def test_the_shape_stands_for_a_current() -> None:
    assert subject(COACH, "inlet", "inlet").shape_rating == 16.0
    assert isinstance(subject(COACH, "inlet", "inlet", {"equipment.inlet.shape": "hard wired"}).shape_rating, Unknown)


def test_a_surge_device_counts_where_the_inlet_reaches_it() -> None:
    assert subject(COACH, "inlet", "inlet").has_surge_device is True
    assert subject(VAN, "inlet", "inlet").has_surge_device is False


def test_a_stretch_of_mains_that_nobody_saw_may_hide_a_surge_device() -> None:
    found = subject(VAN, "inlet", "inlet", {"circuits.shore.run": "[unknown]"}).has_surge_device
    assert isinstance(found, Unknown)
    assert "not seen" in found.reason


def test_poles_swapped_ashore_matter_only_to_devices_that_the_shore_feeds() -> None:
    assert subject(COACH, "inlet", "inlet").is_safe_either_way is True
    assert subject(COACH, "inlet", "inlet", {"equipment.Q1.poles": "1"}).is_safe_either_way is False
    assert isinstance(subject(COACH, "inlet", "inlet", {"equipment.Q1.poles": "unknown"}).is_safe_either_way, Unknown)


def test_two_inlets_on_one_joint_make_each_other_live() -> None:
    rear = {
        "equipment.rear": "{kind: shore inlet, voltage: 230 V AC, rating: 16 A, place: skirt}",
        "circuits.rear": "{from: rear, to: shore-joint, run: [1 m via locker], cable: flex-2.5}",
    }
    assert subject(COACH, "inlet", "inlet", rear).is_joined_to_another is True
    assert subject(COACH, "inlet", "rear", rear).others == 1.0


def test_the_worst_reading_of_the_earth_counts_and_none_leaves_it_open() -> None:
    two = "[{test: earth continuity, at: inlet, resistance: 0.2 Ω}, {test: earth continuity, resistance: 0.4 Ω}]"
    assert subject(COACH, "inlet", "inlet", {"readings": two}).earth_resistance == 0.4
    assert isinstance(subject(COACH, "inlet", "inlet", {"readings": "[]"}).earth_resistance, Unknown)
    doubtful = two.replace("{test: earth continuity, resistance", "{test: unknown, resistance")
    assert subject(COACH, "inlet", "inlet", {"readings": doubtful}).earth_resistance == Range(0.2, 0.4)
    unread = two.replace("0.2 Ω", "unknown")
    assert subject(COACH, "inlet", "inlet", {"readings": unread}).earth_resistance == Range(0.4, float("inf"))


def test_a_lead_that_lists_adaptors_needs_them() -> None:
    assert subject(COACH, "lead", "lead").has_adaptors is False
    assert subject(COACH, "lead", "lead", {"equipment.lead.adaptors": "[household plug]"}).has_adaptors is True


def test_a_surge_device_counts_by_class_and_where_nothing_switches_it_off() -> None:
    behind = "{from: inverter.ac-out, to: surge, run: [0.2 m via locker], cable: flex-2.5}"
    assert subject(COACH, "inlet", "inlet", {"equipment.surge.class": "3"}).has_surge_device is False
    assert subject(COACH, "inlet", "inlet", {"circuits.surging": behind}).has_surge_device is False
    assert isinstance(subject(COACH, "inlet", "inlet", {"equipment.surge.class": "unknown"}).has_surge_device, Unknown)
