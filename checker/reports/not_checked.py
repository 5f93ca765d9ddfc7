"""What a review did not look at, in sentences for the end of its report."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from checker.reports.words import UNPROVEN, counted

if TYPE_CHECKING:
    from checker.reports.rule_list import Coverage
    from checker.review import Review

MOST_BROKEN = 5
"""So many broken computations are named, the rest are counted."""

ONLY_THE_VEHICLE = (
    "Not checked: what only the vehicle can show, such as workmanship, tightness, damage, and whether it was built "
    "as the file says."
)


def not_checked(review: Review, coverage: Coverage) -> Iterator[str]:
    """One sentence for each thing that this review leaves to others."""
    yield ONLY_THE_VEHICLE
    open_ = coverage["decidable"] - coverage["decidable_covered"]
    yield (
        f"Not checked: {open_} of {coverage['decidable']} published requirements that a design file can decide, "
        f"because no rule covers them; a part of {coverage['decidable_partly']} more; and "
        f"{coverage['total'] - coverage['decidable']} that need somebody who looks or measures."
    )
    if review.counts[UNPROVEN]:
        yield (
            f"Not decided: {counted(review.counts[UNPROVEN], 'verdict')}, because the file does not say enough. "
            "Unproven is not met."
        )
    if review.broken:
        named = "; ".join(f"{one.rule} on {one.kind} {one.id} ({one.cause})" for one in review.broken[:MOST_BROKEN])
        more = len(review.broken) - MOST_BROKEN
        yield (
            f"Broke while it was computed: {named}{f' and {more} more' if more > 0 else ''}. These verdicts are "
            "unproven; please report them."
        )
