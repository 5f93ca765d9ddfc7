"""A review that leaves very much open, told on one screen: what to answer first, which dangers are unproven."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final, NamedTuple

from checker.reports.sections import Question, same_title
from checker.reports.words import SIGNALS, counted, rank

if TYPE_CHECKING:
    from checker.reports.document import FindingData, Need

MANY: Final = 24
"""More questions than these are told in short: nobody reads two thousand lines in a workshop."""

FIRST: Final = 12
"""So many entries are named as those to answer first."""


class Entry(NamedTuple):
    """An entry of the design file, how many unproven findings speak of it, and the worst of their signals."""

    need: Need
    findings: int
    worst: str


class Overview(NamedTuple):
    """The questions in short."""

    first: tuple[Entry, ...]
    dangers: tuple[tuple[FindingData, ...], ...]
    """Unproven findings of the worst signal, those of one rule together."""
    others: str
    """How many stand at the lesser signals, in words."""


def overview(questions: Sequence[Question]) -> Overview | None:
    """The questions in short, or None where they are few enough to be read one by one."""
    if len(questions) <= MANY:
        return None
    unproven = [finding for question in questions for finding in question.settles]
    by_signal = {signal: [each for each in unproven if each["signal"] == signal] for signal in SIGNALS}
    worst = SIGNALS[0]
    return Overview(
        first=_first(questions),
        dangers=same_title(by_signal[worst]),
        others=", ".join(f"{signal} {len(by_signal[signal])}" for signal in SIGNALS[1:] if by_signal[signal]),
    )


def asked(questions: Sequence[Question], unproven: int) -> str:
    """How much is open, of `unproven` verdicts in all: those that a breach explains stand under it."""
    above = unproven - sum(len(question.settles) for question in questions)
    told = f", {above} of them under the breaches that explain them" if above else ""
    return f"{counted(unproven, 'finding is', 'findings are')} unproven{told}."


def _first(questions: Sequence[Question]) -> tuple[Entry, ...]:
    """The entries that most findings speak of; of two alike the one whose findings are worse, then the earlier."""
    needs: dict[str, Need] = {}
    speak: dict[str, list[str]] = {}
    for question in questions:
        for need in question.needs:
            needs.setdefault(need["path"], need)
            speak.setdefault(need["path"], []).extend(each["signal"] for each in question.settles)
    entries = [Entry(needs[path], len(signals), min(signals, key=rank)) for path, signals in speak.items()]
    return tuple(sorted(entries, key=lambda each: (-each.findings, rank(each.worst)))[:FIRST])
