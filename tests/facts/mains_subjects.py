"""Subjects of the base designs of the mains side, for tests of their facts."""

from __future__ import annotations

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts, Subject
from tests.circuit.mains_designs import changed_at

COACH, VAN = "mains-coach", "generator-van"


def subject(base: str, kind: str, id: str, edits: dict[str, str] | None = None) -> Subject:
    """One subject of a base design with changes."""
    found = Facts(changed_at(base, edits or {})).subject(kind, id)
    assert found is not None, f"there is no {kind} {id}"
    return found


def ids(base: str, kind: str, edits: dict[str, str] | None = None) -> list[str]:
    """The ids of the subjects of a kind."""
    return [one.id for one in Facts(changed_at(base, edits or {})).subjects(kind)]
