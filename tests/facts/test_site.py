"""What guards against the site, and where the lead enters the vehicle."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

MONITOR = (
    "{kind: voltage monitor, rating: 25 A, poles: 2, time: 0.5 s, "
    "trips below: 190 V, trips above: 265 V, place: locker}"
)
BOX = {
    "vehicle.envelope": "{at: [-1 m, -1.2 m, 0 m], size: [8 m, 2.4 m, 3 m]}",
    "vehicle.axes": "{x: rearward, y: to the right, z: up}",
    "equipment.inlet.at": "[6.5 m, -1.2 m, 0.9 m]",
}


def test_a_monitor_must_stand_on_every_way() -> None:
    whole = {"equipment.V1": MONITOR, "circuits.shore-in.run": "[1 m via locker, Q1, V1]"}
    branch = {"equipment.V1": MONITOR, "circuits.bypass.run": "[0.5 m via locker, V1]"}
    assert subject(COACH, "inlet", "inlet", whole).is_watched_for_voltage is True
    assert subject(COACH, "inlet", "inlet", branch).is_watched_for_voltage is False
    assert subject(COACH, "inlet", "inlet").is_watched_for_voltage is False


def test_its_levels_and_every_stretch_must_be_known() -> None:
    bare = {
        "equipment.V1": "{kind: voltage monitor, rating: 25 A, poles: 2, time: 0.5 s, place: locker}",
        "circuits.shore-in.run": "[1 m via locker, Q1, V1]",
    }
    assert isinstance(subject(COACH, "inlet", "inlet", bare).is_watched_for_voltage, Unknown)
    unseen = {"circuits.shore-in.run": "[unknown, Q1]"}
    assert isinstance(subject(COACH, "inlet", "inlet", unseen).is_watched_for_voltage, Unknown)


def test_the_residual_devices_ashore_and_aboard() -> None:
    found = subject(COACH, "inlet", "inlet", {"vehicle.site rcd": "{trips at: 100 mA}"})
    assert (found.site_residual_current, found.own_residual_current) == (0.1, 0.03)
    none = subject(COACH, "inlet", "inlet", {"circuits.board-feed.run": "[0.3 m via locker, S1]"})
    assert none.own_residual_current is None
    explained = {"papers": "{manual: [residual devices]}"}
    assert subject(COACH, "inlet", "inlet", explained).residual_devices_explained is True


def test_where_the_inlet_is_in_vehicle_axes() -> None:
    found = subject(COACH, "inlet", "inlet", BOX)
    assert found.distance_from_rear == pytest.approx(0.5)
    assert found.distance_from_right == pytest.approx(2.4)
    assert found.half_width == pytest.approx(1.2)
    forward = subject(COACH, "inlet", "inlet", BOX | {"vehicle.axes": "{x: forward, y: to the left, z: up}"})
    assert forward.distance_from_rear == pytest.approx(7.5)
    assert forward.distance_from_right == pytest.approx(0.0)
    assert isinstance(subject(COACH, "inlet", "inlet").distance_from_rear, Unknown)


def test_a_monitor_whose_levels_lie_too_far_apart_watches_nothing() -> None:
    def watched(below: str, above: str) -> object:
        levels = f"trips below: {below}, trips above: {above}"
        monitor = f"{{kind: voltage monitor, rating: 25 A, poles: 2, time: 0.5 s, {levels}}}"
        edits = {"equipment.V1": monitor, "circuits.shore-in.run": "[1 m via locker, Q1, V1]"}
        return subject(COACH, "inlet", "inlet", edits).is_watched_for_voltage

    # 230 V: 0.7 is 161 V, 1.25 is 287.5 V.
    assert watched("161 V", "287.5 V") is True
    assert watched("160 V", "265 V") is False
    assert watched("190 V", "288 V") is False
    assert watched("190 V", "none") is False
