"""Alternators: what they give hot at the speed of a mode, what is asked, what follows when their battery goes."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import KINDS, home
from checker.facts.catalogue import fact
from checker.facts.charging import charge_current, highest_setting, outputs_of
from checker.facts.contacts import contacts, engine_runs, is_word, signal_item, signal_means
from checker.facts.converter import given
from checker.facts.loads import running_current
from checker.facts.subject import Facts, Subject
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
    both,
    corners,
    divide,
    either,
    every,
    greater_equal,
    greatest,
    least,
    less_equal,
    multiply,
    negate,
    show,
    some,
    total,
    within,
)
from checker.quantities.values import between

MEANS = (
    "engine running", "ignition on", "charge allowed", "discharge allowed", "shore present", "generator running",
    "parking brake set", "parking brake released", "moving part stowed", "battery low", "air flowing", "stop all",
    "fault", "temperature",
)  # fmt: skip


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
    loads: list[Number] = []
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
    return total(loads), total(charging)


def converter_input(s: Subject, item: Equipment, node: str, volts: Number) -> Number:
    """Input current of a converter that charges from a bus at a voltage (A); never above the rating of that side."""
    side = node.split(":", 1)[1].rstrip("+")
    rated: Number = s.read(item, f"sides.{side}.current")
    for output in outputs_of(s.facts, item):
        if output.source.port != side:
            power = multiply(charge_current(s, output), highest_setting(s, output))
            asked = corners(dc_input_current, power, volts, s.read(item, "efficiency"))
            if isinstance(asked, Unknown) or isinstance(rated, Unknown):
                return rated if isinstance(asked, Unknown) else asked
            return least(asked, rated)
    return rated


def _gives_way(s: Subject, mode: Item) -> Truth:
    """Whether every converter that charges from it stops drawing below a set voltage."""
    near = joined(s.facts.network, [live_node(s)], contacts(s.facts, mode).perhaps)
    found = [item for node in near for item in s.facts.network.sinks.get(node, ()) if item.kind == "dc converter"]
    answers: list[Truth] = []
    for item in found:
        stop = s.read(item, "settings.holds low above")
        answers.append(stop if isinstance(stop, Unknown) else stop is not None)
    return every(answers) if found else False


@fact(
    "converter",
    "continuous_share",
    unit="%",
    says="Lasting current asked of an alternator over what it gives hot at that speed; the worst mode with engine.",
    method="running loads and charging converters over the hot output; a converter with a lower voltage stop gives way",
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


@fact(
    "converter",
    "asked_current",
    unit="A",
    says="Lasting current asked of an alternator; the greatest over the modes.",
    method="running loads and charging converters",
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


# --- what lets a converter draw from the starting battery


def drawn_from(s: Subject) -> list[tuple[str, Equipment]]:
    """(side, battery) for each side of a dc converter that hangs on a battery that is, or may be, for starting."""
    if s.item.kind != "dc converter":
        return []
    found = []
    sides = {"low", "high"}
    gives = {one.source.port for one in outputs_of(s.facts, s.item)}
    takes = sides if len(gives) != 1 else sides - gives
    for side in sorted(takes):
        near = joined(s.facts.network, [f"{s.id}:{side}+"])
        for bank in s.facts.subjects("bank"):
            word = bank.purpose
            if (isinstance(word, Unknown) or word == "starting") and home(s.facts, bank.item) in near:
                found.append((side, bank.item))
    return found


@fact("converter", "drains_starter", type="yes/no", says="A side from which it draws hangs on a starting battery.",
      method="graph, every contact closed")  # fmt: skip
def drains_starter(s: Subject) -> Truth:
    answers: list[Truth] = []
    for _, battery in drawn_from(s):
        bank = s.facts.of("bank", battery)
        word = UNKNOWN if bank is None else bank.purpose
        answers.append(word if isinstance(word, Unknown) else word == "starting")
    return some(answers)


def _relays_between(s: Subject) -> list[Equipment]:
    """Relays without which the starting battery does not reach the converter."""
    found = []
    for side, battery in drawn_from(s):
        for item in s.facts.network.equipment.values():
            if item.kind in ("relay", "combiner"):
                near = joined(s.facts.network, [f"{s.id}:{side}+"], _without(item))
                if home(s.facts, battery) not in near:
                    found.append(item)
    return found


def _without(item: Equipment) -> Callable[[Edge], bool]:
    return lambda edge: not (isinstance(edge, Link) and edge.equipment is item)


def _enabling(s: Subject) -> list[Any]:
    """Names of the signals that let it draw: its own, and those that drive relays in its supply."""
    found = [s.read(s.item, "enabled by")]
    found.extend(s.read(relay, "driven by") for relay in _relays_between(s) if relay.kind == "relay")
    told = [name for name in found if isinstance(name, str)]
    return told or found


@fact(
    "converter",
    "engine_signal",
    words=MEANS,
    says="What the signal means that lets it draw from the starting battery; none when nothing does.",
    method="its enabling signal, or that of a relay between it and the starting battery",
)
def engine_signal(s: Subject) -> Any:
    if s.drains_starter is False:
        return None
    means = [signal_means(s.facts, name) for name in _enabling(s)]
    if any(isinstance(word, str) and word == "engine running" for word in means):
        return "engine running"
    return next((word for word in means if isinstance(word, str)), means[0])


@fact("converter", "engine_signal_fails", words=("released", "given"),
      says="What the receiver takes that signal for when its wire breaks.")  # fmt: skip
def engine_signal_fails(s: Subject) -> Any:
    if s.drains_starter is False:
        return None
    for name in _enabling(s):
        item = signal_item(s.facts, name)
        if item is not None:
            return s.read(item, "fails")
        if isinstance(name, str):
            return Unknown("what the receiver does when the wire breaks is not told")
    return UNKNOWN


@fact(
    "converter",
    "spares_starter",
    type="yes/no",
    says="It stops drawing before the starting battery falls below its reserve.",
    method="the voltage at which it stops drawing against the reserve of the battery",
)
def spares_starter(s: Subject) -> Truth:
    answers: list[Truth] = []
    for _, battery in drawn_from(s):
        stops = s.read(s.item, "settings.holds low above")
        if not isinstance(stops, float | Range):
            stops = s.read(s.item, "settings.low stop")
        answers.append(greater_equal(stops, s.read(battery, "reserve")))
    return every(answers)


@fact(
    "converter",
    "works_over_set_voltage",
    type="yes/no",
    says="What charges from an alternator works at every voltage it holds, and no relay in its way acts on voltage.",
    method="the window of each converter on its bus against the set voltages; combiners that sense voltage",
)
def works_over_set_voltage(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    near = joined(s.facts.network, [live_node(s)])
    answers: list[Truth] = []
    volts = s.read(s.item, "set voltage")
    for node in near:
        for item in s.facts.network.sinks.get(node, ()):
            if item.kind == "dc converter":
                side = node.split(":", 1)[1].rstrip("+")
                answers.append(
                    UNKNOWN if isinstance(volts, Unknown) else within(volts, s.read(item, f"sides.{side}.voltage"))
                )
    for item in s.facts.network.equipment.values():
        if item.kind == "combiner" and any(node.startswith(f"{item.name}:") for node in near):
            senses = s.read(item, "senses")
            answers.append(senses if isinstance(senses, Unknown) else senses != "voltage")
    return every(answers)


# --- load dump, and the management that opens while an alternator charges


@fact("converter", "load_dump_level", unit="V", says="Voltage that follows when an alternator loses its battery.")
def load_dump_level(s: Subject) -> Any:
    return given(s, "load dump.level")


@fact("converter", "load_dump_clamped", type="yes/no", says="An alternator clamps its own load dump.")
def load_dump_clamped(s: Subject) -> Any:
    return given(s, "load dump.clamped")


@fact(
    "converter",
    "weakest_transient",
    unit="V",
    says="Transient that the weakest electronic equipment added to the bus of an alternator endures.",
    method="least of the stated transient levels of converters and electronic loads, factory equipment left out",
)
def weakest_transient(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    found: dict[str, Number] = {}
    for node in joined(s.facts.network, [live_node(s)]):
        for item in s.facts.network.sinks.get(node, ()):
            if item.kind in KINDS or not item.allows("transient level"):
                continue
            if _is_factory(s.facts, item, node):
                continue
            found[item.name] = s.read(item, "transient level")
    return least(list(found.values())) if found else None


def _is_factory(facts: Facts, item: Equipment, node: str) -> bool:
    """Equipment that came with the vehicle, or that hangs on a factory circuit."""
    if is_word(item.value("own"), "factory") is True:
        return True
    for edge, _ in facts.network.near.get(node, ()):
        if not isinstance(edge, Link) and is_word(edge.conductor.circuit.value("own"), "factory") is True:
            return True
    return False


@fact(
    "converter",
    "charges_lithium_directly",
    type="yes/no",
    says="An alternator whose output reaches a lithium battery without a converter between.",
    method="graph, every contact closed",
)
def charges_lithium_directly(s: Subject) -> Truth:
    return s.charges_lithium if s.item.kind == "alternator" else False


@fact(
    "converter",
    "keeps_another_battery",
    type="yes/no",
    says="When the management of the lithium battery opens, another battery stays on the bus of the alternator.",
    method="graph: a lead-acid battery reached through wires and fuses alone",
)
def keeps_another_battery(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None

    def always(edge: Edge) -> bool:
        return not isinstance(edge, Link) or edge.when == "always"

    near = joined(s.facts.network, [live_node(s)], always)
    if isinstance(s.charges, Unknown):
        return s.charges
    answers = [negate(bank.is_lithium) for bank in s.charges if home(s.facts, bank.item) in near]
    return some(answers)


@fact(
    "converter",
    "dump_is_harmless",
    type="yes/no",
    says="The load dump of an alternator is clamped, and no higher than the added electronics on its bus endure.",
    method="stated level and clamp against the weakest transient level",
)
def dump_is_harmless(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    weakest = s.weakest_transient
    endured: Truth = True if weakest is None else less_equal(s.load_dump_level, weakest)
    return both(s.load_dump_clamped, endured)


@fact(
    "converter",
    "stays_in_bounds",
    type="yes/no",
    says="When the management opens while an alternator charges, the voltage stays within what the electronics endure.",
    method="another battery stays, or the dump is clamped and endured",
)
def stays_in_bounds(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    return either(s.keeps_another_battery, s.dump_is_harmless)
