"""What the commands print as JSON keeps to the shipped schemas, which are made from its types."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, TypedDict

import jsonschema
import pytest

from checker.commands import run
from checker.reports.schema import DOCUMENTS, document_schema_text
from checker.reports.typed_schema import typed_schema

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*.fitout.yaml"))
NO_DAY = "saltbush-survey.fitout.yaml"


def shipped_schema(command: str) -> Any:
    return json.loads((ROOT / "schemas" / f"{command}.schema.json").read_text("utf-8"))


@pytest.mark.parametrize("command", DOCUMENTS)
def test_the_schema_in_the_folder_is_the_one_of_the_types(command: str) -> None:
    text = document_schema_text(command)
    assert (ROOT / "schemas" / f"{command}.schema.json").read_text("utf-8") == text
    jsonschema.Draft202012Validator.check_schema(json.loads(text))
    assert all(part["description"] for part in json.loads(text)["$defs"].values())


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda one: one.name.partition(".")[0])
@pytest.mark.parametrize("command", DOCUMENTS)
def test_what_is_printed_of_every_example_keeps_to_the_schema(command: str, file: Path, tmp_path: Path) -> None:
    if (command, file.name) == ("day", NO_DAY):
        assert "day:" not in file.read_text("utf-8")
        return
    held = tmp_path / "out.json"
    assert run([command, str(file), "--format", "json", "--output", str(held)]) in (0, 1)
    jsonschema.Draft202012Validator(shipped_schema(command)).validate(json.loads(held.read_text("utf-8")))


@pytest.mark.parametrize("command", DOCUMENTS)
def test_a_document_with_a_key_less_or_more_is_refused(command: str, tmp_path: Path) -> None:
    held = tmp_path / "out.json"
    run([command, str(ROOT / "examples" / "heron-camper.fitout.yaml"), "--format", "json", "--output", str(held)])
    found = json.loads(held.read_text("utf-8"))
    checks = jsonschema.Draft202012Validator(shipped_schema(command))
    assert checks.is_valid(found)
    assert not checks.is_valid({**found, "more": 1})
    for key in found:
        assert not checks.is_valid({name: value for name, value in found.items() if name != key}), key


class Inner(TypedDict):
    """One."""

    at: str | None


class Outer(TypedDict):
    """All."""

    many: list[Inner]
    by_name: dict[str, float]


def test_types_become_shapes() -> None:
    made = typed_schema(Outer, "x")
    assert made["$ref"] == "#/$defs/Outer"
    assert made["$defs"]["Inner"]["properties"] == {"at": {"anyOf": [{"type": "string"}, {"type": "null"}]}}
    assert made["$defs"]["Outer"]["required"] == ["many", "by_name"]
    checks = jsonschema.Draft202012Validator(made)
    assert checks.is_valid({"many": [{"at": None}], "by_name": {"a": 1.5}})
    assert not checks.is_valid({"many": [{"at": 1}], "by_name": {}})


def test_a_type_without_a_shape_is_an_error() -> None:
    with pytest.raises(TypeError, match="no shape"):
        typed_schema(set[str], "x")
