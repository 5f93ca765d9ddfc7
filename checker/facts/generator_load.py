"""What the modes ask of a generator aboard, against what it gives."""

from __future__ import annotations

from typing import Any

from checker.circuit.feeding import consumers, live_node
from checker.circuit.states import State
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.ac_source import runs_with
from checker.facts.catalogue import fact
from checker.facts.mains import TOO_MANY, states_of, tell
from checker.facts.mains_voltage import generator_voltage
from checker.facts.site_load import charger_current, inverter_charger_current
from checker.facts.space import upper
from checker.facts.state import METHOD
from checker.facts.subject import Subject
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    add,
    between,
    both,
    divide,
    equal,
    greater,
    negate,
    show,
    some,
)


@fact(
    "ac_source",
    "is_overdrawn",
    type="yes/no",
    says="In some mode in which a generator runs, loads and chargers ask more of it than it gives; none for others.",
    method="running mains loads and chargers that hang on it against its power; " + METHOD + ", those in which the "
    "inlets are dead, the inverters as the mode says and the changeovers as it sets them",
)
def is_overdrawn(s: Subject) -> Any:
    item: Equipment = s.item.equipment
    if item.kind != "generator":
        return None
    if not states_of(s.facts).complete:
        return TOO_MANY
    volts = generator_voltage(s, item, 1.0)
    given = divide(s.read(item, "power"), volts)
    answers: list[Truth] = []
    for mode in s.facts.design.modes.values():
        shore = s.read(mode, "shore")
        ashore = shore if isinstance(shore, Unknown) else not isinstance(shore, str)
        alone = both(equal(s.read(mode, "generator"), "running"), negate(ashore))
        if alone is False:
            continue
        asked = _asked(s, mode, volts)
        over = both(alone, greater(asked, given))
        if over is True:
            tell(s, f"in the mode {mode.name}: {show(asked, 'A')} asked, {show(given, 'A')} given")
        answers.append(over)
    return some(answers) if answers else Unknown("no mode tells what runs on the generator")


def _asked(s: Subject, mode: Item, volts: Number) -> Number:
    """Current asked of the generator in a mode, A; from what surely hangs on it to what may."""
    states = [state for state in states_of(s.facts).states if _is_of(s, mode, state)]
    running = mode.value("running")
    if isinstance(running, Unknown) and mode.has("running"):
        return running
    amounts = dict(running) if isinstance(running, tuple) else {}
    total: Number = 0.0
    for item in consumers(s.facts.network):
        if item.kind == "charger":
            drawn, sure = charger_current(s, item, volts), runs_with(s, item)
            here: Truth | None = sure if not isinstance(sure, tuple) else "generator" in sure
        elif item.name in amounts:
            entry = amounts[item.name]
            value = s.use(f"{mode.path}.running.{item.name}", entry)
            drawn, here = (divide(value, volts) if entry.text.rstrip().endswith("W") else value), True
        else:
            continue
        total = add(total, _share(s, states, live_node(item), drawn, here))
    for item in s.facts.network.equipment.values():
        if item.kind == "inverter-charger":
            drawn, sure = inverter_charger_current(s, item, volts), runs_with(s, item)
            here = False if sure is False or (isinstance(sure, tuple) and "generator" not in sure) else None
            total = add(total, _share(s, states, f"{item.name}:ac-inL", drawn, here))
    return total


def _share(s: Subject, states: list[State], node: str, drawn: Number, runs: Truth | None) -> Number:
    """What something adds: all of it where it surely runs and hangs on the generator, nothing to all where it may."""
    hangs = [state.feeds_of(node) for state in states]
    may = runs is not False and any(s.item in sure or s.item in perhaps for sure, perhaps in hangs)
    if not may:
        return 0.0
    if runs is True and all(s.item in sure for sure, _ in hangs):
        return drawn
    return between(0.0, upper(drawn)) if isinstance(drawn, float | Range) else drawn


def _is_of(s: Subject, mode: Item, state: State) -> bool:
    """Whether a supply state may stand in a mode in which the generator runs."""
    inverting = mode.says("inverter", "inverting")
    for feed in state.feeding:
        kind = feed.equipment.kind
        if kind == "shore inlet" or (kind in ("inverter", "inverter-charger") and not inverting):
            return False
    chosen = mode.value("set")
    wanted = dict(chosen) if isinstance(chosen, tuple) else {}
    for name, position in state.positions.items():
        if name in wanted and position is not None and wanted[name].value not in (position, None):
            return False
    return s.item in state.feeding
