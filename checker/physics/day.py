"""A battery through a day in steps: what flows in and out, how full it is, what is missing and what is left over.

Energy in joule, power in watt, time in second from midnight. All profiles are means over the steps, so that the
energy of a day is exact whatever the step.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from checker.outofrange import require, require_positive

DAY_S = 86_400.0
SOURCE = "energy balance of a battery in steps"
Profile = tuple[float, ...]


class Store(NamedTuple):
    """A battery: energy when full [J], greatest charging power [W], energy stored over energy put in [1]."""

    capacity_j: float
    charge_w: float
    efficiency: float


class Step(NamedTuple):
    """One step: when it starts [s], state of charge at its end [1], powers over it [W].

    `given` is what each source gave, in order; `battery` is what the battery took (above 0) or gave; `missing` is
    what the loads asked and nothing gave; `unused` is what sources could have given.
    """

    start_s: float
    charge: float
    load: float
    given: Profile
    battery: float
    missing: float
    unused: float


def through(
    store: Store,
    start: float,
    loads_w: Profile,
    sources_w: Sequence[Profile],
    blocked: Sequence[bool] = (),
) -> tuple[Step, ...]:
    """Step through the profiles. [1], [W]

    Sources are asked in order, first for the loads and then for the battery; a battery that is full, or blocked by
    cold, takes nothing, and an empty one gives nothing.

    Parameters
    ----------
    start : state of charge at the start, 0 to 1. [1]
    loads_w : power taken, one mean for each step; any number of steps of one length. [W]
    sources_w : for each source what it could give. [W]
    blocked : steps in which the battery must not be charged; empty for none.

    Raises
    ------
    OutOfRange : a state of charge or an efficiency outside 0 to 1, or a capacity not above 0.
    """
    require_positive("capacity, J,", store.capacity_j, SOURCE)
    require("state of charge", start, 0.0, 1.0, SOURCE)
    require("charging efficiency", store.efficiency, math.nextafter(0.0, 1.0), 1.0, SOURCE)
    step_s = DAY_S / steps_in_day(loads_w)
    held = start * store.capacity_j
    found = []
    for index, load in enumerate(loads_w):
        may = not (blocked and blocked[index % len(blocked)])
        room = (store.capacity_j - held) / store.efficiency / step_s if may else 0.0
        wanted = load + min(room, store.charge_w)
        given, left = [], wanted
        for profile in sources_w:
            taken = min(profile[index], left)
            given.append(taken)
            left -= taken
        brought = sum(given)
        if brought >= load:
            battery, missing = brought - load, 0.0
            held += battery * store.efficiency * step_s
        else:
            battery = -min(load - brought, held / step_s)
            missing = load - brought + battery
            held += battery * step_s
        held = min(max(held, 0.0), store.capacity_j)
        could = sum(profile[index] for profile in sources_w)
        found.append(
            Step(index * step_s, held / store.capacity_j, load, tuple(given), battery, missing, could - brought)
        )
    return tuple(found)


def steps_in_day(profile: Profile) -> int:
    """Steps of one day; a profile of several days is cut by its caller."""
    require_positive("steps", float(len(profile)), SOURCE)
    return len(profile)


def window(energy_j: float, start_s: float, lasts_s: float, steps: int) -> Profile:
    """A steady power from a time on, past midnight if need be, as means over the steps. [W]

    Parameters
    ----------
    lasts_s : a second to 24 h; with 0 there is nothing. [s]
    """
    if lasts_s == 0.0:
        return (0.0,) * steps
    require("time, s,", lasts_s, 1.0, DAY_S, SOURCE)
    power, step_s = energy_j / lasts_s, DAY_S / steps
    start_s %= DAY_S
    parts = [(start_s, min(start_s + lasts_s, DAY_S)), (0.0, max(start_s + lasts_s - DAY_S, 0.0))]
    return tuple(
        power * sum(max(0.0, min(end, (n + 1) * step_s) - max(begin, n * step_s)) for begin, end in parts) / step_s
        for n in range(steps)
    )


def sunshine(energy_j: float, rises_s: float, sets_s: float, steps: int) -> Profile:
    """Half a sine from sunrise to sunset that brings an energy, as means over the steps. [W]"""
    require("sunset after sunrise, s,", sets_s - rises_s, 1.0, DAY_S, SOURCE)
    step_s = DAY_S / steps

    def brought(time_s: float) -> float:
        share = min(max((time_s - rises_s) / (sets_s - rises_s), 0.0), 1.0)
        return energy_j * (1.0 - math.cos(math.pi * share)) / 2.0

    return tuple((brought((n + 1) * step_s) - brought(n * step_s)) / step_s for n in range(steps))


def air_temperature(time_s: float, coldest_c: float, swing_k: float, coldest_s: float, warmest_s: float) -> float:
    """Air temperature through a day: two half cosines between the coldest and the warmest hour. [°C]"""
    require("warmest after coldest, s,", warmest_s - coldest_s, 1.0, DAY_S - 1.0, SOURCE)
    since = (time_s - coldest_s) % DAY_S
    rising = warmest_s - coldest_s
    share = since / rising if since <= rising else 1.0 - (since - rising) / (DAY_S - rising)
    return coldest_c + swing_k * (1.0 - math.cos(math.pi * share)) / 2.0


def energy_of(profile: Profile) -> float:
    """Energy of a day's profile. [J]"""
    return math.fsum(profile) * DAY_S / len(profile)


def drawn(steps: Sequence[Step]) -> float:
    """Energy that a battery gave over the steps of a day. [J]"""
    return math.fsum(max(-step.battery, 0.0) for step in steps) * DAY_S / len(steps)
