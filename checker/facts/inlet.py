"""Where the shore comes aboard: the inlet and its lead."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import PROTECTIVE, Edge, Link
from checker.circuit.states import Truth
from checker.circuit.supply import is_live
from checker.circuit.supply import joined as reached_from
from checker.design.given import MISSING, Given, RatedVoltage, Where
from checker.design.model import Equipment
from checker.design.vocabulary.vehicle import EARTHING
from checker.design.vocabulary.words import ACCESS, LABELS, SHAPES, SIDES
from checker.facts.catalogue import fact, subjects
from checker.facts.degree import objects_in, water_in
from checker.facts.mains import TOO_MANY, answer, ever, feed_named, shown_states, states_of, tell_state
from checker.facts.shown import greatest_shown, is_test
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    UNKNOWN,
    Unknown,
    both,
    either,
    equal,
    every,
    greater_equal,
    least,
    negate,
    some,
)


@subjects("inlet", "A shore inlet.")
def inlets(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.network.equipment.values():
        if item.kind == "shore inlet":
            yield item.name, item.where, item


@fact("inlet", "rating", unit="A", says="Rated current.")
def rating(s: Subject) -> Any:
    return s.read(s.item, "rating")


@fact("inlet", "shape", words=SHAPES, says="The shape of the coupler.")
def shape(s: Subject) -> Any:
    return s.read(s.item, "shape")


@fact("inlet", "shape_rating", unit="A", says="The current that the shape stands for.", method="the number in its name")
def shape_rating(s: Subject) -> Any:
    name = s.shape
    if not isinstance(name, str):
        return name
    words = name.split()
    if words[-1:] == ["A"] and words[-2].isdigit():
        return float(words[-2])
    return Unknown(f"the shape `{name}` stands for no current")


@fact("inlet", "height", unit="m", says="Height above the ground.")
def height(s: Subject) -> Any:
    return s.read(s.item, "height")


@fact("inlet", "faces", words=SIDES, says="Whether it faces the outside of the vehicle.")
def faces(s: Subject) -> Any:
    return s.read(s.item, "faces")


@fact("inlet", "projects", unit="mm", says="How far it stands out from the body.")
def projects(s: Subject) -> Any:
    return s.read(s.item, "projects")


@fact("inlet", "access", words=ACCESS, says="How a hand gets to it.")
def access(s: Subject) -> Any:
    return s.read(s.item, "access")


@fact("inlet", "housing", words=("insulating", "metal"), says="What its housing is made of.")
def housing(s: Subject) -> Any:
    return s.read(s.item, "housing")


@fact("inlet", "of_unit", type="yes/no", says="The vehicle is a transportable unit.", method="kind of the vehicle")
def of_unit(s: Subject) -> Any:
    return equal(s.read(s.facts.design.vehicle, "kind"), "unit")


@fact("inlet", "lid", words=("self closing", "by hand"), says="Its lid; none when there is not.")
def lid(s: Subject) -> Any:
    return s.read(s.item, "lid")


@fact("inlet", "objects_open", unit="count", says="First digit of its degree of protection with nothing plugged in.",
      source="IEC 60529 (from memory)")  # fmt: skip
def objects_open(s: Subject) -> Any:
    return objects_in(s, "open")


@fact("inlet", "objects_mated", unit="count", says="First digit of its degree of protection with a lead in.",
      source="IEC 60529 (from memory)")  # fmt: skip
def objects_mated(s: Subject) -> Any:
    return objects_in(s, "mated")


@fact(
    "inlet",
    "water_open",
    unit="count",
    says="Second digit of its degree of protection with nothing plugged in.",
    source="IEC 60529 (from memory)",
)
def water_open(s: Subject) -> Any:
    return water_in(s, "open")


@fact(
    "inlet",
    "water_mated",
    unit="count",
    says="Second digit of its degree of protection with the lead in.",
    source="IEC 60529 (from memory)",
)
def water_mated(s: Subject) -> Any:
    return water_in(s, "mated")


@fact("inlet", "site_earthing", words=EARTHING, says="How the neutral of the sites is earthed, IEC 60364-1.")
def site_earthing(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.earthing")


@fact("inlet", "voltage", unit="V", says="Rated voltage of the inlet.")
def voltage(s: Subject) -> Any:
    rated = s.read(s.item, "voltage")
    return rated.volts if isinstance(rated, RatedVoltage) else rated


@fact("inlet", "site_voltage", unit="V", says="Mains voltage of the sites.")
def site_voltage(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.voltage")


@fact("inlet", "site_phases", unit="count", says="Lines that the sites give.")
def site_phases(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.phases")


@fact("inlet", "others", unit="count", says="Other shore inlets on the vehicle.", method="equipment of that kind")
def others(s: Subject) -> float:
    return float(sum(item.kind == "shore inlet" for item in s.facts.network.equipment.values()) - 1)


@fact(
    "inlet",
    "is_joined_to_another",
    type="yes/no",
    says="In some supply state the pins of another inlet without its lead are live from this one.",
    method="every reachable supply state",
)
def is_joined_to_another(s: Subject) -> Any:
    states = states_of(s.facts)
    if not states.complete:
        return TOO_MANY
    feed = feed_named(s.facts, s.id)
    if feed is None:
        return False

    def joined(state: Any) -> Truth:
        found: Truth = False
        for other in states.mains.feeds:
            if other.aboard or other is feed or feed not in state.feeding:
                continue
            if state.sure.joined(feed.live, other.live):
                return True
            found = None if state.may.joined(feed.live, other.live) else found
        return found

    truth, name = ever(shown_states(s), joined)
    tell_state(s, name)
    return answer(truth, "whether the inlets are joined is not known")


@fact(
    "inlet",
    "has_own_protection",
    type="yes/no",
    says="The first overcurrent devices that its supply meets serve no other inlet.",
    method="walk along live conductors from the inlet up to fuses and breakers; every reachable supply state",
)
def has_own_protection(s: Subject) -> Any:
    network, states, feed = s.facts.network, states_of(s.facts), feed_named(s.facts, s.id)
    if not states.complete:
        return TOO_MANY
    if feed is None:
        return Unknown(f"{s.id} is connected to no circuit")
    first: dict[str, str] = {}
    hidden = False
    todo = [feed.live]
    for node in todo:
        for edge, far in network.near.get(node, ()):
            if not is_live(edge) or far in todo:
                continue
            if isinstance(edge, Link) and edge.equipment.kind in PROTECTIVE:
                first.setdefault(edge.equipment.name, edge.a)
                continue
            hidden = hidden or (not isinstance(edge, Link) and edge.gap is not None)
            todo.append(far)
    if hidden:
        return Unknown(f"part of the run from {s.id} was not seen and may hide a breaker")
    if not first:
        return False

    def shared(state: Any) -> Truth:
        found: Truth = False
        for node in first.values():
            sure, may = state.feeds_of(node)
            if any(not one.aboard and one is not feed for one in sure):
                return True
            found = None if any(not one.aboard and one is not feed for one in may) else found
        return found

    truth, name = ever(shown_states(s), shared)
    tell_state(s, name)
    return negate(answer(truth, f"whether the breaker behind {s.id} serves another inlet is not known"))


@fact(
    "inlet",
    "has_surge_device",
    type="yes/no",
    says="A surge device of class 1 or 2 stands across the supply that it brings, whatever is switched.",
    method="a surge device that the inlet reaches through wires and closed devices alone; its class",
)
def has_surge_device(s: Subject) -> Any:
    reached = _across(s, "surge device")
    if reached is False:
        return False
    near = reached_from(s.facts.network, [f"{s.id}:L"], _always)
    devices = [item for item in s.facts.network.equipment.values() if item.kind == "surge device"]
    found = some(_is_coarse(s, item) for item in devices if f"{item.name}:L" in near)
    return reached if found is False and isinstance(reached, Unknown) else found


def _always(edge: Edge) -> bool:
    """Whether an edge joins its ends in every state; a switch in line counts as closed, a throw does not."""
    return not isinstance(edge, Link) or (edge.when in ("always", "hand") and edge.throw is None)


def _is_coarse(s: Subject, device: Equipment) -> bool | Unknown:
    """Whether a device is made for where the supply comes in: class 3 alone is made for one appliance behind others."""
    told = s.read(device, "class")
    return told if isinstance(told, Unknown) else told in ("1", "2")


@fact(
    "inlet",
    "has_polarity_indicator",
    type="yes/no",
    says="Something shows live and neutral swapped ashore.",
    method="a polarity indicator whose live terminal is live from the inlet in some state",
)
def has_polarity_indicator(s: Subject) -> Any:
    return _across(s, "polarity indicator")


@fact("inlet", "supply_is_polarised", type="yes/no", says="Live and neutral of the sites cannot be swapped.")
def supply_is_polarised(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.polarised")


def _across(s: Subject, kind: str) -> Any:
    devices = [item for item in s.facts.network.equipment.values() if item.kind == kind]
    feed = feed_named(s.facts, s.id)
    if feed is None:
        return Unknown(f"{s.id} is connected to no circuit")

    def found(state: Any) -> Truth:
        seen: Truth = False
        for item in devices:
            sure, may = state.feeds_of(f"{item.name}:L")
            if feed in sure:
                return True
            seen = None if feed in may else seen
        return seen

    truth, _ = ever(states_of(s.facts).states, found)
    if truth is False and _unseen(s):
        return Unknown(f"part of the mains was not seen and may hide a {kind}")
    return answer(truth, f"whether the {kind} is reached is not known")


def _unseen(s: Subject) -> bool:
    """Whether a stretch of some mains circuit was not seen."""
    network = s.facts.network
    mains = (one for one in network.conductors if network.systems[one.circuit.name] == "ac")
    return any(wire.gap is not None for one in mains for wire in one.wires)


@fact("inlet", "lead_in_when_driving", words=("alarm", "interlock"),
      says="What keeps the vehicle from leaving with the lead in; none for nothing.")  # fmt: skip
def lead_in_when_driving(s: Subject) -> Any:
    return s.read(s.item, "lead in when driving")


@subjects("lead", "A shore lead carried along.")
def leads(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.network.equipment.values():
        if item.kind == "supply lead":
            yield item.name, item.where, item


@fact("lead", "length", unit="m", says="Its length.")
def lead_length(s: Subject) -> Any:
    return s.read(s.item, "length")


@fact("lead", "rating", unit="A", says="Rated current of its plug and connector.")
def lead_rating(s: Subject) -> Any:
    return s.read(s.item, "rating")


@fact("lead", "reel", words=("rated coiled", "marked to unwind", "plain"), says="Its reel; none when there is not.")
def lead_reel(s: Subject) -> Any:
    return s.read(s.item, "reel")


@fact("lead", "labels", words=LABELS, type="words", says="What the labels on it say.")
def lead_labels(s: Subject) -> Any:
    return s.read(s.item, "labels")


@fact("lead", "is_one_piece", type="yes/no", says="It is one piece, not several joined.")
def is_one_piece(s: Subject) -> Any:
    return s.read(s.item, "one piece")


@fact("lead", "has_adaptors", type="yes/no", says="Adaptors are carried with it.", method="its list of adaptors")
def has_adaptors(s: Subject) -> Any:
    listed = s.read(s.item, "adaptors")
    return listed if isinstance(listed, Unknown) else bool(listed)


def _cable(s: Subject, key: str) -> Any:
    name = s.read(s.item, "cable")
    cable = s.facts.design.cables.get(name) if isinstance(name, str) else None
    return UNKNOWN if cable is None else s.read(cable, key)


@fact("lead", "area", unit="mm2", says="Cross-section of its cores.")
def lead_area(s: Subject) -> Any:
    return _cable(s, "size")


@fact("lead", "cores", unit="count", says="Cores of its cable.")
def lead_cores(s: Subject) -> Any:
    return _cable(s, "cores")


@fact(
    "lead",
    "sheath",
    words=("plastic", "rubber", "heavy rubber", "silicone", "metal"),
    says="Sheath of its cable; none for plain wire.",
)
def lead_sheath(s: Subject) -> Any:
    return _cable(s, "sheath")


@fact("lead", "is_flexible", type="yes/no", says="Its cores are of fine strands.", method="strands of its cable")
def lead_is_flexible(s: Subject) -> Any:
    strands = _cable(s, "strands")
    return strands if isinstance(strands, Unknown) else strands in ("flexible", "extra flexible")


@fact("lead", "inlet_rating", unit="A", says="Lowest rated current of the inlets it may be put into.")
def inlet_rating(s: Subject) -> Any:
    rated = [s.read(item, "rating") for item in s.facts.network.equipment.values() if item.kind == "shore inlet"]
    if not rated:
        return Unknown("there is no shore inlet")
    value = rated[0]
    for one in rated[1:]:
        value = least(value, one)
    return value


@fact(
    "inlet",
    "is_safe_either_way",
    type="yes/no",
    says="Every overcurrent device that the shore feeds opens live and neutral together, so that their order is free.",
    method="devices fed from the shore in some supply state, by their poles; a fuse opens one",
)
def is_safe_either_way(s: Subject) -> Any:
    fed = []
    for device in s.facts.subjects("device"):
        if device.opens_on_overcurrent and device.is_fed_from_shore is not False:
            opens = both(device.type_of_device != "fuse", greater_equal(device.poles, 2.0))
            fed.append(either(negate(device.is_fed_from_shore), opens))
    return every(fed)


@fact(
    "inlet",
    "earth_resistance",
    unit="Ω",
    says="Highest resistance that a test of earth continuity showed, from the earth of the supply to metal aboard.",
    method="readings of the test `earth continuity`",
)
def earth_resistance(s: Subject) -> Any:
    shown = greatest_shown(s, "resistance", lambda one: is_test(s, one, "earth continuity"))
    if shown is None:
        missing = Unknown("no test of earth continuity is written down")
        return s.use("readings: earth continuity", Given(missing, s.where, MISSING), "Ω")
    return shown
