"""What goes dark: alarms behind a switch, essential loads when a management opens its bank, all lamps by one fault."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, NamedTuple

from checker.circuit.elements import Edge, Wire
from checker.circuit.supply import storage_nodes, supplied
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.contacts import contacts, signal_state
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Truth, Unknown, both, either, every, some

ALARMS = ("alarm", "detector")
SWITCHING = ("switch", "relay", "combiner", "changeover")
FAILING = (
    "fuse",
    "breaker",
    "rcbo",
    "relay",
    "combiner",
    "switch",
    "connector",
    "dc converter",
    "inverter",
    "inverter-charger",
)


def _seen(edge: Edge) -> bool:
    return not (isinstance(edge, Wire) and edge.gap is not None)


class Standing(NamedTuple):
    """How contacts stand, and the converters that a missing signal keeps at rest."""

    passes: Callable[[Edge], bool]
    asleep: frozenset[str]


def standings(facts: Facts) -> list[Standing]:
    """All contacts closed and all converters awake, then as in each mode."""
    found = [Standing(lambda edge: True, frozenset())]
    for mode in facts.design.modes.values():
        asleep = [
            item.name
            for item in facts.network.equipment.values()
            if item.kind == "dc converter" and _enabled(facts, item, mode) is False
        ]
        found.append(Standing(contacts(facts, mode).surely, frozenset(asleep)))
    return found


def _enabled(facts: Facts, item: Equipment, mode: Item) -> Truth:
    name = item.value("enabled by")
    return signal_state(facts, name, mode) if isinstance(name, str) else True


def darkeners(facts: Facts, node: str, names: Iterable[str]) -> dict[str, None]:
    """Those of `names` without which a node that a battery supplies is supplied no more, in some mode."""
    network = facts.network
    starts = storage_nodes(network)
    found: dict[str, None] = {}
    for passes, asleep in standings(facts):
        if node in supplied(network, starts, passes, asleep):
            for name in names:
                if name not in found and node not in supplied(network, starts, passes, asleep | {name}):
                    found[name] = None
    return found


def live_node(facts: Facts, item: Equipment) -> str | None:
    """The live terminal at which a load is connected."""
    return next((f"{item.name}:{pole}" for pole in ("+", "L") if f"{item.name}:{pole}" in facts.network.near), None)


@fact(
    "circuit",
    "feeds_alarm",
    type="yes/no",
    says="A gas, smoke or carbon-monoxide alarm or detector stands at its end.",
    method="graph",
)
def feeds_alarm(s: Subject) -> bool:
    return any(_is_alarm(s.facts, port.equipment) for port in s.item.ends)


def _is_alarm(facts: Facts, name: str) -> bool:
    item = facts.network.equipment.get(name)
    return item is not None and item.kind in ALARMS


@fact(
    "circuit",
    "dark_by_switch",
    of="switch",
    type="list",
    says="Switches and relays that take every battery away from its end, in some mode.",
    method="each taken out in turn; walk from every battery through converters, contacts as in each mode",
)
def dark_by_switch(s: Subject) -> Any:
    network = s.facts.network
    names = [item.name for item in network.equipment.values() if item.kind in SWITCHING]
    found: dict[str, None] = {}
    for port in s.item.ends:
        item = network.equipment.get(port.equipment)
        node = live_node(s.facts, item) if item is not None else None
        if node is None:
            continue
        if node not in supplied(network, storage_nodes(network)):
            return Unknown(f"no battery is found to supply {port.equipment}")
        found.update(darkeners(s.facts, node, names))
        if not found and node not in supplied(network, storage_nodes(network), _seen):
            return Unknown("part of its supply was not seen and may hide a switch")
    return tuple(switch for name in found if (switch := s.facts.subject("switch", name)) is not None)


@fact(
    "load",
    "dark_by_switch",
    of="switch",
    type="list",
    says="Switches and relays that take every battery away from it, in some mode.",
    method="as circuit.dark_by_switch",
)
def load_dark_by_switch(s: Subject) -> Any:
    node = live_node(s.facts, s.item)
    network = s.facts.network
    if node is None or node not in supplied(network, storage_nodes(network)):
        return Unknown(f"no battery is found to supply {s.id}")
    found = darkeners(s.facts, node, [item.name for item in network.equipment.values() if item.kind in SWITCHING])
    return tuple(switch for name in found if (switch := s.facts.subject("switch", name)) is not None)


@fact(
    "load",
    "survives_bank_loss",
    type="yes/no",
    says="It keeps a supply when the management of a lithium bank opens: another battery, or a cell of its own.",
    method="each lithium bank taken out in turn; walk from the other batteries, contacts as in each mode",
)
def survives_bank_loss(s: Subject) -> Truth:
    node = live_node(s.facts, s.item)
    if node is None:
        return Unknown(f"{s.id} is not connected")
    answers: list[Truth] = []
    for bank in s.facts.subjects("bank"):
        if bank.is_lithium is not False:
            answers.append(either(_kept(s.facts, node, bank.item), _or_unknown(bank.is_lithium)))
    return either(every(answers), _own_cell(s))


def _or_unknown(is_lithium: Truth) -> Truth:
    """A bank whose chemistry is not known may be one whose management opens."""
    return is_lithium if isinstance(is_lithium, Unknown) else False


def _own_cell(s: Subject) -> Truth:
    value = s.own_cell
    return value if isinstance(value, Unknown) else value is not None


def _kept(facts: Facts, node: str, bank: Equipment) -> bool:
    network = facts.network
    names = {bank.name, *network.units.get(bank.name, ())}
    rest = [start for start in storage_nodes(network) if start.split(":", 1)[0] not in names]
    for passes, asleep in standings(facts):
        whole = supplied(network, storage_nodes(network), passes, asleep)
        if node in whole and node not in supplied(network, rest, passes, asleep):
            return False
    return True


@fact("design", "essential_loads_told", type="yes/no", says="The loads that people depend on are named.",
      method="the list of essential loads, or loads marked essential")  # fmt: skip
def essential_loads_told(s: Subject) -> Truth:
    listed = s.use("essential", s.item.essential)
    if isinstance(listed, tuple) or listed is None:
        return True
    marks = [load.item.value("essential") for load in s.facts.subjects("load") if load.item.allows("essential")]
    return True if any(mark is True for mark in marks) else UNKNOWN


@fact(
    "design",
    "lamps_lost_by_one_fault",
    type="yes/no",
    says="One fuse, relay, switch, connector or converter takes all lamps of the living quarters at once.",
    method="each taken out in turn; walk from every source of supply to each lamp, road lamps left out",
)
def lamps_lost_by_one_fault(s: Subject) -> Truth:
    network = s.facts.network
    lamps = [load for load in s.facts.subjects("load") if load.item.kind == "lamp" and not _road(load.item)]
    if not lamps:
        return UNKNOWN
    own = some([_own_cell(load) for load in lamps])
    if own is True:
        return False
    nodes = [node for load in lamps if (node := live_node(s.facts, load.item)) is not None]
    starts = list(dict.fromkeys(source.live for source in network.sources))
    storage = storage_nodes(network)
    usable = storage or starts
    ways = [way.name for item in network.equipment.values() for way in item.ways]
    for name in [*(item.name for item in network.equipment.values() if item.kind in FAILING), *ways]:
        left = supplied(network, usable, None, {name})
        if not any(node in left for node in nodes):
            s.note(_said(f"without {name} no lamp is left"))
            return both(True, True if own is False else own)
    return False


def _said(text: str) -> Callable[[], str]:
    return lambda: text


def _road(item: Equipment) -> bool:
    purpose = item.value("purpose") if item.allows("purpose") else None
    return isinstance(purpose, str) and purpose == "road lamps"


ROAD = ("road lamps", "steering", "service brake", "breakaway")


@fact("load", "is_road_load", type="yes/no", says="Road lamps, brakes or steering: what the vehicle needs to drive.",
      method="its purpose")  # fmt: skip
def is_road_load(s: Subject) -> Truth:
    if s.item.kind == "brake":
        return True
    purpose = s.read(s.item, "purpose") if s.item.allows("purpose") else None
    # Silence on the purpose of a lamp or motor is the rule; only what is said to be for the road counts.
    return isinstance(purpose, str) and purpose in ROAD


@fact("load", "is_absorption_fridge", type="yes/no", says="A refrigerator that cools by absorption, fed with dc.",
      method="how it works, and the supply it is connected to")  # fmt: skip
def is_absorption_fridge(s: Subject) -> Truth:
    if s.item.kind != "fridge":
        return False
    works = s.read(s.item, "works by")
    if isinstance(works, Unknown):
        return works
    return bool(works == "absorption" and f"{s.id}:+" in s.facts.network.near)


@fact("load", "only_when_driven", type="yes/no", says="Its low-voltage element works only while the engine runs.",
      method="given")  # fmt: skip
def only_when_driven(s: Subject) -> Any:
    return s.read(s.item, "driven only") if s.item.kind == "fridge" else None
