"""What the plug to a towing vehicle can drive into a short circuit: as much, and as little, as is stated for it."""

from __future__ import annotations

from pathlib import Path

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts
from checker.quantities import Unknown
from checker.reading import read_text

CARAVAN = (Path(__file__).parents[1] / "field" / "bases" / "tow-caravan.fitout.yaml").read_text("utf-8")


def of(name: str, *edits: tuple[str, str]) -> object:
    device = Facts(read_text(CARAVAN, "tow-caravan.fitout.yaml", edits)).subject("device", "FT")
    assert device is not None
    return getattr(device, name)


def test_the_greatest_fault_is_the_one_stated_for_the_plug() -> None:
    assert of("prospective_max") == pytest.approx(500.0, rel=0.01)


def test_the_least_fault_is_weaker_than_the_least_one_at_the_plug() -> None:
    # 12.8 V / 150 A = 85 mΩ at the plug; 5.1 m of 10 mm2 at 105 °C and the chassis add some 15 mΩ.
    assert of("prospective_min") == pytest.approx(128.0, rel=0.05)


@pytest.mark.parametrize("fact", ["prospective_max", "prospective_min"])
def test_a_plug_of_which_nothing_is_stated_leaves_the_fault_unknown(fact: str) -> None:
    assert isinstance(of(fact, ("equipment.coupling.source end.fault current", "unknown")), Unknown)
