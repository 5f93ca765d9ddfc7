"""The mains side of the graph: what is joined for good, what opens and closes, what feeds it, where neutral is earthed.

Fuses, breakers, residual-current devices and hand switches count as closed, unless the switch is interlocked with
another or parts a source from the earthing of its neutral: any other open switch only takes supply away. Neutral and
earth are kept apart here; each place where they meet is a `Bond`.
"""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

from checker.circuit.elements import CHASSIS, EARTH, LIVE, RETURN, Conductor, Link, Wire
from checker.circuit.groups import Groups
from checker.circuit.network import Network
from checker.circuit.ports import IN_LINE, port_nodes
from checker.design.given import Where
from checker.design.item import Item
from checker.design.model import Equipment
from checker.quantities import Unknown

BONDING = "bonding"
RESIDUAL = frozenset({"rcd", "rcbo"})
SWITCHING = frozenset({"throw", "transfer", "bond", "coil"})


class Feed(NamedTuple):
    """Something that can feed the mains side: a shore inlet, a generator, an inverter, a separating transformer."""

    equipment: Equipment
    live: str
    neutral: str
    earth: str

    @property
    def name(self) -> str:
        """The name of the equipment."""
        return self.equipment.name

    @property
    def aboard(self) -> bool:
        """Whether it stands in the vehicle."""
        return self.equipment.kind != "shore inlet"


class Bond(NamedTuple):
    """A join of neutral and earth aboard. `link` is the one inside equipment, None for a wire or a bonded bar.

    `doubtful` says that the file leaves open whether a join without a `link` is there.
    """

    name: str
    where: Where
    item: Item
    neutral: str
    earth: str
    link: Link | None
    doubtful: bool


class Mains:
    """The mains side. `fixed` joins all that is joined in every state; `open_residual` the same with residual-current
    devices taken out; `seen` without stretches that nobody saw as well; `earths` the earth conductors alone. `opened`
    names equipment whose contacts are open throughout, `by_hand` the hand switches that may be open or closed."""

    __slots__ = (
        "bonds", "by_hand", "earths", "earths_perhaps", "feeds", "fixed", "network", "nodes", "open_residual", "opened",
        "residual", "seen", "switching",
    )  # fmt: skip

    def __init__(
        self, network: Network, opened: frozenset[str] = frozenset(), by_hand: frozenset[str] = frozenset()
    ) -> None:
        self.network = network
        self.opened = opened
        self.by_hand = interlocked(network) | by_hand
        self.fixed, self.open_residual, self.seen = Groups(), Groups(), Groups()
        self.earths, self.earths_perhaps = Groups(), Groups()
        self.nodes: set[str] = set()
        self.bonds: list[Bond] = []
        self.switching: list[Link] = []
        self.residual: list[Link] = []
        self._conductors()
        self._unknown_returns()
        self._unknown_earths()
        self._links(self.by_hand)
        self._boards()
        self._transformers()
        self.feeds = tuple(_feeds(network, self.nodes))

    def _conductors(self) -> None:
        for conductor in self.network.conductors:
            bonding = conductor.role == BONDING
            if not bonding and self.network.systems[conductor.circuit.name] != "ac":
                continue
            if {self.role(conductor.start), self.role(conductor.end)} == {RETURN, EARTH}:
                self._bonding_wire(conductor)
                continue
            for wire in conductor.wires:
                self._wire(wire, earth=bonding or conductor.role == EARTH)

    def _wire(self, wire: Wire, *, earth: bool) -> None:
        self.nodes.update((wire.a, wire.b))
        self.fixed.join(wire.a, wire.b)
        self.open_residual.join(wire.a, wire.b)
        if wire.gap is None:
            self.seen.join(wire.a, wire.b)
        if earth:
            self.earths.join(wire.a, wire.b)
            self.earths_perhaps.join(wire.a, wire.b)

    def _bonding_wire(self, conductor: Conductor) -> None:
        """A conductor that joins neutral to earth; with a contact in it, it may be open."""
        start, end = conductor.start, conductor.end
        neutral, earth = (start, end) if self.role(start) == RETURN else (end, start)
        contacts = any(link.when != "always" for link in conductor.links)
        gap = any(wire.gap is not None for wire in conductor.wires)
        circuit = conductor.circuit
        self.bonds.append(Bond(circuit.name, circuit.where, circuit, neutral, earth, None, contacts or gap))

    def _links(self, apart: frozenset[str]) -> None:
        for link in self.network.links:
            if not self._belongs(link):
                continue
            self.nodes.update((link.a, link.b))
            if link.equipment.name in self.opened and link.pole != EARTH:
                continue
            if link.when == "bond":
                item = link.equipment
                self.bonds.append(Bond(item.name, item.where, item, link.a, link.b, link, False))
                self.switching.append(link)
            elif link.when in SWITCHING or link.equipment.name in apart:
                self.switching.append(link)
            else:
                self._fixed_link(link)

    def _belongs(self, link: Link) -> bool:
        """Whether a link is part of the mains side, and no join of neutral and earth by a wire."""
        conductor = self.network.by_link.get(id(link))
        if conductor is None:
            return link.a in self.nodes or link.b in self.nodes
        if conductor.role != BONDING and self.network.systems[conductor.circuit.name] != "ac":
            return False
        return {self.role(conductor.start), self.role(conductor.end)} != {RETURN, EARTH}

    def _fixed_link(self, link: Link) -> None:
        self.fixed.join(link.a, link.b)
        if link.pole == EARTH:
            self.earths.join(link.a, link.b)
            self.earths_perhaps.join(link.a, link.b)
        if link.equipment.kind in RESIDUAL and link.pole in (LIVE, RETURN):
            self.residual.append(link)
        else:
            self.open_residual.join(link.a, link.b)
            self.seen.join(link.a, link.b)

    def _boards(self) -> None:
        """A board whose neutral bar is bonded, or of which nobody said that it is not."""
        for item in self.network.equipment.values():
            if item.kind == "board" and f"{item.name}:N" in self.nodes:
                bar = item.get("neutral bar")
                if isinstance(bar.value, Unknown) or bar.value == "bonded":
                    doubtful = isinstance(bar.value, Unknown)
                    neutral, earth = f"{item.name}:N", f"{item.name}:PE"
                    self.bonds.append(Bond(item.name, item.where, item, neutral, earth, None, doubtful))

    def _transformers(self) -> None:
        """A transformer of one winding joins its sides; one of unknown windings perhaps does."""
        for item in self.network.equipment.values():
            if item.kind == "transformer" and word(item, "windings") != "separate":
                for pole, role in (("L", LIVE), ("N", RETURN)):
                    ends = (f"{item.name}:primary{pole}", f"{item.name}:secondary{pole}")
                    link = Link(item, *ends, role, "winding")
                    if word(item, "windings") == "auto":
                        self._fixed_link(link)
                    else:
                        self.switching.append(link)

    def _unknown_earths(self) -> None:
        """Circuits of which nobody knows whether they have an earth conductor: perhaps they join the earths."""
        for circuit in self.network.circuits:
            if self.network.systems[circuit.name] == "ac" and circuit.earth.how == "unknown":
                ends = [port_nodes(self.network.equipment, port, "ac") for port in (circuit.start, *circuit.ends)]
                nodes = [one[EARTH] for one in ends if EARTH in one]
                self.nodes.update(nodes)  # so that what joins them inside equipment counts too
                for near, far in pairwise(nodes):
                    self.earths_perhaps.join(near, far)

    def _unknown_returns(self) -> None:
        """Circuits of which nobody knows whether they have a neutral: perhaps they join the neutrals."""
        for circuit in self.network.circuits:
            if self.network.systems[circuit.name] != "ac" or circuit.returns.how != "unknown":
                continue
            ends = [port_nodes(self.network.equipment, port, "ac") for port in (circuit.start, *circuit.ends)]
            item = self.network.equipment.get(circuit.start.equipment)
            neutrals = [nodes[RETURN] for nodes in ends if RETURN in nodes]
            if item is not None and not circuit.says("duty", BONDING):
                self.nodes.update(neutrals)
                self.switching.extend(Link(item, a, b, RETURN, "unseen") for a, b in pairwise(neutrals))

    def coils(self) -> list[str]:
        """Live nodes that feed the coil of a changeover or the drive of a relay."""
        found = []
        for item in dict.fromkeys(link.equipment for link in self.switching):
            circuit = item.value("coil on") if item.kind == "changeover" else None
            conductor = self.network.conductor(circuit, LIVE) if isinstance(circuit, str) else None
            if conductor is not None:
                found.append(conductor.start)
            by = item.value("driven by") if item.allows("driven by") else None
            if isinstance(by, str):
                name, _, port = by.partition(".")
                node = f"{name}:{port}" if port.endswith("L") else f"{name}:{port}L"
                if node in self.nodes:
                    found.append(node)
        return found

    def role(self, node: str) -> str:
        """Whether a node is live, return (neutral) or earth, by its name and kind."""
        if node == CHASSIS:
            return EARTH
        name, _, terminal = node.partition(":")
        if terminal.endswith("/return"):
            return RETURN
        if terminal in ("earth", "case"):
            return EARTH
        item = self.network.equipment.get(name)
        if item is not None and (item.kind in IN_LINE or item.kind == "changeover"):
            return LIVE
        if item is not None and item.kind in ("earth bar", "metal part"):
            return EARTH
        if terminal.endswith(("PE", "-")):  # the negative of a battery, where it is bonded, is part of the earth
            return EARTH
        return RETURN if terminal.endswith("N") else LIVE


def word(item: Item, key: str) -> str | None:
    """The word under `key`; None where there is none or nobody knows it."""
    value = item.value(key) if item.allows(key) else None
    return value if isinstance(value, str) else None


def interlocked(network: Network) -> frozenset[str]:
    """Switches worked by hand of which only one can be closed: each names the others."""
    found: set[str] = set()
    for item in network.equipment.values():
        if item.kind == "switch":
            others = item.value("interlocked with")
            if isinstance(others, tuple):
                found.update((item.name, *(one for one in others if isinstance(one, str))))
            elif isinstance(others, Unknown) and item.has("interlocked with"):
                found.add(item.name)  # written as unknown: perhaps it cannot be closed with another
    return frozenset(found)


_FEEDS = {
    "shore inlet": "",
    "generator": "",
    "inverter": "ac",
    "inverter-charger": "ac-out",
    "transformer": "secondary",
}


def _feeds(network: Network, nodes: set[str]) -> list[Feed]:
    found = []
    for item in network.equipment.values():
        port = _FEEDS.get(item.kind)
        if port is None or f"{item.name}:{port}L" not in nodes:
            continue
        if item.kind == "transformer" and word(item, "windings") == "auto":
            continue
        name = f"{item.name}:{port}"
        found.append(Feed(item, f"{name}L", f"{name}N", f"{name}PE"))
    return found
