"""Shore leads as they are carried."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject

BODY = {
    "vehicle.envelope": "{at: [-1 m, -1.2 m, 0 m], size: [8 m, 2.4 m, 3 m]}",
    "vehicle.axes": "{x: rearward, y: to the right, z: up}",
}


def test_an_inlet_without_a_lead_is_counted_and_a_survey_may_have_missed_one() -> None:
    assert subject(COACH, "design", "design").leads_missing == 0.0
    assert subject(VAN, "design", "design").leads_missing == 1.0
    assert isinstance(subject(VAN, "design", "design", {"purpose": "survey"}).leads_missing, Unknown)


def test_a_lead_enters_at_the_rear_where_an_inlet_stands_there() -> None:
    rear = {**BODY, "equipment.inlet.at": "[6.9 m, -0.5 m, 0.9 m]"}
    assert subject(COACH, "lead", "lead", rear).enters_at_rear is True
    assert (
        subject(COACH, "lead", "lead", {**BODY, "equipment.inlet.at": "[5 m, -1.2 m, 0.9 m]"}).enters_at_rear is False
    )
    assert isinstance(subject(COACH, "lead", "lead").enters_at_rear, Unknown)


def test_the_earth_core_of_a_lead_is_like_the_others_unless_its_cable_tells_another_size() -> None:
    found = subject(COACH, "lead", "lead")
    assert (found.earth_area, found.earth_area_needed) == (found.area, found.area)
    found = subject(COACH, "lead", "lead", {"cables.flex-2.5.earth size": "1.5 mm2"})
    assert found.earth_area == pytest.approx(1.5e-6)
    assert isinstance(subject(COACH, "lead", "lead", {"cables.flex-2.5.earth size": "unknown"}).earth_area, Unknown)
    assert isinstance(subject(COACH, "lead", "lead", {"equipment.lead.cable": "unknown"}).earth_area, Unknown)
