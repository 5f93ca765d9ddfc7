"""Phrases that several formats share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from checker.reports.plain import one_line
from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, UNPROVEN

if TYPE_CHECKING:
    from checker.reports.document import Counts, Departure, FindingData, Source

BASIS_SAYS = {"memory": "from memory: look it up before relying on it", "practice": "common practice, no source"}


def subject(finding: FindingData) -> str:
    """`conductor galley-feed`."""
    return one_line(f"{finding['about']['kind']} {finding['about']['id']}")


def place(finding: FindingData) -> str:
    """`coach.fitout.yaml:41:9`."""
    where = finding["where"]
    return one_line(f"{where['file']}:{where['line']}:{where['column']}")


def source(given: Source) -> str:
    """Title, clause and edition, and a warning when nobody has held it against the text."""
    named = ", ".join(one_line(part) for part in (given["title"], given["clause"], given["edition"]) if part)
    says = BASIS_SAYS.get(given["basis"], "")
    return f"{named} ({says})" if says else named


def record(departure: Departure) -> str:
    """Who recorded a departure, under which licence or note, and when."""
    parts = (departure["by"], departure["reference"], departure["date"])
    return ", ".join(one_line(part) for part in parts if part)


def tally(counts: Counts) -> dict[str, int]:
    """Number of verdicts by their word."""
    return {
        BREACH: sum(counts["breach"].values()),
        UNPROVEN: counts["unproven"],
        SET_ASIDE: counts["set_aside"],
        MET: counts["met"],
        NOT_APPLICABLE: counts["not_applicable"],
    }
