"""The working of a number, down to the lines of the file."""

from __future__ import annotations

from typing import Any

import pytest

from checker.design.given import NOWHERE, Given, Where
from checker.facts.catalogue import FactSpec
from checker.facts.subject import Input, Step
from checker.quantities import UNKNOWN, Range, Unknown, Window
from checker.reports.working import input_line, step_lines, value_text

FILE = "coach.fitout.yaml"


def spec(name: str, unit: str = "A", method: str = "given in the design file", source: str = "") -> FactSpec:
    return FactSpec("conductor", name, "number", unit, (), "", "says", method, source, lambda _: None)


def given(path: str, value: Any, text: str = "", basis: str = "stated") -> Input:
    return Input(path, value, "mm2", basis, Where(41, 9), text)


AREA = Step(spec("area", "mm2"), "conductor", "galley", 10e-6, (), (given("cables.red.size", 10e-6, "10 mm2"),), ())
CAPACITY = Step(
    spec("carrying_capacity", method="lower of table and heat balance", source="Table 5 (seen)"),
    "conductor", "galley", 61.0, ("98 A × 0.62 = 61 A",), (), (AREA,),
)  # fmt: skip


def test_a_step_shows_value_formula_method_source_and_what_it_rests_on() -> None:
    assert list(step_lines([CAPACITY], FILE)) == [
        "conductor.carrying_capacity of galley = 61 A",
        "  98 A × 0.62 = 61 A",
        "  how: lower of table and heat balance",
        "  source: Table 5 (seen)",
        "  conductor.area of galley = 10 mm2",
        "    cables.red.size = 10 mm2, coach.fitout.yaml:41:9",
    ]


def test_what_was_shown_is_not_shown_again() -> None:
    lines = list(step_lines([CAPACITY, AREA], FILE))
    assert lines[-1] == "conductor.area of galley = 10 mm2 (as above)"
    assert sum("cables.red.size" in line for line in lines) == 1


@pytest.mark.parametrize(
    ("basis", "remark"),
    [("stated", ""), ("measured", " (measured)"), ("datasheet", " (from the datasheet)"),
     ("default", " (assumed: not written, the generic value of its kind)"), ("missing", " (not written)")],
)  # fmt: skip
def test_an_input_says_what_it_rests_on(basis: str, remark: str) -> None:
    assert input_line(given("a.b", 10e-6, "10 mm2", basis), FILE) == f"a.b = 10 mm2{remark}, {FILE}:41:9"


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (61.0, "A", "61 A"),
        (Range(25e-6, 35e-6), "mm2", "25..35 mm2"),
        (Window(10.0, 15.0), "V", "10..15 V"),
        (None, "A", "none"),
        (UNKNOWN, "A", "unknown"),
        (Unknown("the size is not written"), "A", "unknown (the size is not written)"),
        (True, "", "yes"),
        (False, "", "no"),
        ("blade", "", "blade"),
        ((), "", "none"),
        (("a", "b"), "", "a, b"),
        (tuple(f"F{i}" for i in range(15)), "", "F0, F1, F2, F3, F4, F5, F6, F7, F8, F9, F10, F11 and 3 more"),
        (5.0, "furlong", "5.0"),
    ],
)
def test_a_value_is_written_as_a_person_would(value: Any, unit: str, said: str) -> None:
    assert value_text(value, unit) == said


def test_a_subject_is_named_with_its_kind() -> None:
    class Device:
        kind, id = "device", "F1"

    assert value_text((Device(), Device())) == "device F1, device F1"


def test_text_from_the_file_cannot_hide() -> None:
    assert "\x1b" not in input_line(given("a.\x1b[2J", "x", "y\u202e"), FILE)


def test_an_entry_within_a_value_is_told_as_it_was_written() -> None:
    assert value_text((("pump", Given(40.0, NOWHERE, "stated", "40 W")),)) == "pump, 40 W"
    assert value_text(Given(4.0, NOWHERE), "A") == "4 A"
