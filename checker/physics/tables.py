"""Reading the published tables in ``checker/tables``: data with a pedigree, read once and kept.

A table is a CSV file whose head, lines that begin with ``#``, names the document, the
clause, the edition, the units, the conditions and a mark: ``seen`` (read in the named
document or a public quotation of it), ``memory`` (written from general knowledge),
``practice`` (common practice, no source) or ``by row`` (a column says it row by row).
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

FOLDER = Path(__file__).resolve().parent.parent / "tables"
HEAD_KEYS = ("title", "document", "clause", "edition", "units", "conditions", "mark", "note")
NEEDED_HEAD_KEYS = ("title", "document", "units", "mark")
MARKS = ("seen", "memory", "practice", "by row")


class Table(NamedTuple):
    """One published table: its head and its rows, cells as written."""

    name: str
    head: Mapping[str, str]
    rows: tuple[Mapping[str, str], ...]

    @property
    def source(self) -> str:
        """Document, clause, edition and mark, ready to print beside a number."""
        head = self.head
        parts = [head["document"]]
        if head.get("clause"):
            parts.append(head["clause"])
        text = " ".join(parts)
        if head.get("edition"):
            text += f" ({head['edition']})"
        return f"{text} [{'from memory' if head['mark'] == 'memory' else head['mark']}]"

    def numbers(self, column: str) -> tuple[float, ...]:
        """The cells of one column as numbers, blank cells left out."""
        return tuple(float(row[column]) for row in self.rows if row[column])

    def pairs(self, key: str, column: str, power: int = 0) -> tuple[tuple[float, float], ...]:
        """Key and value of each row in which the value is not blank, ordered by key.

        Keys are times ten to the ``power``, taken exactly: -6 turns mm2 into m2 without rounding twice.
        """
        return tuple(sorted((float(f"{row[key]}e{power}"), float(row[column])) for row in self.rows if row[column]))


@cache
def table(name: str) -> Table:
    """The table of this name (file name without ``.csv``).

    Raises
    ------
    LookupError : there is no such table.
    ValueError : its head lacks a needed line or carries an unknown mark.
    """
    path = FOLDER / f"{name}.csv"
    try:
        lines = path.read_text(encoding="utf-8").splitlines()
    except FileNotFoundError:
        raise LookupError(f"no table named {name!r}; there are {', '.join(names())}") from None
    head_lines = [line for line in lines if line.startswith("#")]
    head = dict(_head_line(name, line) for line in head_lines)
    missing = [key for key in NEEDED_HEAD_KEYS if not head.get(key)]
    if missing:
        raise ValueError(f"table {name}: head lacks {', '.join(missing)}")
    if head["mark"] not in MARKS:
        raise ValueError(f"table {name}: mark {head['mark']!r} is none of {', '.join(MARKS)}")
    body = csv.DictReader(lines[len(head_lines) :], strict=True)
    rows = tuple(MappingProxyType(dict(row)) for row in body)
    return Table(name, MappingProxyType(head), rows)


def names() -> tuple[str, ...]:
    """Names of all tables, in order."""
    return tuple(sorted(path.stem for path in FOLDER.glob("*.csv")))


def _head_line(name: str, line: str) -> tuple[str, str]:
    key, colon, value = line[1:].strip().partition(":")
    if not colon or key not in HEAD_KEYS:
        raise ValueError(f"table {name}: head line {line!r} is not one of {', '.join(HEAD_KEYS)} followed by a colon")
    return key, value.strip()
