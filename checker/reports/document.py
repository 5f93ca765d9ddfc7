"""One review as plain data: what every format is written from, and word for word the JSON report."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, TypedDict

from checker.reports.caution import DEFERRAL, caution
from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, SIGNALS, UNPROVEN

if TYPE_CHECKING:
    from checker.review import Finding, Review

REPORT_FORMAT: Final = 1
"""Rises when a reader of the JSON report would have to change."""


class About(TypedDict):
    """The subject of a finding."""

    kind: str
    id: str


class Place(TypedDict):
    """Where to look in the design file; line and column count from 1, columns in characters."""

    file: str
    line: int
    column: int


class Source(TypedDict):
    """Where a rule comes from; `basis` is seen, memory, or common practice."""

    title: str
    clause: str
    edition: str
    basis: str


class Under(TypedDict):
    """The finding that another one is folded under: they share a cause."""

    rule: str
    about: About


class Departure(TypedDict):
    """The record that sets a breach aside."""

    reason: str
    by: str
    reference: str
    date: str


class FindingData(TypedDict):
    """What one rule says of one subject."""

    rule: str
    verdict: str
    signal: str
    about: About
    where: Place
    title: str
    says: str
    working: list[str]
    why: str
    mend: str
    sources: list[Source]
    covers: list[str]
    needs: list[str]
    assumes: list[str]
    under: Under | None
    departure: Departure | None


class DesignStamp(TypedDict):
    """Which design was reviewed."""

    file: str
    title: str
    sha256: str


class RulebookStamp(TypedDict):
    """Against which rules."""

    rules: int
    code: str
    sha256: str


class Counts(TypedDict):
    """How many verdicts of each kind there are, whether listed or not."""

    breach: dict[str, int]
    unproven: int
    set_aside: int
    met: int
    not_applicable: int


class Document(TypedDict):
    """The whole report."""

    report: int
    caution: str
    design: DesignStamp
    rulebook: RulebookStamp
    version: str
    counts: Counts
    not_checked: list[str]
    findings: list[FindingData]
    deferral: str


def document(review: Review, *, everything: bool = False) -> Document:
    """The review as plain data; `everything` lists what is met or not applicable too, otherwise only counted."""
    wanted = (BREACH, UNPROVEN, SET_ASIDE, MET, NOT_APPLICABLE) if everything else (BREACH, UNPROVEN, SET_ASIDE)
    return {
        "report": REPORT_FORMAT,
        "caution": caution(),
        "design": {
            "file": review.design.file,
            "title": review.design.title,
            "sha256": review.design.sha256,
        },
        "rulebook": {
            "rules": review.rulebook.rules,
            "code": review.rulebook.code,
            "sha256": review.rulebook.sha256,
        },
        "version": review.version,
        "counts": _counts(review),
        "not_checked": not_checked(review),
        "findings": [finding_data(finding) for finding in review.findings if finding.verdict in wanted],
        "deferral": DEFERRAL,
    }


def finding_data(finding: Finding) -> FindingData:
    """One finding as plain data."""
    under, departure = finding.under, finding.departure
    return {
        "rule": finding.rule,
        "verdict": finding.verdict,
        "signal": finding.signal,
        "about": {"kind": finding.about.kind, "id": finding.about.id},
        "where": {"file": finding.where.file, "line": finding.where.line, "column": finding.where.column},
        "title": finding.title,
        "says": finding.says,
        "working": list(finding.working),
        "why": finding.why,
        "mend": finding.mend,
        "sources": [
            {"title": each.title, "clause": each.clause, "edition": each.edition, "basis": each.basis}
            for each in finding.sources
        ],
        "covers": list(finding.covers),
        "needs": list(finding.needs),
        "assumes": list(finding.assumes),
        "under": None if under is None else {"rule": under.rule, "about": {"kind": under.kind, "id": under.id}},
        "departure": None
        if departure is None
        else {
            "reason": departure.reason,
            "by": departure.by,
            "reference": departure.reference,
            "date": departure.date,
        },
    }


def _counts(review: Review) -> Counts:
    counts = review.counts
    return {
        "breach": {signal: counts.breach[signal] for signal in SIGNALS},
        "unproven": counts.unproven,
        "set_aside": counts.set_aside,
        "met": counts.met,
        "not_applicable": counts.not_applicable,
    }
