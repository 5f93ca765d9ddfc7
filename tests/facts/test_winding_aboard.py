"""A transformer that parts the vehicle from the shore."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

WINDING = (
    "{kind: transformer, primary: {voltage: 230 V AC}, secondary: {voltage: 230 V AC}, windings: separate, "
    "isolation: reinforced, place: locker}"
)
APART = {
    "equipment.T": WINDING,
    "circuits.shore-in": "{from: inlet, to: T.primary, run: [1 m via locker, Q1], cable: flex-2.5}",
    "circuits.isolated": "{from: T.secondary, to: shore-joint, run: [0.5 m via locker], cable: flex-2.5}",
}
PLATE = {"equipment.plate": "{kind: metal part, exposed: true}"}


def bond(start: str, end: str) -> dict[str, str]:
    return {"circuits.wire": f"{{from: {start}, to: {end}, run: [1 m via locker], cable: green-6, duty: bonding}}"}


def test_without_a_transformer_the_earth_of_the_shore_comes_aboard() -> None:
    found = subject(COACH, "inlet", "inlet")
    assert (found.earth_stays_ashore, found.chassis_is_earthed) == (False, True)


def test_behind_separate_windings_it_stays_ashore_and_the_chassis_hangs_on_the_secondary() -> None:
    found = subject(COACH, "inlet", "inlet", APART)
    assert (found.earth_stays_ashore, found.chassis_is_earthed) == (True, True)
    found = subject(COACH, "inlet", "inlet", APART | {"circuits.chassis-bond": "(remove)"})
    assert (found.earth_stays_ashore, found.chassis_is_earthed) == (True, False)


@pytest.mark.parametrize(
    "edits",
    [
        bond("inlet.PE", "main-earth"),
        PLATE | bond("inlet.PE", "plate"),
        bond("inlet.PE", "T.secondaryPE") | {"circuits.chassis-bond": "(remove)"},
        {"circuits.bypass": "{from: inlet, to: K2.shore, run: [0.5 m via locker], cable: flex-2.5}"},
        {"equipment.T": WINDING.replace("separate", "auto")},
    ],
)
def test_metal_on_the_pin_or_anything_else_fed_from_the_inlet_brings_it_aboard(edits: dict[str, str]) -> None:
    assert subject(COACH, "inlet", "inlet", APART | edits).earth_stays_ashore is False


@pytest.mark.parametrize(
    "edits",
    [
        {"equipment.T": WINDING.replace("separate", "unknown")},
        {"circuits.shore-in": "{from: inlet, to: T.primary, run: [unknown, Q1], cable: flex-2.5}"},
    ],
)
def test_windings_or_a_way_that_nobody_saw_leave_it_open(edits: dict[str, str]) -> None:
    found = subject(COACH, "inlet", "inlet", APART | edits)
    assert isinstance(found.earth_stays_ashore, Unknown)
    assert isinstance(found.chassis_is_earthed, Unknown)
