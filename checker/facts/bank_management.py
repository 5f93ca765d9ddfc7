"""The management of a battery: what it watches, who gets around it, whether cold stops the charging."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.elements import Link, Wire
from checker.circuit.sources import LOADS
from checker.circuit.supply import is_live, joined
from checker.design.model import Equipment
from checker.facts.bank import home, loose_bank, of_unit, some_gap, unit
from checker.facts.battery_body import LEAD
from checker.facts.catalogue import fact
from checker.facts.charging import outputs_to, perhaps_charges, towing_contacts
from checker.facts.contacts import signal_item, signal_means
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    UNKNOWN,
    Truth,
    Unknown,
    Window,
    both,
    either,
    every,
    greater,
    less,
    less_equal,
    negate,
    some,
)


@fact("bank", "has_management", type="yes/no", says="A battery management system is fitted.")
def has_management(s: Subject) -> Any:
    stated = of_unit(s, s.item, "bms")
    return False if stated is None else stated


@fact("bank", "is_managed", type="yes/no",
      says="A management that may open stands before it: that of a lithium bank, or one that is told for another.",
      method="chemistry, and whether the file speaks of a management")  # fmt: skip
def is_managed(s: Subject) -> Any:
    written = any(one.has("bms") for one in (s.item, unit(s.item)))
    # A lead battery of which no word tells a management has none; of other cells nobody knows.
    chemistry = s.chemistry
    silent: Truth = False if isinstance(chemistry, str) and chemistry in LEAD else UNKNOWN
    return either(s.is_lithium, s.has_management if written else silent)


def _held(s: Subject, key: str) -> Truth:
    """Whether a function of the management is there: a value is yes, `none` is no, silence is unknown."""
    if s.has_management is not True:
        return s.has_management  # type: ignore[no-any-return]
    value = of_unit(s, s.item, key)
    if isinstance(value, Unknown):
        return Unknown(f"{s.id} does not say its {key}")
    return value is not None


@fact("bank", "stops_over_voltage", type="yes/no", says="Its management stops charging at a highest voltage.")
def stops_over_voltage(s: Subject) -> Any:
    return _held(s, "bms.over voltage")


@fact("bank", "stops_under_voltage", type="yes/no", says="Its management stops discharging at a lowest voltage.")
def stops_under_voltage(s: Subject) -> Any:
    return _held(s, "bms.under voltage")


@fact("bank", "stops_over_current", type="yes/no", says="Its management stops at too great a current.",
      method="the current it allows for long or for a short time")  # fmt: skip
def stops_over_current(s: Subject) -> Any:
    return some([_held(s, key) for key in ("bms.peak.current", "bms.discharge limit")])


@fact("bank", "stops_short_circuit", type="yes/no", says="Its management opens at once on a short circuit.")
def stops_short_circuit(s: Subject) -> Any:
    return _held(s, "bms.short circuit.current")


@fact("bank", "stops_when_hot", type="yes/no", says="Its management stops when the cells are too hot.")
def stops_when_hot(s: Subject) -> Any:
    return _held(s, "bms.high temperature")


@fact(
    "bank", "stops_charge_when_cold", type="yes/no", says="Its management stops or heats first when too cold to charge."
)
def stops_charge_when_cold(s: Subject) -> Any:
    return _held(s, "bms.low temperature")


@fact("bank", "alarm_before_stop", type="yes/no", says="It warns before its management stops.")
def alarm_before_stop(s: Subject) -> Any:
    stated = of_unit(s, s.item, "bms.alarm")
    return False if stated is None else stated


@fact("bank", "ports", words=("common", "separate"), says="One port for both directions, or one each.")
def ports(s: Subject) -> Any:
    return of_unit(s, s.item, "bms.ports")


@fact("bank", "wakes", words=("by itself", "by hand", "charge voltage", "load", "signal"),
      says="What starts its management again after it shut down; none when nothing does.")  # fmt: skip
def wakes(s: Subject) -> Any:
    stated = of_unit(s, s.item, "bms.wakes by")
    if not isinstance(stated, str):
        return stated
    return stated if stated in ("by itself", "by hand", "charge voltage", "load") else "signal"


@fact(
    "bank",
    "bypassed_by",
    of="circuit",
    type="list",
    says="Circuits at its terminals that its management cannot open.",
    method="the management opens by the relays it drives that part loads from it, else within the battery where its "
    "ports are told: graph, from its terminals and from the bar at which its units meet; with separate ports what "
    "charges passes the one and what draws the other",
)
def bypassed_by(s: Subject) -> Any:
    if s.has_management is not True:
        return Unknown(f"whether {s.id} has a management system is not known") if s.has_management is not False else ()
    relays, loose = driven_by(s.facts, s.item), loose_bank(s.facts)
    names = (s.item.name, *s.facts.network.units.get(s.item.name, ()))
    own = {home(s.facts, s.item), *(f"{name}:+" for name in names)}
    if isinstance(s.ports, str) and not _parts_loads(s.facts, relays, own):
        s.note(lambda: f"its management has {s.ports} ports: it opens within the battery")
        return _starting(s, own, lambda far: _both_ways(s.facts, far, own)) if s.ports == "separate" else ()
    if not relays:
        return Unknown(f"where the management of {s.id} opens is not told: its ports, or the relay it drives")
    if loose is not None:
        return loose
    # Where nobody tells the ports, a relay for each direction speaks for itself.
    charging = _without_leave(s.facts, relays, "discharge allowed")
    drawing = _without_leave(s.facts, relays, "charge allowed")
    if s.ports == "common" if isinstance(s.ports, str) else not (relays - charging and relays - drawing):
        charging = drawing = relays
    return _starting(s, own, lambda far: _gets_around(s.facts, far, charging, drawing, own))


def _starting(s: Subject, own: set[str], wanted: Callable[[str], Truth]) -> Any:
    """The circuits at the terminals of a bank whose far ends are of a kind; unknown as soon as one may be."""
    found: dict[str, Any] = {}
    for start in sorted(own):
        for edge, far in s.facts.network.near.get(start, ()):
            answer = wanted(far) if isinstance(edge, Wire) and is_live(edge) else False
            if isinstance(answer, Unknown):
                return answer
            if answer and isinstance(edge, Wire):
                found.setdefault(edge.conductor.circuit.name, s.facts.of("circuit", edge.conductor.circuit))
    return tuple(one for one in found.values() if one is not None)


def _without_leave(facts: Facts, relays: set[str], leave: str) -> set[str]:
    """Relays but those that a leave of the management drives."""
    means = {name: signal_means(facts, facts.network.equipment[name].value("driven by")) for name in relays}
    return {name for name, meaning in means.items() if isinstance(meaning, Unknown) or meaning != leave}


def driven_by(facts: Facts, bank: Equipment) -> set[str]:
    """Names of the relays that the leave to charge or discharge of a bank drives."""
    owners = {bank.name, unit(bank).name}
    found = set()
    for item in facts.network.equipment.values():
        if item.kind in ("relay", "switch"):
            name = item.value("driven by")
            signal = signal_item(facts, name)
            origin = signal.value("from") if signal is not None else name
            if isinstance(origin, str) and origin.split(".", 1)[0] in owners:
                found.add(item.name)
    return found


def _gets_around(facts: Facts, far: str, charging: set[str], drawing: set[str], own: set[str]) -> bool:
    """Whether something that charges or draws is reached from the bank's own nodes without passing a relay for it."""
    giving = {source.live for source in facts.network.sources}
    charges = any(node in giving for node in _reached(facts, [far], charging, own))
    return charges or any(node in facts.network.sinks for node in _reached(facts, [far], drawing, own))


def _both_ways(facts: Facts, far: str, own: set[str]) -> Truth:
    """Whether a circuit at the bank both charges and draws, so that it can hang at neither of two ports."""
    reached = _reached(facts, [far], set(), own)
    gives = any(source.live in reached for source in facts.network.sources)
    drawing = [item for node in sorted(reached) for item in facts.network.sinks.get(node, ())]
    unsure = [item for item in drawing if item.kind == "dc converter" and isinstance(item.value("both ways"), Unknown)]
    if gives and drawing and len(unsure) == len(drawing):
        return Unknown(f"whether {unsure[0].name} works both ways is not told")
    return bool(gives and drawing)


def _parts_loads(facts: Facts, relays: set[str], own: set[str]) -> bool:
    """Whether a load, or all of several things that charge and draw, hang on the bank through these relays alone.

    One in the line of a single charger, or of one converter that works both ways, parts no loads.
    """
    behind = _reached(facts, sorted(own), set(), set()) - _reached(facts, sorted(own), relays, set())
    drawing = {one.name: one for node in behind for one in facts.network.sinks.get(node, ())}
    giving = {source.equipment.name for source in facts.network.sources if source.live in behind}
    loads = any(one.kind in (*LOADS, "inverter") for one in drawing.values())
    return loads or bool(drawing and len(giving | set(drawing)) > 1)


def _reached(facts: Facts, todo: list[str], closed: set[str], seen: set[str]) -> set[str]:
    """Live nodes reached from some, without passing the relays named or the nodes seen."""
    past, found, todo = set(seen), set(), list(todo)
    while todo:
        node = todo.pop()
        if node in past:
            continue
        past.add(node)
        found.add(node)
        for edge, end in facts.network.near.get(node, ()):
            if is_live(edge) and not (isinstance(edge, Link) and edge.equipment.name in closed):
                todo.append(end)
    return found


@fact(
    "bank",
    "meets_cold",
    type="yes/no",
    says="The air around it can be colder than it may be charged at.",
    method="coldest air against the lower end of its charging window",
)
def meets_cold(s: Subject) -> Any:
    window = s.window_charge
    return less(s.coldest_air, window.low) if isinstance(window, Window) else UNKNOWN


@fact(
    "bank",
    "meets_heat",
    type="yes/no",
    says="The air around it can be warmer than it may be charged at.",
    method="hottest air of its place against the upper end of its charging window",
)
def meets_heat(s: Subject) -> Any:
    window, place = s.window_charge, s.place
    if not isinstance(window, Window) or isinstance(place, Unknown) or place is None:
        return UNKNOWN
    return greater(place.hottest, window.high)


@fact(
    "bank",
    "inhibits_hot_charge",
    type="yes/no",
    says="Its management stops no hotter than it may be charged at, and no charger gets around it.",
    method="`bms.high temperature` against the upper end of its charging window; circuits around the management",
)
def inhibits_hot_charge(s: Subject) -> Any:
    if s.has_management is not True:
        return s.has_management
    window, stops = s.window_charge, of_unit(s, s.item, "bms.high temperature")
    if stops is None:
        return False
    within = less_equal(stops, window.high) if isinstance(window, Window) else UNKNOWN
    around = s.bypassed_by
    return both(within, around if isinstance(around, Unknown) else not around)


@fact(
    "bank",
    "inhibits_cold_charge",
    type="yes/no",
    says="Nothing can charge it when too cold: its management opens every path, or every charger is told to stop.",
    method="its management acts in the cold and nothing gets around it; else each charger needs a stop by temperature",
)
def inhibits_cold_charge(s: Subject) -> Any:
    acts = s.stops_charge_when_cold
    around = s.bypassed_by
    if acts is True and isinstance(around, tuple) and not around:
        return True
    told = every(_stops_by_temperature(s, output.source.equipment) for output in outputs_to(s.facts, s.item))
    told = both(told, negate(s.charged_by_towing))
    if told is True and outputs_to(s.facts, s.item):
        return True
    if acts is True or isinstance(acts, Unknown):
        return UNKNOWN if isinstance(acts, Unknown) or isinstance(around, Unknown) else told
    return told if outputs_to(s.facts, s.item) else False


@fact(
    "bank",
    "charged_by_towing",
    type="yes/no",
    says="A towing vehicle charges it through its plug with no converter between, and knows of no stop.",
    method="walk from each contact of the plug, every contact closed",
)
def charged_by_towing(s: Subject) -> Truth:
    plugs = any(one.equipment.kind == "vehicle coupling" for one in s.facts.network.sources)
    loose = loose_bank(s.facts)
    return loose if loose is not None and plugs else bool(towing_contacts(s.facts, s.item))


def _stops_by_temperature(s: Subject, charger: Equipment) -> Truth:
    if not charger.allows("charge stop.by"):
        return False
    name = s.read(charger, "charge stop.by")
    if isinstance(name, Unknown):
        # Without a stop that is told, nothing says that cold would stop it.
        return False
    means = signal_means(s.facts, name)
    if isinstance(means, Unknown):
        return means
    return bool(means == "temperature")


@fact("bank", "chargers", of="converter", type="list", says="What can charge it.", method="graph, every contact closed")
def chargers(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    unsure = perhaps_charges(s.facts, s.item) if loose is None else loose
    if unsure is not None:
        return unsure
    found = {one.source.equipment.name: one.source.equipment for one in outputs_to(s.facts, s.item)}
    return tuple(one for item in found.values() if (one := s.facts.of("converter", item)) is not None)


@fact(
    "bank",
    "has_low_cutoff",
    type="yes/no",
    says="A device on its bus cuts loads at a low voltage: a voltage monitor, or a relay told by a low battery.",
    method="graph: devices on the same part, what drives them",
)
def has_low_cutoff(s: Subject) -> Truth:
    return _cutoff(s, "trips below", ("battery low", "discharge allowed"))


@fact(
    "bank",
    "has_high_cutoff",
    type="yes/no",
    says="A device on its bus acts on a high voltage: a voltage monitor, or a relay driven by the management's leave "
    "to charge.",
    method="graph: devices on the same part, what drives them",
)
def has_high_cutoff(s: Subject) -> Truth:
    return _cutoff(s, "trips above", ("charge allowed",))


def _cutoff(s: Subject, key: str, meanings: tuple[str, ...]) -> Truth:
    near = joined(s.facts.network, [home(s.facts, s.item)])
    names = {node.split(":", 1)[0] for node in near}
    answers: list[Truth] = []
    for item in s.facts.network.equipment.values():
        if item.name not in names:
            continue
        if item.kind == "voltage monitor":
            trips = s.read(item, key)
            answers.append(trips if isinstance(trips, Unknown) else trips is not None)
        elif item.kind == "relay":
            means = signal_means(s.facts, s.read(item, "driven by"))
            answers.append(isinstance(means, str) and means in meanings)
    if some_gap(s.facts):
        answers.append(Unknown("part of some run was not seen and may hide a device that acts"))
    loose = loose_bank(s.facts)
    return some(answers if loose is None else [*answers, loose])
