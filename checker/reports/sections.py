"""Findings put in the order people read them: breaches with what they cause, questions to settle, the rest."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, UNPROVEN, rank

if TYPE_CHECKING:
    from checker.reports.document import Document, FindingData, Need


class Headed(NamedTuple):
    """A finding and those folded under it, which share its cause."""

    finding: FindingData
    folded: tuple[FindingData, ...]


class Question(NamedTuple):
    """What to look at, measure or look up, and the verdicts that it would settle."""

    needs: tuple[Need, ...]
    settles: tuple[FindingData, ...]


class Sections(NamedTuple):
    """A report's findings by section."""

    breaches: tuple[Headed, ...]
    questions: tuple[Question, ...]
    set_aside: tuple[FindingData, ...]
    met: tuple[FindingData, ...]
    not_applicable: tuple[FindingData, ...]


def sections(document: Document) -> Sections:
    """Sort the findings of a report into its sections."""
    by_verdict: dict[str, list[FindingData]] = {
        verdict: [] for verdict in (BREACH, UNPROVEN, SET_ASIDE, MET, NOT_APPLICABLE)
    }
    for finding in document["findings"]:
        by_verdict[finding["verdict"]].append(finding)
    breaches = _folded(by_verdict[BREACH], by_verdict[UNPROVEN])
    folded = {finding["key"] for headed in breaches for finding in headed.folded}
    return Sections(
        breaches=breaches,
        questions=questions(finding for finding in by_verdict[UNPROVEN] if finding["key"] not in folded),
        set_aside=tuple(by_verdict[SET_ASIDE]),
        met=tuple(by_verdict[MET]),
        not_applicable=tuple(by_verdict[NOT_APPLICABLE]),
    )


def _folded(breaches: list[FindingData], unproven: list[FindingData]) -> tuple[Headed, ...]:
    """Breaches worst first, each with what it explains; one whose head is not among them stands on its own."""
    heads = {finding["key"] for finding in breaches if finding["under"] is None}
    under: dict[str, list[FindingData]] = {}
    alone = []
    for finding in sorted(breaches, key=lambda each: rank(each["signal"])):  # stable: keeps the review's order
        parent = finding["under"]
        if parent is not None and parent in heads:
            under.setdefault(parent, []).append(finding)
        else:
            alone.append(finding)
    for finding in unproven:
        if finding["under"] in heads:
            under.setdefault(str(finding["under"]), []).append(finding)
    return tuple(Headed(finding, tuple(under.get(finding["key"], ()))) for finding in alone)


def questions(unproven: Iterable[FindingData]) -> tuple[Question, ...]:
    """Unproven verdicts by what would settle them: first what matters most, then what settles most."""
    groups: dict[tuple[str, ...], list[FindingData]] = {}
    for finding in unproven:
        groups.setdefault(tuple(need["path"] for need in finding["needs"]), []).append(finding)
    found = [
        Question(tuple(group[0]["needs"]), tuple(sorted(group, key=lambda each: rank(each["signal"]))))
        for group in groups.values()
    ]
    return tuple(sorted(found, key=lambda each: (rank(each.settles[0]["signal"]), -len(each.settles))))


def same_title(findings: Iterable[FindingData]) -> tuple[tuple[FindingData, ...], ...]:
    """Findings of one rule together, in the order in which the rules first come."""
    groups: dict[str, list[FindingData]] = {}
    for finding in findings:
        groups.setdefault(finding["rule"], []).append(finding)
    return tuple(tuple(group) for group in groups.values())
