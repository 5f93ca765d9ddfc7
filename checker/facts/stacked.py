"""Batteries in series by a circuit of their own: the negative of one is joined to the positive of another."""

from __future__ import annotations

from checker.circuit.network import Network
from checker.design.model import Equipment
from checker.design.run import Port
from checker.quantities import Truth, Unknown, equal

BATTERIES = ("battery", "bank")


def below(network: Network, item: Equipment) -> list[tuple[Equipment, Truth]]:
    """Batteries on whose positive the negative of a battery stands, all the way down; unknown where a port is not told.

    A chain that runs into itself ends where it meets a battery again.
    """
    found: dict[str, tuple[Equipment, Truth]] = {}
    whole = item.base if item.kind == "battery" and item.base is not None and item.base.kind == "bank" else item
    todo = [whole]
    while todo:
        for under, surely in _next(network, todo.pop()):
            if under is not whole and under.name not in found:
                found[under.name] = (under, surely)
                todo.append(under)
    return list(found.values())


def _next(network: Network, item: Equipment) -> list[tuple[Equipment, Truth]]:
    found: list[tuple[Equipment, Truth]] = []
    for circuit in network.circuits:
        for end in circuit.ends:
            for near, far in ((circuit.start, end), (end, circuit.start)):
                if near.port != "-" or _battery(network, near) is not item:
                    continue
                other = _battery(network, far)
                if other is not None and other is not item:
                    surely = _at_positive(far, equal(circuit.value("duty"), "bonding") is True)
                    found.extend([(other, surely)] if surely is not False else [])
    return found


def _battery(network: Network, port: Port) -> Equipment | None:
    """The battery or bank at a port, or the bank whose units the bar at the port joins."""
    item = network.equipment.get(port.equipment)
    if item is None or item.kind in BATTERIES:
        return item
    joined = (one for one in network.equipment.values() if one.kind == "bank" and one.says("joined by", port.equipment))
    return next(joined, None)


def _at_positive(port: Port, bonding: bool) -> Truth:
    """A battery named without a pole means its positive, but nobody bonds that: there the pole is not told."""
    if port.port is None and bonding:
        return Unknown(f"which pole of {port.equipment} is meant is not told")
    return port.port in (None, "+")
