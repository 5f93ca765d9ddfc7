"""Which contacts are closed in a mode: switches as set or left, relays by what drives them."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link, Wire
from checker.circuit.supply import leading_to
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.currents import positions
from checker.facts.subject import Facts
from checker.quantities import UNKNOWN, Truth, Unknown, equal, negate

ENGINE_PORTS = ("d", "d+")
OF_THE_ENGINE = ("engine running", "ignition on")


class Contacts:
    """The contacts of one mode. A switch that nothing sets is closed, as it is left in use."""

    __slots__ = ("_facts", "_mode", "_positions", "_set")

    def __init__(self, facts: Facts, mode: Item) -> None:
        self._facts = facts
        self._mode = mode
        self._positions = positions(facts, mode)
        chosen = mode.value("set")
        self._set: dict[str, Any] = dict(chosen) if isinstance(chosen, tuple) else {}

    def closed(self, edge: Edge) -> Truth:
        """Whether the edge conducts in this mode."""
        if isinstance(edge, Wire):
            return True if edge.gap is None else Unknown("part of the run was not seen and may hide a contact")
        if edge.when in ("always", "bond"):
            return True
        item = edge.equipment
        if edge.when == "throw":
            return self._positions.get(item.name) == edge.throw if item.name in self._positions else UNKNOWN
        if edge.when == "transfer":
            return self._positions.get(item.name, "pass") == "pass"
        if item.name in self._set:
            said = self._set[item.name].value
            return said == "closed" if isinstance(said, str) and said in ("open", "closed") else UNKNOWN
        return self._by_hand(edge) if edge.when == "hand" else self._by_coil(item)

    def _by_hand(self, link: Link) -> Truth:
        return negate(is_word(link.equipment.value("rest"), "open", otherwise=False))

    def _by_coil(self, item: Equipment) -> Truth:
        if item.kind == "combiner":
            return self._combiner(item)
        driven = signal_state(self._facts, item.value("driven by"), self._mode)
        closed_at_rest = is_word(item.value("rest"), "closed", otherwise=False) is True
        breaks = item.allows("form") and is_word(item.value("form"), "break", otherwise=False) is True
        return negate(driven) if closed_at_rest or breaks else driven

    def _combiner(self, item: Equipment) -> Truth:
        running = engine_runs(self._mode)
        senses = item.value("senses")
        if running is not False or (isinstance(senses, str) and senses != "voltage"):
            return running
        return Unknown(f"whether {item.name} is closed depends on the voltage")

    def surely(self, edge: Edge) -> bool:
        """Whether it conducts for certain."""
        return self.closed(edge) is True

    def perhaps(self, edge: Edge) -> bool:
        """Whether it may conduct."""
        return self.closed(edge) is not False


def contacts(facts: Facts, mode: Item) -> Contacts:
    """The contacts of a mode, made once."""
    made: dict[str, Contacts] = facts.store.setdefault("contacts", {})
    if mode.name not in made:
        made[mode.name] = Contacts(facts, mode)
    return made[mode.name]


def signal_state(facts: Facts, name: Any, mode: Item) -> Truth:
    """Whether a signal (its name, or a port such as `alternator.d+`) is given in a mode."""
    means = signal_means(facts, name)
    word = means if isinstance(means, str) else ""
    if word == "engine running":
        return engine_runs(mode)
    if word == "ignition on":
        return True if engine_runs(mode) is True else UNKNOWN
    if word == "shore present":
        return negate(is_word(mode.value("shore"), "absent"))
    if word == "generator running":
        return is_word(mode.value("generator"), "running")
    if word == "air flowing":
        return _air_flows(facts, mode)
    return Unknown("whether the signal is given is not known")


def _air_flows(facts: Facts, mode: Item) -> Truth:
    """Whether air flows in a mode: a fan whose flow is sensed runs in it."""
    running = mode.value("running")
    named = dict(running) if isinstance(running, tuple) else {}
    fans = [one for one in facts.design.equipment.values() if one.kind == "fan" and _flow_sensed(one) is not False]
    unknown = Unknown("whether the signal is given is not known")
    told = len(fans) == 1 and _flow_sensed(fans[0]) is True
    if not told or (isinstance(running, Unknown) and mode.has("running")):
        return unknown
    entry = named.get(fans[0].name)
    if entry is None:
        return False
    return unknown if isinstance(entry.value, Unknown) else negate(equal(entry.value, 0.0))


def _flow_sensed(fan: Item) -> Truth:
    sensed = fan.value("flow sensed")
    return sensed if isinstance(sensed, Unknown) and fan.has("flow sensed") else sensed is True


def engine_runs(mode: Item) -> Truth:
    """Whether the engine runs in a mode."""
    return negate(is_word(mode.value("engine"), "stopped"))


def is_word(value: Any, word: str, *, otherwise: Truth = UNKNOWN) -> Truth:
    """Whether a value is that word; `otherwise` when it is not known."""
    if isinstance(value, Unknown):
        return otherwise
    return isinstance(value, str) and value == word


def signal_item(facts: Facts, name: Any) -> Equipment | None:
    """The equipment of kind signal behind a name or a port of it."""
    if not isinstance(name, str):
        return None
    item = facts.design.equipment.get(name.split(".", 1)[0])
    return item if item is not None and item.kind == "signal" else None


def _from_battery(facts: Facts, origin: Any) -> bool:
    owner, _, port = str(origin).partition(".")
    source = facts.design.equipment.get(owner) if isinstance(origin, str) else None
    return source is not None and source.kind in ("battery", "bank") and port in ("", "+", "-")


def signal_means(facts: Facts, name: Any) -> Any:
    """What a signal means: as its item says; the running terminal of an alternator means that the engine runs.

    One taken from the poles of a battery tells nothing of the engine: a battery is live with the engine stopped too.
    """
    item = signal_item(facts, name)
    if item is not None:
        means = item.value("means")
        of_engine = isinstance(means, str) and means in OF_THE_ENGINE
        return None if of_engine and _from_battery(facts, item.value("from")) else means
    if isinstance(name, str) and "." in name:
        owner, port = name.split(".", 1)
        source = facts.design.equipment.get(owner)
        if source is not None and source.kind == "alternator" and port in ENGINE_PORTS:
            return "engine running"
        if source is not None and source.kind in ("battery", "bank") and port == "allow":
            return "charge allowed"
    return name if name is None else UNKNOWN


def _to_batteries(facts: Facts, mode: Item, *, perhaps: bool) -> set[str]:
    """Nodes joined to a battery in a mode, for certain or perhaps; walked once for all who ask."""
    held: dict[tuple[str, bool], set[str]] = facts.store.setdefault("joined to batteries", {})
    key = (mode.name, perhaps)
    if key not in held:
        state = contacts(facts, mode)
        stores = [source.live for source in facts.network.sources if source.storage]
        held[key] = leading_to(facts.network, stores, state.perhaps if perhaps else state.surely)
    return held[key]


def has_battery(facts: Facts, node: str, mode: Item) -> Truth:
    """Whether a battery stands on the bus of a node in a mode."""
    loose = loose_bank(facts)
    if node in _to_batteries(facts, mode, perhaps=False):
        return True
    if node in _to_batteries(facts, mode, perhaps=True):
        return Unknown("whether a contact on the way to a battery is closed is not known")
    return False if loose is None else loose
