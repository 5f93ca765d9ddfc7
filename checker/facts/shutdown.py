"""How everything is shut down: a switch for each source, a switch close to each fixed appliance."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from checker.circuit.elements import LIVE, Edge, Link, Wire
from checker.circuit.sources import LOADS
from checker.circuit.supply import supplied
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.contacts import signal_means
from checker.facts.electronics import batteries_keyed
from checker.facts.essential import ending_at
from checker.facts.subject import Subject
from checker.facts.unseen import may_be_hidden
from checker.quantities import Truth, Unknown, both, either, equal, every, greater, greater_equal, negate, some

STOPPED = ("battery", "solar array", "shore inlet", "generator")
"""Kinds at which supply begins while the engine stands still."""
TAKES_MAINS = ("charger", "inverter-charger")
INVERTERS = ("inverter", "inverter-charger")
FED_AT = ("+", "L", "dc+")
"""Terminals at which a load, or an inverter, takes its supply."""


@fact(
    "load",
    "has_switch_close_by",
    type="yes/no",
    says="It has a switch of its own, or one stands in its circuit in the same place.",
    method="own switch as told; switches in the run of the circuit that ends at it, by their places",
)
def has_switch_close_by(s: Subject) -> Truth:
    own = s.has_own_switch
    if own is True:
        return True
    return either(own, _switch_in_its_place(s, ("switch",)))


@fact(
    "converter",
    "is_fixed_to_the_mains",
    type="yes/no",
    says="A charger, or inverter and charger in one, that mains from elsewhere feeds and no plug parts from it.",
    method="a mains circuit ends at it; how it is switched off as told",
)
def is_fixed_to_the_mains(s: Subject) -> Truth:
    if s.item.kind not in TAKES_MAINS or not _mains_ends_at(s):
        return False
    off = s.off_by
    return off if isinstance(off, Unknown) else off != "unplugging"


@fact(
    "converter",
    "has_switch_close_by",
    type="yes/no",
    says="It has a switch of its own, or a switch or breaker stands in its mains circuit in the same place.",
    method="off by as told; switches and breakers in the mains circuit that ends at it, by their places",
)
def converter_has_switch_close_by(s: Subject) -> Truth:
    off = s.off_by
    own: Truth = off if isinstance(off, Unknown) else off in ("own switch", "remote switch")
    return True if own is True else either(own, _switch_in_its_place(s, ("switch", "breaker", "rcbo")))


def _mains_ends_at(s: Subject) -> bool:
    return any(s.facts.network.systems[one.name] == "ac" for one in ending_at(s.facts, s.id))


def _switch_in_its_place(s: Subject, kinds: tuple[str, ...]) -> Truth:
    """Whether in a mains circuit that ends at it something of these kinds stands in the same place."""
    place = s.read(s.item, "place")
    near: list[Truth] = []
    for circuit in ending_at(s.facts, s.id):
        conductor = s.facts.network.conductor(circuit.name, LIVE)
        if conductor is not None and s.facts.network.systems[circuit.name] == "ac":
            switches = [link.equipment for link in conductor.links if link.equipment.kind in kinds]
            near.extend(equal(s.read(item, "place"), place) for item in switches)
            if any(wire.gap is not None for wire in conductor.wires):
                near.append(Unknown("part of its run was not seen and may hide a switch"))
    return some(near)


@fact("load", "is_supplied", type="yes/no", says="Some circuit ends at it.", method="graph")
def is_supplied(s: Subject) -> Truth:
    if ending_at(s.facts, s.id):
        return True
    hidden = may_be_hidden(s.facts, s.id)
    return False if hidden is None else hidden


@fact(
    "design",
    "shut_down",
    type="text",
    says="What is switched off to shut all sources down, in order.",
    method="the list in the papers",
)
def shut_down(s: Subject) -> Any:
    listed = _listed(s)
    return listed if isinstance(listed, Unknown) else ", ".join(listed)


@fact(
    "design",
    "live_after_shutdown",
    type="text",
    says="Loads and inverters that some source still reaches when all that is listed is open; empty when all are dead.",
    method="walk from batteries, arrays, inlets and generators with the engine stopped, so that converters that it "
    "enables rest and relays are released; alarms, safety circuits, road loads and automotive circuits left out; an "
    "inverter that is listed itself is switched off",
)
def live_after_shutdown(s: Subject) -> Any:
    left = _left(s)
    return left if isinstance(left, Unknown) else ", ".join(left)


@fact(
    "design",
    "all_dead_after_shutdown",
    type="yes/no",
    says="Opening all that is listed leaves no load and no inverter live, alarms and road circuits left out.",
    method="as live_after_shutdown",
)
def all_dead_after_shutdown(s: Subject) -> Truth:
    left = _left(s)
    return left if isinstance(left, Unknown) else not left


def _listed(s: Subject) -> list[str] | Unknown:
    listed = s.read(s.item.papers, "shut down")
    if isinstance(listed, Unknown):
        return listed
    names = listed if isinstance(listed, tuple) else ()
    known = [name for name in names if isinstance(name, str)]
    return known if len(known) == len(names) else Unknown("an entry of the list is not known")


def _left(s: Subject) -> list[str] | Unknown:
    listed = _listed(s)
    loose = loose_bank(s.facts)
    if isinstance(listed, Unknown):
        return listed
    if loose is not None:
        return loose
    network = s.facts.network
    starts = [source.live for source in network.sources if source.equipment.kind in STOPPED]
    most = supplied(network, starts, _released, {*listed, *_resting(s, perhaps=False)})
    least = supplied(network, starts, _seen, {*listed, *_resting(s, perhaps=True)})
    perhaps, surely = _live_loads(s, most, perhaps=True), _live_loads(s, least, perhaps=False)
    if perhaps and not surely:
        return Unknown(f"whether {', '.join(perhaps)} are still reached is not known")
    return surely


def _live_loads(s: Subject, reached: Collection[str], *, perhaps: bool) -> list[str]:
    """The loads among the nodes that are reached, those left out that may stay live; with `perhaps` those of which
    that is open are counted."""
    found: list[str] = []
    for item in s.facts.network.equipment.values():
        stays = False if item.kind in INVERTERS else _stays(s, item) if item.kind in LOADS else True
        if stays is False or (perhaps and stays is not True):
            found.extend(item.name for pole in FED_AT if f"{item.name}:{pole}" in reached)
    return list(dict.fromkeys(found))


def _resting(s: Subject, *, perhaps: bool) -> list[str]:
    """Converters that the running engine enables; with `perhaps` those too of which what enables them is untold."""
    items = (item for item in s.facts.network.equipment.values() if item.kind == "dc converter")
    return [item.name for item in items if _by_engine(s, item, perhaps=perhaps)]


def _by_engine(s: Subject, item: Equipment, *, perhaps: bool) -> bool:
    means = signal_means(s.facts, item.value("enabled by"))
    if isinstance(means, Unknown):
        return perhaps and item.has("enabled by")
    return isinstance(means, str) and means == "engine running"


def _released(edge: Edge) -> bool:
    """Every contact but those of coils: a relay lets go when what drives it stops."""
    return not (isinstance(edge, Link) and edge.when == "coil")


def _seen(edge: Edge) -> bool:
    """The same without stretches that nobody saw, which may hide a switch of the list."""
    return _released(edge) and not (isinstance(edge, Wire) and edge.gap is not None)


def _stays(s: Subject, item: Equipment) -> Truth:
    """Whether a load may stay live: an alarm, one on a safety circuit, or one of the road vehicle."""
    load = s.facts.subject("load", item.name)
    if item.kind in ("alarm", "detector") or (load is not None and load.is_road_load is True):
        return True
    feeding = ending_at(s.facts, item.name)
    spared = (either(equal(one.value("duty"), "safety"), equal(one.value("scope"), "automotive")) for one in feeding)
    return both(bool(feeding), every(spared))


@fact(
    "design",
    "shutdown_places_told",
    type="yes/no",
    says="The file tells where everything stands that is switched off to shut all sources down.",
    method="place of each entry of the list",
)
def shutdown_places_told(s: Subject) -> Truth:
    listed = _listed(s)
    if isinstance(listed, Unknown):
        return listed
    answers: list[Truth] = []
    for name in listed:
        item = s.facts.network.equipment.get(name)
        if item is not None and item.allows("place"):
            place = s.read(item, "place")
            answers.append(place if isinstance(place, Unknown) else True)
    return every(answers)


@fact(
    "converter",
    "survives_reversal",
    type="yes/no",
    says="Its battery connection cannot be reversed, or it survives that; none for what has no such entry.",
    method="keyed connection of it or of every battery it hangs on, or reverse protection, as told",
)
def survives_reversal(s: Subject) -> Any:
    if not s.item.allows("reverse protection"):
        return None
    own = either(s.read(s.item, "keyed"), s.read(s.item, "reverse protection"))
    return own if own is True else either(own, batteries_keyed(s))


@fact(
    "converter",
    "stands_fit",
    type="yes/no",
    says="It stands dry, in no space where a battery or gas cylinders give off gas, and its place is ventilated.",
    method="kind of its place, what else stands in its air, its openings",
)
def stands_fit(s: Subject) -> Truth:
    body = s.facts.subject("equipment", s.id)
    place = None if body is None else body.place
    if body is None or place is None or isinstance(place, Unknown):
        return Unknown(f"where {s.id} stands is not known")
    wet = body.place_kind if isinstance(body.place_kind, Unknown) else body.place_kind == "wet room"
    dry = negate(some([body.outdoors, wet, both(_sees_water(s, place.item), negate(_sealed(body)))]))
    gas = either(s.in_lead_gas, either(place.shared_with_gas, body.in_gas_locker))
    open_room = both(equal(place.kind_of_place, "living space"), negate(place.enclosed))
    openings = either(_opening(place.vent_low), _opening(place.vent_high))
    return both(both(dry, negate(gas)), either(open_room, either(openings, place.fan)))


WATER = {"damp": 1.0, "splash": 4.0, "rain": 3.0, "jets": 5.0}
"""Second digit of the degree of protection by the water a place sees: IEC 60529, from memory."""


def _sees_water(s: Subject, place: Item) -> Truth:
    """Whether a place sees water, as told; one of which nothing is told counts as dry, as its kind says."""
    told = s.read(place, "wet") if place.has("wet") else "dry"
    return told if isinstance(told, Unknown) else told != "dry"


def _sealed(body: Subject) -> Truth:
    """Whether equipment is built for the water that its place sees."""
    told = body.place.item.value("wet")
    return greater_equal(body.water_degree, WATER.get(str(told), 5.0))


def _opening(area: Any) -> Truth:
    return greater(area, 0.0)
