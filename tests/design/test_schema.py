"""The JSON Schema is the vocabulary's, takes every example file, and refuses what the vocabulary does not hold."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from checker.design.schema import design_schema, grouped, schema_text
from checker.design.vocabulary import KINDS, SECTIONS

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*.fitout.yaml"))
SCHEMA = design_schema()
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)
SMALL = """
fitout: 1
title: Small
code: intl
vehicle: {kind: campervan}
cables: {red: {size: 6 mm2}}
equipment:
  leisure: {kind: battery, nominal: 12 V, bms: {charge limit: 50 A}}
  F1: {kind: fuse, family: blade, rating: 20 A}
  lamps: {kind: lamp, power: 20 W, voltage: 10..15 V}
circuits:
  lamps: {from: leisure, to: lamps, run: [0.2 m, F1, 3 m], cable: red, return: same}
modes:
  parked: {running: {lamps: 20 W}}
"""


def _texts(text: str) -> Any:
    """Every scalar as the text that stands in the file, as our own reader sees it."""
    return yaml.load(text, Loader=yaml.BaseLoader)  # the loader that makes texts only


def _with(path: str, value: str) -> Any:
    """The small design with one value changed; `path` is dotted."""
    design = copy.deepcopy(_texts(SMALL))
    *steps, last = path.split(".")
    inside = design
    for step in steps:
        inside = inside[step]
    inside[last] = _texts(value)
    return design


def test_the_committed_schema_is_the_one_the_vocabulary_makes() -> None:
    committed = (ROOT / "schemas" / "design.schema.json").read_text("utf-8")
    assert committed == schema_text(), "write it again: python -m checker.design.schema > schemas/design.schema.json"
    assert json.loads(committed) == SCHEMA


def test_it_is_a_schema_of_its_draft_whose_references_all_lead_somewhere() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    definitions = SCHEMA["$defs"]
    found: list[str] = []

    def walk(value: Any) -> None:
        if isinstance(value, dict):
            if "$ref" in value:
                found.append(value["$ref"])
            for below in value.values():
                walk(below)
        elif isinstance(value, list):
            for below in value:
                walk(below)

    walk(SCHEMA)
    assert len(found) > len(definitions)
    assert {one.removeprefix("#/$defs/") for one in found} <= set(definitions)
    assert all(all(letter.isalnum() or letter in "-." for letter in name) for name in definitions)


def test_every_section_kind_and_key_is_in_it_with_its_sentence() -> None:
    assert list(SCHEMA["properties"]) == [section.name for section in SECTIONS]
    text = json.dumps(SCHEMA, ensure_ascii=False)
    for kind in KINDS.values():
        for key in kind.keys.values():
            assert json.dumps(key.says, ensure_ascii=False)[1:-1] in text, f"{kind.name}.{key.name}"


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_it_takes_every_example_file(path: Path) -> None:
    errors = VALIDATOR.iter_errors(_texts(path.read_text("utf-8")))
    assert [(list(error.absolute_path), error.message) for error in errors] == []


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_it_takes_the_example_files_as_an_editor_types_their_scalars(path: Path) -> None:
    class EditorLoader(yaml.SafeLoader):
        """Numbers and truth values, but no dates and no numbers to the base of sixty: YAML 1.2."""

    EditorLoader.yaml_implicit_resolvers = {
        letter: [(tag, pattern) for tag, pattern in resolvers if tag.endswith((":int", ":float", ":bool"))]
        for letter, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
    }
    typed = yaml.load(path.read_text("utf-8"), Loader=EditorLoader)  # a safe loader with fewer types
    assert isinstance(typed["fitout"], int)
    assert [error.message for error in VALIDATOR.iter_errors(typed)] == []


def test_it_takes_the_small_design() -> None:
    VALIDATOR.validate(_texts(SMALL))


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("cables.red.size", "25..35 mm2"),
        ("cables.red.size", "6 mm auto"),
        ("cables.red.size", "unknown"),
        ("cables.red.size", "{is: 6 mm2, basis: measured}"),
        ("equipment.leisure.bms", "none"),
        ("equipment.leisure.bms", "{is: unknown, basis: read off}"),
        ("equipment.leisure.bms", "{charge limit: 40..50 A, basis: datasheet}"),
        ("equipment.F1", "{part: strip, rating: 30 A}"),
        ("circuits.lamps.return", "chassis.rear-stud"),
        ("equipment.F1.terminals", "{a: {torque: 12 N m}}"),
        ("circuits.lamps.return", "{run: [0.5 m, F2], to: leisure.-, size: 6 mm2}"),
        ("circuits.lamps.run", "[0.2 m, {kind: fuse, family: blade, rating: 1 A}, unknown]"),
        ("circuits.lamps.cable", "{size: 6 mm2, cores: 2}"),
        ("circuits.lamps.to", "[lamps, lamps]"),
        ("modes.parked.engine", "idle"),
        ("modes.parked.engine", "2000 rpm"),
    ],
)
def test_it_takes_other_ways_of_saying_a_thing(path: str, value: str) -> None:
    VALIDATOR.validate(_with(path, value))


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("cables.red.size", "6 mm"),
        ("cables.red.size", "6"),
        ("cables.red.size", "{is: 6 mm2, basis: guessed}"),
        ("cables.red.size", "{is: 6 mm2}"),
        ("cables.red.colour", "mauve"),
        ("code", "mars"),
        ("vehicle", "{sleeps: 2}"),
        ("equipment.F1.ratting", "20 A"),
        ("equipment.F1.rating", "20 V"),
        ("equipment.F1.kind", "fusee"),
        ("equipment.F1", "{rating: 20 A}"),
        ("equipment.lamps.bms", "{charge limit: 50 A}"),
        ("equipment.leisure.bms.charge limit", "50 V"),
        ("circuits.lamps.return", "somehow"),
        ("circuits.lamps", "{from: leisure, to: lamps}"),
        ("modes.parked.running.lamps", "20 V"),
        ("modes.parked.engine", "off"),
        ("surprise", "1"),
    ],
)
def test_it_refuses_what_the_vocabulary_does_not_hold(path: str, value: str) -> None:
    assert not VALIDATOR.is_valid(_with(path, value))


@pytest.mark.parametrize("name", ["F1.b", "F1>a", "F1#2", "F1,F2", "F1 via cabin"])
def test_a_name_that_can_stand_in_a_run_holds_no_mark_that_means_something_there(name: str) -> None:
    design = _texts(SMALL)
    design["equipment"][name] = design["equipment"].pop("F1")
    assert not VALIDATOR.is_valid(design)


def test_the_name_of_a_cable_may_hold_a_dot() -> None:
    assert VALIDATOR.is_valid(_with("cables", "{twin-2.5: {size: 2.5 mm2, cores: 2}}"))


def test_people_are_named_by_their_class_of_work() -> None:
    assert VALIDATOR.is_valid(_with("people", "{mains work: {licence: EW-0}}"))
    assert not VALIDATOR.is_valid(_with("people", "{main work: {licence: EW-0}}"))


def test_dotted_keys_become_a_tree() -> None:
    tree = grouped(KINDS["equipment", "battery"].keys.values())
    assert tree["bms"].key is not None
    assert tree["bms"].below["peak"].key is None
    assert list(tree["bms"].below["peak"].below) == ["current", "time"]
