"""The estuary coach, changed for tests of its facts."""

from __future__ import annotations

from pathlib import Path

from checker.facts.subject import Facts, Subject
from checker.reading import read_text
from checker.shipped import shipped

TEXT = (Path(str(shipped("examples"))) / "estuary-coach.fitout.yaml").read_text("utf-8")


def coach(*edits: tuple[str, str]) -> Facts:
    """The facts of the coach after the edits (dotted path, YAML text)."""
    return Facts(read_text(TEXT, "coach", edits))


def one(kind: str, id: str, *edits: tuple[str, str]) -> Subject:
    """One subject of the coach after the edits."""
    found = coach(*edits).subject(kind, id)
    assert found is not None, f"there is no {kind} {id}"
    return found
