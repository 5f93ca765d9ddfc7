"""What the graph is made of: nodes are terminals (text such as `F1:a`), edges are wires and links.

A node is named `equipment:terminal`; the terminal is the port and the pole (`converter:low+`, `inlet:L`, `bar-48:-`).
All points of the chassis are one node, `chassis`.
"""

from __future__ import annotations

from typing import Any

from checker.design.given import Where
from checker.design.model import Circuit, Equipment
from checker.design.run import Gap, Length

LIVE, RETURN, EARTH, BONDING = "live", "return", "earth", "bonding"
CHASSIS = "chassis"

PROTECTIVE = frozenset({"fuse", "breaker", "rcbo"})
"""Kinds that open on overcurrent."""


class Wire:
    """A stretch of one conductor between two nodes with nothing in between.

    `lengths` are the stretches as written; `gap` says that part of it was not seen and may hide a device;
    `place` of a stretch may be None.
    """

    __slots__ = ("a", "b", "conductor", "gap", "index", "lengths")

    def __init__(self, a: str, b: str, lengths: tuple[Length, ...], gap: Gap | None, index: int) -> None:
        self.a = a
        self.b = b
        self.lengths = lengths
        self.gap = gap
        self.index = index
        self.conductor: Conductor  # set by the conductor that owns it

    @property
    def gap_measured(self) -> bool:
        """Whether the part that was not seen was measured all the same, so that its place is told."""
        return self.gap is None or any(stretch.where == self.gap.where for stretch in self.lengths)


class Link:
    """A connection inside equipment: a fuse element, a contact, a bar, an internal bond.

    `pole` is the role of the conductor it stands in. `when` says what closes it: `always`, `hand` (a switch),
    `coil` (a relay), `throw` (one position of a changeover), `transfer` and `bond` (inside an inverter).
    A `one_way` link carries supply from `a` to `b` only.
    """

    __slots__ = ("a", "b", "equipment", "one_way", "pole", "throw", "when")

    def __init__(
        self,
        equipment: Equipment,
        a: str,
        b: str,
        pole: str,
        when: str = "always",
        throw: str | None = None,
        one_way: bool = False,
    ) -> None:
        self.equipment = equipment
        self.a = a
        self.b = b
        self.pole = pole
        self.when = when
        self.throw = throw
        self.one_way = one_way

    @property
    def is_protective(self) -> bool:
        """Whether it opens on overcurrent."""
        return self.equipment.kind in PROTECTIVE

    def other(self, node: str) -> str:
        """The far node."""
        return self.b if node == self.a else self.a


Edge = Wire | Link


class Conductor:
    """One core of one circuit, from the source end to the load end: wires and the links between them, in order.

    `role` is live, return, earth or bonding. `parts` holds `Wire` and `Link` in the order of the run.
    """

    __slots__ = ("circuit", "end", "id", "parts", "role", "start", "where", "wires")

    def __init__(self, circuit: Circuit, role: str, parts: tuple[Edge, ...], start: str, end: str) -> None:
        self.circuit = circuit
        self.role = role
        self.id = circuit.name if role in (LIVE, BONDING) else f"{circuit.name} {role}"
        self.where: Where = circuit.where
        self.parts = parts
        self.start = start
        self.end = end
        self.wires = tuple(part for part in parts if isinstance(part, Wire))
        for wire in self.wires:
            wire.conductor = self

    @property
    def links(self) -> tuple[Link, ...]:
        """The devices in it, in order of the run."""
        return tuple(part for part in self.parts if isinstance(part, Link))

    def __repr__(self) -> str:
        return f"<conductor {self.id}>"


class Source:
    """A place from which supply can reach the graph.

    `storage` sources (batteries, a contact of a vehicle coupling) are not limited in themselves; the others, and a
    contact with a fuse at the towing vehicle, give at most `limit` (A, a Number). `system` is dc
    or ac. `port` is the port of the equipment it stands at.
    """

    __slots__ = ("equipment", "limit", "live", "name", "port", "returns", "storage", "system")

    def __init__(
        self, equipment: Equipment, port: str, live: str, returns: str, *, storage: bool, limit: object, system: str
    ) -> None:
        self.equipment = equipment
        self.port = port
        self.live = live
        self.returns = returns
        self.storage = storage
        self.limit = limit
        self.system = system
        self.name = f"{equipment.name}.{port}" if port else equipment.name

    @property
    def most(self) -> Any:
        """Greatest lasting current (A, a Number); infinite where nothing limits a storage source."""
        return float("inf") if self.storage and self.limit is None else self.limit

    def __repr__(self) -> str:
        return f"<source {self.name}>"
