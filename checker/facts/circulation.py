"""Converters in a ring: what one gives, another brings back to its input, and the losses empty the battery."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.charging import outputs_of
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Range, Truth, Unknown, either, every, greater, some

OTHER = {"low": "high", "high": "low"}


class Way(NamedTuple):
    """One direction of a converter: live nodes that its output reaches, its input node."""

    item: Equipment
    out: str
    reached: frozenset[str]
    enters: str


def _ways(facts: Facts) -> list[Way]:
    found: list[Way] | None = facts.store.get("ways of converters")
    if found is None:
        found = facts.store["ways of converters"] = []
        for item in facts.network.equipment.values():
            if item.kind == "dc converter":
                for one in outputs_of(facts, item):
                    out = one.source.port
                    near = frozenset(joined(facts.network, [one.source.live]))
                    found.append(Way(item, out, near, f"{item.name}:{OTHER.get(out, 'low')}+"))
    return found


def _rings(s: Subject) -> list[tuple[Way, ...]]:
    """The rings through a converter, each converter at most once in one; bounded by their number."""
    ways = _ways(s.facts)
    found: list[tuple[Way, ...]] = []

    def go(path: tuple[Way, ...]) -> None:
        last = path[-1]
        if path[0].enters in last.reached and len(path) > 1:
            found.append(path)
            return
        for one in ways:
            if one.enters in last.reached and all(one.item is not before.item for before in path):
                go((*path, one))

    for way in ways:
        if way.item is s.item:
            go((way,))
    return found


@fact(
    "converter",
    "in_a_ring",
    type="yes/no",
    says="What a dc converter gives can reach its own input again through other converters.",
    method="graph, every contact closed",
)
def in_a_ring(s: Subject) -> bool:
    return s.item.kind == "dc converter" and bool(_rings(s))


@fact(
    "converter",
    "ring_stops",
    type="yes/no",
    says="In every such ring a converter waits for a signal, or stops above what the one before it holds.",
    method="`enabled by` or `wakes by`, or its low stop above the feeding or charging voltage of the one before",
)
def ring_stops(s: Subject) -> Truth:
    return every([some([_waits(s, ring, n) for n in range(len(ring))]) for ring in _rings(s)])


def _waits(s: Subject, ring: tuple[Way, ...], n: int) -> Truth:
    item, before = ring[n].item, ring[n - 1]
    signals: list[Truth] = []
    for key in ("enabled by", "wakes by"):
        told = s.read(item, key) if item.allows(key) else None
        if isinstance(told, Unknown):
            signals.append(told if item.has(key) else False)
        else:
            signals.append(isinstance(told, str))
    keys = ("settings.feed voltage", "settings.charge voltage") if before.out == "low" else ("settings.charge voltage",)
    stop = _told(s, item, ("settings.holds low above", "settings.low stop"))
    return either(some(signals), False if stop is None else greater(stop, _told(s, before.item, keys)))


def _told(s: Subject, item: Equipment, keys: tuple[str, ...]) -> Any:
    for key in keys:
        value = s.read(item, key) if item.allows(key) else UNKNOWN
        if value is None or isinstance(value, float | Range) or (isinstance(value, Unknown) and item.has(key)):
            return value
    return Unknown(f"at which voltage {item.name} stops or holds is not told")
