"""Boxes, points, curves, maps, choices and records."""

from __future__ import annotations

import pytest

from checker.design.given import Box
from checker.quantities import UNKNOWN, Range
from tests.reading.small import only, problems, read


def test_a_box_has_a_corner_and_a_size() -> None:
    edit = ("places.bench.box", "{at: [-0.5 m, -600 mm, 0 m], size: [{is: 1 m, basis: measured}, 2..3 m, unknown]}")
    box = read(edit).places["bench"].value("box")
    assert isinstance(box, Box) and box.at == (-0.5, -0.6, 0.0)
    assert box.size[:2] == (1.0, Range(2.0, 3.0)) and box.size[2] is UNKNOWN


def test_half_a_box_may_be_unknown() -> None:
    box = read(("places.bench.box", "{at: unknown, size: [1 m, 1 m, 0 m]}")).places["bench"].value("box")
    assert box.at == (UNKNOWN, UNKNOWN, UNKNOWN) and box.size == (1.0, 1.0, 0.0)


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("{at: [1 m, 1 m, 1 m]}", "`box` is a mapping"),
        ("[1 m, 1 m, 1 m]", "`box` is a list"),
        ("big", "one text"),
        ("{at: [1 m, 1 m], size: [1 m, 1 m, 1 m]}", "`box` is a list"),
        ("{at: [1 m, 1 m, 1], size: [1 m, 1 m, 1 m]}", "bare number"),
        ("{at: [1 m, 1 m, [1 m]], size: [1 m, 1 m, 1 m]}", "is a list"),
        ("{at: [0 m, 0 m, 0 m], size: [1 m, -1 m, 1 m]}", "below zero"),
        ("{at: [0 m, 0 m, 0 m], size: [1 m, 1 m, 1 m], high: 1 m}", "is a mapping"),
    ],
)
def test_a_wrong_box_is_noted(text: str, what: str) -> None:
    assert what in only(("places.bench.box", text)).what


def test_points_are_lengths() -> None:
    design = read(("services.gas", "{carries: gas, along: [[1 m, -1 m, 0.3 m], [2 m, 0 m, 0.3 m]]}"))
    assert design.services["gas"].value("along") == ((1.0, -1.0, 0.3), (2.0, 0.0, 0.3))
    assert "is a list" in only(("services.gas", "{carries: gas, along: [1 m, 2 m, 3 m]}")).what


@pytest.mark.parametrize("text", ["{2000 rpm: 150 A, 600 rpm: 70..80 A}", "[[2000 rpm, 150 A], [600 rpm, 70..80 A]]"])
def test_a_curve_rises_whatever_its_order(text: str) -> None:
    edit = ("equipment.alternator", f"{{kind: alternator, hot output: {text}}}")
    curve = read(edit).equipment["alternator"].value("hot output")
    assert curve == ((10.0, Range(70.0, 80.0)), (2000 / 60, 150.0))


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("{600..700 rpm: 70 A}", "exact steps"),
        ("{600 rpm: 70 A, 0.6e3 rpm: 80 A}", "stands twice"),
        ("70 A", "one text"),
        ("{600 rpm: 70 V}", "a voltage"),
        ("{600: 70 A}", "bare number"),
        ("[70 A]", "`hot output` is a list"),
    ],
)
def test_a_wrong_curve_is_noted(text: str, what: str) -> None:
    assert what in problems(("equipment.alternator", f"{{kind: alternator, hot output: {text}}}"))[0].what


def test_a_map_keeps_the_place_and_basis_of_each_value() -> None:
    design = read(("modes.parked.running", "{lamp: {is: 20 W, basis: measured}, house: 2 A}"))
    (lamp, watts), (house, amperes) = design.modes["parked"].value("running")
    assert (lamp, watts.value, watts.basis) == ("lamp", 20.0, "measured")
    assert (house, amperes.value, amperes.text) == ("house", 2.0, "2 A")


def test_a_map_names_what_exists() -> None:
    assert "did you mean `lamp`?" in only(("modes.parked.running", "{lump: 20 W}")).right
    assert "`running` is a list" in only(("modes.parked.running", "[lamp]")).what
    assert "W or A" in only(("modes.parked.running", "{lamp: 20 V}")).what


def test_choices_keep_their_words() -> None:
    ((name, position),) = read(("modes.parked.set", "{K1: inverter}")).modes["parked"].value("set")
    assert (name, position.value) == ("K1", "inverter")
