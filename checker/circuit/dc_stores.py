"""What stores energy in a direct-current network, and the network frozen at one moment."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf
from typing import NamedTuple

from checker.circuit.dc_elements import Capacitor, CurrentLoad, Element, Emf, Inductor
from checker.circuit.dc_islands import GROUND
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import solve

Store = Capacitor | Inductor


class HeldCurrent(CurrentLoad):
    """The current of an inductor at one moment: what lies behind it is alive."""

    __slots__ = ()
    gives = True


class Piece(NamedTuple):
    """From `start` (s) on: `value` and `slope` at the start; towards `final` with `tau` (s) where that is finite."""

    start: float
    value: tuple[float, ...]
    slope: tuple[float, ...]
    final: float = inf
    tau: float = inf


def frozen(
    network: Sequence[Element], stores: Sequence[Store], values: Sequence[float], ground: str = GROUND
) -> Solution | NoSolution:
    """The network at one moment: each capacitor a fixed voltage, each inductor a fixed current."""
    held: dict[str, Element] = {}
    for store, value in zip(stores, values, strict=True):
        if isinstance(store, Capacitor):
            held[store.name] = Emf(store.name, store.plus, store.minus, value, 0.0)
        else:
            held[store.name] = HeldCurrent(store.name, store.plus, store.minus, value)
    return solve([held.get(element.name, element) for element in network], ground=ground)


def initial(stores: Sequence[Store]) -> list[float]:
    """The values they start at, V or A."""
    return [one.initial_v if isinstance(one, Capacitor) else one.initial_a for one in stores]
