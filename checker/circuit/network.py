"""The graph itself: conductors, links inside equipment, sources, and who is next to whom."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Conductor, Edge, Link, Source, Wire
from checker.circuit.expand import Expansion
from checker.design.model import Circuit, Design, Equipment


class Network:
    """One graph for battery, mains, earth and control.

    `near[node]` lists (edge, far node) in the order built. `systems` says `dc` or `ac` for each circuit.
    `sinks` maps a node to the equipment that draws there; `sources` stand in file order.
    """

    __slots__ = (
        "by_circuit",
        "by_link",
        "circuits",
        "conductors",
        "design",
        "equipment",
        "links",
        "live_forests",
        "near",
        "nodes_by_name",
        "places_of",
        "sinks",
        "sources",
        "sources_at",
        "systems",
        "units",
    )

    def __init__(self, design: Design, expansion: Expansion, systems: dict[str, str]) -> None:
        self.design = design
        self.equipment: dict[str, Equipment] = expansion.equipment
        self.circuits: tuple[Circuit, ...] = tuple(expansion.circuits)
        self.units: dict[str, tuple[str, ...]] = expansion.units
        self.systems = systems
        self.conductors: list[Conductor] = []
        self.links: list[Link] = []
        self.near: dict[str, list[tuple[Edge, str]]] = {}
        self.sources: list[Source] = []
        self.sources_at: dict[str, list[Source]] = {}
        self.sinks: dict[str, list[Equipment]] = {}
        self.by_circuit: dict[str, list[Conductor]] = {}
        self.by_link: dict[int, Conductor] = {}  # id of a link in a run -> the conductor it stands in
        self.live_forests: dict[Any, Any] = {}  # kept by `limits.live_forest`
        self.nodes_by_name: dict[str, list[str]] = {}

    def join(self, edge: Edge) -> None:
        """Put an edge between its nodes."""
        self.near.setdefault(edge.a, []).append((edge, edge.b))
        self.near.setdefault(edge.b, []).append((edge, edge.a))

    def add_link(self, link: Link) -> Link:
        """A connection inside equipment."""
        self.links.append(link)
        self.join(link)
        return link

    def add_conductor(self, conductor: Conductor) -> None:
        """A conductor with its wires; its links are joined too (they belong to the run)."""
        self.conductors.append(conductor)
        self.by_circuit.setdefault(conductor.circuit.name, []).append(conductor)
        for part in conductor.parts:
            self.join(part)
            if isinstance(part, Link):
                self.links.append(part)
                self.by_link[id(part)] = conductor

    def add_source(self, source: Source) -> None:
        """A source, found by its node as well."""
        self.sources.append(source)
        self.sources_at.setdefault(source.live, []).append(source)

    def conductor(self, circuit: str, role: str) -> Conductor | None:
        """The conductor of a circuit in one role."""
        return next((one for one in self.by_circuit.get(circuit, ()) if one.role == role), None)

    def nodes_of(self, equipment: str) -> list[str]:
        """The nodes of a piece of equipment that something joins, in the order built; for a finished graph."""
        if not self.nodes_by_name:
            for node in self.near:
                self.nodes_by_name.setdefault(node.rpartition(":")[0], []).append(node)
        return self.nodes_by_name.get(equipment, [])

    def wires(self) -> list[Wire]:
        """Every wire, conductor by conductor."""
        return [wire for conductor in self.conductors for wire in conductor.wires]
