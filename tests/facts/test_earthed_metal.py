"""Metal that can be touched is joined to the earth, or known not to be, or not known."""

from __future__ import annotations

from typing import Any

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts
from checker.quantities import Unknown
from checker.reading import read_text
from checker.shipped import shipped

COACH = (shipped("rules") / "designs" / "mains-coach.fitout.yaml").read_text("utf-8")
PIPE = ("joints.pipe", "{kind: metal part, exposed: true}")
BONDED = ("circuits.pipe", "{from: main-earth, to: pipe, run: [1 m via skirt], cable: green-6, duty: bonding}")


def of(kind: str, id: str, fact: str, *edits: tuple[str, str]) -> Any:
    subject = Facts(read_text(COACH, "mains-coach.fitout.yaml", edits)).subject(kind, id)
    assert subject is not None
    return getattr(subject, fact)


def test_the_chassis_is_earthed_through_its_bond() -> None:
    assert of("inlet", "inlet", "chassis_is_earthed") is True


def test_without_its_bond_the_chassis_is_not_earthed() -> None:
    assert of("inlet", "inlet", "chassis_is_earthed", ("circuits.chassis-bond", "(remove)")) is False


def test_a_shore_cable_that_nobody_saw_leaves_it_open() -> None:
    edits = (("circuits.shore-in.cable", "unknown"), ("circuits.shore-in.earth", "unknown"))
    assert isinstance(of("inlet", "inlet", "chassis_is_earthed", *edits), Unknown)


@pytest.mark.parametrize(
    ("edits", "expected"),
    [
        ((), None),
        ((PIPE,), False),
        ((PIPE, BONDED), True),
        ((("joints.pipe", "{kind: metal part, exposed: false}"),), True),
    ],
)
def test_metal_parts_are_earthed_out_of_reach_or_neither(edits: tuple[tuple[str, str], ...], expected: Any) -> None:
    assert of("inlet", "inlet", "metal_parts_are_earthed", *edits) is expected


def test_a_metal_part_of_which_nobody_knows_whether_it_can_be_touched_is_not_known() -> None:
    edits = (("joints.pipe", "{kind: metal part}"),)
    assert isinstance(of("inlet", "inlet", "metal_parts_are_earthed", *edits), Unknown)


def test_one_part_on_its_own_is_enough_to_fail() -> None:
    more = ("joints.frame", "{kind: metal part, exposed: true}")
    assert of("inlet", "inlet", "metal_parts_are_earthed", PIPE, BONDED, more) is False


def test_the_earth_of_a_box_is_as_told() -> None:
    assert isinstance(of("equipment", "shore-joint", "box_earthed"), Unknown)
    assert of("equipment", "shore-joint", "box_earthed", ("joints.shore-joint.box earthed", "false")) is False
    assert of("equipment", "inverter", "box_earthed") is None


def test_only_a_splice_is_insulated_or_bare() -> None:
    assert of("equipment", "shore-joint", "splice_insulated") is None
