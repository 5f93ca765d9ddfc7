"""A singly diagonally implicit Runge-Kutta method of third order for networks that store energy.

Made for stiff equations (R. Alexander, SIAM J. Numer. Anal. 14, 1977 [from memory]); its step is set by an embedded
second-order result. Within one stage a capacitor or an inductor is a conductance beside a constant current.
"""

from __future__ import annotations

from collections.abc import Sequence

from checker.circuit.dc_elements import Capacitor, Element, Flow, TwoPole
from checker.circuit.dc_islands import Islands
from checker.circuit.dc_newton import Equations, newton
from checker.circuit.dc_nodes import Nodes
from checker.circuit.dc_solution import NoSolution
from checker.circuit.dc_solve import begin_at
from checker.circuit.dc_stores import Piece, Store, frozen, initial

GAMMA = 0.43586652150845967
MOST_STEPS = 20_000


class _Companion(TwoPole):
    """A store within one stage of a step: a conductance beside a constant current."""

    __slots__ = ("amps", "initial_v", "siemens", "store")
    gives = True

    def __init__(self, store: Store) -> None:
        super().__init__(store.name, store.plus, store.minus)
        self.store = store
        self.initial_v = store.initial_v if isinstance(store, Capacitor) else 0.0
        self.siemens = 1.0
        self.amps = 0.0

    @property
    def nominal_v(self) -> float:
        return self.initial_v

    def flow(self, volts: float, share: float) -> Flow:
        return self.siemens * volts + self.amps, self.siemens

    def set(self, value: float, span: float) -> None:
        """Aim from `value` over `span` seconds."""
        if isinstance(self.store, Capacitor):
            self.siemens = self.store.farads / span
            self.amps = -self.siemens * value
        else:
            self.siemens = span / self.store.henries
            self.amps = value

    def rate(self, volts: float) -> float:
        """How fast the stored quantity changes (V/s or A/s)."""
        if isinstance(self.store, Capacitor):
            return self.flow(volts, 1.0)[0] / self.store.farads
        return volts / self.store.henries


_A21 = 0.5 * (1.0 - GAMMA)
_B1 = -(6.0 * GAMMA * GAMMA - 16.0 * GAMMA + 1.0) / 4.0
_B2 = (6.0 * GAMMA * GAMMA - 20.0 * GAMMA + 5.0) / 4.0
_STAGES = ((), (_A21,), (_B1, _B2))
_C2 = 0.5 * (1.0 + GAMMA)
_E2 = (0.5 - GAMMA) / (_C2 - GAMMA)  # the second-order result: weights 1 - e2 and e2 on the first two stages


def integrate(
    network: Sequence[Element], stores: Sequence[Store], end: float, ground: str, accuracy: float
) -> list[Piece] | NoSolution:
    """The stored quantities at every step, with their slopes, from 0 to `end` (s)."""
    companions = {store.name: _Companion(store) for store in stores}
    inside: list[Element] = [companions.get(element.name, element) for element in network]
    islands = Islands(inside, ground)
    nodes = Nodes(islands.alive)
    equations = Equations(islands.alive, nodes, dict.fromkeys(islands.references, 0.0))
    x = begin_at(equations, islands.alive, islands.references, None)
    moving = list(companions.values())
    time, values = 0.0, initial(stores)
    scale = [max(1.0, abs(value)) for value in values]
    slopes = _rates(network, stores, values, ground)
    if slopes is None:
        return NoSolution("the network cannot be solved at the start")
    pieces = [Piece(0.0, tuple(values), tuple(slopes))]
    step = end * 1e-5
    for _ in range(MOST_STEPS):
        if time >= end * (1.0 - 1e-12):
            return pieces
        step = min(step, end - time)
        done = _one_step(equations, moving, x, values, step)
        if done is None:
            step *= 0.25
            if step < end * 1e-13:
                break
            continue
        there, after, rates, errors = done
        scale = [max(size, abs(value)) for size, value in zip(scale, after, strict=True)]
        error = max((abs(one) / size for one, size in zip(errors, scale, strict=True)), default=0.0) / accuracy
        if error <= 1.0:
            time += step
            x, values = there, after
            pieces.append(Piece(time, tuple(values), tuple(rates)))
        step *= min(4.0, max(0.2, 0.9 * error ** (-1.0 / 3.0))) if error > 0.0 else 4.0
    return NoSolution("the course in time could not be followed in a bounded number of steps")


def _rates(
    network: Sequence[Element], stores: Sequence[Store], values: Sequence[float], ground: str
) -> list[float] | None:
    found = frozen(network, stores, values, ground)
    if isinstance(found, NoSolution):
        return None
    rates = []
    for store in stores:
        flow = found.flows.get(store.name)
        if flow is None or flow.amps is None:
            rates.append(0.0)
        else:
            rates.append(flow.amps / store.farads if isinstance(store, Capacitor) else flow.volts / store.henries)
    return rates


def _one_step(
    equations: Equations, moving: Sequence[_Companion], x: list[float], values: list[float], step: float
) -> tuple[list[float], list[float], list[float], list[float]] | None:
    """One step: unknowns and stored values after it, their rates, and the error of the second-order result."""
    span = GAMMA * step
    rates: list[list[float]] = []
    for weights in _STAGES:
        aims = list(values)
        for weight, past in zip(weights, rates, strict=True):
            aims = [aim + step * weight * rate for aim, rate in zip(aims, past, strict=True)]
        for one, aim in zip(moving, aims, strict=True):
            one.set(aim, span)
        x, good, _ = newton(equations, x, 1.0)
        if not good:
            return None
        rates.append([one.rate(_across(equations, x, one)) for one in moving])
    after = [aim + span * rate for aim, rate in zip(aims, rates[2], strict=True)]
    errors = [
        a - (v + step * ((1.0 - _E2) * first + _E2 * second))
        for a, v, first, second in zip(after, values, rates[0], rates[1], strict=True)
    ]
    return x, after, rates[2], errors


def _across(equations: Equations, x: list[float], one: TwoPole) -> float:
    (i, high), (j, low) = equations.pin[one.plus], equations.pin[one.minus]
    return (x[i] if i >= 0 else 0.0) + high - (x[j] if j >= 0 else 0.0) - low
