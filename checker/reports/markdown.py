"""The report as Markdown, for an issue, a merge request or a note to the customer."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from checker.reports.caution import MET_MEANS
from checker.reports.overview import Overview, asked, overview
from checker.reports.plain import one_line, plain
from checker.reports.sections import Headed, Question, sections
from checker.reports.wording import (
    SHORT,
    few,
    how_to_see_all,
    how_to_see_questions,
    judged,
    need,
    place,
    record,
    short_working,
    subject,
    tally,
)
from checker.reports.words import (
    BREACH,
    DANGERS_MEAN,
    FIRST_MEANS,
    NO_NEED,
    QUESTIONS_MEAN,
    SHORT_MEANS,
    SIGNALS,
    UNPROVEN,
    VERDICT_MEANS,
    VERDICTS,
)

if TYPE_CHECKING:
    from checker.reports.document import Document, FindingData

# What Markdown or the HTML inside it could take for markup; a lead of `1.`, `-`, `+` or `#` cannot stand first here.
_MARKUP = re.compile(r"[\\`*_{}\[\]<>|#~&!]")


def markdown(document: Document, *, whole: bool = False) -> Iterator[str]:
    """The report line by line, each with its line end; `whole` tells very many questions one by one too."""
    for line in _lines(document, whole):
        yield line + "\n"


def _lines(document: Document, whole: bool) -> Iterator[str]:
    design, rulebook = document["design"], document["rulebook"]
    yield f"> **Read first.** {words(document['caution'])}"
    yield ""
    yield f"# {words(design['title'])}"
    yield ""
    yield f"{code(design['file'])}, {rulebook['rules']} rules, code {words(rulebook['code'] or 'none')}"
    yield ""
    yield from _count(document)
    parts = sections(document)
    if parts.breaches:
        yield "## Breaches, worst first"
        yield ""
        if any(len(headed.finding["working"]) > SHORT for headed in parts.breaches):
            yield words(how_to_see_all(document["design"]["file"]))
            yield ""
        for headed in parts.breaches:
            yield from _breach(headed)
    if parts.questions:
        yield "## Questions to settle"
        yield ""
        unproven = document["counts"]["unproven"]
        short = None if whole else overview(parts.questions)
        if short is None:
            yield QUESTIONS_MEAN
            yield ""
            for question in parts.questions:
                yield from _question(question)
        else:
            yield f"{asked(parts.questions, unproven)} {SHORT_MEANS}"
            yield ""
            yield from _overview(short)
            yield words(how_to_see_questions(document["design"]["file"]))
            yield ""
    if parts.set_aside:
        yield "## Set aside"
        yield ""
        for finding in parts.set_aside:
            yield from _set_aside(finding)
    yield from _list(f"Met: {MET_MEANS}", parts.met)
    yield from _list("Not applicable", parts.not_applicable)
    for sentence in document["not_checked"]:
        yield words(sentence)
        yield ""
    yield f"Design sha256 {code(design['sha256'])}  "
    yield f"Rules sha256 {code(rulebook['sha256'])}  "
    yield f"fitout {words(document['version'])}"
    yield ""
    yield f"> {words(document['deferral'])}"


def _count(document: Document) -> Iterator[str]:
    counts, by_signal = tally(document["counts"]), document["counts"]["breach"]
    said = ", ".join(f"{signal} {by_signal[signal]}" for signal in SIGNALS if by_signal[signal])
    yield "| verdict | count | |"
    yield "| --- | ---: | --- |"
    for verdict in VERDICTS:
        strong = "**" if verdict in (BREACH, UNPROVEN) and counts[verdict] else ""
        meaning = said if verdict == BREACH and said else VERDICT_MEANS[verdict]
        yield f"| {strong}{verdict}{strong} | {strong}{counts[verdict]}{strong} | {meaning} |"
    yield ""


def _breach(headed: Headed) -> Iterator[str]:
    finding = headed.finding
    yield f"### {finding['signal']}: {words(finding['title'])}"
    yield ""
    yield f"{words(subject(finding))}, {code(place(finding))}"
    yield ""
    if finding["says"]:
        yield words(finding["says"])
        yield ""
    if finding["working"]:
        yield from _fenced(short_working(finding))
    yield from _points(
        [
            *([f"Mend: {words(finding['mend'])}"] if finding["mend"] else []),
            *([f"Why: {words(finding['why'])}"] if finding["why"] else []),
            *(f"Assumed: {words(each)}" for each in few(finding["assumes"])),
            *(f"Source: {words(each)}" for each in finding["sources"]),
            *_departure(finding),
            f"Rule: {code(finding['rule'])}",
            *(f"With it, from the same cause: {_short(each, folded=True)}" for each in headed.folded),
        ]
    )


def _question(question: Question) -> Iterator[str]:
    if question.needs:
        yield f"**{words('; '.join(few([need(each) for each in question.needs])))}** would settle:"
    else:
        yield f"**{words(NO_NEED)}**"
    yield ""
    yield from _points(_short(each) + ("" if question.needs else _why(each)) for each in question.settles)


def _overview(short: Overview) -> Iterator[str]:
    yield f"{FIRST_MEANS}:"
    yield ""
    yield from _points(f"{entry.findings}, {entry.worst}: {words(need(entry.need))}" for entry in short.first)
    if short.dangers:
        yield f"{DANGERS_MEAN}:"
        yield ""
        yield from _points(_alike(alike) for alike in short.dangers)
    if short.others:
        yield f"Unproven below that: {short.others}."
        yield ""


def _alike(alike: tuple[FindingData, ...]) -> str:
    """Findings of one rule in one entry: its title once, then each subject."""
    where = "; ".join(few([f"{subject(each)}, line {each['where']['line']}" for each in alike]))
    return words(f"{alike[0]['title']}: {where}")


def _why(finding: FindingData) -> str:
    return f". {words(finding['says'])}" if finding["says"] else ""


def _set_aside(finding: FindingData) -> Iterator[str]:
    yield f"### {finding['signal']}, set aside: {words(finding['title'])}"
    yield ""
    yield f"{words(subject(finding))}, {code(place(finding))}"
    yield ""
    if finding["says"]:
        yield words(finding["says"])
        yield ""
    yield from _points([*_departure(finding), f"Rule: {code(finding['rule'])}"])


def _departure(finding: FindingData) -> Iterator[str]:
    departure = finding["departure"]
    if departure is not None:
        yield f"Departure: {words(departure['reason'] or '(no reason)')}; {words(record(departure))}"


def _short(finding: FindingData, *, folded: bool = False) -> str:
    lead = judged(finding) if folded else finding["signal"]
    return f"{lead} {words(finding['title'])}: {words(subject(finding))}, {code(place(finding))}"


def _list(title: str, findings: tuple[FindingData, ...]) -> Iterator[str]:
    if not findings:
        return
    yield f"## {title}"
    yield ""
    yield from _points(f"{code(each['rule'])}: {words(subject(each))}, {code(place(each))}" for each in findings)


def _points(entries: Iterable[str]) -> Iterator[str]:
    for entry in entries:
        yield f"- {entry}"
    yield ""


def _fenced(lines: Iterable[str]) -> Iterator[str]:
    """The working as it stands, between fences longer than any run of backticks in it."""
    said = [plain(line).replace("\n", " ") for line in lines]
    fence = "`" * max(3, 1 + max((len(run) for line in said for run in re.findall("`+", line)), default=0))
    yield f"{fence}text"
    yield from said
    yield fence
    yield ""


def words(text: str) -> str:
    """Text on one line with every letter escaped that Markdown would take for markup."""
    return _MARKUP.sub(r"\\\g<0>", one_line(text))


def code(text: str) -> str:
    """A name as inline code."""
    said = one_line(text)
    if "`" not in said:
        return f"`{said}`"
    fence = "`" * (1 + max(len(run) for run in re.findall("`+", said)))
    return f"{fence} {said} {fence}"
