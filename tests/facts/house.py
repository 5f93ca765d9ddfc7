"""The base design of a 48 V house, changed for tests of its facts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts, Subject
from checker.reading import read_text
from checker.shipped import shipped

BASE = Path(str(shipped("rules"))) / "designs" / "house-48.fitout.yaml"


def house(edits: dict[str, str] | None = None) -> Facts:
    """All facts of the house with changes."""
    return Facts(read_text(BASE.read_text("utf-8"), str(BASE), tuple((edits or {}).items())))


def one(kind: str, id: str, edits: dict[str, str] | None = None) -> Subject:
    """One subject of the house with changes."""
    found = house(edits).subject(kind, id)
    assert found is not None, f"there is no {kind} {id}"
    return found


def ask(kind: str, id: str, fact: str, edits: dict[str, str] | None = None) -> Any:
    """One fact of one subject of the house with changes."""
    return getattr(one(kind, id, edits), fact)


def ids(found: Any) -> list[str]:
    """The ids of a list of subjects."""
    return [subject.id for subject in found]
