"""The questions that a design leaves open, for the terminal, each with all that hangs on it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.reports.paragraphs import LABEL, Painter, heading, labelled, paragraph
from checker.reports.survey_report import (
    MEANS,
    ORDER,
    count_words,
    now_words,
    numbers_of,
    settles_words,
    short_of_time,
)


def survey_text(document: dict[str, Any], *, colour: bool = False) -> Iterator[str]:
    """The questions for a terminal, line by line."""
    for line in _text(document, Painter(colour)):
        yield line + "\n"


def _text(document: dict[str, Any], paint: Painter) -> Iterator[str]:
    yield from paragraph(document["caution"])
    yield ""
    yield from heading("Survey", paint)
    yield from paragraph(document["design"]["title"] or document["design"]["file"])
    yield from paragraph(count_words(document["counts"]))
    yield from paragraph(MEANS)
    yield from _order_text(document, paint)
    for group in document["groups"]:
        yield ""
        yield from heading(group["place"], paint)
        care = ""
        for one in group["questions"]:
            yield ""
            gap = " " * (LABEL - len(one["signal"]))
            yield f"{paint.signal(one['signal'])}{gap}{one['number']}. {paint.strong(one['entry'])}"
            yield from labelled("now", [now_words(one)])
            yield from labelled("look at", [one["look_at"]])
            yield from labelled("with", [one["instrument"]])
            yield from labelled("first", [one["isolation"] if one["isolation"] != care else "as just above"])
            yield from labelled("write", [one["write"]])
            yield from labelled("settles", settles_words(one))
            care = one["isolation"]
    yield from _without_text(document, paint)
    yield ""
    yield from paragraph(document["deferral"])


def _order_text(document: dict[str, Any], paint: Painter) -> Iterator[str]:
    if not document["order"]:
        return
    yield ""
    yield from heading("Order of work", paint)
    yield from paragraph(ORDER)
    if short := short_of_time(document):
        yield from paragraph(short)
    place = ""
    for step in document["order"]:
        if step["place"] != place:
            place = step["place"]
            yield f"  {place}"
        text = f"{step['instrument']}, worst {step['worst']}"
        yield from paragraph(text, f"    {numbers_of(step):<9}", " " * 13)


def _without_text(document: dict[str, Any], paint: Painter) -> Iterator[str]:
    if not document["without_a_question"]:
        return
    yield ""
    yield from heading("What no entry of the file would settle", paint)
    for one in document["without_a_question"]:
        yield from paragraph(f"{one['signal']} {one['rule']}, {one['about']['id']}: {one['says']}", "", "  ")
