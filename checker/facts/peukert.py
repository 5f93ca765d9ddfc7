"""What a lead-acid house battery gives at the greatest power of a day: less than its rating at twenty hours."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.day import DayRun, the_day
from checker.facts.energy import house_banks
from checker.facts.subject import Subject
from checker.physics.battery import delivered_capacity, peukert_time
from checker.quantities import Number, Range, Unknown, corners, show
from checker.quantities.values import between

RATED_S = 20 * 3600.0
EXPONENT = Range(1.1, 1.3)
"""Rated discharge time of batteries for the house, and exponents of lead acid; common practice, no source."""


@fact(
    "design",
    "lead_share",
    unit="%",
    says="Part of its rated capacity that a lead-acid house battery gives at the greatest power the day draws from it; "
    "none for lithium.",
    method="Peukert's law from a rating at 20 h with an exponent of 1.1 to 1.3; never more than the rating",
    source="Peukert's law (from memory); its exponents: common practice, no source",
)
def lead_share(s: Subject) -> Any:
    lithium = [bank.is_lithium for bank in house_banks(s)]
    if not lithium or all(one is True for one in lithium):
        return None
    if any(one is not False for one in lithium):
        return Unknown("whether all house batteries are lead-acid is not known, or they are not alike")
    run = the_day(s)
    if isinstance(run, Unknown):
        return run
    power = greatest_draw(run)
    s.note(lambda: f"greatest power drawn: {show(power, 'W')}")
    return corners(_share, run.inputs.capacity, power, EXPONENT)


def greatest_draw(run: DayRun) -> Number:
    """Greatest power taken from the battery in a step of the day (W)."""
    worse, better = (max(0.0, *(-step.battery for step in steps)) for steps in (run.worse, run.better))
    return worse if worse == better else between(min(worse, better), max(worse, better))


def _share(energy_j: float, power_w: float, exponent: float) -> float:
    """Both over the nominal voltage are the charge and the current of the law, and only their ratio counts."""
    if power_w * RATED_S <= energy_j:
        return 1.0
    return delivered_capacity(peukert_time(energy_j, RATED_S, power_w, exponent), power_w) / energy_j
