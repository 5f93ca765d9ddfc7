"""One review as plain data: what every format is written from, and word for word the JSON report."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Final, TypedDict

from checker.reports.caution import DEFERRAL
from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, SIGNALS, UNPROVEN, VERDICTS

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


class Need(TypedDict):
    """An entry of the design that would decide an unproven verdict: its dotted path, what it says now, where."""

    path: str
    what: str
    line: int
    column: int


class Departure(TypedDict):
    """The record that sets a breach aside."""

    reason: str
    by: str
    reference: str
    date: str


class FindingData(TypedDict):
    """What one rule says of one subject; `key` names it from run to run, without line or wording."""

    key: str
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
    sources: list[str]
    covers: list[str]
    needs: list[Need]
    assumes: list[str]
    under: str | None
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


def document(review: Review, *, everything: bool = False, not_checked: Iterable[str] = ()) -> Document:
    """The review as plain data.

    `everything` lists what is met or not applicable too, as far as the review kept it; otherwise that is only
    counted. `not_checked` are sentences that say what the review did not look at.
    """
    wanted = VERDICTS if everything else (BREACH, UNPROVEN, SET_ASIDE)
    return {
        "report": REPORT_FORMAT,
        "caution": review.caution,
        "design": {
            "file": review.design["file"],
            "title": review.design["title"],
            "sha256": review.design["sha256"],
        },
        "rulebook": {
            "rules": review.rulebook["rules"],
            "code": review.rulebook["code"],
            "sha256": review.rulebook["sha256"],
        },
        "version": review.version,
        "counts": _counts(review),
        "not_checked": list(not_checked),
        "findings": [finding_data(finding) for finding in review.findings if finding.verdict in wanted],
        "deferral": DEFERRAL,
    }


def finding_data(finding: Finding) -> FindingData:
    """One finding as plain data."""
    departure = finding.departure
    return {
        "key": finding.key,
        "rule": finding.rule,
        "verdict": finding.verdict,
        "signal": finding.signal.upper(),
        "about": {"kind": finding.about.kind, "id": finding.about.id},
        "where": {"file": finding.where.file, "line": finding.where.line, "column": finding.where.column},
        "title": finding.title,
        "says": finding.says,
        "working": list(finding.working),
        "why": finding.why,
        "mend": finding.mend,
        "sources": list(finding.sources),
        "covers": list(finding.covers),
        "needs": [
            {"path": each.path, "what": each.what, "line": each.line, "column": each.column} for each in finding.needs
        ],
        "assumes": list(finding.assumes),
        "under": finding.under,
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
    breaches = [finding.signal.upper() for finding in review.findings if finding.verdict == BREACH]
    return {
        "breach": {signal: breaches.count(signal) for signal in SIGNALS},
        "unproven": review.counts[UNPROVEN],
        "set_aside": review.counts[SET_ASIDE],
        "met": review.counts[MET],
        "not_applicable": review.counts[NOT_APPLICABLE],
    }
