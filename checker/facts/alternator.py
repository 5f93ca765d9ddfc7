"""Alternators: what they give hot at the speed of a mode, what is asked of them, what charges from them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import home
from checker.facts.catalogue import fact
from checker.facts.charging import charge_current, highest_setting, outputs_of
from checker.facts.contacts import contacts, engine_runs, is_word
from checker.facts.converter import given
from checker.facts.loads import running_current
from checker.facts.subject import Subject
from checker.outofrange import OutOfRange
from checker.physics.alternator import output_from_points
from checker.physics.converter import dc_input_current
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    corners,
    divide,
    either,
    equal,
    every,
    greater_equal,
    greatest,
    least,
    multiply,
    show,
    some,
    total,
)
from checker.quantities.values import between


def live_node(s: Subject) -> str:
    """The output terminal of an alternator."""
    return f"{s.id}:+"


def _said(text: str) -> Callable[[], str]:
    return lambda: text


def _driving(s: Subject) -> list[Item]:
    return [mode for mode in s.facts.design.modes.values() if engine_runs(mode) is not False]


@fact("converter", "smart", type="yes/no", says="The vehicle changes the voltage of its alternator while driving.")
def smart(s: Subject) -> Any:
    return given(s, "smart", False)


@fact("converter", "set_voltage", type="window", unit="V", says="Voltages that the regulator of an alternator holds.")
def set_voltage(s: Subject) -> Any:
    return given(s, "set voltage")


@fact("converter", "limits_itself", type="yes/no", says="It lowers its output when hot, or limits its own current.")
def limits_itself(s: Subject) -> Any:
    return given(s, "limits itself")


@fact("converter", "allowed_current", unit="A", says="Current its maker, or the vehicle maker, permits to be taken.")
def allowed_current(s: Subject) -> Any:
    return given(s, "allows")


@fact(
    "converter",
    "added_charging",
    type="yes/no",
    says="A dc converter or a battery other than the starting one hangs on the bus of an alternator.",
    method="graph, every contact closed",
)
def added_charging(s: Subject) -> Truth:
    if s.item.kind != "alternator":
        return False
    near = joined(s.facts.network, [live_node(s)])
    if any(item.kind == "dc converter" for node in near for item in s.facts.network.sinks.get(node, ())):
        return True
    if isinstance(s.charges, Unknown):
        return s.charges
    others = [bank.purpose for bank in s.charges]
    return some(word if isinstance(word, Unknown) else word != "starting" for word in others)


def _output_in(s: Subject, mode: Item) -> Number:
    """Hot output at the speed of a mode (A); idle is the lowest speed of the curve."""
    curve = s.read(s.item, "hot output")
    if not isinstance(curve, tuple) or not curve:
        return Unknown(f"the hot output of {s.id} by speed is not told")
    if is_word(s.read(s.item, "rpm"), "engine") is not True:
        return Unknown(f"the curve of {s.id} is told for its shaft, not for the engine")
    speed = s.read(mode, "engine")
    if isinstance(speed, str):
        s.note(_said(f"idle is taken as the lowest speed of the curve: {show(curve[0][0], 'rpm')}"))
        return curve[0][1]  # type: ignore[no-any-return]
    points = tuple((float(x), y) for x, y in curve if isinstance(y, float))
    if len(points) != len(curve):
        return Unknown(f"the curve of {s.id} holds unknown points")

    def current(at: float) -> float:
        if at > points[-1][0]:
            return points[-1][1]  # more speed never gives less
        return output_from_points(points, at)

    try:
        return corners(current, speed)
    except OutOfRange as problem:
        return Unknown(str(problem))


def _volts(s: Subject) -> Number:
    """Lowest voltage the alternator holds: the greatest current for a given power."""
    window = s.read(s.item, "set voltage")
    if isinstance(window, Window):
        return window.low
    nominal: Number = s.read(s.item, "nominal")
    return nominal


def _asked_in(s: Subject, mode: Item) -> tuple[Number, Number]:
    """(current of the loads that run, current of the converters that charge from it) in a mode."""
    state = contacts(s.facts, mode)
    near = joined(s.facts.network, [live_node(s)], state.perhaps)
    running = s.read(mode, "running")
    entries = dict(running) if isinstance(running, tuple) else {}
    # What the vehicle itself asks is part of every drive; a mode need not name it.
    loads: list[Number] = [s.read(s.item, "base load")]
    charging: list[Number] = []
    for node in near:
        for item in s.facts.network.sinks.get(node, ()):
            if item.kind in LOADS and item.name in entries:
                entry = entries[item.name]
                unit = "W" if entry.text.rstrip().endswith("W") else "A"
                loads.append(running_current(entry, unit, _volts(s)))
            elif item.kind == "dc converter":
                current = converter_input(s, item, node, _volts(s))
                s.note(_said(f"{item.name} asks {show(current, 'A')} while it charges"))
                charging.append(current)
    for bank in s.facts.subjects("bank"):
        if home(s.facts, bank.item) in near and equal(bank.purpose, "starting") is not True:
            current = bank.purpose if isinstance(bank.purpose, Unknown) else bank.charge_limit
            s.note(_said(f"{bank.id} without a converter takes as much as it may: {show(current, 'A')}"))
            charging.append(current)
    return total(loads), total(charging)


def converter_input(s: Subject, item: Equipment, node: str, volts: Number) -> Number:
    """Input current of a converter that charges from a bus at a voltage (A); never above the rating of that side."""
    side = node.split(":", 1)[1].rstrip("+")
    rated: Number = s.read(item, f"sides.{side}.current")
    for output in outputs_of(s.facts, item):
        if output.source.port != side:
            power = multiply(charge_current(s, output), highest_setting(s, output))
            asked = corners(dc_input_current, power, volts, s.read(item, "efficiency"))
            if isinstance(rated, Unknown) and item.has(f"sides.{side}.current") and isinstance(asked, float | Range):
                return between(0.0, asked.high if isinstance(asked, Range) else asked)  # what it can take is not told
            if isinstance(asked, Unknown) or isinstance(rated, Unknown):
                return rated if isinstance(asked, Unknown) else asked
            return least(asked, rated)
    return rated


def _gives_way(s: Subject, mode: Item) -> Truth:
    """Whether what charges from it takes what the loads leave: converters that stop below a set voltage, batteries on
    an alternator that limits itself."""
    near = joined(s.facts.network, [live_node(s)], contacts(s.facts, mode).perhaps)
    found = [item for node in near for item in s.facts.network.sinks.get(node, ()) if item.kind == "dc converter"]
    answers: list[Truth] = []
    banks = [(bank, equal(bank.purpose, "starting")) for bank in s.facts.subjects("bank")]
    banks = [(bank, starts) for bank, starts in banks if home(s.facts, bank.item) in near]
    reserves = [s.read(bank.item, "reserve") for bank, starts in banks if starts is True]
    for item in found:
        stop = s.read(item, "settings.holds low above")
        # One that stops only when the starting battery is flat lets that make up what the alternator lacks.
        answers.append(False if stop is None else every([greater_equal(stop, reserve) for reserve in reserves]))
        if isinstance(stop, Unknown):
            answers.append(stop)
    for _, starts in banks:
        if starts is not True:
            # A battery takes what it can get; only the alternator can hold back.
            answers.append(s.limits_itself if starts is False else either(s.limits_itself, starts))
    return every(answers) if answers else False


@fact(
    "converter",
    "continuous_share",
    unit="%",
    says="Lasting current asked of an alternator over what it gives hot at that speed; the worst mode with engine.",
    method="base load, running loads, charging converters and the charge limit of each house battery without one over "
    "the hot output; a converter gives way that stops at the reserve of the starting battery or above, and a battery "
    "to an alternator that limits itself",
)
def continuous_share(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    found: list[Number] = []
    for mode in _driving(s):
        loads, charging = _asked_in(s, mode)
        hot = _output_in(s, mode)
        asked = total(loads, charging)
        share = divide(asked, hot)
        gives = _gives_way(s, mode)
        if gives is not False:
            s.note(_said(f"{mode.name}: a converter that stops when the voltage falls takes what the loads leave"))
            held = _held_to(share, divide(loads, hot))
            share = held if gives is True else _from_to(held, share)
        s.note(_said(f"{mode.name}: asked {show(asked, 'A')} of {show(hot, 'A')}"))
        found.append(share)
    return greatest(found) if found else Unknown("no mode says that the engine runs")


def _held_to(share: Number, loads: Number) -> Number:
    """A converter that gives way takes what the loads leave: never more than the whole, unless the loads ask more."""
    if isinstance(share, Unknown) or isinstance(loads, Unknown):
        return UNKNOWN
    return greatest(least(share, 1.0), loads)


def _from_to(low: Number, high: Number) -> Number:
    """A share that lies between the two: whether the converter gives way is not known."""
    if not isinstance(low, float | Range) or not isinstance(high, float | Range):
        return UNKNOWN
    bottom = low.low if isinstance(low, Range) else low
    top = high.high if isinstance(high, Range) else high
    return between(min(bottom, top), max(bottom, top))


def asked_and_given(s: Subject) -> list[tuple[Item, Number, Number]]:
    """Each mode whose engine runs or may: what is asked of an alternator and what it gives hot (A)."""
    return [(mode, total(*_asked_in(s, mode)), _output_in(s, mode)) for mode in _driving(s)]


@fact(
    "converter",
    "asked_current",
    unit="A",
    says="Lasting current asked of an alternator; the greatest over the modes.",
    method="base load, running loads, charging converters, and the charge limit of each house battery without one",
)
def asked_current(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    found = [total(*_asked_in(s, mode)) for mode in _driving(s)]
    return greatest(found) if found else Unknown("no mode says that the engine runs")


@fact("converter", "hot_output", unit="A", says="Hot output of an alternator at the lowest speed of its modes.",
      method="its own curve by speed")  # fmt: skip
def hot_output(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    found = [_output_in(s, mode) for mode in _driving(s)]
    return least(found) if found else Unknown("no mode says that the engine runs")
