"""The design as it is fitted now: what is planned for later is left out, and what only leads to it.

A place may be kept for equipment, and a cable laid ready for it, long before it comes. Rules and the graph pass such
entries by; the file keeps them, and drawings may show them.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from checker.design.given import Given
from checker.design.item import Item
from checker.design.model import Circuit, Design
from checker.design.run import Path, Through


def is_later(item: Item) -> bool:
    """Whether the writer says that something is not fitted yet."""
    return item.allows("fitted") and item.says("fitted", "later")


def fitted_now(design: Design) -> Design:
    """The design without equipment and circuits that are `fitted: later`; the same one when there are none.

    A circuit that starts at something planned, or ends at nothing else, is planned as well. Where a planned device
    stands in the run of a circuit that is fitted now, the run passes on without it.
    """
    planned = {item.name for item in design.equipment.values() if is_later(item)}
    ready = {circuit.name for circuit in design.circuits.values() if _is_ready(circuit, planned)}
    if not planned and not ready:
        return design
    planned |= {item.name for item in design.equipment.values() if item.inline_of in ready}
    parts: dict[str, Any] = {name: getattr(design, name) for name in Design.__slots__}
    parts["equipment"] = {name: item for name, item in design.equipment.items() if name not in planned}
    circuits = {name: one for name, one in design.circuits.items() if name not in ready}
    parts["circuits"] = {name: _without(one, planned) for name, one in circuits.items()}
    parts["looms"] = {name: _loom(one, ready) for name, one in design.looms.items()}
    return Design(**parts)


def _is_ready(circuit: Circuit, planned: set[str]) -> bool:
    """Whether a circuit waits for something: it is planned itself, or what it comes from or leads to is."""
    if is_later(circuit) or circuit.start.equipment in planned:
        return True
    if all(port.equipment in planned for port in circuit.ends):
        return True
    return any(path.to is not None and path.to.equipment in planned for path in (circuit.returns, circuit.earth))


def _without(circuit: Circuit, planned: set[str]) -> Circuit:
    names = {port.equipment for port in circuit.ends}
    paths = (circuit.run, circuit.returns.run, circuit.earth.run)
    names.update(step.equipment for run in paths for step in run if isinstance(step, Through))
    if not planned.intersection(names):
        return circuit
    return Circuit(
        circuit.name,
        circuit.vocabulary,
        circuit.where,
        circuit.path,
        dict(circuit.written()),
        start=circuit.start,
        ends=tuple(port for port in circuit.ends if port.equipment not in planned),
        run=_run(circuit.run, planned),
        cable=circuit.cable,
        cable_where=circuit.cable_where,
        cores=circuit.cores,
        returns=_path(circuit.returns, planned),
        earth=_path(circuit.earth, planned),
        terminations=circuit.terminations,
    )


def _run(run: tuple[Any, ...], planned: set[str]) -> tuple[Any, ...]:
    return tuple(step for step in run if not (isinstance(step, Through) and step.equipment in planned))


def _path(path: Path, planned: set[str]) -> Path:
    return path._replace(run=_run(path.run, planned))


def _loom(loom: Item, ready: set[str]) -> Item:
    """A bundle with the circuits that lie in it now."""
    given: Mapping[str, Given] = dict(loom.written())
    carries = given.get("carries")
    if carries is None or not isinstance(carries.value, tuple) or not ready.intersection(carries.value):
        return loom
    kept = tuple(name for name in carries.value if name not in ready)
    return Item(
        loom.name, loom.vocabulary, loom.where, loom.path,
        {**given, "carries": Given(kept, carries.where, carries.basis, carries.text)},
    )  # fmt: skip
