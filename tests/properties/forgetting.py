"""What a forgotten entry may do to a verdict: leave it, or make it a question; and the few entries that may do more."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from checker.design.model import Design
from checker.reading import ReadingErrors
from tests.properties.designs import design_with, leaves_of
from tests.properties.verdicts import Leaf, Pair

FORBIDDEN = frozenset(
    {
        ("breach", "met"),
        ("unproven", "met"),
        ("breach", "not applicable"),
        ("unproven", "not applicable"),
        ("met", "breach"),
        ("unproven", "breach"),
        ("not applicable", "breach"),
    }
)
"""What was found out must not pass, vanish or become a certain breach because less is known."""


class Excuse(NamedTuple):
    """Entries, rules and changes (patterns, the last as `was to now`) that are no contradiction, and why."""

    path: str
    rule: str
    change: str
    why: str


EXCUSES = (
    Excuse("code", ".*", ".*",
           "no fact of the vehicle but the measure it is held against: without one, the international limits apply"),
    Excuse(r"places\.[^.]+\.temperature", ".*", "(breach|unproven) to met",
           "a stated temperature stands instead of the computed one, which then counts again"),
    Excuse(r"circuits\.[^.]+\.run\.\d+", "conductor-stands-the-short", "unproven to met",
           "with the nearest fuse out of the run the one before it clears, and its narrower band decides"),
)  # fmt: skip


class Contradiction(NamedTuple):
    """A pair of rule and subject, what it was and what it became."""

    pair: Pair
    was: str
    now: str


def excused(path: str, changed: Contradiction) -> bool:
    """Whether an excuse stands for an entry, a rule and what became of it."""
    what = f"{changed.was} to {changed.now}"
    return any(
        re.fullmatch(one.path, path) and re.fullmatch(one.rule, changed.pair[0]) and re.fullmatch(one.change, what)
        for one in EXCUSES
    )


def contradictions(paths: Sequence[str], before: Mapping[Pair, str], after: Mapping[Pair, str]) -> list[Contradiction]:
    """The pairs, there before and after, that changed as they must not because some entries were forgotten."""
    changed = (Contradiction(pair, was, after[pair]) for pair, was in before.items() if pair in after)
    return [one for one in changed if (one.was, one.now) in FORBIDDEN and not any(excused(path, one) for path in paths)]


def forgotten(name: str, leaf: Leaf) -> Design | None:
    """The design with one entry unknown; None where the file may not say that."""
    try:
        return design_with(name, [(leaf.path, "unknown")])
    except ReadingErrors:
        return None


def sample(name: str, every: int, first: int = 0) -> Iterator[Leaf]:
    """Each so-many-th entry of a design."""
    return iter(leaves_of(name)[first::every])
