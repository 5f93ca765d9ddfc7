"""What a review's exit status says."""

from __future__ import annotations

from typing import TYPE_CHECKING

from checker.commands import FOUND
from checker.reports.words import SIGNALS, rank

if TYPE_CHECKING:
    from checker.reports.document import Document


def exit_status(report: Document, at_least: str) -> int:
    """1 when a breach has the signal `at_least` or a worse one, else 0; what is unproven is counted, not judged."""
    breaches = report["counts"]["breach"]
    return FOUND if any(breaches[signal] for signal in SIGNALS[: rank(at_least) + 1]) else 0
