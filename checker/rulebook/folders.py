"""Which files a folder of rules holds: topic folders with rules, and `codes/` with limits."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from checker.rulebook.problems import RuleErrors, RuleProblem

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable

MOST_FILES = 5_000
CODES, DESIGNS, DESIGN = "codes", "designs", ".fitout.yaml"


class RuleFile(NamedTuple):
    """A file: its folder (a topic or `codes`), its name without the ending, how messages call it, its bytes."""

    folder: str
    stem: str
    label: str
    data: bytes


def rule_files(root: Path | Traversable, label: str) -> list[RuleFile]:
    """The files of a folder in the order of their names. Raises RuleErrors when it cannot be read."""
    found: list[RuleFile] = []
    try:
        if not root.is_dir():
            raise RuleErrors([RuleProblem(label, 1, 1, "this is no folder of rules", "name a folder that exists")])
        for folder in sorted(root.iterdir(), key=lambda entry: entry.name):
            if folder.name == DESIGNS or folder.name.startswith((".", "_")):
                continue
            if not folder.is_dir():
                _refuse_outside_topic(folder.name, label, f"{label}/house")
                continue
            for file in sorted(folder.iterdir(), key=lambda entry: entry.name):
                if file.name.endswith(".yaml") and not file.name.startswith(".") and file.is_file():
                    name = f"{label}/{folder.name}/{file.name}"
                    found.append(RuleFile(folder.name, file.name.removesuffix(".yaml"), name, file.read_bytes()))
                elif file.is_dir() and not file.name.startswith((".", "_")):
                    _refuse_outside_topics(file, f"{label}/{folder.name}/{file.name}", f"{label}/{file.name}")
                elif file.name.endswith(".yml"):
                    _refuse(f"{label}/{folder.name}/{file.name}", "the file ends with `.yml`", "name it `.yaml`")
                if len(found) > MOST_FILES:
                    _refuse(label, f"the folder holds more than {MOST_FILES:,} rules", "name a smaller folder")
    except OSError as error:
        _refuse(label, f"the rules cannot be read: {error.strerror or error}", "look at the rights of the folder")
    return found


def published(base: Path) -> frozenset[str] | None:
    """Ids of the catalogue of published requirements beside the shipped rules; None where no catalogue lies there."""
    import csv

    file = base / "requirements.csv"
    if not file.is_file():
        return None
    with open(file, encoding="utf-8", newline="") as lines:
        return frozenset(row["id"] for row in csv.DictReader(lines) if row.get("id"))


def _refuse_outside_topic(name: str, folder: str, topic: str) -> None:
    """A rule that lies in no topic would never be put to anything, and its silence would look like a pass."""
    if name.endswith((".yaml", ".yml")) and not name.endswith(DESIGN):
        _refuse(f"{folder}/{name}", "the rule lies in no folder of a topic", f"move it to `{topic}/{name}`")


def _refuse_outside_topics(folder: Path | Traversable, label: str, topic: str) -> None:
    """The same for the files of a folder within a topic."""
    for file in sorted(folder.iterdir(), key=lambda entry: entry.name):
        _refuse_outside_topic(file.name, label, topic)


def _refuse(file: str, what: str, right: str) -> None:
    raise RuleErrors([RuleProblem(file, 1, 1, what, right)])
