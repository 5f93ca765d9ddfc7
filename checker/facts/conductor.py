"""What conductors can stand and what they must carry."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import BONDING, LIVE, Link, Wire
from checker.circuit.limits import largest, overload_currents
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.conductor_given import wire_length
from checker.facts.currents import design_currents
from checker.facts.space import lower, upper
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import may_be_fed
from checker.outofrange import OutOfRange
from checker.physics.adiabatic import THERMOSET_FROM_C, k_for_insulation, withstand_energy
from checker.physics.carrying_capacity import Capacity, dc_carrying_capacity
from checker.physics.conductor_resistance import copper_resistance_per_metre, table_resistance_per_metre
from checker.physics.device_ratings import next_standard_rating
from checker.physics.installed_capacity import installed_capacity
from checker.quantities import UNKNOWN, Number, Range, Unknown, add, between, corners, least, multiply, show
from checker.quantities.values import or_more

COLD_C = 20.0
TABLE_5 = "33 CFR 183.425 Table 5 with its notes (seen); heat balance after Churchill and Chu 1975 (from memory)"
INSULATION_WORDS = {None: "none", "one side": "one side", "both sides": "surrounded"}


@fact(
    "conductor",
    "table_capacity",
    unit="A",
    says="Current it may carry by the published table with all factors.",
    method="free-air table times the factors for ambient, bunching, and thermal insulation or conduit",
    source="33 CFR 183.425 Table 5 with notes 1 and 2 (seen)",
)
def table_capacity(s: Subject) -> Any:
    return _capacity(s, "corrected_a")


@fact(
    "conductor",
    "heat_capacity",
    unit="A",
    says="Current it may carry by the heat balance of an insulated conductor.",
    method="resistive heat equals what free convection and radiation carry off at the insulation limit",
    source="natural convection: Churchill and Chu 1975 (from memory)",
)
def heat_capacity(s: Subject) -> Any:
    return _capacity(s, "heat_balance_a")


@fact(
    "conductor",
    "carrying_capacity",
    unit="A",
    says="Current it may carry for ever where it lies: the lower of table and heat balance, parallel cables together.",
    method="lower of table and heat balance; mains cables by the table for installed cables",
    source=f"{TABLE_5}; mains: IEC 60364-5-52 (by row)",
)
def carrying_capacity(s: Subject) -> Any:
    if s.system == "ac":
        return multiply(_installed(s), s.parallel_legs)
    current = _capacity(s, "current_a")
    return multiply(current, s.parallel_legs)


def _capacity(s: Subject, piece: str) -> Any:
    if not _is_copper(s):
        return _no_table(s)
    insulated, enclosed = s.in_thermal_insulation, s.enclosed
    if not isinstance(insulated, Unknown) and not isinstance(enclosed, Unknown):
        return _capacity_in(s, piece, INSULATION_WORDS[insulated], enclosed)
    # Surrounded at the worst, in free air at the best: nobody need look where both allow what flows.
    words = ("surrounded", "none") if isinstance(insulated, Unknown) else (INSULATION_WORDS[insulated],) * 2
    boxed = (True, False) if isinstance(enclosed, Unknown) else (enclosed, enclosed)
    return _between(_capacity_in(s, piece, words[0], boxed[0]), _capacity_in(s, piece, words[1], boxed[1]))


def _between(least_a: Number, most_a: Number) -> Number:
    """From the lowest of one number to the highest of another."""
    if isinstance(least_a, float | Range) and isinstance(most_a, float | Range):
        return between(lower(least_a), upper(most_a))
    return least_a if isinstance(least_a, Unknown) else most_a


def _capacity_in(s: Subject, piece: str, word: str, enclosed: bool) -> Any:
    """A capacity in thermal insulation told as a word of the table, in conduit or not."""
    area, limit, ambient, bunched = s.area, s.insulation_limit, s.ambient, s.bunched

    def current(area_m2: float, limit_c: float, ambient_c: float, count: float) -> float:
        if ambient_c >= limit_c:
            return 0.0  # the air alone brings the insulation to its limit
        return float(getattr(_held(s.facts, area_m2, limit_c, ambient_c, int(count), word, enclosed), piece))

    found = corners(current, area, limit, ambient, bunched)
    if isinstance(found, float) and found > 0.0 and s.facts.recorder is not None:
        held = _held(s.facts, area, limit, ambient, int(bunched), word, enclosed)
        s.note(lambda: _working(held))
    return found


def _held(facts: Facts, area: float, limit: float, ambient: float, count: int, word: str, enclosed: bool) -> Capacity:
    """One solve for each combination; a vehicle has few."""
    cache: dict[Any, Any] = facts.shared.setdefault("capacities", {})
    key = (area, limit, ambient, count, word, enclosed)
    if key not in cache:
        try:
            cache[key] = dc_carrying_capacity(area, limit, ambient, count, word, enclosed)
        except OutOfRange as problem:
            cache[key] = problem
    found = cache[key]
    if isinstance(found, OutOfRange):
        raise found
    return found  # type: ignore[no-any-return]


def _is_copper(s: Subject) -> bool:
    metal = s.material
    return isinstance(metal, str) and "copper" in metal


def _no_table(s: Subject) -> Unknown:
    """Why no table holds it: its metal is not known, or is another."""
    metal = s.material
    return metal if isinstance(metal, Unknown) else Unknown("tables are held for copper conductors only")


def _working(held: Capacity) -> str:
    factors = " × ".join(f"{factor.value:.3g} ({factor.name})" for factor in held.factors)
    return (
        f"table {held.table_a:.4g} A × {factors} = {held.corrected_a:.4g} A; heat balance {held.heat_balance_a:.4g} A; "
        f"the {held.governing} governs: {held.current_a:.4g} A ({held.source})"
    )


def _installed(s: Subject) -> Any:
    """Mains cables: the worst and the best of what nobody knows of their way."""
    insulated = s.in_thermal_insulation
    enclosed = True if isinstance(s.covering, str) else s.enclosed  # any covering, as the tables know no finer
    words = ("one side", "both sides", None) if isinstance(insulated, Unknown) else (insulated,)
    boxed = (True, False) if isinstance(enclosed, Unknown) else (enclosed,)
    found = [_installed_in(s, word, box) for word in words for box in boxed]
    return found[0] if len(found) == 1 else _between(least(found), found[-1])


def _installed_in(s: Subject, insulated: str | None, enclosed: bool) -> Number:
    """Method C (clipped direct), B2 in conduit, A2 against insulation; surrounded by it over the whole length."""
    method = "A2" if insulated == "one side" else "B2" if enclosed else "C"
    in_insulation: Number = s.length if insulated == "both sides" else 0.0
    if isinstance(in_insulation, Unknown):
        in_insulation = Range(0.0, 100.0)

    def current(area_m2: float, limit_c: float, ambient_c: float, count: float, insulated_m: float) -> float:
        if ambient_c >= limit_c:
            return 0.0
        circuits = max(1, int(count) // 2)
        return installed_capacity(area_m2, limit_c, method, 2, ambient_c, circuits, insulated_m).current_a

    return corners(current, s.area, s.insulation_limit, s.ambient, s.bunched, in_insulation)


@fact(
    "conductor",
    "overload_current",
    unit="A",
    says="Greatest current that can flow in it for long before a device opens or its sources give no more.",
    method="each side pushes what its sources give and swallows what hangs on it, limited by the devices in between",
)
def overload_current(s: Subject) -> Any:
    if s.item.role != LIVE:
        return 0.0 if s.item.role != "return" else _of_live(s)
    facts = s.facts
    if "overload" not in facts.shared:
        facts.shared["overload"] = overload_currents(facts.network)
    unseen = may_be_fed(facts, s.id, s.item.start)
    if unseen is not None:
        return unseen
    found: Number = 0.0
    for wire in s.item.wires:
        current = facts.shared["overload"].get(id(wire), 0.0)
        found = largest(found, current)
    if facts.recorder is not None:
        ratings = [f"{device.id} lets {show(device.rating, 'A')} through" for device in s.protected_by]
        s.note(lambda: "; ".join(ratings) or "no device on either side")
    if facts.network.systems[s.item.circuit.name] == "dc" and loose_bank(facts) is not None:
        return _at_least(found)
    return found


def _at_least(known: Number) -> Number:
    """What is known to flow, or more: how the units of some bank are joined is not told, and they may feed it too."""
    return or_more(known)


def _of_live(s: Subject) -> Any:
    live = s.facts.network.conductor(s.item.circuit.name, LIVE)
    twin = s.facts.of("conductor", live) if live is not None else None
    return UNKNOWN if twin is None else twin.overload_current


@fact("conductor", "next_device_rating", unit="A", says="Standard rating of a device next above its carrying capacity.",
      method="table of standard ratings", source="NFPA 70, Table 240.6(A) (from memory)")  # fmt: skip
def next_device_rating(s: Subject) -> Any:
    return corners(next_standard_rating, s.carrying_capacity)


@fact(
    "conductor",
    "protected_by",
    of="device",
    type="list",
    says="The protective devices that stand next to it on either side, and in its own run.",
    method="walk from each end to the first protective device",
)
def protected_by(s: Subject) -> tuple[Any, ...]:
    found: dict[str, Equipment] = {}
    for part in s.item.parts:
        if isinstance(part, Link) and part.is_protective:
            found.setdefault(part.equipment.name, part.equipment)
    for wire in s.item.wires:
        for device in next_devices(s.facts, wire):
            found.setdefault(device.name, device)
    subjects = (s.facts.subject("device", name) for name in found)
    return tuple(device for device in subjects if device is not None)


def next_devices(facts: Facts, wire: Wire) -> list[Equipment]:
    """The first protective devices met from either end of a wire, bounded to its surroundings."""
    found: dict[str, Equipment] = {}
    seen = {wire.a, wire.b}
    todo = [wire.a, wire.b]
    while todo and len(seen) < 400:
        node = todo.pop()
        for edge, far in facts.network.near.get(node, ()):
            if edge is wire:
                continue
            if isinstance(edge, Link):
                if edge.pole != LIVE:
                    continue
                if edge.is_protective:
                    found.setdefault(edge.equipment.name, edge.equipment)
                    continue
            elif edge.conductor.role != LIVE:
                continue
            if far not in seen:
                seen.add(far)
                todo.append(far)
    return list(found.values())


@fact(
    "conductor",
    "design_current",
    unit="A",
    says="Greatest lasting current it must carry over all modes.",
    method="what the loads on one side ask and the sources on the other can give, mode by mode; the larger direction",
)
def design_current(s: Subject) -> Any:
    if s.item.role == BONDING or s.item.role == "earth":
        return 0.0
    live = s.item
    if s.item.role == "return":
        found = s.facts.network.conductor(s.item.circuit.name, LIVE)
        if found is None:
            return UNKNOWN
        live = found
    unseen = may_be_fed(s.facts, s.id, live.start)
    if unseen is not None:
        return unseen
    current, mode = design_currents(s.facts).get(live.id, (UNKNOWN, ""))
    if mode:
        s.note(lambda: f"greatest in mode {mode}: {show(current, 'A')}")
    if isinstance(current, Unknown) and not current.reason:
        return Unknown(f"what the loads behind {s.id} ask for, or its sources give, is not told")
    return current


@fact(
    "conductor",
    "resistance",
    unit="mΩ",
    says="Resistance of its whole length when it is as hot as its insulation may be.",
    method="copper: published resistance per metre of the size, else resistivity over area, at the insulation limit",
    source="IEC 60228:2004 tables 2 and 3 (seen); resistivity of annealed copper, IEC 60028 (seen)",
)
def resistance(s: Subject) -> Any:
    return multiply(resistance_per_metre(s, s.insulation_limit), s.length)


@fact(
    "conductor",
    "cold_resistance",
    unit="mΩ",
    says="Resistance of its whole length at 20 °C.",
    method="as resistance, at 20 °C",
    source="IEC 60228:2004 tables 2 and 3 (seen); IEC 60028 (seen)",
)
def cold_resistance(s: Subject) -> Any:
    return multiply(resistance_per_metre(s, COLD_C), s.length)


def resistance_per_metre(s: Subject, temperature: Number) -> Any:
    """Ohm per metre of all parallel legs together."""
    if not _is_copper(s):
        return _no_table(s)
    strands = s.strands
    kind = "class 2" if isinstance(strands, str) and strands in ("solid", "stranded") else "class 5"

    def per_metre(area_m2: float, temperature_c: float, legs: float) -> float:
        try:
            return table_resistance_per_metre(area_m2, kind, temperature_c) / legs
        except OutOfRange:
            return copper_resistance_per_metre(area_m2, temperature_c) / legs

    return corners(per_metre, s.area, temperature, s.parallel_legs)


def cold_wire_resistance(facts: Facts, wire: Wire) -> Number:
    """Resistance of one stretch at 20 °C; unknown when part of it was not seen."""
    s = facts.of("conductor", wire.conductor)
    if s is None or wire.gap is not None:
        return UNKNOWN
    if not wire.lengths:
        return 0.0
    return multiply(resistance_per_metre(s, COLD_C), wire_length(s, wire))


@fact(
    "conductor",
    "short_time_limit",
    unit="A2s",
    says="Energy of a short circuit it stands, all parallel cables together: k² S².",
    method="adiabatic equation, k from the temperature class of the insulation",
    source="IEC 60364-4-43 434.5.2 (from memory); k by IEC 60364-5-54 annex A (seen)",
)
def short_time_limit(s: Subject) -> Any:
    def energy(area_m2: float, limit_c: float) -> float:
        return withstand_energy(area_m2, k_for_insulation(limit_c))

    limit = s.insulation_limit
    if isinstance(limit, Range) and limit.low < THERMOSET_FROM_C <= limit.high:
        return Unknown("the insulation may or may not be of a kind that ends at 250 °C")  # k falls back there
    return corners(energy, s.area_in_parallel, limit)


def total_length(s: Subject, wires: tuple[Wire, ...]) -> Number:
    """Length of some stretches together, m."""
    found: Number = 0.0
    for wire in wires:
        found = add(found, wire_length(s, wire))
    return found
