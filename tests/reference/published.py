"""Reads the copied published values in ``data``: rows as written, the head lines left out."""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

DATA = Path(__file__).parent / "data"
HEAD = ("title", "source", "mark", "licence", "tolerance")


@cache
def published(name: str) -> tuple[dict[str, str], ...]:
    """Rows of one file of published values."""
    lines = (DATA / f"{name}.csv").read_text(encoding="utf-8").splitlines()
    return tuple(csv.DictReader(line for line in lines if not line.startswith("# ")))


def head(name: str) -> dict[str, str]:
    """Head of one file: title, source, mark, licence, tolerance."""
    lines = (DATA / f"{name}.csv").read_text(encoding="utf-8").splitlines()
    parts = (line[2:].partition(": ") for line in lines if line.startswith("# "))
    return {key: value for key, _, value in parts}
