"""A day of the house as a document: its steps, what it comes to, what it rests on and what was left out."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, TypedDict

from checker.facts.day import ASSUMED, ASSUMED_COLD, ASSUMED_TRIP, HOUR, SOURCES, DayRun, cycles, refill_time, shares
from checker.physics.day import DAY_S, Step
from checker.quantities import Range
from checker.reports.caution import CAUTION

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.facts.subject import Facts

Span = float | list[float | None] | None
"""A number, the two ends of a range, or nothing where it is not known or endless."""


class DayUse(TypedDict):
    """What something uses in a day, Wh."""

    name: str
    energy: Span
    mains: bool


class DaySource(TypedDict):
    """What a source could give in a day, Wh, and its share of what was used: in the worse and the better case."""

    name: str
    could_give: Span
    share: list[float]


class DayLowest(TypedDict):
    """The lowest state of charge, 0 to 1, and the hour of the day at which the worse case reaches it."""

    charge: Span
    at: float


class DayAlternator(TypedDict):
    """An alternator: share of its hot output that is asked, hot output and what is asked in A, belt power in W in the
    worst mode and at idle."""

    name: str
    duty: Span
    hot_output: Span
    asked: Span
    belt_power: Span
    belt_power_at_idle: Span


class DayAutonomy(TypedDict):
    """How long the usable energy lasts without any source, in hours and in days."""

    hours: Span
    days: Span


class DayStep(TypedDict):
    """One step from `hour` on: powers in W of the worse case, and the state of charge in the worse and better case."""

    hour: float
    load: float
    sun: float
    driving: float
    shore: float
    battery: float
    missing: float
    charge: list[float]


class DayOfTrip(TypedDict):
    """One day of a trip: lowest charge and charge at its end, 0 to 1, and what is missing in the worse case, Wh."""

    day: int
    lowest: Span
    end: Span
    missing: float


class DayDocument(TypedDict):
    """A day: powers in W, energies in Wh, times in hours, shares from 0 to 1."""

    day: int
    design: dict[str, str]
    version: str
    caution: str
    assumed: list[str]
    left_out: list[str]
    start: float | None
    cold: bool
    capacity: Span
    usable: Span
    efficiency: Span
    lead_share: Span
    keep: Span
    use: Span
    deficit: Span
    autonomy: DayAutonomy
    cycles: Span
    cold_hours: Span
    uses: list[DayUse]
    sources: list[DaySource]
    lowest: DayLowest
    end: Span
    missing: float
    unused: float
    refill: float | None
    alternators: list[DayAlternator]
    steps: list[DayStep]
    trip: list[DayOfTrip]


def day_document(
    design: Design, facts: Facts, run: DayRun, *, start: float | None, cold: bool, trip: Sequence[DayRun] = ()
) -> dict[str, Any]:
    """All of a day, and of the days of a trip, as plain data; powers in W, energies in Wh, times in hours, shares from
    0 to 1."""
    from checker import __version__

    inputs, whole = run.inputs, facts.subjects("design")[0]
    return {
        "day": 1,
        "design": {"file": design.file, "title": str(design.title.value), "sha256": design.sha256},
        "version": __version__,
        "caution": CAUTION,
        "assumed": [
            *(ASSUMED if start is None else ASSUMED[1:]),
            *((ASSUMED_TRIP,) if trip else ()),
            *((ASSUMED_COLD,) if cold else ()),
        ],
        "left_out": list(inputs.left_out),
        "start": start,
        "cold": cold,
        "capacity": _number(inputs.capacity, HOUR),
        "usable": _number(whole.usable_energy, HOUR),
        "efficiency": _number(inputs.efficiency, 1.0),
        "lead_share": _number(whole.lead_share, 1.0),
        "keep": _number(inputs.keep, 1.0),
        "use": _number(whole.daily_use, HOUR),
        "deficit": _number(whole.energy_deficit, HOUR),
        "autonomy": {"hours": _number(whole.autonomy, HOUR), "days": _number(whole.autonomy, DAY_S)},
        "cycles": _number(cycles(run, whole.usable_energy), 1.0),
        "cold_hours": _number(whole.cold_hours, HOUR),
        "uses": [{"name": use.name, "energy": _number(use.energy, HOUR), "mains": use.mains} for use in inputs.uses],
        "sources": [
            {"name": name, "could_give": _number(energy, HOUR), "share": [worse, better]}
            for (name, energy, _), worse, better in zip(
                inputs.brought, shares(run.worse), shares(run.better), strict=True
            )
        ],
        "lowest": {"charge": _number(run.lowest, 1.0), "at": _lowest_at(run.worse)},
        "end": _number(run.last, 1.0),
        "missing": _energy([step.missing for step in run.worse]),
        "unused": _energy([step.unused for step in run.worse]),
        "refill": _endless(refill_time(inputs, start, len(run.worse), cold=cold) / HOUR),
        "alternators": [_alternator(one) for one in facts.subjects("converter") if one.item.kind == "alternator"],
        "steps": [_step(worse, better) for worse, better in zip(run.worse, run.better, strict=True)],
        "trip": [
            {
                "day": n,
                "lowest": _number(one.lowest, 1.0),
                "end": _number(one.last, 1.0),
                "missing": _energy([step.missing for step in one.worse]),
            }
            for n, one in enumerate(trip, 1)
        ],
    }


def _number(value: Any, unit: float) -> Any:
    """A number in a unit; a range as its two ends; None for what is not known or endless."""
    if isinstance(value, Range):
        return [_endless(value.low / unit), _endless(value.high / unit)]
    return _endless(value / unit) if isinstance(value, float) else None


def _endless(value: float) -> float | None:
    return None if value in (float("inf"), float("-inf")) else float(f"{value:.6g}")


def _energy(powers: list[float]) -> float:
    return float(f"{sum(powers) * DAY_S / len(powers) / HOUR:.6g}")


def _lowest_at(steps: tuple[Step, ...]) -> float:
    length = DAY_S / len(steps)
    return (min(steps, key=lambda step: step.charge).start_s + length) / HOUR


def _alternator(one: Any) -> dict[str, Any]:
    return {
        "name": one.id,
        "duty": _number(one.continuous_share, 1.0),
        "hot_output": _number(one.hot_output, 1.0),
        "asked": _number(one.asked_current, 1.0),
        "belt_power": _number(one.belt_power, 1.0),
        "belt_power_at_idle": _number(one.belt_power_at_idle, 1.0),
    }


def _step(worse: Step, better: Step) -> dict[str, Any]:
    return {
        "hour": float(f"{worse.start_s / HOUR:.6g}"),
        "load": float(f"{worse.load:.6g}"),
        **{name: float(f"{power:.6g}") for name, power in zip(SOURCES, worse.given, strict=True)},
        "battery": float(f"{worse.battery:.6g}"),
        "missing": float(f"{worse.missing:.6g}"),
        "charge": [float(f"{worse.charge:.6g}"), float(f"{better.charge:.6g}")],
    }
