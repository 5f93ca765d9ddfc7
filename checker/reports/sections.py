"""Findings put in the order people read them: breaches with what they cause, questions to settle, the rest."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, UNPROVEN, rank

if TYPE_CHECKING:
    from checker.reports.document import Document, FindingData

Identity = tuple[str, str, str]
"""Rule, kind and id: the same finding from run to run, whatever line it stands on."""


class Headed(NamedTuple):
    """A finding and those folded under it, which share its cause."""

    finding: FindingData
    folded: tuple[FindingData, ...]


class Question(NamedTuple):
    """What to look at, measure or look up, and the verdicts that it would settle."""

    needs: tuple[str, ...]
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
    return Sections(
        breaches=_folded(by_verdict[BREACH]),
        questions=questions(by_verdict[UNPROVEN]),
        set_aside=tuple(by_verdict[SET_ASIDE]),
        met=tuple(by_verdict[MET]),
        not_applicable=tuple(by_verdict[NOT_APPLICABLE]),
    )


def identity(finding: FindingData) -> Identity:
    """What the finding is about, without its place in the file."""
    return finding["rule"], finding["about"]["kind"], finding["about"]["id"]


def _folded(breaches: list[FindingData]) -> tuple[Headed, ...]:
    """Worst first; a finding whose head is no breach in this list stands on its own, so that none is lost."""
    heads = {identity(finding) for finding in breaches if finding["under"] is None}
    under: dict[Identity, list[FindingData]] = {}
    alone = []
    for finding in sorted(breaches, key=lambda each: rank(each["signal"])):  # stable: keeps the review's order
        parent = finding["under"]
        key = None if parent is None else (parent["rule"], parent["about"]["kind"], parent["about"]["id"])
        if key is not None and key in heads:
            under.setdefault(key, []).append(finding)
        else:
            alone.append(finding)
    return tuple(Headed(finding, tuple(under.get(identity(finding), ()))) for finding in alone)


def questions(unproven: Iterable[FindingData]) -> tuple[Question, ...]:
    """Unproven verdicts by what would settle them: first what matters most, then what settles most."""
    groups: dict[tuple[str, ...], list[FindingData]] = {}
    for finding in unproven:
        groups.setdefault(tuple(finding["needs"]), []).append(finding)
    found = [
        Question(needs, tuple(sorted(group, key=lambda each: rank(each["signal"])))) for needs, group in groups.items()
    ]
    return tuple(sorted(found, key=lambda each: (rank(each.settles[0]["signal"]), -len(each.settles))))
