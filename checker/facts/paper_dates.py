"""Dates of the papers against each other: a certificate older than what it certifies, an inspection that is overdue."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.papers import months, paper
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, every

SLACK_MONTHS = 12
"""How much newer the file may be than the certificate: common practice, no source."""


@fact(
    "design",
    "certificate_covers_the_work",
    type="yes/no",
    says="The electrical certificate was given after the vehicle was built, and for this fit-out.",
    method="its date against the date of build, and of a design also against the date of the file less a year",
    source="the year: common practice, no source",
)
def certificate_covers_the_work(s: Subject) -> Truth:
    given = months(paper(s, "certificate.date"))
    if given is None:
        return Unknown("when the certificate was given is not told")
    found = [_not_before(given, months(s.read(s.item.vehicle, "built")), 0, "when the vehicle was built is not told")]
    if s.purpose == "design":
        found.append(_not_before(given, months(s.use("date", s.item.date)), SLACK_MONTHS, "the file bears no date"))
    return every(found)


@fact(
    "design",
    "inspection_ahead",
    type="yes/no",
    says="The next inspection is due after the date of the file.",
    method="years and months of the two dates",
)
def inspection_ahead(s: Subject) -> Any:
    due = paper(s, "next inspection")
    if due is None:
        return None
    when = months(due)
    if when is None:
        return Unknown("when the next inspection is due is not told")
    return _not_before(when, months(s.use("date", s.item.date)), 0, "the file bears no date")


def _not_before(one: tuple[int, int], other: tuple[int, int] | None, slack: int, why: str) -> Truth:
    """Whether a date, told to the month or the year, lies in or after the month of another less some months."""
    if other is None:
        return Unknown(why)
    if one[0] >= other[1] - slack:
        return True
    return False if one[1] < other[0] - slack else Unknown("the dates are not told to the month")
