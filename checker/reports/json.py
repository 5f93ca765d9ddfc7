"""The report for programs; its shape is `schemas/report.schema.json`."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from checker.reports.document import Document


def json(document: Document) -> Iterator[str]:
    """The document as indented JSON, keys in the order of the schema, every character as it is."""
    from json import JSONEncoder

    yield from JSONEncoder(ensure_ascii=False, indent=2, allow_nan=False).iterencode(document)
    yield "\n"
