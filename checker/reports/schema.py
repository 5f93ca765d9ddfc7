"""The JSON Schema of the JSON report, made from its models; `python -m checker.reports.schema` writes the file."""

from __future__ import annotations

from pathlib import Path
from typing import Any

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def report_schema() -> dict[str, Any]:
    """JSON Schema 2020-12 of `fitout review --format json`."""
    from checker.reports.model import Report

    made = Report.model_json_schema(mode="serialization")
    return {"$schema": DIALECT, **_without_titles(made), "title": "Report of a fit-out review"}


def report_schema_text() -> str:
    """The schema as it lies in `schemas/report.schema.json`."""
    import json

    return json.dumps(report_schema(), indent=2, ensure_ascii=False) + "\n"


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
    """Write the schema into `folder`."""
    (folder / "report.schema.json").write_text(report_schema_text(), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    from checker.shipped import shipped

    write(Path(str(shipped("schemas"))))
