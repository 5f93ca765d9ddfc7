"""The standing caution: said at the top of every report and page, and again at its end."""

from __future__ import annotations

CAUTION = (
    "This is a second pair of eyes on a design file; it does not certify.",
    "Local codes, the equipment maker's instructions and a licensed electrician decide.",
    "Mains and high-current DC kill and burn: isolate and prove dead before touching.",
)
"""Three sentences, in this order, before anything else a report says."""

DEFERRAL = (
    "Nothing here certifies the design or the vehicle. Where local codes, the equipment maker's instructions "
    "or a licensed electrician say otherwise, they are right."
)
"""The last words of every report."""

MET_MEANS = "this rule found nothing against it"
"""All that the verdict `met` says."""


def caution() -> str:
    """The standing caution in one line."""
    return " ".join(CAUTION)
