"""A day in steps: how full the house battery is hour by hour, which source brings what, how long it takes to refill.

The file says how much and how long, not when. The hours are taken: sun from 6 to 18 h as half a sine, driving from
9 h, shore from 18 h, uses up to 22 h, energy given in Wh spread over 7 to 23 h (common practice, no source).
Where inputs are ranges the day is gone through twice, with everything against the battery and with everything for it.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.facts.bank import home, loose_bank
from checker.facts.energy import at_the_bank, house_banks, untold_uses
from checker.facts.subject import Subject
from checker.physics.day import DAY_S, Profile, Step, Store, air_temperature, drawn, sunshine, through, window
from checker.quantities import (
    Number,
    Range,
    Unknown,
    Window,
    add,
    between,
    divide,
    greater,
    multiply,
    rounded,
)

HOUR = 3600.0
STEPS = 96
SUNRISE, SUNSET = 6 * HOUR, 18 * HOUR
DRIVES_FROM, PLUGS_IN_AT, BED_TIME = 9 * HOUR, 18 * HOUR, 22 * HOUR
WAKES, SLEEPS = 7 * HOUR, 23 * HOUR
COLDEST_AT, WARMEST_AT, SWING_K = 6 * HOUR, 15 * HOUR, 10.0
LITHIUM_EFFICIENCY, LEAD_EFFICIENCY = 0.97, 0.85
"""Energy stored over energy put in; common practice, no source."""
MOST_DAYS = 14
FULL = 1.0 - 1e-9
SOURCES = ("sun", "driving", "shore")
ASSUMED = (
    "the battery was full at midnight a day before, and that day was like this one",
    "sun from 6 to 18 h as half a sine; driving from 9 h; shore from 18 h",
    "uses told in hours end at 22 h; those told in Wh are spread from 7 to 23 h",
    "97 % of what charges a lithium battery is stored, 85 % of a lead-acid one",
    "on the shore, mains loads are fed by the shore and not by the battery",
)
ASSUMED_TRIP = "all days of the trip are alike, and each begins where the one before ended"
ASSUMED_COLD = "a coldest day: lowest at 6 h, 10 K more at 15 h"


class Use(NamedTuple):
    """One thing that draws: its name, energy of a day at the battery (J), when it starts (s), how long (s)."""

    name: str
    energy: Number
    start: float
    lasts: float
    mains: bool


class DayInputs(NamedTuple):
    """What a day rests on. `left_out` says what was not known and so counted as nothing."""

    capacity: Number
    charge_power: Number
    efficiency: Number
    keep: Number
    uses: tuple[Use, ...]
    brought: tuple[tuple[str, Number, float], ...]  # source, energy (J), hours it lasts (s)
    cold: tuple[bool, ...]
    left_out: tuple[str, ...]


class DayRun(NamedTuple):
    """The steps of one day, gone through with everything against the battery (`worse`) and for it (`better`)."""

    inputs: DayInputs
    worse: tuple[Step, ...]
    better: tuple[Step, ...]

    @property
    def lowest(self) -> Number:
        """Lowest state of charge."""
        return span(min(step.charge for step in self.worse), min(step.charge for step in self.better))

    @property
    def last(self) -> Number:
        """State of charge at the end."""
        return span(self.worse[-1].charge, self.better[-1].charge)


def span(a: float, b: float) -> Number:
    a, b = rounded(a), rounded(b)
    return a if a == b else between(min(a, b), max(a, b))


def day_inputs(s: Subject, steps: int = STEPS) -> DayInputs | Unknown:
    """What the design says of a day; Unknown when even the battery is not known."""
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    banks = {home(s.facts, bank.item): bank for bank in reversed(house_banks(s))}
    if not banks:
        return Unknown("there is no house battery")
    if not isinstance(s.read(s.item.day, "uses"), tuple):
        return Unknown("what a day uses is not told; write `uses` under `day`")
    left_out: list[str] = []
    capacity: Number = 0.0
    power: Number = 0.0
    for bank in banks.values():
        if isinstance(bank.purpose, Unknown):
            return Unknown(f"nobody knows whether {bank.id} is a house battery")
        one = multiply(_energy(bank), s.read(s.item.day, "capacity left"))
        if isinstance(one, Unknown):
            return Unknown(f"the capacity of {bank.id}, or what age and cold leave of it, is not known")
        capacity = _plus(capacity, one)
        limit = multiply(bank.charge_limit, bank.nominal_voltage)
        power = _plus(power, limit if isinstance(limit, float | Range) else float("inf"))
    if greater(capacity, 0.0) is not True:
        return Unknown(f"the capacity of {', '.join(bank.id for bank in banks.values())} may be none at all")
    lead = any(bank.is_lithium is False for bank in banks.values())
    unsure = any(isinstance(bank.is_lithium, Unknown) for bank in banks.values())
    efficiency: Number = LEAD_EFFICIENCY if lead else LITHIUM_EFFICIENCY
    if unsure and not lead:
        efficiency = Range(LEAD_EFFICIENCY, LITHIUM_EFFICIENCY)
    uses = _uses(s, left_out)
    brought = _brought(s, left_out)
    cold = _cold(s, list(banks.values()), steps)
    if cold is None:
        left_out.append("below which temperature the battery may not be charged")
    return DayInputs(
        capacity, power, efficiency, s.read(s.item.day, "keep"), tuple(uses), tuple(brought), cold or (),
        tuple(left_out),
    )  # fmt: skip


def _energy(bank: Subject) -> Number:
    return multiply(bank.capacity, bank.nominal_voltage)


def _plus(a: Number, b: Number) -> Number:
    if isinstance(a, float) and isinstance(b, float):
        return a + b  # endless stays endless
    return add(a, b)


def _uses(s: Subject, left_out: list[str]) -> list[Use]:
    found = []
    for name, given in s.item.day.value("uses"):
        item = s.facts.network.equipment.get(name)
        if item is None:
            continue
        energy, mains = at_the_bank(s, item, given)
        if isinstance(energy, Unknown):
            left_out.append(f"the use of {name}")
            continue
        start, lasts = WAKES, SLEEPS - WAKES
        if not given.text.rstrip().endswith("Wh"):
            hours = _middle(given.value)
            lasts = min(max(hours, 0.0), DAY_S)
            start = 0.0 if lasts >= DAY_S else BED_TIME - lasts
        found.append(Use(name, energy, start, lasts, mains))
    left_out.extend(f"the use of {name}" for name in untold_uses(s))
    standing = s.standing_use
    if isinstance(standing, Unknown):
        left_out.append("what converters draw while they wait")
    else:
        found.append(Use("waiting converters", standing, 0.0, DAY_S, False))
    return found


def _middle(value: Number) -> float:
    if isinstance(value, Range):
        return (value.low + value.high) / 2.0
    return value if isinstance(value, float) else 0.0


def _brought(s: Subject, left_out: list[str]) -> list[tuple[str, Number, float]]:
    facts = {"sun": s.solar_yield, "driving": s.driving_yield, "shore": s.shore_yield}
    keys = {"sun": "sun hours", "driving": "driving", "shore": "shore"}
    found: list[tuple[str, Number, float]] = []
    for name, energy in facts.items():
        hours = s.read(s.item.day, keys[name])
        if isinstance(energy, Unknown) or not isinstance(hours, float | Range):
            left_out.append(f"what {name} brings")
            found.append((name, 0.0, 0.0))
        else:
            found.append((name, 0.0 if energy is None else energy, min(_middle(hours), DAY_S)))
    return found


def _cold(s: Subject, banks: list[Subject], steps: int) -> tuple[bool, ...] | None:
    """Steps of a coldest day in which one of the batteries may not be charged; None when that is not known."""
    blocked = [False] * steps
    for bank in banks:
        allowed, coldest = bank.window_charge, bank.coldest_air
        if not isinstance(allowed, Window) or not isinstance(allowed.low, float):
            return None
        ends = (coldest.low, coldest.high) if isinstance(coldest, Range) else (coldest,)
        if any(not isinstance(end, float) for end in ends):
            return None
        for n in range(steps):
            middle = (n + 0.5) * DAY_S / steps
            cold = {air_temperature(middle, end, SWING_K, COLDEST_AT, WARMEST_AT) < allowed.low for end in ends}
            if len(cold) > 1:
                return None
            blocked[n] = blocked[n] or True in cold
    return tuple(blocked)


def profiles(inputs: DayInputs, steps: int, *, worse: bool) -> tuple[Profile, list[Profile]]:
    """Power of all loads and of each source, W, with the end of every range that is against the battery or for it."""
    shore = _profile("shore", 1.0 if _hours(inputs, "shore") else 0.0, _hours(inputs, "shore"), steps)
    plugged = tuple(min(share * _hours(inputs, "shore"), 1.0) for share in shore)
    loads = [0.0] * steps
    for use in inputs.uses:
        profile = window(_end(use.energy, high=worse), use.start, use.lasts, steps)
        for n, power in enumerate(profile):
            loads[n] += power * (1.0 - plugged[n]) if use.mains else power
    sources = [_profile(name, _end(energy, high=not worse), lasts, steps) for name, energy, lasts in inputs.brought]
    return tuple(loads), sources


def _hours(inputs: DayInputs, name: str) -> float:
    return next(lasts for source, _, lasts in inputs.brought if source == name)


def _profile(name: str, energy: float, lasts: float, steps: int) -> Profile:
    if lasts < 1.0 or energy <= 0.0:
        return (0.0,) * steps
    if name == "sun":
        return sunshine(energy, SUNRISE, SUNSET, steps)
    return window(energy, DRIVES_FROM if name == "driving" else PLUGS_IN_AT, lasts, steps)


def _end(value: Number, *, high: bool) -> float:
    if isinstance(value, Range):
        return value.high if high else value.low
    return value if isinstance(value, float) else 0.0


def day_run(inputs: DayInputs, start: float | None = None, steps: int = STEPS, *, cold: bool = False) -> DayRun:
    """Go through one day from a state of charge at midnight; None: from where a like day after a full battery ended.

    With `cold`, the battery takes nothing in the cold hours.
    """
    found = []
    for worse in (True, False):
        at = _once(inputs, 1.0, steps, cold, worse=worse)[-1].charge if start is None else start
        found.append(_once(inputs, at, steps, cold, worse=worse))
    return DayRun(inputs, found[0], found[1])


def _once(inputs: DayInputs, start: float, steps: int, cold: bool, *, worse: bool) -> tuple[Step, ...]:
    loads, sources = profiles(inputs, steps, worse=worse)
    store = Store(
        _end(inputs.capacity, high=not worse), _end(inputs.charge_power, high=not worse),
        _end(inputs.efficiency, high=not worse),
    )  # fmt: skip
    return through(store, start, loads, sources, inputs.cold if cold else ())


def trip_runs(
    inputs: DayInputs, days: int, start: float | None = None, steps: int = STEPS, *, cold: bool = False
) -> tuple[DayRun, ...]:
    """Days on end, all alike, each from where the one before ended; the first from `start`, None: from full."""
    worse = better = 1.0 if start is None else start
    found: list[DayRun] = []
    for _ in range(days):
        run = DayRun(
            inputs, _once(inputs, worse, steps, cold, worse=True), _once(inputs, better, steps, cold, worse=False)
        )
        worse, better = run.worse[-1].charge, run.better[-1].charge
        found.append(run)
    return tuple(found)


def refill_time(
    inputs: DayInputs, start: float | None = None, steps: int = STEPS, *, cold: bool = False, worse: bool = True
) -> float:
    """Time from the lowest point of a day until the battery is full again, all days alike, s; endless when it is not
    within two weeks. `start` and `cold` as in `day_run`."""
    charge = _once(inputs, 1.0, steps, cold, worse=worse)[-1].charge if start is None else start
    run: list[Step] = []
    lowest_at = 0
    for _ in range(MOST_DAYS):
        run.extend(_once(inputs, charge, steps, cold, worse=worse))
        charge = run[-1].charge
        if len(run) == steps:
            lowest_at = min(range(steps), key=lambda n: run[n].charge)
        for n in range(lowest_at, len(run)):
            if run[n].charge >= FULL:
                return (n - lowest_at) * DAY_S / steps
    return float("inf")


def shares(steps: tuple[Step, ...]) -> tuple[float, ...]:
    """Part of all energy brought in that each source gave; nothing when none gave any."""
    sums = [sum(step.given[n] for step in steps) for n in range(len(SOURCES))]
    whole = sum(sums)
    return tuple(one / whole if whole > 0 else 0.0 for one in sums)


def cycles(run: DayRun, usable: Number) -> Number:
    """Energy drawn from the battery in a day over what may be drawn of it."""
    return divide(span(drawn(run.worse), drawn(run.better)), usable)


def the_day(s: Subject) -> DayRun | Unknown:
    """The day of a design; Unknown when something of it was left out. Kept."""
    kept: DayRun | Unknown | None = s.facts.store.get("day")
    if kept is None or s.facts.recorder is not None:
        inputs = day_inputs(s)
        if isinstance(inputs, Unknown):
            kept = inputs
        elif inputs.left_out:
            kept = Unknown(f"not known of the day: {', '.join(inputs.left_out)}")
        else:
            kept = day_run(inputs)
        s.facts.store["day"] = kept
    return kept
