"""What the work lays on the two sides and behind the rear axle."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.mains_subjects import subject

VAN = "slide-van"


def van(**edits: str) -> object:
    return subject(VAN, "design", "design", {key.replace("__", "."): text for key, text in edits.items()})


def test_the_heavy_battery_on_the_left_weighs_on_the_left() -> None:
    # Its middle lies 1.1 m of envelope about y = 0; 400 kg over half of 2.2 m, against 3500 kg.
    found = van(equipment__house__mass="400 kg").side_difference
    box = subject(VAN, "equipment", "house").item.value("box")
    middle = abs(box.at[1] + box.size[1] / 2)
    high = found.high if isinstance(found, Range) else found
    assert high >= 400 * middle / 1.1 / 3500 * 0.999


def test_without_the_envelope_nobody_knows_the_middle() -> None:
    assert isinstance(van(vehicle__envelope="unknown").side_difference, Unknown)
    assert isinstance(van(vehicle__envelope="unknown").rear_overhang, Unknown)


@pytest.mark.parametrize(("axis", "overhang"), [("rearward", 1.5), ("forward", -2.5)])
def test_the_tail_is_what_the_envelope_leaves_behind_the_rear_axle(axis: str, overhang: float) -> None:
    # Envelope from -1 m over 6 m, wheelbase 3.5 m: 5 m - 3.5 m, or 1 m - 3.5 m with the axis turned round.
    axes = f"{{origin: front axle, x: {axis}, y: to the right, z: up}}"
    assert van(vehicle__axes=axes).rear_overhang == pytest.approx(overhang)
