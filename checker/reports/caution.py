"""The standing caution: said at the top of every report and page, and who decides again at its end."""

from __future__ import annotations

from checker.review.caution import CAUTION

__all__ = ["CAUTION", "DEFERRAL", "MET_MEANS"]

DEFERRAL = (
    "Nothing here certifies the design or the vehicle. Where local codes, the equipment maker's instructions "
    "or a licensed electrician say otherwise, they are right."
)
"""The last words of every report."""

MET_MEANS = "this rule found nothing against it"
"""All that the verdict `met` says."""
