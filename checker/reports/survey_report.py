"""The questions that a design leaves open, as a document, for the terminal, and as a sheet to take along."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.markdown import code, words
from checker.reports.paragraphs import LABEL, Painter, heading, labelled, paragraph
from checker.reports.words import counted
from checker.review.survey import by_place

if TYPE_CHECKING:
    from checker.review import Finding, Review
    from checker.review.survey import Hanging, Question, Survey

MOST_SHOWN = 3
"""Findings told in full under one question on the terminal and on the sheet; the document holds all."""
MEANS = (
    "Each question is one entry of the design file. Write what you found with its basis, and `unknown` for what you "
    "could not see; then review again. Nothing is taken as right before it is answered."
)


def survey_document(review: Review, found: Survey) -> dict[str, Any]:
    """All of it as plain data."""
    return {
        "survey": 1,
        "design": dict(review.design),
        "rulebook": dict(review.rulebook),
        "version": review.version,
        "caution": CAUTION,
        "counts": {
            "questions": len(found.questions),
            "unproven": found.undecided,
            "without_a_question": len(found.unasked),
        },
        "groups": [
            {"place": place, "questions": [_question(one) for one in held]}
            for place, held in by_place(found.questions).items()
        ],
        "without_a_question": [_unasked(one) for one in found.unasked],
        "deferral": DEFERRAL,
    }


def _question(one: Question) -> dict[str, Any]:
    return {
        "entry": one.entry,
        "signal": one.signal.upper(),
        "now": one.now,
        "line": one.line,
        "look_at": one.way.look,
        "instrument": one.way.instrument,
        "isolation": one.way.care,
        "takes": one.takes,
        "write": one.way.write,
        "settles": [_hanging(each) for each in one.settles],
    }


def _hanging(one: Hanging) -> dict[str, Any]:
    return {
        "rule": one.rule,
        "signal": one.signal.upper(),
        "about": one.about._asdict(),
        "alone": one.alone,
        "wanted": one.wanted,
        "otherwise": one.title,
        "covers": list(one.covers),
    }


def _unasked(finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "signal": finding.signal.upper(),
        "about": finding.about._asdict(),
        "says": finding.says,
    }


def survey_text(document: dict[str, Any], *, colour: bool = False) -> Iterator[str]:
    """The questions for a terminal, line by line."""
    for line in _text(document, Painter(colour)):
        yield line + "\n"


def _text(document: dict[str, Any], paint: Painter) -> Iterator[str]:
    yield from paragraph(document["caution"])
    yield ""
    yield from heading("Survey", paint)
    yield from paragraph(document["design"]["title"] or document["design"]["file"])
    yield from paragraph(_count(document["counts"]))
    yield from paragraph(MEANS)
    for group in document["groups"]:
        yield ""
        yield from heading(group["place"], paint)
        care = ""
        for one in group["questions"]:
            yield ""
            yield f"{paint.signal(one['signal'])}{' ' * (LABEL - len(one['signal']))}{paint.strong(one['entry'])}"
            yield from labelled("now", [_now(one)])
            yield from labelled("look at", [one["look_at"]])
            yield from labelled("with", [one["instrument"]])
            yield from labelled("first", [one["isolation"] if one["isolation"] != care else "as just above"])
            yield from labelled("write", [one["write"]])
            yield from labelled("settles", _settles(one))
            care = one["isolation"]
    yield from _without_text(document, paint)
    yield ""
    yield from paragraph(document["deferral"])


def _without_text(document: dict[str, Any], paint: Painter) -> Iterator[str]:
    if not document["without_a_question"]:
        return
    yield ""
    yield from heading("What no entry of the file would settle", paint)
    for one in document["without_a_question"]:
        yield from paragraph(f"{one['signal']} {one['rule']}, {one['about']['id']}: {one['says']}", "", "  ")


def _count(counts: dict[str, int]) -> str:
    return (
        f"{counted(counts['questions'], 'question')}, on which {counted(counts['unproven'], 'unproven finding')} hang; "
        f"{counts['without_a_question']} more cannot be settled by an entry of the file."
    )


def _now(one: dict[str, Any]) -> str:
    return f"{one['now']}, line {one['line']}" + (f"; takes {one['takes']}" if one["takes"] else "")


def _settles(one: dict[str, Any]) -> list[str]:
    held = one["settles"]
    alone = sum(each["alone"] for each in held)
    lines = [f"{counted(len(held), 'finding')}, {alone} by this answer alone"]
    by_rule: dict[str, list[dict[str, Any]]] = {}
    for each in held:
        by_rule.setdefault(each["rule"], []).append(each)
    lines += [_meaning(these) for these in list(by_rule.values())[:MOST_SHOWN]]
    if len(by_rule) > MOST_SHOWN:
        lines.append(f"and {len(by_rule) - MOST_SHOWN} more rules")
    return lines


def _meaning(these: list[dict[str, Any]]) -> str:
    first = these[0]
    more = f" and {len(these) - 1} more" if len(these) > 1 else ""
    wanted = first["wanted"].replace("*", "")
    return (
        f"{first['signal']} {first['rule']}, {first['about']['id']}{more}: right when {wanted}; "
        f"otherwise: {first['otherwise']}"
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
    yield f"{code(document['design']['file'])}, {_count(document['counts'])}"
    yield ""
    yield MEANS
    for group in document["groups"]:
        yield ""
        yield f"## {words(group['place'])}"
        for one in group["questions"]:
            yield ""
            yield f"### {one['signal']}: {code(one['entry'])}"
            yield ""
            yield f"- [ ] Now: {words(_now(one))}"
            yield f"- Look at: {words(one['look_at'])}"
            yield f"- With: {words(one['instrument'])}"
            yield f"- **First:** {words(one['isolation'])}"
            yield f"- Write: {code(one['write'])}"
            for line in _settles(one):
                yield f"- {words(line)}"
    if document["without_a_question"]:
        yield ""
        yield "## What no entry of the file would settle"
        yield ""
        for one in document["without_a_question"]:
            yield f"- {one['signal']} {code(one['rule'])}, {words(one['about']['id'])}: {words(one['says'])}"
    yield ""
    yield words(document["deferral"])
