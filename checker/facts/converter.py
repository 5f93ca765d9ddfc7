"""Converters, chargers, alternators, solar controllers and inverters as the file tells them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.approaches import approaches
from checker.circuit.elements import CHASSIS, LIVE
from checker.circuit.supply import is_live, joined
from checker.design.given import Where
from checker.design.vocabulary.words import ACCESS, AT_FAULT, CONNECTED, ISOLATION, WAVEFORMS
from checker.facts.bank import loose_bank, some_gap
from checker.facts.catalogue import fact, subjects
from checker.facts.charging import Output, charge_current, charge_voltages, highest_setting, is_both_ways, outputs_of
from checker.facts.contacts import signal_item, signal_means
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    both,
    either,
    every,
    greater,
    greater_equal,
    less_equal,
    multiply,
    negate,
    some,
)

KINDS = ("dc converter", "charger", "alternator", "solar controller", "inverter", "inverter-charger")
INVERTERS = ("inverter", "inverter-charger")


@subjects("converter", "A converter, charger, alternator, solar controller, inverter or inverter-charger.")
def converters(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.design.equipment.values():
        if item.kind in KINDS:
            yield item.name, item.where, item


def given(s: Subject, key: str, otherwise: Any = None) -> Any:
    """A key of the equipment; `otherwise` where equipment of its kind has no such key."""
    return s.read(s.item, key) if s.item.allows(key) else otherwise


def charging_outputs(s: Subject) -> list[Output]:
    """Its outputs that reach a battery."""
    return [one for one in outputs_of(s.facts, s.item) if one.banks]


@fact("converter", "type", words=KINDS, says="Which of the kinds it is.")
def type_of(s: Subject) -> str:
    return str(s.item.kind)


@fact("converter", "is_inverter", type="yes/no", says="It makes mains voltage from a battery.", method="kind")
def is_inverter(s: Subject) -> bool:
    return s.item.kind in INVERTERS


@fact("converter", "own", words=("factory", "fitter", "owner"), says="Whose work it is.")
def own(s: Subject) -> Any:
    return given(s, "own")


@fact("converter", "both_ways", type="yes/no", says="A dc converter whose two sides can each feed the other.")
def both_ways(s: Subject) -> Any:
    return given(s, "both ways", False)


@fact(
    "converter",
    "charges",
    of="bank",
    type="list",
    says="The batteries that its outputs reach without another converter between.",
    method="graph, every contact closed; unknown where nobody knows whether it also works the other way",
)
def charges(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    perhaps = _perhaps_both(s)
    if isinstance(perhaps, Unknown) and not is_both_ways(s.facts, s.item):
        return perhaps
    found: dict[str, Any] = {}
    for output in charging_outputs(s):
        for item in output.banks:
            found.setdefault(item.name, s.facts.of("bank", item))
    return tuple(found.values())


@fact("converter", "charges_lithium", type="yes/no", says="One of the batteries it charges is a lithium battery.")
def charges_lithium(s: Subject) -> Truth:
    banks = s.charges
    return banks if isinstance(banks, Unknown) else some(bank.is_lithium for bank in banks)


@fact(
    "converter",
    "output_current",
    unit="A",
    says="Greatest current it charges with; none when it charges nothing.",
    method="its setting, never above its rating; the larger of two outputs",
)
def output_current(s: Subject) -> Any:
    from checker.quantities import greatest

    found = [charge_current(s, output) for output in charging_outputs(s)]
    return greatest(found) if found else None


@fact("converter", "output_voltage", unit="V", says="Highest voltage it is set to charge with, equalising left out.")
def output_voltage(s: Subject) -> Any:
    from checker.quantities import greatest

    found = [highest_setting(s, output) for output in charging_outputs(s)]
    return greatest(found) if found else None


@fact("converter", "equalise_voltage", unit="V", says="Equalising voltage; none when it is off.")
def equalise_voltage(s: Subject) -> Any:
    return given(s, "settings.equalise")


@fact("converter", "equalises", type="yes/no", says="Equalising is on.")
def equalises(s: Subject) -> Truth:
    value = s.equalise_voltage
    return value if isinstance(value, Unknown) else value is not None


@fact("converter", "desulphates", type="yes/no", says="Desulphating pulses are on.")
def desulphates(s: Subject) -> Any:
    return given(s, "settings.desulphate", False)


@fact(
    "converter",
    "fits_chemistry",
    type="yes/no",
    says="Its charging voltages suit every battery it charges: high enough to fill it, within what it may see.",
    method="each setting against cells times cell voltage; an alternator and its own starting battery are left out",
    source="usual data of battery makers; common practice, no source",
)
def fits_chemistry(s: Subject) -> Any:
    if isinstance(s.charges, Unknown):
        return s.charges
    found: list[Truth] = []
    for output in charging_outputs(s):
        for item in output.banks:
            bank = s.facts.of("bank", item)
            if bank is None:
                continue
            matched = _pair_of_the_maker(s, bank)
            if matched is True:
                continue
            for key, value in charge_voltages(s, output):
                found.append(either(matched, _fits(value, key, bank)))
    return every(found)


def _pair_of_the_maker(s: Subject, bank: Subject) -> Truth:
    """The alternator and the starting battery of the vehicle are matched by its maker."""
    purpose = bank.purpose
    if s.item.kind != "alternator":
        return False
    return purpose if isinstance(purpose, Unknown) else bool(purpose == "starting")


def _fits(value: Any, key: str, bank: Subject) -> Truth:
    if value is None:
        return key == "settings.float"  # a charger may stop instead of floating
    low, high = (value.low, value.high) if isinstance(value, Window) else (value, value)
    within = less_equal(high, bank.charge_voltage_limit)
    if key == "settings.float":
        return within
    set_at = high if key == "set voltage" else low  # an alternator may be set low when warm
    return every((within, greater_equal(low, bank.full_voltage), _fills(set_at, key, bank)))


LEAD_FILLS_V = 2.25
"""Least voltage of a cell that fills a lead-acid battery in the end, at 25 °C, V: common practice, no source."""


def _fills(volts: Any, key: str, bank: Subject) -> Truth:
    """Whether a charging voltage that is set fills a lead-acid battery, held long enough."""
    if key not in ("settings.charge voltage", "set voltage") or bank.is_lithium is True:
        return True
    enough = greater_equal(volts, multiply(bank.cells, LEAD_FILLS_V))
    return either(enough, bank.is_lithium)


@fact(
    "converter",
    "stops_on_management",
    type="yes/no",
    says="The management of the battery tells it to stop charging, and a broken wire counts as stop.",
    method="given: the signal by which it stops, from which battery it comes, and what that signal fails to",
)
def stops_on_management(s: Subject) -> Any:
    name = given(s, "charge stop.by")
    if name is None or isinstance(name, Unknown):
        return False if name is None else name
    means = signal_means(s.facts, name)
    if isinstance(means, Unknown):
        return means
    item = signal_item(s.facts, name)
    fails = s.read(item, "fails") if item is not None else UNKNOWN
    right = means in ("charge allowed", "stop all", "fault")
    if isinstance(fails, Unknown):
        return fails if right else False
    released_stops = fails == "released" if means == "charge allowed" else fails == "given"
    return both(right and released_stops, _from_what_it_charges(s, name if item is None else item.value("from")))


def _from_what_it_charges(s: Subject, origin: Any) -> Truth:
    """Whether a signal that comes from a battery comes from the managed one it charges; others may speak for all."""
    owner = origin.split(".", 1)[0] if isinstance(origin, str) else None
    stores = {bank.id: bank for bank in s.facts.subjects("bank")}
    if owner not in stores and not isinstance(origin, Unknown):
        return True
    banks = s.charges
    if isinstance(banks, Unknown):
        return banks
    if isinstance(origin, Unknown):
        own = {bank.id for bank in banks}
        return either(every(negate(bank.is_managed) for name, bank in stores.items() if name not in own), UNKNOWN)
    return every(True if bank.id == owner else negate(bank.is_managed) for bank in banks)


@fact("converter", "harmed_unloaded", type="yes/no", says="It is harmed when the battery goes while it charges.")
def harmed_unloaded(s: Subject) -> Any:
    return given(s, "unloaded battery harm", False)


@fact(
    "converter",
    "both_ports_protected",
    type="yes/no",
    says="From each side of it every conductor meets a protective device.",
    method="walk from both its terminals along every live conductor to the first protective device",
)
def both_ports_protected(s: Subject) -> Any:
    held: dict[str, list[Any]] | None = s.facts.store.get("reaches by equipment")
    if held is None:
        held = s.facts.store["reaches by equipment"] = {}
        for approach in approaches(s.facts.network):
            for source in approach.sources:
                held.setdefault(source.equipment.name, []).append(approach.reach.has_device)
    found = held.get(s.id, [])
    return every(found) if found else Unknown(f"{s.id} reaches no conductor")


@fact("converter", "isolation_class", words=ISOLATION, says="Isolation between its sides; none when they are joined.")
def isolation_class(s: Subject) -> Any:
    return given(s, "isolation")


@fact("converter", "is_isolated", type="yes/no", says="The two sides of a dc converter are isolated from each other.")
def is_isolated(s: Subject) -> Any:
    return given(s, "isolated")


@fact(
    "converter",
    "negatives_joined",
    type="yes/no",
    says="The negatives of the two sides of a dc converter are joined outside of it.",
    method="graph: return and bonding conductors, the chassis",
)
def negatives_joined(s: Subject) -> Any:
    if s.item.kind != "dc converter":
        return None
    return True if f"{s.id}:high-" in returning_to(s, "low") else unless_unseen(s, answer=False)


def returning_to(s: Subject, side: str) -> set[str]:
    """The nodes joined to the negative of one side by anything but live conductors."""
    start = f"{s.id}:{side}-"
    seen, todo = {start}, [start]
    while todo:
        for edge, far in s.facts.network.near.get(todo.pop(), ()):
            if not is_live(edge) and far not in seen:
                seen.add(far)
                todo.append(far)
    return seen


def unless_unseen(s: Subject, *, answer: bool) -> Truth:
    unseen = any(circuit.returns.how == "unknown" for circuit in s.facts.network.circuits) or some_gap(s.facts)
    return Unknown("how some circuit returns is not known") if unseen else answer


@fact(
    "converter",
    "gives_to_its_own_loads",
    type="yes/no",
    says="It works one way, and what it feeds comes back to it alone: no chassis, no other source on that side.",
    method="graph: return and bonding conductors from the negative it gives from",
)
def gives_to_its_own_loads(s: Subject) -> Truth:
    both_ways = given(s, "both ways") if s.item.kind == "dc converter" else True
    if both_ways is not False:
        return both_ways if isinstance(both_ways, Unknown) else False
    ports = {one.port for one in s.facts.network.sources if one.equipment is s.item}
    for port in ports:
        near = returning_to(s, port)
        others = (one.returns for one in s.facts.network.sources if one.equipment is not s.item)
        if CHASSIS in near or any(back in near for back in others):
            return False
        fed = joined(s.facts.network, [f"{s.id}:{port}+"])
        for circuit in s.facts.network.circuits:
            live = s.facts.network.conductor(circuit.name, LIVE)
            if circuit.returns.how == "chassis" and live is not None and live.start in fed:
                return False
    return unless_unseen(s, answer=bool(ports))


@fact("converter", "trip_low", unit="V", says="Voltage of its low side at which a dc converter shuts down.")
def trip_low(s: Subject) -> Any:
    return given(s, "sides.low.trips over")


@fact("converter", "trip_high", unit="V", says="Voltage of its high side at which a dc converter shuts down.")
def trip_high(s: Subject) -> Any:
    return given(s, "sides.high.trips over")


@fact("converter", "low_nominal", unit="V", says="Nominal voltage of the low side of a dc converter.")
def low_nominal(s: Subject) -> Any:
    return given(s, "sides.low.nominal")


@fact("converter", "high_nominal", unit="V", says="Nominal voltage of the high side of a dc converter.")
def high_nominal(s: Subject) -> Any:
    return given(s, "sides.high.nominal")


@fact("converter", "steps_up", type="yes/no", says="A dc converter that gives a higher voltage than it takes.")
def steps_up(s: Subject) -> Any:
    if s.item.kind != "dc converter":
        return False
    outputs = outputs_of(s.facts, s.item)
    if not outputs and all(f"{s.id}:{side}+" in s.facts.network.near for side in ("low", "high")):
        return Unknown(f"which way {s.id} works is not told: no circuit starts at one of its sides")
    gives_high = any(one.source.port == "high" for one in outputs)
    return greater(s.high_nominal, s.low_nominal) if gives_high else False


@fact("converter", "at_fault", words=AT_FAULT, says="What it does into a short circuit.")
def at_fault(s: Subject) -> Any:
    # What the charger within does is not what the key says of one that stands alone.
    return given(s, "at fault", UNKNOWN if s.item.kind == "inverter-charger" else None)


@fact("converter", "idle_power", unit="W", says="What it draws from the battery while it waits.")
def idle_power(s: Subject) -> Any:
    return given(s, "no load") if s.item.allows("no load") else given(s, "idle")


@fact("converter", "access", words=ACCESS, says="How a hand gets to it.")
def access(s: Subject) -> Any:
    return given(s, "access")


@fact("converter", "off_by", words=CONNECTED, says="How it is switched off; none when it cannot be.")
def off_by(s: Subject) -> Any:
    return given(s, "off by")


@fact(
    "converter", "can_be_off", type="yes/no", says="It has an off state: a switch, or a signal without which it rests."
)
def can_be_off(s: Subject) -> Truth:
    found: list[Truth] = []
    for key in ("off by", "enabled by", "wakes by"):
        value = given(s, key)
        # What wakes by itself rests while nothing asks it, which is no state that somebody chooses.
        found.append(value if isinstance(value, Unknown) else value not in (None, "by itself"))
    return some(found)


@fact("converter", "efficiency", unit="%", says="Output over input at rated power.")
def efficiency(s: Subject) -> Any:
    return given(s, "efficiency")


@fact("converter", "waveform", words=WAVEFORMS, says="Shape of the voltage of an inverter.")
def waveform(s: Subject) -> Any:
    return given(s, "waveform")


@fact("converter", "power", unit="W", says="Continuous power of an inverter.")
def power(s: Subject) -> Any:
    return given(s, "power")


@fact("converter", "surge_power", unit="W", says="Power of an inverter for a short time; at least the continuous one.")
def surge_power(s: Subject) -> Any:
    stated = given(s, "surge.power")
    if not isinstance(stated, Unknown):
        return stated
    lasting = s.power
    low: Number = lasting.low if isinstance(lasting, Range) else lasting
    return Range(low, float("inf")) if isinstance(low, float) else stated


@fact("converter", "input_capacitance", unit="F", says="Capacitors behind the battery terminals of an inverter.")
def input_capacitance(s: Subject) -> Any:
    return given(s, "dc.input capacitance")


@fact("converter", "ripple", unit="V", says="Ripple voltage at its output while it charges.")
def ripple(s: Subject) -> Any:
    return given(s, "ripple")


@fact("converter", "reverse_drain", unit="mA", says="Current it draws back from the battery when it is off.")
def reverse_drain(s: Subject) -> Any:
    return given(s, "reverse drain")


@fact("converter", "standards_told", type="yes/no", says="A product standard is stated for it.")
def standards_told(s: Subject) -> Any:
    stated = given(s, "standard")
    return stated if isinstance(stated, Unknown) else bool(stated)


CHARGER_STANDARDS = ("60335-2-29", "60335.2.29", "UL 1236", "UL 458", "4763", "62109", "62477", "A-31")
"""Numbers of product standards that chargers and inverter-chargers for fixed installation are built to."""


@fact("converter", "built_as_charger", type="yes/no",
      says="Its standard is one of battery chargers or of power converters; unknown for any other text.",
      method="IEC 60335-2-29, UL 1236, UL 458, AS/NZS 4763, IEC 62109, IEC 62477, ABYC A-31",
      source="titles of these standards (from memory)")  # fmt: skip
def built_as_charger(s: Subject) -> Truth:
    stated = given(s, "standard")
    if isinstance(stated, Unknown) or not stated:
        return stated if isinstance(stated, Unknown) else False
    texts = stated if isinstance(stated, tuple) else (stated,)
    if any(number in str(text) for text in texts for number in CHARGER_STANDARDS):
        return True
    return Unknown(f"whether {', '.join(str(text) for text in texts)} is a standard of battery chargers is not known")


@fact("converter", "gives_both", type="yes/no", says="Both sides of a dc converter give.", method="graph and both ways")
def gives_both(s: Subject) -> Truth:
    return is_both_ways(s.facts, s.item) or _perhaps_both(s)


def _perhaps_both(s: Subject) -> Truth:
    """Whether a dc converter feeds both ways, where it is not told: unknown, since either side may be a source."""
    told = given(s, "both ways") if s.item.kind == "dc converter" else False
    return told if isinstance(told, Unknown) else False


@fact("converter", "place", of="place", type="subject", says="Where it stands.")
def place(s: Subject) -> Any:
    name = given(s, "place")
    return s.facts.subject("place", name) if isinstance(name, str) else name
