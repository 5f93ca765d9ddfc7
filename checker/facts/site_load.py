"""What the modes ask of the shore, against what the shore may give."""

from __future__ import annotations

from typing import Any

from checker.circuit.feeding import consumers
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.mains import tell
from checker.facts.subject import Subject
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    add,
    between,
    divide,
    greater,
    greatest,
    least,
    multiply,
    show,
    some,
)


@fact(
    "inlet",
    "is_overdrawn",
    type="yes/no",
    says="In some mode the loads and chargers ask more of the shore than it gives.",
    method="running mains loads and the input of chargers in each mode on shore against what the mode and the site "
    "outlet give; an inverter-charger with a shore "
    "limit charges only with what the loads leave of it",
)
def is_overdrawn(s: Subject) -> Any:
    answers: list[Truth] = []
    for mode in s.facts.design.modes.values():
        given = s.read(mode, "shore")
        if isinstance(given, str):
            continue  # absent
        site = s.facts.design.vehicle
        if site.has("site outlet"):
            given = least(given, s.read(site, "site outlet"))
        asked = _asked(s, mode)
        over = greater(asked, given)
        if over is True:
            tell(s, f"in the mode {mode.name}: {show(asked, 'A')} asked, {show(given, 'A')} given")
        answers.append(over)
    return some(answers) if answers else Unknown("no mode tells what runs on the shore")


def _asked(s: Subject, mode: Item) -> Number:
    """Current asked of the shore in a mode, A."""
    names = {item.name for item in consumers(s.facts.network)}
    volts = s.read(s.facts.design.vehicle, "supply.voltage")
    running = mode.value("running")
    if isinstance(running, Unknown) and mode.has("running"):
        return running
    loads: Number = 0.0
    for name, given in running if isinstance(running, tuple) else ():
        if name in names:
            value = s.use(f"{mode.path}.running.{name}", given)
            loads = add(loads, divide(value, volts) if given.text.rstrip().endswith("W") else value)
    total = loads
    for item in s.facts.network.equipment.values():
        if item.kind == "charger" and item.name in names:
            total = add(total, charger_current(s, item, volts))
        elif item.kind == "inverter-charger":
            charging = inverter_charger_current(s, item, volts)
            limit = s.read(item, "settings.shore limit")
            if isinstance(limit, Unknown):
                total = _between(total, add(total, charging))
            elif limit is None:
                total = add(total, charging)
            else:
                total = greatest(total, least(limit, add(total, charging)))
    return total


def _between(least_asked: Number, most_asked: Number) -> Number:
    """Anything from the loads alone to the loads and all that is charged: how much the limit leaves is not told."""
    if not isinstance(least_asked, float | Range) or not isinstance(most_asked, float | Range):
        return Unknown("what the loads and chargers ask is not told")
    low = least_asked.low if isinstance(least_asked, Range) else least_asked
    return between(low, most_asked.high if isinstance(most_asked, Range) else most_asked)


def charger_current(s: Subject, item: Equipment, volts: Number) -> Number:
    """Mains current of a charger, A: as stated, else from what it charges with."""
    stated = s.read(item, "ac.current")
    if not isinstance(stated, Unknown) and stated is not None:
        return stated  # type: ignore[no-any-return]
    return _input(s, item, "dc.current", volts)


def inverter_charger_current(s: Subject, item: Equipment, volts: Number) -> Number:
    """Mains current with which an inverter-charger charges, A."""
    return _input(s, item, "charger.current", volts)


def _input(s: Subject, item: Equipment, key: str, volts: Number) -> Number:
    """Mains current of a charger from its charging current, battery voltage and efficiency."""
    current, nominal, efficiency = s.read(item, key), s.read(item, "dc.nominal"), s.read(item, "efficiency")
    if current is None:
        return 0.0
    return divide(multiply(current, nominal), multiply(efficiency, volts))
