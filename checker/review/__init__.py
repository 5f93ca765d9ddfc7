"""A rulebook put to a design: one verdict for each pair of rule and subject, and findings that show their working."""

from __future__ import annotations

from checker.review.caution import CAUTION
from checker.review.finding import SIGNALS, VERDICTS, About, Departure, Finding, Need, Place, reading_order
from checker.review.run import Review, review

__all__ = [
    "CAUTION", "SIGNALS", "VERDICTS", "About", "Departure", "Finding", "Need", "Place", "Review", "reading_order",
    "review",
]  # fmt: skip
