"""In-rush through devices: what charging the capacitors of an inverter lets through them, and what they stand."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.facts.bank import home
from checker.facts.catalogue import fact
from checker.facts.clearing import MECHANICAL, SOURCE, characteristics
from checker.facts.selectivity import MELTING_SHARE, melting_energy
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import Number, Range, Unknown, between, greatest


def _in_the_way(s: Subject, converter: Subject) -> bool:
    """Whether no battery reaches a converter without the device."""
    network = s.facts.network
    homes = [home(s.facts, bank.item) for bank in s.facts.subjects("bank")]

    def passes(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and edge.equipment is s.item)

    node = f"{converter.id}:dc+"
    return node in joined(network, homes) and node not in joined(network, homes, passes)


@fact(
    "device",
    "inrush_let_through",
    unit="A2s",
    says="I² t of the hardest charging of empty capacitors through it: by a switch without pre-charge in the same way; "
    "none where every one charges them gently.",
    method="switch.closing_let_through of the switches that close onto an inverter which hangs on the device",
    source="resistance, inductance and capacitance in series (circuit theory)",
)
@where_it_stands
def inrush_let_through(s: Subject) -> Any:
    worst: Number = None
    for switch in s.facts.subjects("switch"):
        behind = switch.capacitors_behind
        if isinstance(behind, Unknown):
            return behind
        if not any(_in_the_way(s, one) for one in behind):
            continue
        word = switch.precharge
        if isinstance(word, Unknown):
            return word
        if word is None:
            energy = switch.closing_let_through
            worst = energy if worst is None or isinstance(energy, Unknown) else greatest(worst, energy)
    return worst


@fact(
    "device",
    "inrush_withstand",
    unit="A2s",
    says="I² t of a very short current that it stands: at least what surely does not melt it, at most what surely "
    "opens it.",
    method="a quarter of the energy at the last published point of its lower edge, up to device.let_through; of a "
    "breaker nothing is known",
    source=f"{SOURCE}; the quarter: common practice, no source",
)
@where_it_stands
def inrush_withstand(s: Subject) -> Any:
    if s.item.kind in MECHANICAL:
        return Unknown(f"whether {s.id} trips on a current of less than a millisecond is not published for its family")
    held = characteristics(s)
    if isinstance(held, Unknown):
        return held
    surely = min(melting_energy(one) for one in held)
    s.note(lambda: f"{MELTING_SHARE:g} of the last point: {surely:.4g} A²s")
    passed = s.let_through
    most = passed.high if isinstance(passed, Range) else passed
    return between(surely, max(surely, most)) if isinstance(most, float) else Range(surely, float("inf"))
