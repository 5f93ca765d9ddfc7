"""The report for a terminal: 80 columns, the signal in words, colour only as a help to find them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from checker.reports.caution import MET_MEANS
from checker.reports.overview import Overview, asked, overview
from checker.reports.paragraphs import LABEL, Painter, heading, labelled, paragraph
from checker.reports.plain import one_line
from checker.reports.sections import Headed, Question, same_title, sections
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
    counted,
)

if TYPE_CHECKING:
    from checker.reports.document import Document, FindingData

_IN = " " * LABEL


def text(document: Document, *, colour: bool = False, whole: bool = False) -> Iterator[str]:
    """The report line by line, each with its line end; `whole` tells very many questions one by one too."""
    for line in _lines(document, Painter(colour), whole):
        yield line + "\n"


def _lines(document: Document, paint: Painter, whole: bool) -> Iterator[str]:
    yield from paragraph(document["caution"])
    yield ""
    yield from _head(document, paint)
    parts = sections(document)
    if parts.breaches:
        yield from heading("Breaches, worst first", paint)
        if any(len(headed.finding["working"]) > SHORT for headed in parts.breaches):
            yield from paragraph(how_to_see_all(document["design"]["file"]))
            yield ""
        for headed in parts.breaches:
            yield from _breach(headed, paint)
    if parts.questions:
        yield from heading("Questions to settle", paint)
        unproven = document["counts"]["unproven"]
        short = None if whole else overview(parts.questions)
        if short is None:
            yield from paragraph(QUESTIONS_MEAN)
            yield ""
            for question in parts.questions:
                yield from _question(question, paint)
        else:
            yield from paragraph(f"{asked(parts.questions, unproven)} {SHORT_MEANS}")
            yield ""
            yield from _overview(short, paint)
            yield from paragraph(how_to_see_questions(document["design"]["file"]))
            yield ""
    if parts.set_aside:
        yield from heading("Set aside: broken, with a recorded departure", paint)
        for finding in parts.set_aside:
            yield from _set_aside(finding, paint)
    yield from _list(f"Met: {MET_MEANS}", parts.met, paint)
    yield from _list("Not applicable", parts.not_applicable, paint)
    yield from heading("Count", paint)
    yield from _count(document, paint)
    yield ""
    yield from paragraph(document["deferral"])


def _head(document: Document, paint: Painter) -> Iterator[str]:
    design, rulebook = document["design"], document["rulebook"]
    yield from (paint.strong(line) for line in paragraph(design["title"] or "(no title)"))
    yield from paragraph(
        f"{design['file']}, reviewed against {counted(rulebook['rules'], 'rule')}, code {rulebook['code'] or '(none)'}"
    )
    yield ""


def _breach(headed: Headed, paint: Painter) -> Iterator[str]:
    finding = headed.finding
    yield from _title(finding, paint)
    yield from paragraph(finding["says"], _IN)
    yield from labelled("Mend", [finding["mend"]])
    yield from labelled("Why", [finding["why"]])
    yield from labelled("Working", short_working(finding))
    yield from labelled("Assumed", few(finding["assumes"]))
    yield from labelled("Source", finding["sources"])
    yield from _departure(finding)
    yield from labelled("Rule", [finding["rule"]])
    if headed.folded:
        yield from paragraph("With it, from the same cause:", _IN)
        for folded in headed.folded:
            yield from _short(folded, paint, _IN + "  ", folded=True)
    yield ""


def _title(finding: FindingData, paint: Painter) -> Iterator[str]:
    """The signal word, the rule's title, and where to look."""
    signal = finding["signal"]
    first, *rest = paragraph(finding["title"], _IN)
    yield paint.signal(signal) + " " * (LABEL - len(signal)) + paint.strong(first[LABEL:])
    yield from (_IN + paint.strong(line[LABEL:]) for line in rest)
    yield from paragraph(f"{subject(finding)}, {place(finding)}", _IN)


def _short(finding: FindingData, paint: Painter, indent: str, *, folded: bool = False) -> Iterator[str]:
    """One finding as one line (more when it is long): signal, title, subject, place."""
    signal = finding["signal"]
    words = f"{judged(finding) if folded else signal} {finding['title']}: {subject(finding)}, {place(finding)}"
    first, *rest = paragraph(words, indent, indent + "  ")
    yield first.replace(signal, paint.signal(signal), 1)
    yield from rest


def _question(question: Question, paint: Painter) -> Iterator[str]:
    yield from _needs(few([need(each) for each in question.needs]) or [NO_NEED], paint)
    if question.needs:
        yield from paragraph("would settle:", "  ")
        for alike in same_title(question.settles):
            yield from _settled(alike, paint)
    else:
        for finding in question.settles:
            yield from _short(finding, paint, "    ")
            yield from paragraph(finding["says"], "      ")
    yield ""


def _overview(short: Overview, paint: Painter) -> Iterator[str]:
    yield from paragraph(f"{FIRST_MEANS}:")
    for entry in short.first:
        lead = f"  {entry.findings:>4}  {entry.worst:<{LABEL}}"
        first, *rest = paragraph(f"{lead}{need(entry.need)}", "", " " * len(lead))
        yield first.replace(entry.worst, paint.signal(entry.worst), 1)
        yield from rest
    yield ""
    if short.dangers:
        yield from paragraph(f"{DANGERS_MEAN}:")
        for alike in short.dangers:
            yield from _settled(alike, paint, "  ")
        yield ""
    if short.others:
        yield from paragraph(f"Unproven below that: {short.others}.")


def _settled(alike: Sequence[FindingData], paint: Painter, indent: str = "    ") -> Iterator[str]:
    """Findings of one rule in one entry: its title once, then each subject with its line of the design file."""
    signal = alike[0]["signal"]
    where = "; ".join(few([f"{subject(each)}, line {each['where']['line']}" for each in alike]))
    first, *rest = paragraph(f"{signal} {alike[0]['title']}: {where}", indent, indent + "  ")
    yield first.replace(signal, paint.signal(signal), 1)
    yield from rest


def _needs(needs: Iterable[str], paint: Painter) -> Iterator[str]:
    for number, words in enumerate(needs):
        lead = "? " if number == 0 else "  "
        for line in paragraph(f"{lead}{words}", "", "  "):
            yield paint.strong(line)


def _set_aside(finding: FindingData, paint: Painter) -> Iterator[str]:
    yield from _title(finding, paint)
    yield from paragraph(finding["says"], _IN)
    yield from _departure(finding)
    yield from labelled("Rule", [finding["rule"]])
    yield ""


def _departure(finding: FindingData) -> Iterator[str]:
    """The recorded departure, whether it sets the breach aside or lacks something for that."""
    departure = finding["departure"]
    if departure is not None:
        yield from labelled("Departed", [departure["reason"] or "(no reason)"])
        yield from labelled("", [record(departure)])


def _list(title: str, findings: tuple[FindingData, ...], paint: Painter) -> Iterator[str]:
    if not findings:
        return
    yield from heading(title, paint)
    for finding in findings:
        yield from paragraph(f"{finding['rule']}: {subject(finding)}, {place(finding)}", "  ", "    ")
    yield ""


def _count(document: Document, paint: Painter) -> Iterator[str]:
    counts = tally(document["counts"])
    by_signal = document["counts"]["breach"]
    said = ", ".join(f"{signal} {by_signal[signal]}" for signal in SIGNALS if by_signal[signal])
    width = max(len(str(counts[verdict])) for verdict in VERDICTS)
    for verdict in VERDICTS:
        meaning = said if verdict == BREACH and said else VERDICT_MEANS[verdict]
        line = f"  {verdict:<16}{counts[verdict]:>{width}}  {meaning}"
        yield paint.strong(line) if verdict in (BREACH, UNPROVEN) and counts[verdict] else line
    for sentence in document["not_checked"]:
        yield ""
        yield from paragraph(sentence)
    yield ""
    yield from paragraph(f"design sha256 {document['design']['sha256']}", "", "  ")
    yield from paragraph(f"rules  sha256 {one_line(document['rulebook']['sha256'])}", "", "  ")
    yield f"fitout {document['version']}"
