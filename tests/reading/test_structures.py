"""Boxes, points, curves, maps, choices and records."""

from __future__ import annotations

from typing import Any

import pytest

from checker.design.given import Box
from checker.design.vocabulary.key import Key, Kind
from checker.quantities import UNKNOWN, Range
from checker.reading.context import Context
from checker.reading.values import KeyReader
from checker.source.problems import Problems
from checker.source.tree import parse_fragment, parse_tree
from tests.reading.small import SMALL, only, problems, read


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


def reader_of(*keys: Key) -> KeyReader:
    """A reader of a thing with `keys`, in the small design."""
    tree = parse_tree(SMALL, Problems("f"))
    assert tree is not None
    return KeyReader(Context("f", tree, Problems("f")), Kind("thing", "A thing.", keys), "a thing")


def value_of(reader: KeyReader, text: str) -> Any:
    (spec,) = reader.kind.keys.values()
    return reader.value(spec, parse_fragment(text, "f"), "stated").value


BANDS = Key(
    "bands", "records", "Bands.", fields=(Key("at", "quantity", "Current.", unit="A"), Key("for", "text", "What for."))
)


@pytest.mark.parametrize("text", ["[{at: 600 A, for: start}]", "{at: 600 A, for: start}"])
def test_records_are_small_mappings(text: str) -> None:
    reader = reader_of(BANDS)
    (((at, amperes), (purpose, words)),) = value_of(reader, text)
    assert (at, amperes.value, purpose, words.value) == ("at", 600.0, "for", "start")
    assert not reader.ctx.problems.found


@pytest.mark.parametrize(
    ("text", "what"),
    [("[600 A]", "the text `600 A`"), ("[{att: 600 A}]", "no key `att`"), ("[{at: 600 V}]", "a voltage")],
)
def test_wrong_records_are_noted(text: str, what: str) -> None:
    reader = reader_of(BANDS)
    value_of(reader, text)
    (problem,) = reader.ctx.problems.found
    assert what in problem.what


def test_a_key_may_name_a_port() -> None:
    reader = reader_of(Key("taken from", "port", "Where."))
    assert value_of(reader, "house.+") == "house.+" and len(reader.ctx.later) == 1


def test_a_key_outside_the_sections_is_a_fault_of_the_vocabulary() -> None:
    with pytest.raises(KeyError, match="a section that has no names"):
        value_of(reader_of(Key("by", "name", "Who.", section="crew")), "me")
