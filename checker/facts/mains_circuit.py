"""Circuits of the mains side: own breaker, residual-current protection, earth conductor, size of bonds."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import EARTH, LIVE, PROTECTIVE, Conductor, Link
from checker.circuit.feeding import consumers
from checker.design.model import Equipment
from checker.design.run import Gap, Length
from checker.facts.catalogue import fact
from checker.facts.mains import states_of, tell, tell_state
from checker.facts.mains_fault import circuits_ending_at
from checker.facts.subject import Subject
from checker.facts.supply import supplies_by_load
from checker.physics.earth_size import earth_by_table
from checker.quantities import Number, Truth, Unknown, both, corners, greater, greatest, least, negate

SWITCHES = frozenset({"switch", "rcd"})
CONDUITS = frozenset({"conduit", "metal conduit", "gas-tight conduit"})


def mains_loads(s: Subject) -> list[Equipment]:
    """What draws from the mains at the ends of a circuit."""
    if s.facts.network.systems[s.item.name] != "ac":
        return []
    names: set[str] | None = s.facts.store.get("mains consumers")
    if names is None:
        names = s.facts.store["mains consumers"] = {item.name for item in consumers(s.facts.network)}
    found = []
    for port in s.item.ends:
        if port.equipment in names and (port.port or "ac") in ("ac", "L"):
            found.append(s.facts.network.equipment[port.equipment])
    return found


@fact(
    "circuit",
    "feeds_mains_loads",
    type="yes/no",
    says="A final circuit of the mains: outlets, appliances or chargers hang on it.",
    method="graph; what a low winding alone feeds is no mains (circuit.is_low_alternating)",
)
def feeds_mains_loads(s: Subject) -> Truth:
    return negate(s.is_low_alternating) if mains_loads(s) else False


@fact(
    "circuit",
    "carries_mains",
    type="yes/no",
    says="It carries mains from a source to a board, to a converter or to a load.",
    method="its system; a conductor of one pole alone, such as a bond, and what a low winding alone feeds are left out",
)
def carries_mains(s: Subject) -> Truth:
    here = s.facts.network.systems[s.id] == "ac" and s.facts.network.conductor(s.id, LIVE) is not None
    return negate(s.is_low_alternating) if here else False


def _supplies(s: Subject) -> list[Subject]:
    """The supplies of the loads at its ends that surely or perhaps come about."""
    by_load = supplies_by_load(s.facts)
    return [supply for item in mains_loads(s) for supply in by_load.get(item.name, ())]


@fact("circuit", "is_ever_fed", type="yes/no", says="Some source of mains reaches it.", method="every supply state")
def is_ever_fed(s: Subject) -> bool:
    return bool(_supplies(s))


@fact(
    "circuit",
    "residual_current",
    unit="mA",
    says="Highest rated residual current that protects it in any supply state; none when one state has no protection.",
    method="for each source that reaches it, the devices that every way passes; a separated winding that feeds one "
    "load alone needs none",
)
def residual_current(s: Subject) -> Any:
    value: Any = 0.0
    doubt: Unknown | None = None
    for supply in _supplies(s):
        if supply.is_separated is True:
            continue
        one = supply.residual_current if supply.has_residual_device is not False else None
        if isinstance(one, Unknown) or (one is None and supply.is_certain is not True):
            doubt = one if isinstance(one, Unknown) else Unknown("whether this source feeds it is not known")
        elif one is None:
            told = f"no residual-current device when fed by {supply.source_name}"
            tell(s, told)
            tell_state(s, supply.first_state)
            return None
        else:
            value = greatest(value, one)
    return value if doubt is None else doubt


@fact(
    "circuit",
    "own_device",
    of="device",
    type="subject",
    says="The overcurrent device that serves it and no other circuit; none when it shares one.",
    method="its own run, then back along the way it comes as long as nothing branches off",
)
def own_device(s: Subject) -> Any:
    live = s.facts.network.conductor(s.item.name, LIVE)
    if live is None:
        return None
    found = next((link for link in live.links if link.is_protective), None) or device_upstream(s, live)
    if found is None:
        gap = any(wire.gap is not None for wire in live.wires)
        return Unknown("part of the run was not seen and may hide a device") if gap else None
    return s.facts.subject("device", found.equipment.name)


def device_upstream(s: Subject, live: Conductor) -> Link | None:
    """The overcurrent device ahead of a conductor that nothing else hangs on."""
    node, before = live.start, live.parts[0]
    terminals = {feed.live for feed in states_of(s.facts).mains.feeds}
    for _ in range(len(s.facts.network.near)):
        onward = []
        for edge, far in s.facts.network.near.get(node, ()):
            pole = edge.pole if isinstance(edge, Link) else edge.conductor.role
            if edge is not before and pole == LIVE:
                onward.append((edge, far))
        if len(onward) != 1 or node in terminals:
            return None  # what else hangs on the terminals of a source is another circuit, with a device of its own
        edge, far = onward[0]
        if isinstance(edge, Link) and edge.equipment.kind in PROTECTIVE:
            return edge
        before, node = edge, far
    return None


@fact("circuit", "has_own_device", type="yes/no", says="It has an overcurrent device of its own.", method="graph")
def has_own_device(s: Subject) -> Any:
    device = s.own_device
    return device if isinstance(device, Unknown) else device is not None


@fact("circuit", "own_device_poles", unit="count", says="Poles its own overcurrent device opens; none without one.")
def own_device_poles(s: Subject) -> Any:
    device = s.own_device
    return device if device is None or isinstance(device, Unknown) else device.poles


@fact(
    "outlet",
    "poles_opened_ahead",
    unit="count",
    says="Poles that a switch or device ahead of it, which serves no other circuit, opens; none without one.",
    method="switches in the run of each circuit that ends at it and the overcurrent device of its own; the most poles",
)
@fact(
    "load",
    "poles_opened_ahead",
    unit="count",
    says="Poles that a switch or device ahead of it, which serves no other circuit, opens; none without one.",
    method="switches in the run of each circuit that ends at it and the overcurrent device of its own; the most poles",
)
def poles_opened_ahead(s: Subject) -> Any:
    ways: list[Number] = []
    for circuit in circuits_ending_at(s.facts, s.id):
        live = s.facts.network.conductor(circuit.id, LIVE)
        found: list[Number] = [] if circuit.own_device is None else [circuit.own_device_poles]
        if live is not None:
            found += [s.read(link.equipment, "poles") for link in live.links if link.equipment.kind in SWITCHES]
            found += [Unknown(f"a switch may stand in {circuit.id}") for wire in live.wires if wire.gap is not None]
        if not found:
            return None
        ways.append(greatest(found))
    return least(ways) if ways else None


@fact(
    "circuit",
    "earth_runs_with_it",
    type="yes/no",
    says="Its protective conductor lies in the same cable, or in the same conduit.",
    method="cores of the cable, or what the file says of the earth",
)
def earth_runs_with_it(s: Subject) -> Any:
    how = s.item.earth.how
    if how == "unknown":
        return Unknown(f"whether {s.id} has a protective conductor is not known")
    if how == "same":
        covering = s.read(s.item, "covering")
        return covering if isinstance(covering, Unknown) else covering in CONDUITS
    return _is_the_third_core(s) if how == "run" else how == "in cable"


def _is_the_third_core(s: Subject) -> Truth:
    """Whether an earth with a run of its own, as one with an isolator in it has, is a core of the cable all the way."""
    circuit = s.item
    live, earth = ({one.place for one in run if isinstance(one, Length)} for run in (circuit.run, circuit.earth.run))
    hidden = any(isinstance(one, Gap) for one in (*circuit.run, *circuit.earth.run))
    if hidden or None in live | earth or circuit.cable is None:
        return Unknown(f"where the earth of {s.id} runs, or its cable, is not known")
    return both(earth <= live, greater(s.read(circuit.cable, "cores"), 2.0))


@fact("circuit", "line_area", unit="mm2", says="Cross-section of its live conductor.", method="conductor.area")
def line_area(s: Subject) -> Any:
    return _area(s, LIVE)


@fact(
    "circuit", "earth_area", unit="mm2", says="Cross-section of its protective conductor; none without one.",
    method="conductor.area",
)  # fmt: skip
def earth_area(s: Subject) -> Any:
    if s.item.earth.how == "unknown":
        return Unknown(f"whether {s.id} has a protective conductor is not known")
    return _area(s, EARTH)


def _area(s: Subject, role: str) -> Any:
    conductor = s.facts.network.conductor(s.item.name, role)
    subject = None if conductor is None else s.facts.of("conductor", conductor)
    return None if subject is None else subject.area


@fact(
    "circuit",
    "earth_is_like_line",
    type="yes/no",
    says="Its earth is a core of the same cable and the same size as the live core.",
    method="the earth lies in the cable, and no other size is written for it",
)
def earth_is_like_line(s: Subject) -> bool:
    own_size = s.item.earth.size is not None or (s.item.cable is not None and s.item.cable.has("earth size"))
    return s.item.earth.how == "in cable" and not own_size


@fact(
    "circuit",
    "earth_area_needed",
    unit="mm2",
    says="Least cross-section of a protective conductor for its live conductor.",
    method="as the line up to 16 mm2, then 16 mm2 up to 35 mm2, then half the line",
    source="IEC 60364-5-54, Table 54.2, 2011 (from memory)",
)
def earth_area_needed(s: Subject) -> Any:
    return corners(earth_for, s.line_area)


def earth_for(line: float) -> float:
    """Least cross-section of a protective conductor for that of its line, both in m2: IEC 60364-5-54, Table 54.2."""
    return line if line <= 16e-6 else max(16e-6, line / 2) if line > 35e-6 else 16e-6


@fact(
    "circuit",
    "earth_area_by_table",
    unit="mm2",
    says="Least cross-section of a protective conductor by the table of the Australian and New Zealand wiring rules.",
    method="row of the line, or of the next larger one",
    source="AS/NZS 3000, Table 5.1, 2018 (from memory)",
)
def earth_area_by_table(s: Subject) -> Any:
    return corners(earth_by_table, s.line_area)


@fact("circuit", "bond_area", unit="mm2", says="Cross-section of a bonding conductor.", method="conductor.area")
def bond_area(s: Subject) -> Any:
    return _area(s, "bonding")
