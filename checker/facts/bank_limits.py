"""What a bank may give and take, and what is asked of it: limits, sums, short-circuit current, sharing."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product
from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined, metal
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import home, home_return, loose_bank, of_unit, parallel, series_parallel, summed, unit
from checker.facts.battery_body import LEAD
from checker.facts.catalogue import fact
from checker.facts.charging import charge_current, outputs_to, perhaps_charges, towing_contacts
from checker.facts.levels import level_at
from checker.facts.loads import rated_current
from checker.facts.subject import Subject
from checker.outofrange import OutOfRange
from checker.physics.battery import fault_current
from checker.physics.conductor_resistance import copper_resistance_per_metre, table_resistance_per_metre
from checker.physics.converter import dc_input_current
from checker.physics.sharing import shares_at_bar, shares_in_chain, spread
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    add,
    both,
    corners,
    either,
    equal,
    every,
    greatest,
    least,
    less_equal,
    multiply,
    perhaps,
    show,
    subtract,
    total,
)
from checker.quantities.values import between, or_more

LOWEST_SHARE = 0.8
"""Lowest working voltage over nominal where neither battery nor inverter tells: common practice, no source."""
COLD_C = 20.0


@fact(
    "bank",
    "charge_limit",
    unit="A",
    says="Continuous charging current that its management and its maker allow.",
    method="unit limits, the strings in parallel summed; the lesser where both are told, that of the maker without a "
    "management",
)
def charge_limit(s: Subject) -> Any:
    managed = s.has_management
    if managed is False or (managed is not True and s.is_lithium is False):
        return summed(s, "charge limit")
    by_management = summed(s, "bms.charge limit")
    return least(by_management, summed(s, "charge limit")) if s.charge_limit_told else by_management


@fact("bank", "charge_limit_told", type="yes/no", says="The file tells what its maker lets it be charged with.",
      method="whether `charge limit` is written for it or for a battery in parallel")  # fmt: skip
def charge_limit_told(s: Subject) -> bool:
    return any(unit(item).has("charge limit") for item in parallel(s.facts, s.item))


@fact(
    "bank",
    "discharge_limit",
    unit="A",
    says="Continuous discharging current that its management, and its maker where that is told, allow.",
    method="unit limits, the lower of the two, the strings in parallel summed",
)
def discharge_limit(s: Subject) -> Any:
    by_management = summed(s, "bms.discharge limit")
    told = any(unit(item).has("discharge limit") for item in parallel(s.facts, s.item))
    return least(by_management, summed(s, "discharge limit")) if told else by_management


@fact(
    "bank",
    "peak_limit",
    unit="A",
    says="Current that its management allows for a short time; at least the continuous one.",
    method="unit limits, the strings in parallel summed",
)
def peak_limit(s: Subject) -> Any:
    stated = summed(s, "bms.peak.current")
    if not isinstance(stated, Unknown):
        return stated
    lasting = s.discharge_limit
    low = lasting.low if isinstance(lasting, Range) else lasting
    return Range(low, float("inf")) if isinstance(low, float) else stated


@fact("bank", "peak_time", unit="s", says="How long its management allows the peak.")
def peak_time(s: Subject) -> Any:
    return of_unit(s, s.item, "bms.peak.time")


@fact(
    "bank",
    "short_circuit_current",
    unit="A",
    says="Greatest current into a dead short at its terminals.",
    method="stated, else voltage when full over the resistance; strings in parallel summed, leads left out",
    source="battery as electromotive force behind a resistance (circuit theory)",
)
def short_circuit_current(s: Subject) -> Any:
    stated = summed(s, "short circuit current")
    if not isinstance(stated, Unknown):
        s.note(lambda: f"strings in parallel summed: {show(stated, 'A')}")
        return stated
    found: list[Number] = []
    for item in parallel(s.facts, s.item):
        if unit(item).has("short circuit current"):
            return stated  # written as unknown: what the resistance gives need not be what the maker states
        series, strings = series_parallel(s, item)
        ohms = multiply(of_unit(s, item, "internal resistance"), series)
        found.append(multiply(corners(fault_current, s.highest_voltage, ohms), strings))
    return total(found)


@fact(
    "bank",
    "charge_sum",
    unit="A",
    says="Current of all chargers that can reach it, working at once.",
    method="settings, never above the rating, summed over every charger on the same part of the graph, with what a "
    "towing vehicle gives through its plug",
)
def charge_sum(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    perhaps_more = perhaps_charges(s.facts, s.item)
    if perhaps_more is not None:
        return perhaps_more
    found: list[Number] = []
    for output in outputs_to(s.facts, s.item):
        current = charge_current(s, output)
        s.note(_said(output.source.name, current))
        found.append(current)
    for plug in towing_contacts(s.facts, s.item):
        current = s.read(plug.equipment, f"supplies.{plug.port}.current")
        s.note(_said(plug.name, current))
        found.append(current)
    return total(found)


@fact(
    "bank",
    "load_sum",
    unit="A",
    says="Current that everything it feeds can ask of it at once, each at its rating.",
    method="inverters at full power and lowest voltage, converters at their rated input, loads at their rating; summed",
    source="power balance of a converter",
)
def load_sum(s: Subject) -> Any:
    return _asked(s, peak=False)


@fact(
    "bank",
    "peak_sum",
    unit="A",
    says="Current that everything it feeds can ask of it at once while its inverters surge, or a motor on it starts.",
    method="as load_sum, inverters at surge power, or the hardest start of a load on its bus; the greater",
    source="power balance of a converter",
)
def peak_sum(s: Subject) -> Any:
    return _asked(s, peak=True)


def _said(name: str, current: Number) -> Callable[[], str]:
    return lambda: f"{name}: {show(current, 'A')}"


def _asked(s: Subject, *, peak: bool) -> Number:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    found: list[Number] = []
    lasting: list[Number] = []
    starts: list[Number] = []
    for item, node in _consumers(s):
        current = _asks(s, item, node, peak=peak)
        if current is None:
            continue
        s.note(_said(item.name, current))
        found.append(current)
        if peak:
            lasting.append(_asks(s, item, node, peak=False))
            starts.append(_more_at_start(s, item, lasting[-1]))
    surging = total(found)
    # A motor on the bank itself starts while the inverters run, not while they give their surge.
    return greatest(surging, add(total(lasting), greatest(starts))) if starts else surging


def _consumers(s: Subject) -> Iterator[tuple[Equipment, str]]:
    """What stands on the bus of the bank, with its live node there."""
    network = s.facts.network
    for node in joined(network, [home(s.facts, s.item)]):
        for item in network.sinks.get(node, ()):
            yield item, node


def _more_at_start(s: Subject, item: Equipment, lasting: Number) -> Number:
    """What a load on the bank draws at its start beyond what it draws when it runs; none for what tells no start."""
    start = s.read(item, "start.current") if item.kind in LOADS and item.has("start.current") else None
    return 0.0 if start is None else greatest(0.0, subtract(start, lasting))


@fact(
    "bank",
    "longest_surge",
    unit="s",
    says="How long the longest surge or start lasts with which more is asked than it gives for ever; none without one.",
    method="surge time of the inverters and start time of the loads on its bus, each with all else running",
)
def longest_surge(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    lasting = s.load_sum
    found: list[Number] = []
    for item, node in _consumers(s):
        own = _asks(s, item, node, peak=False)
        if item.kind in ("inverter", "inverter-charger") and node.endswith("dc+"):
            more = subtract(inverter_current(s, item, peak=True), own)
            time = s.read(item, "surge.time")
        else:
            more = 0.0 if own is None else _more_at_start(s, item, own)
            time = s.read(item, "start.time") if item.has("start.current") else None
        within = less_equal(add(lasting, more), s.discharge_limit)
        if time is not None and within is not True:
            found.append(time if within is False else perhaps(time))
    return greatest(found) if found else None


def _asks(s: Subject, item: Equipment, node: str, *, peak: bool) -> Number:
    """What one consumer can ask; None for what is no consumer of a bank."""
    if item.kind in ("inverter", "inverter-charger") and node.endswith("dc+"):
        return inverter_current(s, item, peak=peak)
    if item.kind == "dc converter":
        side = node.split(":", 1)[1].rstrip("+")
        current: Number = s.read(item, f"sides.{side}.current")
        return current
    if item.kind in LOADS:
        level = level_at(s.facts, node)
        return rated_current(item, UNKNOWN if level is None else level.nominal)
    return None


def inverter_current(s: Subject, item: Equipment, *, peak: bool) -> Number:
    """Greatest current an inverter draws (A): full or surge power at its lowest voltage."""
    power = s.read(item, "surge.power") if peak else s.read(item, "power")
    if peak and isinstance(power, Unknown):
        rated = s.read(item, "power")
        low = rated.low if isinstance(rated, Range) else rated
        power = Range(low, float("inf")) if isinstance(low, float) else power
    volts = lowest_voltage(s, item)
    if isinstance(power, Range) and power.high == float("inf"):
        bottom = corners(dc_input_current, power.low, volts, s.read(item, "efficiency"))
        return or_more(bottom)
    return corners(dc_input_current, power, volts, s.read(item, "efficiency"))


def lowest_voltage(s: Subject, item: Equipment) -> Number:
    """Lowest battery voltage at which an inverter works, V."""
    stop = s.read(item, "settings.low stop")
    if isinstance(stop, float | Range):
        return stop
    window = s.read(item, "dc.voltage")
    if isinstance(window, Window):
        return window.low
    nominal = s.read(item, "dc.nominal")
    return corners(lambda volts, share: volts * share, nominal, Range(LOWEST_SHARE, 1.0))


@fact(
    "bank",
    "unit_imbalance",
    unit="%",
    says="Difference of current between the units in parallel, as a share of the even one.",
    method="equal voltages behind the resistance of each unit and its leads; bar or chain solved by Kirchhoff's laws",
    source="circuit theory; resistance of leads IEC 60228:2004 table 3 (seen)",
)
def unit_imbalance(s: Subject) -> Any:
    if s.item.kind == "bank" and s.item.name not in s.facts.network.units:
        return _chain(s)
    return _bar(s)


def _bar(s: Subject) -> Number:
    branches: list[Number] = []
    for ohms, leads in _branches(s):
        branches.append(add(ohms, leads))
    if len(branches) < 2:
        return 0.0
    s.note(lambda: "unit with its leads: " + ", ".join(show(one, "mΩ") for one in branches))
    return _spread(branches)


def _spread(branches: list[Number]) -> Number:
    """The difference is greatest at a corner of the ranges; its least may lie within, so it starts at none."""
    top: Number = 0.0
    if any(isinstance(one, Unknown) or one is None for one in branches):
        return next((one for one in branches if isinstance(one, Unknown)), UNKNOWN)
    ends = [(one.low, one.high) if isinstance(one, Range) else (one,) for one in branches]
    if sum(len(one) for one in ends) > len(ends) + 12:
        return Unknown("too many leads are ranges")
    worst = 0.0
    for corner in product(*ends):
        try:
            worst = max(worst, spread(shares_at_bar([float(one) for one in corner if one is not None])))
        except OutOfRange as problem:
            return Unknown(str(problem))
    top = worst
    return top if all(len(one) == 1 for one in ends) else between(0.0, top)


def _branches(s: Subject) -> list[tuple[Number, Number]]:
    """(resistance of the unit, of its leads) for each branch that meets at the bar."""
    found: list[tuple[Number, Number]] = []
    for item in parallel(s.facts, s.item):
        ohms = multiply(of_unit(s, item, "internal resistance"), series_parallel(s, item)[0])
        names = s.facts.network.units.get(item.name)
        if names is None:
            found.append((ohms, _own_leads(s, item)))
            continue
        for number, _ in enumerate(names, 1):
            found.append((ohms, _lead_pair(s, f"{item.name}.lead-{number}")))
    return found


def _lead_pair(s: Subject, circuit: str) -> Number:
    """Resistance at 20 °C of the live and return lead of a unit together."""
    found: list[Number] = []
    for conductor in s.facts.network.by_circuit.get(circuit, ()):
        if conductor.role not in (LIVE, "return"):
            continue
        lengths: list[Number] = [
            s.use(f"{conductor.circuit.path}.unit leads.length", step.length, "m")
            for wire in conductor.wires
            for step in wire.lengths
            if step.length.basis != "assumed" or not step.length.text.startswith("0 m..")
        ]
        found.append(multiply(total(lengths), _per_metre(s, conductor.circuit.cable)))
    return total(found)


def _own_leads(s: Subject, battery: Equipment) -> Number:
    """The circuits that start or end at a battery written out by itself, up to where they meet another thing."""
    found: list[Number] = []
    for conductor in s.facts.network.conductors:
        ends = {conductor.start.split(":", 1)[0], conductor.end.split(":", 1)[0]}
        duty = conductor.circuit.value("duty")
        if battery.name in ends and isinstance(duty, str) and duty in ("charge", "load", "bonding"):
            lengths: list[Number] = [
                s.use(f"{conductor.circuit.path}.run", step.length, "m")
                for wire in conductor.wires
                for step in wire.lengths
            ]
            found.append(multiply(total(lengths), _per_metre(s, conductor.circuit.cable)))
    return total(found)


def _per_metre(s: Subject, cable: Item | None) -> Number:
    if cable is None:
        return Unknown("the cable of the unit leads is not known")

    def ohms(area: float) -> float:
        try:
            return table_resistance_per_metre(area, "class 5", COLD_C)
        except OutOfRange:
            return copper_resistance_per_metre(area, COLD_C)

    return corners(ohms, s.read(cable, "size"))


def _chain(s: Subject) -> Number:
    strings = series_parallel(s, s.item)[1]
    if not isinstance(strings, float):
        return UNKNOWN
    if strings < 2:
        return 0.0
    plus, minus = s.read(s.item, "take-off.+"), s.read(s.item, "take-off.-")
    if not isinstance(plus, float) or not isinstance(minus, float):
        return Unknown(f"the take-offs of {s.id} are not told")
    ohms = multiply(of_unit(s, s.item, "internal resistance"), series_parallel(s, s.item)[0])
    reel = s.read(s.item, "unit leads.cable")
    cable = s.facts.design.cables.get(reel) if isinstance(reel, str) else None
    lengths = s.read(s.item, "unit leads.length")
    longest: Number = greatest(list(lengths)) if isinstance(lengths, tuple) else UNKNOWN
    link = multiply(longest, _per_metre(s, cable))
    return corners(
        lambda one, lead: spread(shares_in_chain(one, lead, int(strings), int(plus), int(minus))),
        ohms,
        link,
    )


@fact("bank", "take_off_diagonal", type="yes/no", says="Positive and negative leave a chain at opposite ends.")
def take_off_diagonal(s: Subject) -> Any:
    if s.item.kind != "bank" or s.item.name in s.facts.network.units:
        return None
    plus, minus = s.read(s.item, "take-off.+"), s.read(s.item, "take-off.-")
    number = s.read(s.item, "units")
    if not all(isinstance(one, float) for one in (plus, minus, number)):
        return Unknown(f"the take-offs of {s.id} are not told")
    return {plus, minus} == {1.0, number}


@fact(
    "bank",
    "mixed_with",
    of="bank",
    type="list",
    says="Batteries of another chemistry that are, or can be, joined to it in parallel or in series with no converter "
    "between.",
    method="graph, every contact closed: plus to plus, or the minus of one to the plus of the other; the builds of "
    "lead-acid count as one chemistry",
)
def mixed_with(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    network = s.facts.network
    plus, minus = home(s.facts, s.item), home_return(s.facts, s.item)
    near, below = joined(network, [plus]), metal(network, minus)
    above = metal(network, plus)
    found: list[Any] = []
    mine = s.chemistry
    for other in s.facts.subjects("bank"):
        if other.id == s.id:
            continue
        theirs_plus = home(s.facts, other.item)
        if theirs_plus not in near and theirs_plus not in below and home_return(s.facts, other.item) not in above:
            continue
        theirs = other.chemistry
        if isinstance(mine, Unknown) or isinstance(theirs, Unknown):
            return Unknown(f"the chemistry of {s.id} or {other.id} is not known")
        if mine != theirs and not (mine in LEAD and theirs in LEAD):
            found.append(other)
    return tuple(found)


@fact(
    "bank",
    "like_towing_vehicle",
    type="yes/no",
    says="The battery of a towing vehicle has its chemistry, wherever no converter parts the two.",
    method="walk from each contact of the plug, every contact closed; yes where none leads to it; the builds of "
    "lead-acid count as one chemistry",
)
def like_towing_vehicle(s: Subject) -> Truth:
    loose = loose_bank(s.facts)
    plugs = [one for one in s.facts.network.sources if one.equipment.kind == "vehicle coupling"]
    if loose is not None and plugs:
        return loose
    answers: list[Truth] = []
    for plug in plugs:
        if home(s.facts, s.item) in joined(s.facts.network, [plug.live]):
            theirs, mine = s.read(plug.equipment, "source end.chemistry"), s.chemistry
            answers.append(either(equal(mine, theirs), both(_is_lead(mine), _is_lead(theirs))))
    return every(answers)


def _is_lead(chemistry: Any) -> Truth:
    return chemistry if isinstance(chemistry, Unknown) else chemistry in LEAD


@fact("bank", "management_unit", type="text", says="The battery that carries its management.")
def management_unit(s: Subject) -> str:
    return unit(s.item).name
