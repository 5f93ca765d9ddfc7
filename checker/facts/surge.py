"""Surge devices of the mains: whether the current they lead to earth passes a residual-current device on its way."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.elements import LIVE, Link, Wire
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, every

RESIDUAL = ("rcd", "rcbo")


@fact(
    "inlet",
    "surge_spares_residual",
    type="yes/no",
    says="What a surge device leads to earth passes no residual-current device that a surge trips; none where no surge "
    "device is reached.",
    method="walk along live conductors from the inlet, past devices that are said to be surge proof",
    source="IEC 60364-5-53, 534.4, 3 kA 8/20, 2019 (from memory)",
)
def surge_spares_residual(s: Subject) -> Any:
    items = s.facts.network.equipment.values()
    devices = [item for item in items if item.kind == "surge device"]
    anyhow = _reached(s, lambda told: True, unseen=True)
    devices = [item for item in devices if f"{item.name}:L" in anyhow]
    if not devices:
        return None
    sure = _reached(s, lambda told: told is True, unseen=False)
    perhaps = _reached(s, lambda told: isinstance(told, Unknown) or told is True, unseen=True)

    def spared(node: str) -> Truth:
        if node in sure:
            return True
        return Unknown("whether a surge trips a device before it is not told") if node in perhaps else False

    return every(spared(f"{item.name}:L") for item in devices)


def _reached(s: Subject, passes: Callable[[Any], bool], *, unseen: bool) -> set[str]:
    """Live nodes reached from the inlet; a residual-current device is passed as its surge withstand is told, a stretch
    that was not seen and may hide one only with `unseen`."""
    todo = [f"{s.id}:L"]
    seen = set(todo)
    while todo:
        for edge, far in s.facts.network.near.get(todo.pop(), ()):
            role = edge.conductor.role if isinstance(edge, Wire) else edge.pole
            if role != LIVE or far in seen or (isinstance(edge, Wire) and edge.gap is not None and not unseen):
                continue
            if isinstance(edge, Link) and edge.equipment.kind in RESIDUAL:
                told = s.read(edge.equipment, "surge proof")
                if not passes(False if told is None else told):
                    continue
            seen.add(far)
            todo.append(far)
    return seen
