"""The words of a report: signals with their meaning and rank, verdicts with what they claim."""

from __future__ import annotations

from typing import Final

from checker.reports.caution import MET_MEANS

SIGNALS: Final = ("DANGER", "WARNING", "CAUTION", "NOTICE")
"""Worst first; the signal words of ANSI Z535.6 and ISO 3864-2."""

SIGNAL_MEANS: Final = {
    "DANGER": "will kill or maim if not avoided",
    "WARNING": "could kill or maim",
    "CAUTION": "could injure slightly or moderately",
    "NOTICE": "damage or malfunction, no injury",
}

BREACH, UNPROVEN, SET_ASIDE, MET, NOT_APPLICABLE = "breach", "unproven", "set aside", "met", "not applicable"
VERDICTS: Final = (BREACH, UNPROVEN, SET_ASIDE, MET, NOT_APPLICABLE)

VERDICT_MEANS: Final = {
    BREACH: "the design breaks the rule",
    UNPROVEN: "the file does not say enough",
    SET_ASIDE: "broken, with a recorded departure",
    MET: MET_MEANS,
    NOT_APPLICABLE: "the rule does not concern this subject",
}

QUESTIONS_MEAN: Final = (
    "Unproven: the file does not say enough. Each of these, looked at or measured, would settle what stands "
    "below it; the signal word says how bad a breach would be."
)

SHORT_MEANS: Final = "The file does not say enough; unproven is not met."

FIRST_MEANS: Final = "Answer these entries of the file first; in front stands how many findings speak of each"

DANGERS_MEAN: Final = "Unproven, and a DANGER if broken"

NO_NEED: Final = "No entry of the file was found that would settle these; each says why."


def rank(signal: str) -> int:
    """Place of a signal word, 0 for the worst."""
    return SIGNALS.index(signal)


def counted(number: int, one: str, many: str = "") -> str:
    """`1 breach`, `2 breaches`."""
    return f"{number} {one if number == 1 else many or one + 's'}"
