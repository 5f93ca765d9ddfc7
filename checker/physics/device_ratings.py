"""Standard ratings of fuses and breakers, for codes that allow the next one above the capacity of a conductor."""

from __future__ import annotations

from checker.outofrange import OutOfRange, require_positive
from checker.physics.tables import table

RATINGS = "standard_device_ratings"


def next_standard_rating(capacity_a: float) -> float:
    """The least standard rating that is not below a capacity. [A]

    Parameters
    ----------
    capacity_a : current the conductor carries for ever; above 0. [A]

    Valid for
    ---------
    Capacities up to the last rating of the table, 400 A; a capacity below the first rating gives the first.

    Source
    ------
    NFPA 70, Table 240.6(A). [from memory]
    """
    published = table(RATINGS)
    require_positive("carrying capacity, A,", capacity_a, published.source)
    ratings = published.numbers("rating_a")
    for rating in ratings:
        if rating >= capacity_a:
            return rating
    raise OutOfRange("carrying capacity, A,", capacity_a, f"up to {ratings[-1]:g}", published.source)
