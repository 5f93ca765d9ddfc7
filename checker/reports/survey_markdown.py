"""The questions that a design leaves open, in Markdown, with a box to tick for each."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.reports.markdown import code, words
from checker.reports.survey_report import (
    MEANS,
    ORDER,
    count_words,
    now_words,
    numbers_of,
    settles_words,
    short_of_time,
)


def survey_markdown(document: dict[str, Any]) -> Iterator[str]:
    """The questions as a sheet to take along, line by line."""
    for line in _markdown(document):
        yield line + "\n"


def _markdown(document: dict[str, Any]) -> Iterator[str]:
    yield f"> **Read first.** {words(document['caution'])}"
    yield ""
    yield f"# Survey of {words(document['design']['title'] or document['design']['file'])}"
    yield ""
    yield f"{code(document['design']['file'])}, {count_words(document['counts'])}"
    yield ""
    yield MEANS
    yield from _order_markdown(document)
    for group in document["groups"]:
        yield ""
        yield f"## {words(group['place'])}"
        for one in group["questions"]:
            yield ""
            yield f"### {one['number']}. {one['signal']}: {code(one['entry'])}"
            yield ""
            yield f"- [ ] Now: {words(now_words(one))}"
            yield f"- Look at: {words(one['look_at'])}"
            yield f"- With: {words(one['instrument'])}"
            yield f"- **First:** {words(one['isolation'])}"
            yield f"- Write: {code(one['write'])}"
            for line in settles_words(one):
                yield f"- {words(line)}"
    if document["without_a_question"]:
        yield ""
        yield "## What no entry of the file would settle"
        yield ""
        for one in document["without_a_question"]:
            yield f"- {one['signal']} {code(one['rule'])}, {words(one['about']['id'])}: {words(one['says'])}"
    yield ""
    yield words(document["deferral"])


def _order_markdown(document: dict[str, Any]) -> Iterator[str]:
    if not document["order"]:
        return
    yield ""
    yield "## Order of work"
    yield ""
    yield ORDER
    if short := short_of_time(document):
        yield ""
        yield short
    yield ""
    yield "| questions | place | instrument | worst |"
    yield "| --- | --- | --- | --- |"
    for step in document["order"]:
        yield f"| {numbers_of(step)} | {words(step['place'])} | {words(step['instrument'])} | {step['worst']} |"
