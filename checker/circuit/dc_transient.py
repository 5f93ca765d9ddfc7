"""How a direct-current network with capacitors and inductors moves in time, from their stated initial values.

Where the closed form holds it is used (`dc_exponential`), else a stiff integrator (`dc_stiff`). Between steps of the
latter the stored quantities follow a cubic; all other voltages and currents are solved from them.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from checker.circuit.dc_elements import Capacitor, Element, Inductor
from checker.circuit.dc_exponential import closed_form, is_piecewise_linear, value_at
from checker.circuit.dc_islands import GROUND
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_stiff import integrate
from checker.circuit.dc_stores import Piece, Store, frozen, initial


class Course:
    """What happened from 0 to `end` seconds: the stored quantities as pieces, everything else solved from them."""

    __slots__ = ("_ground", "_network", "_starts", "closed_form", "end", "pieces", "stores")

    def __init__(
        self,
        network: Sequence[Element],
        stores: Sequence[Store],
        pieces: list[Piece],
        end: float,
        ground: str,
        closed_form: bool,
    ) -> None:
        self._network = network
        self._ground = ground
        self.stores = stores
        self.pieces = pieces
        self.end = end
        self.closed_form = closed_form
        self._starts = [piece.start for piece in pieces]

    def stored(self, time: float) -> tuple[float, ...]:
        """Voltages of capacitors and currents of inductors at a time (s)."""
        at = max(0, bisect_right(self._starts, time) - 1)
        piece = self.pieces[at]
        past = time - piece.start
        if self.closed_form:
            return (value_at(piece, time),)
        if at + 1 == len(self.pieces):
            return piece.value
        return _cubic(piece, self.pieces[at + 1], past)

    def point(self, time: float) -> Solution | NoSolution:
        """Every voltage and current at a time (s)."""
        return frozen(self._network, self.stores, self.stored(time), self._ground)


def run(network: Sequence[Element], end: float, *, ground: str = GROUND, accuracy: float = 1e-6) -> Course | NoSolution:
    """Follow a network from its initial values to `end` (s). `accuracy` is the error allowed in each step, relative."""
    stores: list[Store] = [element for element in network if isinstance(element, Capacitor | Inductor)]
    first = frozen(network, stores, initial(stores), ground)
    if isinstance(first, NoSolution):
        return first
    if len(stores) == 1 and isinstance(stores[0], Capacitor) and is_piecewise_linear(network):
        found = closed_form(network, stores[0], end, ground)
        if found is not None:
            return Course(network, stores, found, end, ground, True)
    integrated = integrate(network, stores, end, ground, accuracy)
    if isinstance(integrated, NoSolution):
        return integrated
    return Course(network, stores, integrated, end, ground, False)


def _cubic(here: Piece, there: Piece, past: float) -> tuple[float, ...]:
    span = there.start - here.start
    s = past / span
    a, b, c, d = (1 + 2 * s) * (1 - s) ** 2, s * (1 - s) ** 2 * span, s * s * (3 - 2 * s), s * s * (s - 1) * span
    return tuple(
        a * v0 + b * m0 + c * v1 + d * m1
        for v0, m0, v1, m1 in zip(here.value, here.slope, there.value, there.slope, strict=True)
    )
