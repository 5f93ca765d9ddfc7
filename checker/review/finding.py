"""What one rule says of one subject, as plain values: names, no objects, and nothing of how it came about."""

from __future__ import annotations

from typing import NamedTuple

SIGNALS = ("danger", "warning", "caution", "notice")
"""Worst first."""

VERDICTS = ("breach", "unproven", "set aside", "met", "not applicable")
"""In the order in which a reader wants them."""


class Place(NamedTuple):
    """A place in a file, line and column from 1."""

    file: str
    line: int
    column: int


class About(NamedTuple):
    """The subject: its kind and its id."""

    kind: str
    id: str


class Need(NamedTuple):
    """An entry of the design that would decide an unproven verdict: its dotted path, what it says now, where."""

    path: str
    what: str
    line: int
    column: int


class Departure(NamedTuple):
    """A recorded exception."""

    reason: str
    by: str
    reference: str
    date: str


class Finding(NamedTuple):
    """One verdict worth reading.

    `working` are the lines that show how it came about, indented by what they belong to. `needs` are the entries that
    would decide it (unproven only). `assumes` are entries that rest on an assumption, said by us or by the writer.
    `under` is the key of the finding that explains this one, None when it stands for itself.
    """

    rule: str
    verdict: str
    signal: str
    about: About
    where: Place
    title: str
    says: str
    working: tuple[str, ...] = ()
    why: str = ""
    mend: str = ""
    sources: tuple[str, ...] = ()
    covers: tuple[str, ...] = ()
    needs: tuple[Need, ...] = ()
    assumes: tuple[str, ...] = ()
    under: str | None = None
    departure: Departure | None = None

    @property
    def key(self) -> str:
        """Identity from run to run: no line, no wording."""
        return f"{self.rule}:{self.about.kind}:{self.about.id}"


def reading_order(finding: Finding) -> tuple[int, int, int, str, str, str]:
    """The one order of findings in every report."""
    return (
        SIGNALS.index(finding.signal),  # what can kill comes first
        VERDICTS.index(finding.verdict),  # what is wrong before what is not known
        finding.where.line,  # then as one walks through the file
        finding.rule,  # two rules on one line
        finding.about.kind,  # subjects of one name
        finding.about.id,  # subjects of one line
    )
