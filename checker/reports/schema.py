"""The JSON Schemas of all that is printed as JSON; `python -m checker.reports.schema` writes the files."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from checker.reports.typed_schema import DIALECT, typed_schema

DOCUMENTS = {
    "predict": "What the instruments should read",
    "prove": "Recorded readings beside what was to be expected",
    "day": "A day of the house",
    "states": "The supply states of the mains side",
    "survey": "The questions that a design leaves open",
}
"""Command -> the title of the schema of what it prints."""


def report_schema() -> dict[str, Any]:
    """JSON Schema 2020-12 of `fitout review --format json`."""
    from checker.reports.model import Report

    made = Report.model_json_schema(mode="serialization")
    return {"$schema": DIALECT, **_without_titles(made), "title": "Report of a fit-out review"}


def report_schema_text() -> str:
    """The schema as it lies in `schemas/report.schema.json`."""
    import json

    return json.dumps(report_schema(), indent=2, ensure_ascii=False) + "\n"


def document_schema_text(command: str) -> str:
    """The schema of what a command prints, as it lies in `schemas`."""
    import json

    return json.dumps(typed_schema(_kind(command), DOCUMENTS[command]), indent=2, ensure_ascii=False) + "\n"


def _kind(command: str) -> Any:
    """The typed dictionary of what a command prints; without mains there are no supply states."""
    from checker.reports.day_report import DayDocument
    from checker.reports.prediction import Prediction
    from checker.reports.proof import Proof
    from checker.reports.supply_states import SupplyStates
    from checker.reports.survey_report import SurveyDocument

    kinds = {"predict": Prediction, "prove": Proof, "day": DayDocument, "survey": SurveyDocument}
    return SupplyStates | None if command == "states" else kinds[command]


def _without_titles(node: Any) -> Any:
    """Titles made from field names say nothing; a property that is itself called title stays."""
    if isinstance(node, list):
        return [_without_titles(each) for each in node]
    if not isinstance(node, dict):
        return node
    return {
        key: {name: _without_titles(value) for name, value in each.items()}
        if key in ("properties", "$defs")
        else _without_titles(each)
        for key, each in node.items()
        if not (key == "title" and isinstance(each, str))
    }


def write(folder: Path) -> None:
    """Write the schemas into `folder`."""
    texts = {"report": report_schema_text(), **{command: document_schema_text(command) for command in DOCUMENTS}}
    for name, text in texts.items():
        (folder / f"{name}.schema.json").write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    from checker.shipped import shipped

    write(Path(str(shipped("schemas"))))
