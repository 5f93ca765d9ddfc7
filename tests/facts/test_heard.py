"""Where alarms are heard."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask as house
from tests.facts.van import ask

ALARM = "parts.module.bms.alarm.heard in"


def test_an_alarm_of_the_management_counts_where_people_are() -> None:
    assert house("bank", "bank", "alarm_heard") is True
    assert house("bank", "bank", "alarm_heard", {ALARM: "engine-bay"}) is False
    assert house("bank", "bank", "alarm_heard", {ALARM: "[engine-bay, cabin]"}) is True
    assert isinstance(house("bank", "bank", "alarm_heard", {"parts.module.bms.alarm": "true"}), Unknown)
    assert isinstance(house("bank", "bank", "alarm_heard", {ALARM: "unknown"}), Unknown)


def test_a_detector_of_a_place_counts_where_its_alarm_is_told_to_be_heard() -> None:
    assert ask("place", "bay", "detection_announced") is True
    assert ask("place", "bay", "detection_announced", ("places.bay.detector heard in", "underbody")) is False
    assert isinstance(ask("place", "bay", "detection_announced", ("places.bay.detector heard in", "unknown")), Unknown)
    assert ask("place", "bay", "detection_announced", ("places.bay.detector", "none")) is False
    assert ask("place", "bay", "detection_announced", ("places.bay.detector", "gas")) is False


def test_an_alarm_is_heard_where_it_stands_and_a_detector_only_where_it_is_told() -> None:
    bare = ("places.bay.detector", "none")
    nose = "{kind: %s, detects: [smoke], place: %s}"
    assert isinstance(
        ask("place", "bay", "detection_announced", bare, ("equipment.nose", nose % ("alarm", "bay"))), Unknown
    )
    assert ask("place", "cabin", "detection_announced", ("equipment.nose", nose % ("alarm", "cabin"))) is True
    found = ask("place", "cabin", "detection_announced", ("equipment.nose", nose % ("detector", "cabin")))
    assert isinstance(found, Unknown)
