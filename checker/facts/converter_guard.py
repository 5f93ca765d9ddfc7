"""What guards a converter and what hangs on it: voltage stops, cables within its limit, voltage left at its input."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Wire
from checker.circuit.supply import is_live, joined
from checker.facts.alternator import live_node
from checker.facts.bank import home, loose_bank, of_unit
from checker.facts.battery_body import LEAD
from checker.facts.catalogue import fact
from checker.facts.charging import outputs_of, rating_key
from checker.facts.converter import charging_outputs
from checker.facts.levels import level_at
from checker.facts.subject import Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    both,
    every,
    greater,
    greatest,
    least,
    less,
    less_equal,
    multiply,
    some,
    subtract,
)
from checker.quantities.values import or_more

ENDURED_SHARE = 16.0 / 12.0
"""Highest supply voltage of 12 V road equipment over nominal: ISO 16750-2, 2023 (from memory)."""


@fact("converter", "charges_lead", type="yes/no", says="One of the batteries it charges is a lead-acid house battery.",
      method="graph; the starting battery is left out")  # fmt: skip
def charges_lead(s: Subject) -> Truth:
    answers: list[Truth] = []
    if isinstance(s.charges, Unknown):
        return s.charges
    for bank in s.charges:
        purpose = bank.purpose
        house: Truth = purpose if isinstance(purpose, Unknown) else purpose != "starting"
        answers.append(both(is_lead(bank), house))
    return some(answers)


def is_lead(bank: Subject) -> Truth:
    """Whether the cells of a battery are lead-acid cells of any build."""
    word = bank.chemistry
    return word if isinstance(word, Unknown) else word in LEAD


LEAD_AT_EASE_C = (10.0, 30.0)
"""Air in which a lead-acid battery may be charged at one voltage all year: common practice, no source."""


@fact("converter", "lead_meets_hot_or_cold", type="yes/no",
      says="A lead-acid house battery that it charges stands where the air falls below 10 °C or rises above 30 °C.",
      method="coldest and hottest air of the place of each", source="common practice, no source")  # fmt: skip
def lead_meets_hot_or_cold(s: Subject) -> Truth:
    if isinstance(s.charges, Unknown):
        return s.charges
    answers: list[Truth] = []
    for bank in s.charges:
        place, purpose = bank.place, bank.purpose
        house: Truth = purpose if isinstance(purpose, Unknown) else purpose != "starting"
        if place is None or isinstance(place, Unknown):
            swings: Truth = Unknown(f"where {bank.id} stands is not told")
        else:
            cold, hot = LEAD_AT_EASE_C
            swings = some((less(place.coldest, cold), greater(place.hottest, hot)))
        answers.append(every((is_lead(bank), house, swings)))
    return some(answers)


@fact(
    "converter",
    "high_side_limit",
    unit="V",
    says="Greatest voltage that the batteries on the high side of a dc converter may see while charging; where none is "
    "there, what other equipment endures for a while.",
    method="least charge voltage limit of them, else nominal voltage times 16/12",
    source="ISO 16750-2, 2023 (from memory)",
)
def high_side_limit(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    found: list[Number] = []
    for output in charging_outputs(s):
        if output.source.port == "high":
            found.extend(bank.charge_voltage_limit for item in output.banks if (bank := s.facts.of("bank", item)))
    return least(found) if found else multiply(s.high_nominal, ENDURED_SHARE)


@fact(
    "converter",
    "low_side_gives",
    type="yes/no",
    says="The low side of a dc converter feeds something.",
    method="graph and direction",
)
def low_side_gives(s: Subject) -> bool:
    return any(one.source.port == "low" for one in outputs_of(s.facts, s.item))


@fact(
    "converter",
    "output_within_cables",
    type="yes/no",
    says="No conductor that its outputs reach before a protective device carries less than it can give for ever.",
    method="rated current of each side against the carrying capacity of its conductors",
)
def output_within_cables(s: Subject) -> Truth:
    if s.item.kind not in ("dc converter", "charger", "inverter-charger"):
        return UNKNOWN
    answers: list[Truth] = []
    for output in outputs_of(s.facts, s.item):
        limit = s.read(s.item, rating_key(output.source))
        for wire in _wires_before_device(s, output.source.live):
            conductor = s.facts.of("conductor", wire.conductor)
            if conductor is not None:
                answers.append(less_equal(limit, conductor.carrying_capacity))
    return every(answers)


def _wires_before_device(s: Subject, node: str) -> list[Wire]:
    found: dict[int, Wire] = {}
    seen, todo = {node}, [node]
    while todo:
        for edge, far in s.facts.network.near.get(todo.pop(), ()):
            if not is_live(edge):
                continue
            if isinstance(edge, Wire):
                found.setdefault(id(edge), edge)
            elif edge.is_protective:
                continue
            if far not in seen:
                seen.add(far)
                todo.append(far)
    return list(found.values())


@fact("converter", "is_dc_converter", type="yes/no", says="It turns direct current into direct current.", method="kind")
def is_dc_converter(s: Subject) -> bool:
    return bool(s.item.kind == "dc converter")


def _input(s: Subject) -> tuple[str, str] | None:
    """(side, node) from which equipment draws, None when it is not told or both sides do."""
    if s.item.kind in ("inverter", "inverter-charger"):
        return "dc", f"{s.id}:dc+"
    if s.item.kind == "dc converter":
        gives = {one.source.port for one in outputs_of(s.facts, s.item)}
        if gives == {"low"}:
            return "high", f"{s.id}:high+"
        if gives:
            return "low", f"{s.id}:low+"
    return None


@fact(
    "converter",
    "cut_out_voltage",
    unit="V",
    says="Input voltage below which it stops.",
    method="its low stop, else the lower end of the voltages it works at",
)
def cut_out_voltage(s: Subject) -> Any:
    side = _input(s)
    if s.item.kind == "dc converter" and isinstance(s.read(s.item, "both ways"), Unknown):
        return Unknown(f"from which of its sides {s.id} draws is not told")
    if side is None:
        return None
    set_higher = False
    for key in ("settings.holds low above", "settings.low stop"):
        stop = s.read(s.item, key) if s.item.allows(key) else None
        if isinstance(stop, float | Range):
            return stop
        set_higher = set_higher or (isinstance(stop, Unknown) and s.item.has(key))
    key = "dc.voltage" if side[0] == "dc" else f"sides.{side[0]}.voltage"
    window = s.read(s.item, key)
    lowest: Number = window.low if isinstance(window, Window) else UNKNOWN
    # A setting of which nobody knows where it stands may stop it long before its own limit does.
    return or_more(lowest) if set_higher else lowest


@fact(
    "converter",
    "input_voltage_min",
    unit="V",
    says="Voltage at its input in use at full current: what the source holds then, less the drop of its cables.",
    method="least voltage of the alternator or towing vehicle it draws from, else nominal voltage of its battery, less "
    "the drop",
    source="Ohm's law; drop as circuit.drop",
)
def input_voltage_min(s: Subject) -> Any:
    side = _input(s)
    return None if side is None else subtract(_held_voltage(s, side[1]), s.input_drop)


@fact(
    "converter",
    "input_drop",
    unit="V",
    says="Voltage that the cables to its input lose at full current; none where it draws from no side that is known.",
    method="the greatest of the circuits that end there",
    source="Ohm's law; drop as circuit.drop",
)
def input_drop(s: Subject) -> Any:
    side = _input(s)
    return None if side is None else _drop_to(s, side[1])


def _drop_to(s: Subject, node: str) -> Number:
    drops = [
        circuit.drop
        for circuit in s.facts.subjects("circuit")
        if (live := s.facts.network.conductor(circuit.id, LIVE)) is not None and node in (live.start, live.end)
    ]
    return greatest(drops) if drops else Unknown(f"nothing is connected to the input of {s.id}")


@fact(
    "converter",
    "feed_margin",
    unit="V",
    says="Of a converter that works both ways: what is left at its high side while it feeds the low one at full "
    "current, less the least voltage that side works at. None for others.",
    method="nominal voltage of its battery, less the drop; lower end of the voltages of the high side",
    source="Ohm's law; drop as circuit.drop",
)
def feed_margin(s: Subject) -> Any:
    if s.item.kind != "dc converter":
        return None
    both_ways = s.read(s.item, "both ways")
    if both_ways is False:
        return None
    window, node = s.read(s.item, "sides.high.voltage"), f"{s.id}:high+"
    lowest: Number = window.low if isinstance(window, Window) else UNKNOWN
    margin = subtract(subtract(_held_voltage(s, node), _drop_to(s, node)), lowest)
    return both_ways if isinstance(both_ways, Unknown) else margin


@fact("converter", "restart_margin", unit="V",
      says="How far above the voltage at which it stops it starts again.",
      method="restarts at, less the stop")  # fmt: skip
def restart_margin(s: Subject) -> Any:
    restart = s.read(s.item, "settings.restarts at") if s.item.allows("settings.restarts at") else UNKNOWN
    return subtract(restart, s.cut_out_voltage)


def _held_voltage(s: Subject, node: str) -> Number:
    near = joined(s.facts.network, [node])
    for converter in s.facts.subjects("converter"):
        if converter.item.kind == "alternator" and live_node(converter) in near:
            window = s.read(converter.item, "set voltage")
            return window.low if isinstance(window, Window) else UNKNOWN
    for bank in s.facts.subjects("bank"):
        if home(s.facts, bank.item) in near:
            of_unit(s, bank.item, "nominal")
            return bank.nominal_voltage  # type: ignore[no-any-return]
    coupling = next((one.equipment for one in s.facts.network.sources if one.live in near and one.storage), None)
    if coupling is not None and coupling.kind == "vehicle coupling":
        window = s.read(coupling, "source end.voltage")
        return window.low if isinstance(window, Window) else UNKNOWN
    level = level_at(s.facts, node)
    return UNKNOWN if level is None else level.nominal


@fact(
    "converter",
    "low_bus_limit",
    unit="V",
    says="Voltage that equipment on the low side of a dc converter endures for a while: a third above nominal.",
    method="nominal voltage times 16/12, the highest supply voltage of 12 V road equipment",
    source="ISO 16750-2, 2023 (from memory)",
)
def low_bus_limit(s: Subject) -> Any:
    return multiply(s.low_nominal, ENDURED_SHARE)


@fact("converter", "goes_on_the_road", type="yes/no", says="It is fixed to a road vehicle and did not come with it.",
      method="kind of vehicle, whose work it is")  # fmt: skip
def goes_on_the_road(s: Subject) -> Truth:
    if s.item.kind == "alternator" and not s.item.has("own"):
        return False  # the engine came with one
    vehicle, own = s.read(s.facts.design.vehicle, "kind"), s.own
    if isinstance(vehicle, Unknown) or isinstance(own, Unknown):
        return UNKNOWN
    return bool(vehicle in ("motorhome", "campervan", "caravan", "trailer") and own != "factory")


@fact(
    "converter",
    "approved_for_vehicles",
    type="yes/no",
    says="An approval mark for electronics in vehicles is stated.",
    method="UN Regulation 10, or an e-mark, among its approvals",
)
def approved_for_vehicles(s: Subject) -> Truth:
    return marked_for_vehicles(s)


def marked_for_vehicles(s: Subject) -> Truth:
    """Whether equipment states an approval, or an exemption, of electromagnetic compatibility in vehicles."""
    stated = s.read(s.item, "approval")
    if stated is None or isinstance(stated, Unknown):
        return False if stated is None else stated
    marks = [text.casefold() for text in stated if isinstance(text, str)]
    return any("r10" in mark or "regulation 10" in mark or "e-mark" in mark for mark in marks)
