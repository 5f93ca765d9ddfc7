"""Conductors, contacts and fuses of a design as resistances of its direct-current network."""

from __future__ import annotations

from math import isinf

from checker.circuit.dc_elements import Branch, Diode, Element
from checker.circuit.elements import CHASSIS, EARTH, LIVE, RETURN, Conductor, Link, Wire
from checker.design.model import Equipment
from checker.facts.conductor import cold_wire_resistance
from checker.facts.contacts import contacts
from checker.facts.dc_amounts import EXTREMES, Amount, Book, Case, exactly, stated
from checker.facts.dc_plan import Heat, Maker, Plan
from checker.facts.subject import Subject
from checker.physics.conductor_resistance import COPPER_PER_K_AT_20C
from checker.quantities import Range, Unknown

JOINT_OHM_M2 = (1e-9, 2.5e-9, 7.5e-9)  # resistance of a lug or clamp times the area of its conductor, ohm m2
JOINT_OHM = (5e-5, 1e-4, 1e-3)
CHASSIS_OHM = (0.5e-3, 1.5e-3, 5e-3)
UNSEEN_OHM = (2e-3, 0.03)
# Voltage at rated current, V: low, likely, high; with the rating that stands in where none is told.
DROPS = {
    "fuse": (0.04, 0.08, 0.13),
    "breaker": (0.05, 0.10, 0.20),
    "rcbo": (0.05, 0.10, 0.20),
    "relay": (0.01, 0.03, 0.08),
    "combiner": (0.01, 0.03, 0.08),
    "switch": (0.01, 0.03, 0.08),
    "changeover": (0.01, 0.03, 0.08),
    "connector": (0.01, 0.03, 0.10),
    "shunt": (0.05, 0.05, 0.075),
}
USUAL_RATING_A = 50.0
DIODE_V, DIODE_OHM = 0.5, 2e-3
SOURCE_WORDS = "common practice, no source"


def add_conductors(plan: Plan) -> None:
    """All wires and contacts of the direct-current side."""
    network = plan.facts.network
    nodes: set[str] = set()
    for conductor in network.conductors:
        if network.systems[conductor.circuit.name] == "dc" and conductor.role != EARTH:
            for wire in conductor.wires:
                nodes.update((wire.a, wire.b))
                _add_wire(plan, conductor, wire)
    for link in network.links:
        if link.pole != EARTH and (link.a in nodes or link.b in nodes):
            _add_link(plan, link)
    _add_unknown_returns(plan)


def _add_wire(plan: Plan, conductor: Conductor, wire: Wire) -> None:
    name = plan.name(f"{conductor.id} {wire.index}")
    plan.wires.setdefault(conductor.id, []).append(name)
    s = plan.facts.of("conductor", conductor)
    if s is None:
        raise LookupError(f"the conductor {conductor.id} is no subject")
    cold, joints = _cold(plan, s, wire)
    heating = _heating(s) if wire.lengths else None

    def make(case: Case, heat: Heat) -> Element:
        ohm = cold.of(case, raises=False)
        if heating is not None:
            ohm *= 1.0 + COPPER_PER_K_AT_20C * (heating.temperature(case, heat.get(conductor.id, 0.0)) - 20.0)
        return Branch(name, wire.a, wire.b, ohm + joints.of(case, raises=False))

    plan.add(make)


def _cold(plan: Plan, s: Subject, wire: Wire) -> tuple[Amount, Amount]:
    """Resistance of the metal at 20 °C, and of the joints at both ends (ohm)."""
    circuit = wire.conductor.circuit
    book = plan.book
    if not wire.lengths and wire.gap is None:
        if wire.conductor.role == RETURN and circuit.returns.how == "chassis" and CHASSIS in (wire.a, wire.b):
            told = plan.read(plan.facts.design.vehicle, "chassis.resistance")
            words = "the chassis is taken as 1.5 mΩ (0.5 to 5 mΩ) between two points"
            return book.amount_or(told, words, *CHASSIS_OHM), exactly(0.0)
        return exactly(0.0), exactly(0.0)
    book.assume(
        "conductors are as hot as the air of the hottest place they pass, warmed by their own current; "
        "likely: half-way between the lowest and the highest air"
    )
    metal = cold_wire_resistance(plan.facts, wire)
    what = f"resistance of {wire.conductor.id}"
    if isinstance(metal, Unknown):
        what = f"{what} ({metal.reason or 'size, length or part of the run is not known'})"
    return book.amount(metal, what, *UNSEEN_OHM), _joints(s, book)


def _joints(s: Subject, book: Book) -> Amount:
    """Both ends of a stretch together."""
    area = stated(s.area_in_parallel) if isinstance(s.area_in_parallel, float | Range) else None
    book.assume(f"each lug or clamp adds as much as 14 cm of its own copper (6 to 44 cm); {SOURCE_WORDS}")
    if area is None or area.low <= 0.0:
        low, likely, high = JOINT_OHM
        return Amount(2.0 * likely, 2.0 * low, 2.0 * high)
    low, likely, high = JOINT_OHM_M2
    return Amount(2.0 * likely / area.likely, 2.0 * low / area.high, 2.0 * high / area.low)


class _Heating:
    """How hot a conductor is at a current: the air, and a rise with the square of the current up to its limit."""

    __slots__ = ("air", "capacity", "hot", "limit")

    def __init__(self, cold: float, hot: float, limit: float | None, capacity: float | None) -> None:
        self.air = Amount(0.5 * (cold + hot), cold, hot)
        self.hot = hot
        self.limit = limit
        self.capacity = capacity

    def temperature(self, case: Case, amps: float) -> float:
        """Temperature in a case, °C."""
        air = self.air.of(case, raises=False)
        if self.limit is None or self.capacity is None or self.capacity <= 0.0 or self.limit <= self.hot:
            return air
        return min(self.limit, air + (self.limit - self.hot) * (amps / self.capacity) ** 2)


def _heating(s: Subject) -> _Heating:
    vehicle = s.facts.design.vehicle
    cold = _one(s.read(vehicle, "ambient.low"), low=True)
    hot = _one(s.ambient, low=False)
    cold = 0.0 if cold is None else cold
    hot = 45.0 if hot is None else max(hot, cold)
    return _Heating(cold, hot, _one(s.insulation_limit, low=True), _one(s.carrying_capacity, low=True))


def _one(value: object, *, low: bool) -> float | None:
    if isinstance(value, Range):
        return value.low if (low or isinf(value.high)) and not isinf(value.low) else value.high
    return value if isinstance(value, float) and not isinf(value) else None


def _add_link(plan: Plan, link: Link) -> None:
    item = link.equipment
    name = plan.name(item.name if link.pole == LIVE else f"{item.name} return")
    if link.pole == LIVE:
        plan.links.setdefault(item.name, []).append(name)
    closed = contacts(plan.facts, plan.mode).closed(link)
    if closed is False:
        return
    if isinstance(closed, Unknown):
        plan.book.lack(f"whether {item.name} is closed in {plan.mode.name}")
    if link.one_way:
        plan.book.assume(f"a diode takes 0.5 V and 2 mΩ; {SOURCE_WORDS}")
        plan.add(lambda case, heat: Diode(name, link.a, link.b, DIODE_V, DIODE_OHM))
        return
    ohm = _contact(plan, item)

    def make(case: Case, heat: Heat) -> Element | None:
        if closed is not True and case == EXTREMES[0]:
            return None
        return Branch(name, link.a, link.b, ohm.of(case, raises=False))

    plan.add(make)


def _contact(plan: Plan, item: Equipment) -> Amount:
    drops = DROPS.get(item.kind)
    if drops is None:
        return exactly(0.0)
    low, likely, high = drops
    rating = stated(plan.read(item, "rating"))
    amps = rating if rating is not None and rating.low > 0.0 else exactly(USUAL_RATING_A)
    span = f"{low * 1e3:.0f} to {high * 1e3:.0f} mV"
    plan.book.assume(f"a {item.kind} drops {likely * 1e3:.0f} mV at its rated current ({span}); {SOURCE_WORDS}")
    return Amount(likely / amps.likely, low / amps.high, high / amps.low)


def _add_unknown_returns(plan: Plan) -> None:
    """A circuit whose return is not told still has one: of any resistance between nearly none and a bad one."""
    network = plan.facts.network
    for circuit in network.circuits:
        if network.systems[circuit.name] != "dc" or circuit.returns.how != "unknown":
            continue
        live = network.conductor(circuit.name, LIVE)
        if live is None or network.conductor(circuit.name, RETURN) is not None:
            continue
        if not live.end.endswith("+"):
            continue
        end = live.end.removesuffix("+") + "-"
        start = live.start.removesuffix("+") + "-" if live.start.endswith("+") else live.start
        home = start if start.endswith("-") else CHASSIS
        plan.book.lack(f"the return of {circuit.name}")
        name = plan.name(f"{circuit.name} return")
        ohm = Amount(0.02, *UNSEEN_OHM, False)
        plan.add(_unknown_return(name, home, end, ohm))


def _unknown_return(name: str, home: str, end: str, ohm: Amount) -> Maker:
    return lambda case, heat: Branch(name, home, end, ohm.of(case, raises=False))
