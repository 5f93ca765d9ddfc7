"""`fitout schema` prints what is shipped."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from checker.commands import run

SCHEMAS = Path(__file__).parents[2] / "schemas"


@pytest.mark.parametrize("which", ["design", "rule", "report", "predict", "prove", "day", "states", "survey"])
def test_it_prints_the_shipped_schema_byte_for_byte(which: str, capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    assert run(["schema", which]) == 0
    printed = capsysbinary.readouterr().out
    assert printed == (SCHEMAS / f"{which}.schema.json").read_bytes()
    jsonschema.Draft202012Validator.check_schema(json.loads(printed))


def test_without_a_name_it_is_the_schema_of_a_design(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    assert run(["schema"]) == 0
    assert capsysbinary.readouterr().out == (SCHEMAS / "design.schema.json").read_bytes()


def test_it_writes_a_file(tmp_path: Path) -> None:
    assert run(["schema", "report", "--output", str(tmp_path / "x.json")]) == 0
    assert (tmp_path / "x.json").read_bytes() == (SCHEMAS / "report.schema.json").read_bytes()
