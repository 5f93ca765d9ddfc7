"""The questions that a design leaves open, as a sheet to take to the vehicle: a line or two and a blank for each.

The questions of one place and instrument stand together under what must be made dead first. What hangs on an answer
is left out: that is what the whole list is for, and the numbers are the same. What was looked at and found right goes
on the list `papers.inspected`, what was found wrong on `papers.found wrong`.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from checker.reports.paragraphs import LABEL, WIDTH, Painter, heading, paragraph
from checker.reports.survey_report import MEANS, count_words, short_of_time

NUMBER = 5
LOOKED = (
    "A question with boxes to tick is a word to add to the list papers.inspected when it was found right, and to "
    "papers.found wrong when not."
)
BLANK = 24
"""Least room for an answer, in characters of a line."""
TICKS = "[ ] right  [ ] wrong  [ ] not seen"


def survey_sheet(document: dict[str, Any], *, colour: bool = False) -> Iterator[str]:
    """The questions as a sheet, line by line."""
    for line in _sheet(document, Painter(colour)):
        yield line + "\n"


def _sheet(document: dict[str, Any], paint: Painter) -> Iterator[str]:
    yield from paragraph(document["caution"])
    yield ""
    yield from heading("Survey sheet", paint)
    yield from paragraph(document["design"]["title"] or document["design"]["file"])
    yield from paragraph(count_words(document["counts"]))
    yield from paragraph(MEANS)
    yield from paragraph(LOOKED)
    yield from paragraph(short_of_time(document))
    yield ""
    yield f"Vehicle {'_' * 27} Seen by {'_' * 20} on {'_' * 12}"
    questions = {one["number"]: one for group in document["groups"] for one in group["questions"]}
    for place, steps in groupby(document["order"], key=lambda step: step["place"]):
        yield ""
        yield from heading(place, paint)
        for step in steps:
            here = [questions[number] for number in range(step["first"], step["last"] + 1)]
            yield ""
            yield from paragraph(f"{step['instrument'][:1].upper()}{step['instrument'][1:]}:", "  ")
            yield from _questions(here, paint)
    yield ""
    yield from paragraph(document["deferral"])


def _questions(here: list[dict[str, Any]], paint: Painter) -> Iterator[str]:
    """What must be made dead first stands above the first question that it holds for, and again when it changes."""
    for care, these in groupby(here, key=lambda one: one["isolation"]):
        yield from paragraph(f"First: {care}", "  ")
        for one in these:
            yield from _question(one, paint)


def _question(one: dict[str, Any], paint: Painter) -> Iterator[str]:
    """The entry with a blank; of a look at the finished work the word that goes on a list, with boxes to tick."""
    lead = f"  {one['number']:>{NUMBER - 1}} "
    gap = " " * (LABEL - len(one["signal"]))
    name = one["word"] or one["entry"]
    room = WIDTH - len(lead) - LABEL - len(name) - 1
    blank = TICKS if one["word"] else "_" * room
    fits = room >= max(BLANK, len(blank) if one["word"] else 0)
    yield f"{lead}{paint.signal(one['signal'])}{gap}{name}{f' {blank:>{room}}' if fits else ''}"
    indent = " " * (len(lead) + LABEL)
    takes = f" Takes {one['takes']}." if one["takes"] else ""
    look = one["look_at"].rstrip(".")
    yield from paragraph(f"{look[:1].upper()}{look[1:]}.{takes}", indent)
    if not fits:
        yield f"{indent}{TICKS if one['word'] else '_' * (WIDTH - len(indent))}"
