"""Circuits: what they feed, what they carry, what they lose on the way."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import LIVE, RETURN
from checker.circuit.homeward import homes, way_home
from checker.circuit.ports import CONTACTS
from checker.circuit.sources import LOADS
from checker.design.given import Where
from checker.design.vocabulary.circuits import DUTIES
from checker.facts.catalogue import fact, subjects
from checker.facts.charging import outputs
from checker.facts.levels import level_at, read_level
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Unknown, add, divide, equal, multiply

RETURNS = ("in cable", "same", "chassis", "run")


@subjects("circuit", "A walked run from a source to what it feeds.")
def circuits(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Circuits in file order, then the leads of banks written short."""
    for circuit in facts.network.circuits:
        yield circuit.name, circuit.where, circuit


def _conductor(s: Subject, role: str) -> Any:
    found = s.facts.network.conductor(s.item.name, role)
    return None if found is None else s.facts.of("conductor", found)


@fact("circuit", "duty", words=DUTIES, says="What it is for.")
def duty(s: Subject) -> Any:
    return s.read(s.item, "duty")


@fact(
    "circuit",
    "is_charging_line",
    type="yes/no",
    says="It carries what charges a battery.",
    method="its duty, or the output of a charger, booster, solar controller or alternator at one of its ends; the "
    "cable of an inverter-charger is sized for the inverter",
)
def is_charging_line(s: Subject) -> Any:
    told = equal(s.duty, "charge")
    if told is True:
        return True
    ends = {port.equipment: port.port for port in (s.item.start, *s.item.ends)}
    found = outputs(s.facts)
    charges = s.system == "dc" and any(
        one.banks
        and one.source.equipment.kind != "inverter-charger"
        and ends.get(one.source.equipment.name, "-") in (one.source.port, None)
        for one in found
    )
    return charges or told


@fact("circuit", "scope", words=("habitation", "automotive"), says="Which rules it falls under.")
def scope(s: Subject) -> Any:
    return s.read(s.item, "scope")


@fact("circuit", "own", words=("factory", "fitter", "owner"), says="Whose work it is.")
def own(s: Subject) -> Any:
    return s.read(s.item, "own")


@fact("circuit", "system", words=("dc", "ac"), says="Direct or alternating current.", method="graph")
def system(s: Subject) -> str:
    return s.facts.network.systems[s.item.name]


@fact("circuit", "live", of="conductor", type="subject", says="Its live conductor; none for bonding.", method="graph")
def live(s: Subject) -> Any:
    return _conductor(s, LIVE)


@fact("circuit", "voltage", unit="V", says="Nominal voltage.", method="equipment on the same part of the graph")
def voltage(s: Subject) -> Any:
    level = _level(s)
    read_level(s, level)
    return UNKNOWN if level is None else level.nominal


@fact("circuit", "highest_voltage", unit="V", says="Highest voltage in use.", method="as conductor.highest_voltage")
def highest_voltage(s: Subject) -> Any:
    level = _level(s)
    read_level(s, level)
    return UNKNOWN if level is None else level.highest


def _level(s: Subject) -> Any:
    found = s.facts.network.conductor(s.item.name, LIVE)
    return None if found is None else level_at(s.facts, found.start)


@fact("circuit", "returns_by", words=RETURNS, says="How its current returns; none where it does not.")
def returns_by(s: Subject) -> Any:
    how = s.item.returns.how
    if how == "unknown":
        return Unknown(f"how {s.id} returns is not known")
    return None if how == "none" else how


@fact("circuit", "is_final", type="yes/no", says="It ends at loads only.", method="graph")
def is_final(s: Subject) -> bool:
    equipment = s.facts.network.equipment
    ends = [equipment.get(port.equipment) for port in s.item.ends]
    return bool(ends) and all(item is not None and item.kind in LOADS for item in ends)


@fact("circuit", "feeds_board", type="yes/no", says="A board, or a bar that it feeds with plus, is at its end.",
      method="graph, and what the circuit is for: a charging line or a bond feeds no bar")  # fmt: skip
def feeds_board(s: Subject) -> Any:
    found = [s.facts.network.equipment.get(port.equipment) for port in s.item.ends]
    if any(item is not None and item.kind == "board" for item in found):
        return True
    live = s.facts.network.conductor(s.item.name, LIVE)
    bars = [item for item in found if item is not None and item.kind == "bar"]
    return equal(s.duty, "load") if live is not None and bars else False


@fact("circuit", "feeds", of="load", type="list", says="The loads at its end.", method="graph")
def feeds(s: Subject) -> tuple[Any, ...]:
    found = (s.facts.subject("load", port.equipment) for port in s.item.ends)
    return tuple(load for load in found if load is not None)


@fact("circuit", "load_current", unit="A", says="Greatest lasting current over all modes.", method="of its conductor")
def load_current(s: Subject) -> Any:
    return 0.0 if s.live is None else s.live.design_current


@fact(
    "circuit",
    "loop_resistance",
    unit="mΩ",
    says="Resistance of live and return together, as hot as the insulation may be.",
    method="both conductors; a return by the chassis adds the stated resistance of the chassis",
)
def loop_resistance(s: Subject) -> Any:
    there = s.live
    if there is None:
        return UNKNOWN
    how = s.item.returns.how
    if how == "chassis":
        return add(there.resistance, s.read(s.facts.design.vehicle, "chassis.resistance"))
    back = _conductor(s, RETURN)
    if back is None:
        return there.resistance if how == "none" else UNKNOWN
    return add(there.resistance, back.resistance)


@fact(
    "circuit",
    "own_drop",
    unit="V",
    says="Voltage lost along this circuit alone, both ways, at its greatest lasting current.",
    method="current times loop resistance at the insulation limit, and what the diodes in its run take",
    source="Ohm's law; resistance as conductor.resistance",
)
def own_drop(s: Subject) -> Any:
    lost = multiply(s.load_current, s.loop_resistance)
    s.note(lambda: "drop = current × loop resistance")
    for item in _diodes(s):
        lost = add(lost, s.read(item, "drop"))
    return lost


def _diodes(s: Subject) -> list[Any]:
    """The diodes in the live run of a circuit, and the one that it starts at."""
    network = s.facts.network
    found = {
        link.equipment.name: link.equipment
        for line in network.by_circuit.get(s.item.name, ())
        for link in line.links
        if link.one_way
    }
    start = network.equipment.get(s.item.start.equipment)
    if start is not None and start.kind == "diode":
        found.setdefault(start.name, start)
    return list(found.values())


@fact("circuit", "own_drop_percent", unit="%", says="Voltage lost along this circuit alone, as a share of nominal.",
      method="own drop over nominal voltage")  # fmt: skip
def own_drop_percent(s: Subject) -> Any:
    return divide(s.own_drop, s.voltage)


@fact(
    "circuit",
    "drop",
    unit="V",
    says="Voltage lost from the nearest source or converter to its end, both ways, every feeder on the way counted.",
    method="own drop plus the drops of the circuits that feed it, each at its greatest lasting current",
)
def drop(s: Subject) -> Any:
    lost = s.own_drop
    for feeder in s.fed_by:
        lost = add(lost, feeder.own_drop)
    return lost


@fact(
    "circuit",
    "fed_by",
    of="circuit",
    type="list",
    says="The circuits between it and the source that feeds it, nearest first.",
    method="walk from its start towards a battery, converter or alternator, the way with the fewest circuits",
)
def fed_by(s: Subject) -> tuple[Any, ...]:
    found = s.facts.network.conductor(s.item.name, LIVE)
    if found is None:
        return ()
    shared = s.facts.shared
    if "homes" not in shared:
        shared["homes"] = homes(s.facts.network)
    names = way_home(s.facts.network, shared["homes"], found)
    subjects = (s.facts.subject("circuit", name) for name in names)
    return tuple(one for one in subjects if one is not None)


@fact(
    "circuit",
    "drop_percent",
    unit="%",
    says="Voltage lost from the nearest source to its end, as a share of nominal.",
    method="drop over nominal voltage",
)
def drop_percent(s: Subject) -> Any:
    return divide(s.drop, s.voltage)


@fact("circuit", "isolated_by", of="switch", type="list", says="The switches in its own run.", method="graph")
def isolated_by(s: Subject) -> tuple[Any, ...]:
    found: dict[str, Any] = {}
    for conductor in s.facts.network.by_circuit.get(s.item.name, ()):
        for link in conductor.links:
            if link.equipment.kind in CONTACTS or link.equipment.kind == "changeover":
                found.setdefault(link.equipment.name, link.equipment)
    subjects = (s.facts.of("switch", item) for item in found.values())
    return tuple(one for one in subjects if one is not None)


@fact("circuit", "devices", of="device", type="list", says="The protective devices in its own run.", method="graph")
def devices(s: Subject) -> tuple[Any, ...]:
    found: dict[str, Any] = {}
    for conductor in s.facts.network.by_circuit.get(s.item.name, ()):
        for link in conductor.links:
            found.setdefault(link.equipment.name, link.equipment)
    subjects = (s.facts.subject("device", name) for name in found)
    return tuple(one for one in subjects if one is not None)


@fact("circuit", "cable_cores", unit="each", says="Cores in its cable.")
def cable_cores(s: Subject) -> Any:
    if s.item.cable is None:
        return Unknown(f"the cable of {s.id} is not known")
    return s.read(s.item.cable, "cores")
