"""Live conductors that a residual-current device has to open."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

ALONE = {
    "equipment.R2": "{kind: rcd, rating: 25 A, trips at: 30 mA, type: A, poles: 3, place: locker}",
    "circuits.heating.run": "[0.1 m via locker, R2, 3 m via duct]",
}


@pytest.mark.parametrize(
    ("device", "phases", "conductors"), [("R1", "1", 2.0), ("R1", "3", 4.0), ("R2", "1", 2.0), ("R2", "3", 3.0)]
)
def test_lines_are_counted_and_the_neutral_where_a_load_needs_it(device: str, phases: str, conductors: float) -> None:
    found = subject(COACH, "device", device, {**ALONE, "equipment.heater.phases": phases})
    assert found.live_conductors == conductors


def test_lines_that_nobody_knows_leave_the_count_open() -> None:
    found = subject(COACH, "device", "R1", {"equipment.heater.phases": "unknown"})
    assert isinstance(found.live_conductors, Unknown)
