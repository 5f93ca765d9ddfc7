"""The questions that a design leaves open, as a file to answer in, for `fitout answer` to write into the design."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from itertools import groupby
from typing import Any

from checker.reports.paragraphs import WIDTH
from checker.reports.plain import one_line
from checker.reports.survey_report import count_words, short_of_time

HOW = (
    "Write each answer in the place of the word unknown and save; what stays unknown changes nothing. A plain value "
    "gets the basis that suits its question; write {is: 14.4 V, basis: assumed} where yours is another. Then: fitout "
    "answer DESIGN THIS-FILE --output NEW-DESIGN"
)
READING = "readings: "


def survey_answers(document: dict[str, Any]) -> Iterator[str]:
    """The file, line by line."""
    for line in _answers(document):
        yield line + "\n"


def _answers(document: dict[str, Any]) -> Iterator[str]:
    yield from _comment(document["caution"])
    yield "#"
    yield from _comment(f"Answers to the survey of {document['design']['title'] or document['design']['file']}")
    yield from _comment(count_words(document["counts"]))
    yield from _comment(HOW)
    yield from _comment(short_of_time(document))
    asked = [one for group in document["groups"] for one in group["questions"]]
    tests = [one for one in asked if one["entry"].startswith(READING)]
    looks = [one for one in asked if one["word"]]
    plain = [one for one in asked if not one["word"] and one not in tests]
    yield ""
    yield "answers:" if plain else "answers: {}"
    yield from _by_place(document, plain, "entry")
    yield ""
    yield "# Found right, or found wrong."
    yield "looks:" if looks else "looks: {}"
    yield from _by_place(document, looks, "word")
    yield ""
    yield "readings: []"
    if tests:
        yield from _comment(
            "Put below `readings:` in place of [], each in its own line, with what the instrument said:"
        )
    for (with_, care), these in groupby(tests, key=lambda one: (one["instrument"], one["isolation"])):
        yield from _comment(f"With: {with_}. First: {care}", "  ")
        for one in these:
            yield from _question(one, "  ")
            yield f"  # - {one['write'].removeprefix(READING)}"
    yield ""
    yield from _comment(document["deferral"])


def _by_place(document: dict[str, Any], asked: list[dict[str, Any]], key: str) -> Iterator[str]:
    """Each question below its place, its instrument and what must be made dead first."""
    steps = {number: step for step in document["order"] for number in range(step["first"], step["last"] + 1)}
    place = ""
    for (where, with_, care), these in groupby(
        asked,
        key=lambda one: (steps[one["number"]]["place"], steps[one["number"]]["instrument"], one["isolation"]),
    ):
        if where != place:
            place = where
            yield ""
            yield from _comment(f"== {where} ==", "  ")
        yield from _comment(f"With: {with_}. First: {care}", "  ")
        for one in these:
            yield from _question(one, "  ")
            yield f"  {_key(one[key])}: unknown"


def _question(one: dict[str, Any], indent: str) -> Iterator[str]:
    takes = f" Takes {one['takes']}." if one["takes"] else ""
    now = "" if one["now"] in ("unknown", "") or one["word"] else f" Now {one['now']}."
    yield from _comment(f"{one['number']} {one['signal']} {one['look_at'].rstrip('.')}.{takes}{now}", indent)


def _comment(words: str, indent: str = "") -> Iterator[str]:
    yield from textwrap.wrap(
        one_line(words), WIDTH, initial_indent=f"{indent}# ", subsequent_indent=f"{indent}# ", break_long_words=False,
        break_on_hyphens=False,
    )  # fmt: skip


def _key(entry: str) -> str:
    """An entry as a key of YAML, in quotes where a plain one would be read otherwise."""
    plain = entry.replace(" ", "").replace("-", "").replace("_", "").replace(".", "")
    return entry if plain.isalnum() else f"'{entry.replace(chr(39), chr(39) * 2)}'"
