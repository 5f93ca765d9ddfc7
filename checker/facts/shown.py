"""Figures that the recorded tests show, and what those of which little is known may show."""

from __future__ import annotations

from collections.abc import Callable
from math import inf

from checker.design.item import Item
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Truth, Unknown, add, equal, greatest, least, multiply

ANY = Range(0.0, inf)
Counts = Callable[[Item], Truth]
"""Whether a reading counts."""


def is_test(s: Subject, reading: Item, test: str) -> Truth:
    """Whether a reading is of a test; one that names no test is none."""
    return equal(s.read(reading, "test"), test) if reading.has("test") else False


def taken_at(s: Subject, reading: Item, name: str) -> Truth:
    """Whether a reading was taken at something; one that names no point was not."""
    return equal(s.read(reading, "at"), name) if reading.has("at") else False


def greatest_shown(s: Subject, key: str, counts: Counts) -> Number:
    """The greatest figure of the readings that count, or more by those that perhaps do; none where none may count."""
    sure, perhaps = _figures(s, key, counts)
    if not _tells(sure):
        return _nothing(sure or perhaps)
    return greatest(*sure, *(multiply(one, Range(0.0, 1.0)) for one in perhaps))


def least_shown(s: Subject, key: str, counts: Counts) -> Number:
    """The least figure of the readings that count, or less by those that perhaps do; none where none may count."""
    sure, perhaps = _figures(s, key, counts)
    if not _tells(sure):
        return _nothing(sure or perhaps)
    return least(*sure, *(add(one, ANY) for one in perhaps))


def _tells(sure: list[Number]) -> bool:
    """Whether a reading that counts tells a figure."""
    return any(one is not ANY for one in sure)


def _nothing(recorded: list[Number]) -> Unknown | None:
    return Unknown("what a recorded test showed, or what it tested, is not told") if recorded else None


def _figures(s: Subject, key: str, counts: Counts) -> tuple[list[Number], list[Number]]:
    """What the readings that count show, and what those show that perhaps do. A figure that is not told may be any."""
    answers = [(one, counts(one)) for one in s.facts.design.readings]
    sure = [s.read(one, key) for one, answer in answers if answer is True]
    perhaps = [s.read(one, key) for one, answer in answers if isinstance(answer, Unknown) and one.has(key)]
    told = [[ANY if isinstance(figure, Unknown) else figure for figure in group] for group in (sure, perhaps)]
    return told[0], told[1]
