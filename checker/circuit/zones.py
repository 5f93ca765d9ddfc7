"""Zones of protection: the live nodes between protective devices, and the devices that bound each zone.

A fault anywhere in a zone must be cleared by the devices at its edge behind which a source stands.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.circuit.elements import LIVE, Link, Source, Wire
from checker.circuit.groups import Groups
from checker.circuit.network import Network


class Border(NamedTuple):
    """A device at the edge of a zone: its node `inside` the zone, and the other, `outside`."""

    link: Link
    inside: str
    outside: str


class Zones:
    """The live nodes in groups that no device divides, contacts taken as closed. Linear in the graph."""

    __slots__ = ("_borders", "_groups", "_storage", "_unseen")

    def __init__(self, network: Network) -> None:
        groups = Groups()
        for conductor in network.conductors:
            if conductor.role == LIVE:
                for wire in conductor.wires:
                    groups.join(wire.a, wire.b)
        devices: list[Link] = []
        for link in network.links:
            if link.pole != LIVE:
                continue
            if link.is_protective:
                devices.append(link)
            else:
                groups.join(link.a, link.b)
        self._groups = groups
        self._unseen = {
            groups.find(wire.a)
            for conductor in network.conductors
            if conductor.role == LIVE
            for wire in conductor.wires
            if wire.gap is not None
        }
        self._borders: dict[str, list[Border]] = {}
        for link in devices:
            for inside, outside in ((link.a, link.b), (link.b, link.a)):
                self._borders.setdefault(groups.find(inside), []).append(Border(link, inside, outside))
        self._storage: dict[str, list[Source]] = {}
        for source in network.sources:
            if source.storage:
                self._storage.setdefault(groups.find(source.live), []).append(source)

    def of(self, node: str) -> str:
        """The name of the zone of a node."""
        return self._groups.find(node)

    def of_wire(self, wire: Wire) -> str:
        """The zone of a stretch."""
        return self._groups.find(wire.a)

    def borders(self, zone: str) -> list[Border]:
        """The devices at the edge of a zone, in the order built."""
        return self._borders.get(zone, [])

    def hides(self, zone: str) -> bool:
        """Whether part of a zone was not seen, so that a device may divide it."""
        return zone in self._unseen

    def batteries(self, zone: str) -> list[Source]:
        """Batteries and couplings that stand in a zone with no device before them."""
        return self._storage.get(zone, [])
