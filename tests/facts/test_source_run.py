"""What a source drives into the conductor it reaches, and what that conductor lies on."""

from __future__ import annotations

from typing import Any

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts
from checker.quantities import Unknown
from checker.reading import read_text
from checker.shipped import shipped

HOUSE = (shipped("rules") / "designs" / "house-48.fitout.yaml").read_text("utf-8")
MAIN = "main from bank"


def of(id: str, fact: str, *edits: tuple[str, str]) -> Any:
    subject = Facts(read_text(HOUSE, "house-48.fitout.yaml", edits)).subject("approach", id)
    assert subject is not None
    return getattr(subject, fact)


def test_the_units_of_a_bank_drive_their_faults_together() -> None:
    assert of(MAIN, "source_fault_current") == pytest.approx(2 * 2400.0)


def test_without_a_stated_fault_current_the_internal_resistance_tells() -> None:
    # 16 cells of 3.65 V behind 9 mΩ, twice; the charging limit of the management stands for full: 58.4 V.
    found = of(MAIN, "source_fault_current", ("parts.module.short circuit current", "(remove)"))
    assert found == pytest.approx(2 * 58.4 / 0.009, rel=0.01)


def test_a_bank_of_which_neither_is_told_drives_an_unknown_fault() -> None:
    edits = (("parts.module.short circuit current", "unknown"), ("parts.module.internal resistance", "unknown"))
    assert isinstance(of(MAIN, "source_fault_current", *edits), Unknown)


@pytest.mark.parametrize(("fixed", "expected"), [("wood", False), ("plastic", False), ("metal", True), ("free", True)])
def test_what_it_is_fixed_to_burns_or_not(fixed: str, expected: bool) -> None:
    assert of(MAIN, "off_combustible", ("circuits.main.fixed to", fixed)) is expected


def test_else_the_surface_and_the_walls_of_the_place_tell() -> None:
    assert isinstance(of(MAIN, "off_combustible"), Unknown)
    assert of(MAIN, "off_combustible", ("places.locker.surface", "metal")) is True
    assert of(MAIN, "off_combustible", ("places.locker.combustible", "true")) is False


def test_the_inlet_is_a_source_of_its_own() -> None:
    assert of("shore from inlet", "from_inlet") is True
    assert of(MAIN, "from_inlet") is False


def test_only_a_plug_to_a_towing_vehicle_has_a_fuse_over_there() -> None:
    assert of(MAIN, "fused_at_towing_vehicle") is None


def test_a_covering_that_is_not_known_leaves_what_burns_open() -> None:
    unseen = ("circuits.main.covering", "unknown")
    assert isinstance(of(MAIN, "off_combustible", unseen, ("circuits.main.fixed to", "wood")), Unknown)
    assert of(MAIN, "off_combustible", unseen, ("circuits.main.fixed to", "metal")) is True
