"""Protective devices: fuses, breakers, residual-current devices, and the ways of boards."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import LIVE, RETURN, Link, Source, Wire
from checker.circuit.faults import NOTHING, Faults, Norton
from checker.design.given import RatedVoltage, Where
from checker.design.model import Equipment
from checker.design.vocabulary.words import BREAKER_FAMILIES, FUSE_FAMILIES, HOLDERS, RESIDUAL_TYPES
from checker.facts.catalogue import fact, subjects
from checker.facts.conductor import cold_wire_resistance
from checker.facts.levels import highest_of, level_at, read_level
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import may_be_hidden, unjoined_bank, where_it_stands
from checker.physics.fuse_curves import conventional_factor
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    Window,
    corners,
    divide,
    greatest,
    multiply,
    same,
    show,
)

KINDS = ("fuse", "breaker", "rcbo", "rcd")
WAY_KINDS = ("fuse", "breaker", "rcbo", "rcd")
FAULT_KEYS = (
    "short circuit current", "internal resistance", "ac.fault current", "fault current", "source end.fault current",
)  # fmt: skip


@subjects("device", "A fuse, breaker or residual-current device; each way of a board is one.")
def devices(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Devices in file order; those of banks and boards after the equipment they belong to."""
    for item in facts.network.equipment.values():
        if item.kind in KINDS:
            yield item.name, item.where, item
        for way in item.ways:
            if way.kind in WAY_KINDS:
                yield way.name, way.where, way


def _given(s: Subject, key: str, otherwise: Any = UNKNOWN) -> Any:
    return s.read(s.item, key) if s.item.allows(key) else otherwise


@fact("device", "type_of_device", words=KINDS, says="Fuse, breaker, residual-current device, or both in one.")
def type_of_device(s: Subject) -> str:
    return str(s.item.kind)


@fact("device", "opens_on_overcurrent", type="yes/no", says="It opens on overcurrent.", method="kind of device")
def opens_on_overcurrent(s: Subject) -> bool:
    return str(s.item.kind) != "rcd"


@fact("device", "rating", unit="A", says="Rated current.")
def rating(s: Subject) -> Any:
    return _given(s, "rating")


@fact("device", "family", words=FUSE_FAMILIES + BREAKER_FAMILIES, says="Family, which gives its time-current band.")
def family(s: Subject) -> Any:
    return _given(s, "family", None)


@fact("device", "holder", words=HOLDERS, says="How the fuse is held.")
def holder(s: Subject) -> Any:
    return _given(s, "holder", None)


@fact("device", "own", words=("factory", "fitter", "owner"), says="Whose work it is.")
def own(s: Subject) -> Any:
    return _given(s, "own")


def _voltage(s: Subject, system: str) -> Any:
    rated = _given(s, "voltage")
    if not isinstance(rated, RatedVoltage):
        return rated if rated is None else Unknown("its voltage rating is not stated")
    if rated.system is None:
        return Unknown(f"the rating does not say whether it holds for {system}")
    return rated.volts if rated.system == system else None


@fact("device", "voltage_rating_dc", unit="V", says="Rated voltage on direct current; none when rated for ac alone.")
def voltage_rating_dc(s: Subject) -> Any:
    return _voltage(s, "dc")


@fact("device", "voltage_rating_ac", unit="V", says="Rated voltage on alternating current; none if for dc alone.")
def voltage_rating_ac(s: Subject) -> Any:
    return _voltage(s, "ac")


@fact("device", "breaking_capacity", unit="A", says="Greatest short-circuit current it can break at its voltage.")
def breaking_capacity(s: Subject) -> Any:
    return _given(s, "breaking capacity")


@fact("device", "poles", unit="each", says="Conductors it opens together.")
def poles(s: Subject) -> Any:
    return _given(s, "poles", 1.0)


@fact("device", "reset", words=("by hand", "by itself", "remote"), says="How a breaker closes again; none for a fuse.")
def reset(s: Subject) -> Any:
    stated = _given(s, "reset", None)
    return "by hand" if isinstance(stated, Unknown) and _is_installation_breaker(s) else stated


@fact("device", "trip_free", type="yes/no", says="A breaker that opens on a fault although its lever is held.")
def trip_free(s: Subject) -> Any:
    stated = _given(s, "trip free", True)
    return True if isinstance(stated, Unknown) and _is_installation_breaker(s) else stated


def _is_installation_breaker(s: Subject) -> bool:
    """B, C and D curves name breakers to IEC 60898-1, which are trip-free and reset by hand (from memory)."""
    return bool(s.item.allows("family") and s.item.says("family", "B curve", "C curve", "D curve"))


@fact("device", "polarised", type="yes/no", says="Its line and load sides must not be swapped.")
def polarised(s: Subject) -> Any:
    return _given(s, "polarised", False)


@fact("device", "isolates", type="yes/no", says="It isolates when open.")
def isolates(s: Subject) -> Any:
    return _given(s, "isolates")


@fact("device", "trip_residual", unit="mA", says="Rated residual current; none without a residual-current function.")
def trip_residual(s: Subject) -> Any:
    return _given(s, "trips at", None)


@fact("device", "residual_type", words=RESIDUAL_TYPES, says="Shapes of residual current it responds to.")
def residual_type(s: Subject) -> Any:
    return _given(s, "type", None)


@fact("device", "residual_time", unit="ms", says="Longest time to open at its rated residual current.")
def residual_time(s: Subject) -> Any:
    return _given(s, "time", None)


@fact("device", "ignition_protected", type="yes/no", says="It cannot light a gas mixture around it.")
def ignition_protected(s: Subject) -> Any:
    return _given(s, "ignition protected")


@fact("device", "place", of="place", type="subject", says="Where it stands.")
def place(s: Subject) -> Any:
    name = _given(s, "place")
    if isinstance(name, str):
        return s.facts.subject("place", name)
    return name


def _links(s: Subject) -> list[Link]:
    by_name: dict[str, list[Link]] | None = s.facts.shared.get("links by device")
    if by_name is None:
        by_name = s.facts.shared["links by device"] = {}
        near = s.facts.network.near
        for link in s.facts.network.links:
            if len(near[link.a]) > 1 or len(near[link.b]) > 1:  # a device that nothing joins stands in no circuit
                by_name.setdefault(link.equipment.name, []).append(link)
    return by_name.get(s.item.name, [])


@fact("device", "is_connected", type="yes/no", says="It stands in a circuit.", method="graph")
def is_connected(s: Subject) -> Truth:
    if _links(s):
        return True
    hidden = may_be_hidden(s.facts, s.id)
    return False if hidden is None else hidden


@fact("device", "system", words=("dc", "ac"), says="The system of the circuit it stands in.", method="graph")
def system(s: Subject) -> Any:
    level = _level(s)
    return Unknown(f"{s.id} stands in no circuit") if level is None else level.system


def _level(s: Subject) -> Any:
    for link in _links(s):
        level = level_at(s.facts, link.a) or level_at(s.facts, link.b)
        if level is not None:
            return level
    return None


@fact("device", "circuit_voltage", unit="V", says="Highest voltage of the circuit it stands in.", method="graph")
def circuit_voltage(s: Subject) -> Any:
    level = _level(s)
    if level is None:
        return Unknown(f"{s.id} stands in no circuit")
    read_level(s, level)
    if level.highest_from is not None:
        s.note(lambda: f"highest voltage from {level.highest_from.name}")
    return level.highest


@fact("device", "in_return", type="yes/no", says="It opens a return, a bond or an earth alone.", method="graph")
@where_it_stands
def in_return(s: Subject) -> bool:
    found = _links(s)
    conductors = [s.facts.network.by_link.get(id(link)) for link in found]
    return bool(found) and all(one is not None and one.role != LIVE for one in conductors)


@fact(
    "device",
    "reverse_fed",
    type="yes/no",
    says="Supply reaches it at the side meant for the load.",
    method="graph: the run enters it at its load side, or a source stands behind that side",
)
@where_it_stands
def reverse_fed(s: Subject) -> bool:
    if s.item.kind == "fuse":
        return False
    for link in _links(s):
        owner = s.facts.network.by_link.get(id(link))
        if owner is None:
            continue
        position = owner.parts.index(link)
        before = owner.parts[position - 1]
        if isinstance(before, Wire) and before.b == link.b:
            return True
    return False


@fact("device", "protects", of="conductor", type="list", says="The conductors in whose run it stands.", method="graph")
def protects(s: Subject) -> Any:
    hidden = may_be_hidden(s.facts, s.id)
    if not _links(s) and hidden is not None:
        return hidden
    found: dict[str, Any] = {}
    for link in _links(s):
        owner = s.facts.network.by_link.get(id(link))
        if owner is not None:
            found.setdefault(owner.id, owner)
            continue
        for edge, _ in s.facts.network.near.get(link.b, ()):
            if isinstance(edge, Wire):
                found.setdefault(edge.conductor.id, edge.conductor)
    subjects = (s.facts.of("conductor", conductor) for conductor in found.values())
    return tuple(one for one in subjects if one is not None)


@fact(
    "device",
    "load_current",
    unit="A",
    says="Greatest lasting current through it.",
    method="design current of the conductor it stands in",
)
@where_it_stands
def load_current(s: Subject) -> Any:
    most: Number = 0.0
    if isinstance(s.protects, Unknown):
        return s.protects
    live = [conductor for conductor in s.protects if conductor.is_live]
    for conductor in live or s.protects:  # a device in the return alone carries what its live conductor does
        if live or conductor.item.role == RETURN:
            current = conductor.design_current
            most = current if isinstance(current, Unknown) else greatest(most, current)
    return most


@fact(
    "device",
    "conventional_current",
    unit="A",
    says="Smallest current at which it is promised to open at all.",
    method="rating times the conventional factor of its family",
    source="time-current limits by family, row by row in tables/fuse_time_current.csv",
)
def conventional_current(s: Subject) -> Any:
    name, rated = s.family, s.rating
    if not isinstance(name, str):
        return Unknown(f"the family of {s.id} is not known")
    return corners(lambda amps: conventional_factor(name, amps) * amps, rated)


@fact(
    "device",
    "prospective_max",
    unit="A",
    says="Greatest short-circuit current that can pass through it.",
    method="all sources together, through the live conductors at 20 °C, dead short on one side of the device",
    source="Norton equivalents (circuit theory)",
)
def prospective_max(s: Subject) -> Any:
    hidden = may_be_hidden(s.facts, s.id)
    if not _links(s) and hidden is not None:
        return hidden
    unjoined = unjoined_bank(s.facts)
    if unjoined is not None and not same(s.system, "ac"):
        return unjoined
    faults = faults_of(s.facts)
    most: Number = 0.0
    for link in _links(s):
        current = faults.through(link)
        if isinstance(current, Unknown):
            _show_sources(s)
            return current
        most = greatest(most, current)
    _show_sources(s)
    return most


def _show_sources(s: Subject) -> None:
    """Note what each source on the same part can give into a short, and what that rests on."""
    level = _level(s)
    if s.facts.recorder is None or level is None:
        return
    here = {(item.name, port) for item, port in level.told_by}
    shown: set[str] = set()
    for source in s.facts.network.sources:
        if (source.equipment.name, source.port) not in here:
            continue
        one = source.equipment.base if source.equipment.kind == "bank" else source.equipment
        for key in FAULT_KEYS:
            if key.startswith("ac.") and source.system != "ac":
                continue
            if one is not None and one.allows(key) and f"{one.path}.{key}" not in shown:
                shown.add(f"{one.path}.{key}")
                s.read(one, key)
        if source.equipment.kind == "shore inlet":
            s.read(s.facts.design.vehicle, "supply.fault current")
        current = norton(s.facts, source).current
        line = f"{source.name} gives up to {show(current, 'A')}"
        s.note(line.__str__)


def faults_of(facts: Facts) -> Faults:
    """The fault currents of the whole graph, found once."""
    found: Faults | None = facts.shared.get("faults")
    if found is None:
        found = facts.shared["faults"] = Faults(
            facts.network, lambda source: norton(facts, source), lambda wire: cold_wire_resistance(facts, wire)
        )
    return found


def norton(facts: Facts, source: Source) -> Norton:
    """Greatest short-circuit current and conductance of a source."""
    item = source.equipment
    if item.kind in ("battery", "bank"):
        return _battery(facts, item)
    if item.kind == "shore inlet":
        return Norton(facts.design.vehicle.value("supply.fault current"), 0.0, True)
    if item.kind == "vehicle coupling":
        stated = item.value("source end.fault current")
        return Norton(stated.high if isinstance(stated, Window) else UNKNOWN, 0.0)
    if source.storage:
        return Norton(UNKNOWN, UNKNOWN)
    for key in ("short circuit current", "ac.fault current", "fault current"):
        if item.allows(key) and (source.system == "ac" or not key.startswith("ac.")):
            stated = item.value(key)
            if isinstance(stated, float | Range):
                return Norton(stated, 0.0, source.system == "ac")
    if item.kind == "solar array" and isinstance(source.limit, float | Range):
        return Norton(source.limit, 0.0)
    peak = item.value(f"sides.{source.port}.peak.current") if item.kind == "dc converter" else UNKNOWN
    if isinstance(peak, float | Range):
        return Norton(peak, 0.0)
    if source.system == "dc" and isinstance(source.limit, float | Range):
        # A converter folds back: what it gives into a short is not above twice its rating. Common practice, no source.
        return Norton(multiply(source.limit, Range(0.0, 2.0)), 0.0)
    return Norton(UNKNOWN, 0.0, source.system == "ac")


def _battery(facts: Facts, item: Equipment) -> Norton:
    one = item.base if item.kind == "bank" and item.base is not None else item
    volts = highest_of(facts.network, item, "")
    stated = one.value("short circuit current") if one.allows("short circuit current") else UNKNOWN
    ohms = one.value("internal resistance") if one.allows("internal resistance") else UNKNOWN
    if isinstance(stated, float | Range):
        current: Number = stated
    elif isinstance(ohms, float | Range) and not one.has("short circuit current"):
        if same(ohms, 0.0):
            return Norton(Unknown(f"{item.name} is written as having no internal resistance"), UNKNOWN)
        current = divide(volts, ohms)
    else:
        return Norton(Unknown(f"the short-circuit current of {item.name} is not stated"), UNKNOWN)
    if item.kind == "bank":
        arrangement = item.value("arrangement")
        strings = float(arrangement[1]) if isinstance(arrangement, tuple) else UNKNOWN
        current = multiply(current, strings)
    return Norton(current, divide(current, volts)) if current is not None else NOTHING
