"""What a load sees while another on the same feeder starts."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.least_fault import ASSUMED
from checker.facts.load_voltage import STARTS, Held, circuits_of, held_for_start, held_in_modes, node_of
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Unknown, add, least, multiply, show, subtract


@fact(
    "load",
    "voltage_beside_start",
    unit="V",
    says="Lowest voltage at its terminals while another load on its feeder starts; none where no other does.",
    method="held voltage less start current times battery and shared resistance, less its own drop and its feeders'",
    source="Ohm's law; battery 10 % charged with 1.5 times its stated resistance: common practice, no source",
)
def voltage_beside_start(s: Subject) -> Any:
    node, own = node_of(s), circuits_of(s)
    if node is None or isinstance(own, Unknown):
        return None
    found: list[Number] = []
    alike: set[tuple[str, ...]] = set()
    for other, theirs in _starting(s.facts):
        if other.id == s.id:
            continue
        shared = _shared(own, theirs)
        if not shared:
            continue
        current = s.use(f"{other.item.path}.start.current", other.item.get("start.current"), "A")
        if isinstance(current, Unknown):
            found.append(Unknown(f"the start current of {other.id} is not told"))
            continue
        key = (repr(current), *(circuit.id for circuit in shared))
        if key in alike:
            continue  # as hard a start on the same feeders lowers it as far
        alike.add(key)
        for held in held_in_modes(s.facts, node):
            one = held_for_start(held, current)
            found.append(one if isinstance(one, Unknown) else _left(s, one, current, shared, other))
    if found and any(not isinstance(one, Unknown) for one in found):
        s.note(ASSUMED.__str__)
    return least(found) if found else None


def _starting(facts: Facts) -> list[tuple[Subject, list[Subject]]]:
    """The loads that start with more than they run on, or may, with their circuits; found once."""
    kept: list[tuple[Subject, list[Subject]]] | None = facts.store.get("starting loads")
    if kept is None:
        kept = facts.store["starting loads"] = []
        for load in facts.subjects("load"):
            if not load.item.allows("start.current"):
                continue
            told = not isinstance(load.item.value("start.current"), Unknown)
            ends = circuits_of(load)
            if not isinstance(ends, Unknown) and (told or load.item.kind in STARTS):
                kept.append((load, ends))
    return kept


def _shared(own: list[Subject], theirs: list[Subject]) -> list[Subject]:
    """The circuits that both hang on, feeders included."""
    mine = {one.id: one for circuit in own for one in (circuit, *circuit.fed_by)}
    other = {one.id for circuit in theirs for one in (circuit, *circuit.fed_by)}
    return [one for id, one in mine.items() if id in other]


def _left(s: Subject, held: Held, current: Number, shared: list[Subject], other: Subject) -> Number:
    own = circuits_of(s)
    ohms = held.ohms
    for circuit in shared:
        ohms = add(ohms, circuit.loop_resistance)
    lost: Number = multiply(current, ohms)
    if isinstance(own, list):
        lost = add(lost, own[0].drop)
    left = subtract(held.low, lost)
    s.note(lambda: f"mode {held.mode}: {show(held.low, 'V')} held; {other.id} starts with {show(current, 'A')}")
    return left
