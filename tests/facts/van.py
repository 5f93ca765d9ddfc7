"""The small van of the rule examples, with changes, as facts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from checker.facts.subject import Facts, Subject
from checker.reading import read_text
from checker.shipped import shipped

TEXT = (Path(str(shipped("rules"))) / "designs" / "slide-van.fitout.yaml").read_text("utf-8")


def van(*edits: tuple[str, str]) -> Facts:
    """The facts of the van after the edits (dotted path, YAML text)."""
    return Facts(read_text(TEXT, "slide-van.fitout.yaml", edits))


def ask(kind: str, id: str, fact: str, *edits: tuple[str, str]) -> Any:
    """One fact of one subject of the van."""
    found: Subject | None = van(*edits).subject(kind, id)
    assert found is not None, f"there is no {kind} {id}"
    return getattr(found, fact)
