"""Whole blocks of a design: all that the file says of one thing, or in one section, hidden at once.

A value that stands alone in a file is rare: nobody saw the label, so rating, family and voltage are missing together,
and a fact that falls back from one to the other has nothing left to fall back to.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from checker.reading import ReadingErrors
from tests.properties.designs import design_with, leaves_of

DEEPEST = 3
"""Blocks are sections, things in a section, and what is told together of a thing (its box, its settings)."""

Edits = tuple[tuple[str, str], ...]


@cache
def may_be_unknown(name: str) -> tuple[str, ...]:
    """Paths of the values of a design that the file may call unknown, each alone."""
    return tuple(leaf.path for leaf in leaves_of(name) if _readable(name, ((leaf.path, "unknown"),)))


def blocks_of(name: str) -> Iterator[tuple[str, Edits]]:
    """Each block of two values or more: its path, and the edits that hide what may be hidden of it."""
    seen: set[Edits] = set()
    for block in _names(name):
        edits = tuple((path, "unknown") for path in may_be_unknown(name) if path.startswith(f"{block}."))
        while edits and not _readable(name, edits):
            edits = edits[:-1]
        if len(edits) > 1 and edits not in seen:
            seen.add(edits)
            yield block, edits


def _names(name: str) -> list[str]:
    """Paths of all blocks, small ones last."""
    steps = [leaf.path.split(".") for leaf in leaves_of(name)]
    found = {".".join(one[:depth]): depth for one in steps for depth in range(1, min(DEEPEST, len(one) - 1) + 1)}
    return sorted(found, key=lambda block: found[block])


def _readable(name: str, edits: Edits) -> bool:
    try:
        design_with(name, edits)
    except ReadingErrors:
        return False
    return True
