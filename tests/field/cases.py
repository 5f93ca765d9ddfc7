"""The recorded faults: read from their files, made in a clean design, reviewed."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from checker.reading import read_text
from checker.review import Finding, review
from checker.rulebook import Rulebook, load_rulebook

HERE = Path(__file__).parent
FOLDERS = (HERE / "bases", HERE.parents[1] / "examples")

Edits = tuple[tuple[str, str], ...]


class Case(NamedTuple):
    """One recorded fault. `changes` are the edits that make it, or that take an answer away."""

    id: str
    base: str
    prepared: Edits
    changes: Edits
    rule: str
    subject: str
    signal: str
    at: str
    silent: str


def cases(name: str) -> list[Case]:
    """The entries of `defects.yaml` or `asked.yaml`, in file order."""
    return [_case(entry) for entry in yaml.safe_load((HERE / f"{name}.yaml").read_text("utf-8"))]


def _case(entry: dict[str, Any]) -> Case:
    told = entry.get("expect") or entry.get("ask") or {}
    return Case(
        entry["id"], entry.get("base", ""),
        _edits(entry.get("with")), _edits(entry.get("fault") or entry.get("without")),
        told.get("rule", ""), told.get("subject", ""), told.get("signal", ""), told.get("at", ""),
        entry.get("silent", ""),
    )  # fmt: skip


def _edits(edits: dict[str, str] | None) -> Edits:
    return tuple((path, str(text)) for path, text in (edits or {}).items())


def base_text(name: str) -> str:
    """The text of a base design."""
    file = next(folder / f"{name}.fitout.yaml" for folder in FOLDERS if (folder / f"{name}.fitout.yaml").is_file())
    return file.read_text("utf-8")


@cache
def book() -> Rulebook:
    """The shipped rules."""
    return load_rulebook()


@cache
def findings(base: str, edits: Edits) -> tuple[Finding, ...]:
    """What a review finds in a base design with changes."""
    return review(read_text(base_text(base), f"{base}.fitout.yaml", edits), book()).findings


def line_of(base: str, path: str) -> int:
    """The line (from 1) where the entry at a dotted path starts; where a change adds it, that of what it is added to.

    Read with another YAML library than the one of the reader, so that the two can disagree.
    """
    inside: Any = yaml.compose(base_text(base))
    for step in path.split("."):
        found = [value for key, value in inside.value if key.value == step]
        if not found:
            break
        inside = found[0]
    return int(inside.start_mark.line) + 1
