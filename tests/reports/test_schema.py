"""The schema of the JSON report is made from its models, and every report keeps to it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, get_type_hints

import jsonschema
import pydantic
import pytest

from checker.reports import document as plain_data
from checker.reports import model, render
from checker.reports.schema import report_schema, report_schema_text, write
from tests.reports.sample import nothing_found, sample

FILE = Path(__file__).parents[2] / "schemas" / "report.schema.json"
PAIRS = {
    "Document": "Report", "FindingData": "Finding", "About": "About", "Place": "Place", "Need": "Need",
    "Departure": "Departure", "DesignStamp": "DesignStamp", "RulebookStamp": "RulebookStamp",
    "Counts": "Counts",
}  # fmt: skip


def report(document: Any) -> Any:
    return json.loads("".join(render(document, "json")))


def test_the_schema_in_the_folder_is_the_one_of_the_models() -> None:
    assert FILE.read_text("utf-8") == report_schema_text()


def test_writing_the_schema_gives_that_file(tmp_path: Path) -> None:
    write(tmp_path)
    assert (tmp_path / "report.schema.json").read_bytes() == FILE.read_bytes()


def test_the_schema_is_a_schema_and_every_property_is_described() -> None:
    schema = report_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    parts = {"Report": schema, **schema["$defs"]}
    for name, part in parts.items():
        assert part["description"], name
        for key, value in part["properties"].items():
            assert name in ("Counts", "BySignal") or "description" in value or "$ref" in value, f"{name}.{key}"


@pytest.mark.parametrize("document", [sample(everything=True), nothing_found()], ids=["findings", "nothing found"])
def test_a_report_keeps_to_the_schema_and_the_models(document: Any) -> None:
    jsonschema.Draft202012Validator(report_schema()).validate(report(document))
    model.Report.model_validate(report(document))


@pytest.mark.parametrize(
    ("path", "value"),
    [(("report",), 2), (("findings", 0, "verdict"), "passed"), (("findings", 0, "signal"), "danger"),
     (("findings", 0, "where", "line"), 0), (("design", "sha256"), "x"), (("extra",), 1), (("findings", 0, "x"), 1)],
    ids=lambda each: ".".join(map(str, each)) if isinstance(each, tuple) else "",
)  # fmt: skip
def test_a_report_that_departs_from_the_schema_is_refused(path: tuple[Any, ...], value: Any) -> None:
    broken = report(sample())
    target = broken
    for key in path[:-1]:
        target = target[key]
    target[path[-1]] = value
    assert not jsonschema.Draft202012Validator(report_schema()).is_valid(broken)
    with pytest.raises(pydantic.ValidationError):
        model.Report.model_validate(broken)


@pytest.mark.parametrize("plain", PAIRS)
def test_the_plain_data_and_the_models_have_the_same_keys_in_the_same_order(plain: str) -> None:
    typed = getattr(plain_data, plain)
    assert list(get_type_hints(typed)) == list(getattr(model, PAIRS[plain]).model_fields)


def test_the_json_report_keeps_every_character() -> None:
    document = sample()
    document["design"]["title"] = "Ω – „x“ \u202e \x1b 𝄞"
    assert report(document)["design"]["title"] == document["design"]["title"]
