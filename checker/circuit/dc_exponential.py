"""The closed form of a network with one capacitor: pieces of exponentials or straight lines.

It holds beside resistances, electromotive forces, constant currents and current-limited sources. Each piece ends where
a source changes how it works; within one, the capacitor sees one resistance.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, inf, log
from typing import NamedTuple

from checker.circuit.dc_elements import Branch, Capacitor, CurrentLoad, Element, Emf, ResistanceLoad, Supply
from checker.circuit.dc_solution import NoSolution
from checker.circuit.dc_stores import Piece, frozen

MOST_PIECES = 64
NUDGES_V = (1e-2, 1e-4, 1e-6)


def is_piecewise_linear(network: Sequence[Element]) -> bool:
    """Whether every element is straight, or straight between bends."""
    kinds = Branch | Emf | ResistanceLoad | CurrentLoad | Capacitor
    return all(
        isinstance(element, kinds) or (isinstance(element, Supply) and element.watts == inf) for element in network
    )


class Seen(NamedTuple):
    """What a capacitor at some voltage sees: the current into it (A), and how each source works."""

    amps: float
    states: tuple[str, ...]


def _see(network: Sequence[Element], store: Capacitor, volts: float, ground: str) -> Seen | None:
    found = frozen(network, [store], [volts], ground)
    if isinstance(found, NoSolution):
        return None
    amps = found.flows[store.name].amps
    states = tuple(found.flows[e.name].state for e in network if isinstance(e, Supply) and e.name in found.flows)
    return None if amps is None else Seen(amps, states)


def closed_form(network: Sequence[Element], store: Capacitor, end: float, ground: str) -> list[Piece] | None:
    """The pieces in closed form; None when some moment cannot be solved."""
    pieces: list[Piece] = []
    time, volts = 0.0, store.initial_v
    while len(pieces) < MOST_PIECES:
        here = _see(network, store, volts, ground)
        if here is None:
            return None
        ahead = 1.0 if here.amps > 0.0 else -1.0
        slope = None
        for nudge in NUDGES_V:
            near = _see(network, store, volts + nudge * ahead, ground)
            if near is not None and near.states == here.states:
                slope = (near.amps - here.amps) / (nudge * ahead)  # S, not above 0 in such a network
                break
        if slope is None:
            return None
        if abs(slope) < 1e-9:
            tau, final = inf, inf * ahead
        else:
            tau, final = -store.farads / slope, volts - here.amps / slope
        if tau <= 0.0:
            return None
        pieces.append(Piece(time, (volts,), (here.amps / store.farads,), final, tau))
        if here.amps == 0.0:
            return pieces
        reach = value_at(pieces[-1], end)
        edge = _edge(network, store, (volts, reach), here.states, ground)
        if edge is None:
            return pieces
        time += _time_to(pieces[-1], edge)
        volts = edge
    return None


def value_at(piece: Piece, time: float) -> float:
    """Voltage of the capacitor at a time (s) within a piece."""
    past = time - piece.start
    if piece.tau == inf:
        return piece.value[0] + piece.slope[0] * past
    return piece.final + (piece.value[0] - piece.final) * exp(-past / piece.tau)


def _time_to(piece: Piece, volts: float) -> float:
    if piece.tau == inf:
        return (volts - piece.value[0]) / piece.slope[0]
    return -piece.tau * log((volts - piece.final) / (piece.value[0] - piece.final))


def _edge(
    network: Sequence[Element], store: Capacitor, span: tuple[float, float], states: tuple[str, ...], ground: str
) -> float | None:
    """The first voltage in a span at which a source works otherwise; None when none does up to its end.

    A source passes through its ways of working in one order, so that one comparison at the end of the span is enough.
    """
    low, high = span
    last = _see(network, store, high, ground)
    if last is None or last.states == states:
        return None
    for _ in range(60):
        middle = 0.5 * (low + high)
        seen = _see(network, store, middle, ground)
        if seen is not None and seen.states == states:
            low = middle
        else:
            high = middle
    return high
