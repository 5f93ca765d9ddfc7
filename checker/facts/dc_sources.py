"""Alternators, chargers and solar controllers of a design as sources of its direct-current network in one mode."""

from __future__ import annotations

from math import inf

from checker.circuit.dc_elements import Element, Supply
from checker.circuit.elements import Source
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.contacts import engine_runs, is_word
from checker.facts.dc_amounts import (
    SETTING_SHARE,
    SETTINGS_SAY,
    Amount,
    Case,
    about,
    exactly,
    number,
    possible,
    smaller,
    stated,
)
from checker.facts.dc_plan import Heat, Plan
from checker.outofrange import OutOfRange
from checker.physics.alternator import hot_output, output_from_points
from checker.quantities import Window

DROOP_V = 0.1  # by how much a regulated voltage sags at rated current
HOT_SPREAD = (0.9, 1.15)
PULLEY = (2.0, 2.6, 3.2)
IDLE_RPM = (650.0, 750.0, 850.0)
MINUTE_S = 60.0
SUN_SHARE = (0.6, 0.8, 1.0)
PRACTICE = "common practice, no source"


def add_sources(plan: Plan) -> None:
    """Every source that gives in the mode."""
    for source in plan.facts.network.sources:
        if source.system != "dc" or source.storage:
            continue
        kind = source.equipment.kind
        if kind == "alternator":
            _alternator(plan, source)
        elif kind == "solar controller":
            _solar(plan, source)
        elif kind in ("charger", "inverter-charger"):
            _charger(plan, source)


def _supply(plan: Plan, source: Source, set_v: Amount, limit: Amount, watts: Amount | None, droop_v: float) -> None:
    name = plan.name(source.equipment.name if source.equipment.kind != "inverter-charger" else source.name)
    plan.sources.append(name)

    def make(case: Case, heat: Heat) -> Element:
        most = limit.of(case, raises=True)
        power = inf if watts is None else watts.of(case, raises=True)
        droop = droop_v / max(limit.likely, 1.0)
        set_to = set_v.of(case, raises=True)
        return Supply(name, source.live, source.returns, set_to, max(0.0, most), droop_ohm=droop, watts=max(0.0, power))

    plan.add(make)


def _alternator(plan: Plan, source: Source) -> None:
    if engine_runs(plan.mode) is not True:
        plan.read(plan.mode, "engine")
        return
    item = source.equipment
    window = plan.read(item, "set voltage")
    if isinstance(window, Window) and isinstance(window.low, float) and isinstance(window.high, float):
        set_v = Amount(0.5 * (window.low + window.high), window.low, window.high)
    else:
        plan.book.lack(f"set voltage of {item.name}")
        set_v = Amount(14.2, 12.5, 15.0, False)
    plan.book.assume(f"a regulated voltage sags by {DROOP_V} V from nothing to full current; {PRACTICE}")
    _supply(plan, source, set_v, hot_limit(plan, item), None, DROOP_V)


def hot_limit(plan: Plan, item: Equipment) -> Amount:
    """Greatest current of an alternator, hot, at the speed of the mode (A)."""
    curve = plan.read(item, "hot output")
    if isinstance(curve, tuple) and len(curve) > 1 and all(isinstance(y, float) for _, y in curve):
        points = tuple((float(x), float(y)) for x, y in curve)
        if is_word(plan.read(item, "rpm"), "shaft") is True:
            speed = _at_shaft(plan, _speed(plan, None))
        else:
            speed = _speed(plan, points[0][0])
        low, likely, high = (_on_curve(points, one) for one in (speed.low, speed.likely, speed.high))
        plan.book.assume(f"an alternator gives its stated hot output within -10 and +15 %; {PRACTICE}")
        return Amount(likely, low * HOT_SPREAD[0], high * HOT_SPREAD[1])
    rating = stated(number(plan.read(item, "rating")))
    if rating is None:
        plan.book.lack(f"output of {item.name}")
        return Amount(75.0, 0.0, 300.0, False)
    plan.book.assume(f"{item.name} has no curve of its own: that of a typical machine, hot [from memory]")
    shaft = _at_shaft(plan, _speed(plan, None))
    least = _typical(rating.low, shaft.low)[0]
    most = _typical(rating.high, shaft.high)[1]
    return Amount(0.5 * sum(_typical(rating.likely, shaft.likely)), least, most)


def _speed(plan: Plan, slowest: float | None) -> Amount:
    """Speed of the engine (1/s); idle is the slowest speed of the alternator's own curve where it has one."""
    told = plan.read(plan.mode, "engine")
    found = stated(number(told))
    if found is not None:
        return found
    if slowest is not None:
        plan.book.assume("idle is the lowest speed of the alternator's curve")
        return exactly(slowest)
    low, likely, high = IDLE_RPM
    plan.book.assume(f"idle is taken as {likely:.0f} rpm ({low:.0f} to {high:.0f} rpm); {PRACTICE}")
    return Amount(likely, low, high).times(1.0 / MINUTE_S)


def _at_shaft(plan: Plan, speed: Amount) -> Amount:
    low, likely, high = PULLEY
    plan.book.assume(f"the alternator turns {likely:g} times as fast as the engine ({low:g} to {high:g}) [from memory]")
    return Amount(speed.likely * likely, speed.low * low, speed.high * high)


def _on_curve(points: tuple[tuple[float, float], ...], speed: float) -> float:
    """Output by speed (A); beyond the ends of the curve that of its ends, below half the first speed nothing."""
    if speed <= points[0][0]:
        return points[0][1] if speed > 0.5 * points[0][0] else 0.0
    if speed >= points[-1][0]:
        return points[-1][1]
    return output_from_points(points, speed)


def _typical(rating: float, shaft_per_s: float) -> tuple[float, float]:
    shaft_rpm = shaft_per_s * MINUTE_S
    try:
        return hot_output(rating, shaft_rpm)
    except OutOfRange:
        return (0.0, 0.0) if shaft_rpm < 1000.0 else hot_output(rating, 8000.0)


def _solar(plan: Plan, source: Source) -> None:
    sun = stated(number(plan.read(plan.mode, "sun")))
    if sun is not None and sun.high <= 0.0:
        return
    item = source.equipment
    arrays = _arrays(plan, item)
    rated = Amount(0.0, 0.0, 0.0)
    for array in arrays:
        one = plan.book.amount(number(plan.read(array, "power")), f"power of {array.name}", 0.0, 400.0)
        count = plan.book.amount(number(plan.read(array, "modules")), f"modules of {array.name}", 1.0, 8.0)
        rated = Amount(
            rated.likely + one.likely * count.likely,
            rated.low + one.low * count.low,
            rated.high + one.high * count.high,
            rated.known and one.known and count.known,
        )
    if sun is None:
        plan.book.lack(f"sunshine in {plan.mode.name}")
        sun = Amount(500.0, 0.0, 1100.0, False)
    low, likely, high = SUN_SHARE
    plan.book.assume(f"an array gives {likely:.0%} of its rating by the sun ({low:.0%} to {high:.0%}); {PRACTICE}")
    loss = possible(number(plan.read(item, "efficiency")), 0.0, 1.0) or exactly(0.95)
    share = loss.likely / 1000.0
    watts = Amount(
        rated.likely * sun.likely * likely * share,
        rated.low * sun.low * low * share,
        rated.high * sun.high * high * share,
        rated.known and sun.known,
    )
    limit = plan.book.amount(number(plan.read(item, "output.current")), f"output current of {item.name}", 0.0, 100.0)
    _supply(plan, source, _charging_at(plan, item), limit, watts, DROOP_V)


def _arrays(plan: Plan, item: Equipment) -> list[Equipment]:
    nodes = joined(plan.facts.network, [f"{item.name}:pv+"])
    every = plan.facts.network.equipment.values()
    return [one for one in every if one.kind == "solar array" and f"{one.name}:+" in nodes]


def _charging_at(plan: Plan, item: Equipment) -> Amount:
    """The voltage a charger holds: that of charging, or of floating once the battery is full."""
    told = stated(number(plan.read(item, "settings.charge voltage")))
    if told is None:
        plan.book.lack(f"charge voltage of {item.name}")
        nominal = stated(number(plan.read(item, _nominal_key(item)))) or exactly(12.0)
        return Amount(1.15 * nominal.likely, nominal.low, 1.25 * nominal.high, False)
    rest = stated(number(plan.read(item, "settings.float")))
    plan.book.assume(SETTINGS_SAY)
    low = told.low if rest is None else min(told.low, rest.low)
    return about(Amount(told.likely, low, told.high), SETTING_SHARE)


def _nominal_key(item: Equipment) -> str:
    return "output.nominal" if item.kind == "solar controller" else "dc.nominal"


def _charger(plan: Plan, source: Source) -> None:
    """A charger on the shore or on a generator; what mains loads take beside it, it goes without."""
    item, mode = source.equipment, plan.mode
    shore = plan.read(mode, "shore")
    if isinstance(shore, str) and not mode.says("generator", "running"):
        return
    if item.kind == "inverter-charger" and mode.says("inverter", "inverting"):
        return
    key = "charger.current" if item.kind == "inverter-charger" else "dc.current"
    limit = plan.book.amount(number(plan.read(item, key)), f"charging current of {item.name}", 0.0, 100.0)
    set_to = stated(number(plan.read(item, "settings.charge current")))
    if set_to is not None:
        limit = smaller(limit, set_to)
    watts = _left_of_the_shore(plan, item, stated(number(shore)))
    _supply(plan, source, _charging_at(plan, item), limit, watts, DROOP_V)


def _left_of_the_shore(plan: Plan, item: Equipment, shore: Amount | None) -> Amount | None:
    from checker.facts.dc_loads import mains_watts

    if shore is None:
        return None
    volts = stated(number(plan.read(plan.facts.design.vehicle, "supply.voltage"))) or exactly(230.0)
    asked = stated(number(plan.read(item, "settings.shore limit")))
    amps = [min(a, b) for a, b in zip(shore[:3], asked[:3], strict=True)] if asked is not None else list(shore[:3])
    loads = mains_watts(plan, None)
    efficiency = possible(number(plan.read(item, "efficiency")), 0.0, 1.0) or exactly(0.85)

    def left(at: int, used: float) -> float:
        return max(0.0, amps[at] * volts.likely - used) * efficiency.likely

    return Amount(left(0, loads.likely), left(1, loads.high), left(2, loads.low), shore.known and loads.known)
