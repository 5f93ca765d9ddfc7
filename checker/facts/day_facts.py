"""What rules ask of a day of the house battery: how low it falls, how long it refills, which source brings what."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.day import cycles, day_inputs, refill_time, shares, span, the_day
from checker.facts.subject import Subject
from checker.physics.day import DAY_S
from checker.quantities import (
    UNKNOWN,
    Number,
    Unknown,
    between,
    show,
)

STEPPED = "energy balance in steps of a quarter of an hour, hours of sun, driving, shore and use as taken"
PRACTICE = "hours of the day and charging efficiency: common practice, no source"


@fact(
    "design",
    "lowest_charge",
    unit="%",
    says="Lowest state of charge of the house battery on the second of two days as told, full before the first.",
    method=STEPPED,
    source=PRACTICE,
)
def lowest_charge(s: Subject) -> Any:
    run = the_day(s)
    return run if isinstance(run, Unknown) else run.lowest


@fact(
    "design",
    "charge_after_day",
    unit="%",
    says="State of charge at the end of that day.",
    method=STEPPED,
    source=PRACTICE,
)
def charge_after_day(s: Subject) -> Any:
    run = the_day(s)
    return run if isinstance(run, Unknown) else run.last


@fact(
    "design",
    "refill_time",
    unit="h",
    says="Time from the lowest point of a day until the house battery is full again, every day alike.",
    method=f"{STEPPED}; no limit when it is not full within two weeks",
    source=PRACTICE,
)
def refill_time_of(s: Subject) -> Any:
    run = the_day(s)
    if isinstance(run, Unknown):
        return run
    slow, fast = refill_time(run.inputs), refill_time(run.inputs, worse=False)
    # With more sun the lowest point comes at another hour, so that more need not be sooner.
    return slow if slow == fast else between(min(slow, fast), max(slow, fast))


@fact(
    "design",
    "cycles_per_day",
    says="Whole cycles that a day costs the house battery.",
    unit="each",
    method=f"energy drawn from it in that day over its usable energy; {STEPPED}",
    source=PRACTICE,
)
def cycles_per_day(s: Subject) -> Any:
    run = the_day(s)
    return run if isinstance(run, Unknown) else cycles(run, s.usable_energy)


@fact(
    "design",
    "sun_share",
    unit="%",
    says="Part of the energy brought in that the sun gives.",
    method=STEPPED,
    source=PRACTICE,
)
def sun_share(s: Subject) -> Any:
    return _share(s, 0)


@fact(
    "design",
    "driving_share",
    unit="%",
    says="Part of the energy brought in that driving gives.",
    method=STEPPED,
    source=PRACTICE,
)
def driving_share(s: Subject) -> Any:
    return _share(s, 1)


@fact(
    "design",
    "shore_share",
    unit="%",
    says="Part of the energy brought in that the shore gives.",
    method=STEPPED,
    source=PRACTICE,
)
def shore_share(s: Subject) -> Any:
    return _share(s, 2)


def _share(s: Subject, n: int) -> Number:
    run = the_day(s)
    if isinstance(run, Unknown):
        return run
    s.note(lambda: f"energy of the day: {show(s.daily_use, 'Wh')}")
    return span(shares(run.worse)[n], shares(run.better)[n])


@fact(
    "design",
    "cold_hours",
    unit="h",
    says="Hours of a coldest day in which the house battery may not be charged.",
    method="air from the lowest temperature at 6 h to 10 K more at 15 h, against its charging window",
    source="the swing of a day: common practice, no source",
)
def cold_hours(s: Subject) -> Any:
    inputs = day_inputs(s)
    if isinstance(inputs, Unknown):
        return inputs
    if not inputs.cold:
        return UNKNOWN
    return sum(inputs.cold) * DAY_S / len(inputs.cold)
