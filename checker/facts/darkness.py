"""What a battery supplies in each mode, and what goes dark when a piece of equipment is taken away.

Where a contact, a signal or a stretch of run is not known, the walk is made twice: with what conducts for certain and
with what may conduct. Dark for certain is what the first supplies and the second, without the piece, does not.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple

from checker.circuit.elements import Edge, Wire
from checker.circuit.supply import passed, storage_nodes, supplied, ways
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.contacts import contacts, signal_state
from checker.facts.subject import Facts
from checker.quantities import UNKNOWN, Truth, Unknown

Reached = dict[str, tuple[str, str]]


class Standing(NamedTuple):
    """How contacts stand and which converters rest: `surely` what conducts for certain, `perhaps` what may conduct.

    `decided` says that the two are the same.
    """

    surely: Callable[[Edge], bool]
    resting_perhaps: frozenset[str]
    perhaps: Callable[[Edge], bool]
    resting_surely: frozenset[str]
    decided: bool


def standings(facts: Facts) -> list[Standing]:
    """All contacts closed and all converters awake, then as in each mode; worked out once."""
    found: list[Standing] | None = facts.store.get("standings")
    if found is None:
        modes = facts.design.modes.values()
        found = facts.store["standings"] = [_all_closed(facts), *(_in_mode(facts, mode) for mode in modes)]
    return found


def _all_closed(facts: Facts) -> Standing:
    seen = all(wire.gap is None for conductor in facts.network.conductors for wire in conductor.wires)
    return Standing(_is_seen, frozenset(), lambda edge: True, frozenset(), seen)


def _is_seen(edge: Edge) -> bool:
    return not (isinstance(edge, Wire) and edge.gap is not None)


def _in_mode(facts: Facts, mode: Item) -> Standing:
    state = contacts(facts, mode)
    awake = {
        item.name: _enabled(facts, item, mode)
        for item in facts.network.equipment.values()
        if item.kind == "dc converter"
    }
    perhaps = frozenset(name for name, answer in awake.items() if answer is not True)
    surely = frozenset(name for name, answer in awake.items() if answer is False)
    edges = [edge for near in facts.network.near.values() for edge, _ in near]
    decided = perhaps == surely and all(isinstance(state.closed(edge), bool) for edge in edges)
    return Standing(state.surely, perhaps, state.perhaps, surely, decided)


def _enabled(facts: Facts, item: Equipment, mode: Item) -> Truth:
    """Whether a converter may run in a mode: no signal is asked for unless the file speaks of one."""
    name = item.value("enabled by")
    if isinstance(name, str):
        return signal_state(facts, name, mode)
    return UNKNOWN if isinstance(name, Unknown) and item.has("enabled by") else True


def reaches(facts: Facts, number: int, most: bool) -> Reached:
    """A way from a battery to every node that one supplies in a standing, for certain or at most; worked out once."""
    held: dict[tuple[int, bool], Reached] = facts.store.setdefault("reaches", {})
    standing = standings(facts)[number]
    key = (number, most and not standing.decided)
    if key not in held:
        passes, resting = _side(standing, key[1])
        held[key] = ways(facts.network, storage_nodes(facts.network), passes, resting)
    return held[key]


def left_without(facts: Facts, number: int, most: bool, names: tuple[str, ...]) -> set[str]:
    """Nodes that batteries still supply in a standing without some equipment; worked out once for each."""
    held: dict[tuple[int, bool, tuple[str, ...]], set[str]] = facts.store.setdefault("left without", {})
    standing = standings(facts)[number]
    key = (number, most and not standing.decided, names)
    if key not in held:
        passes, resting = _side(standing, key[1])
        held[key] = set(supplied(facts.network, storage_nodes(facts.network), passes, resting.union(names)))
    return held[key]


def _side(standing: Standing, most: bool) -> tuple[Callable[[Edge], bool], frozenset[str]]:
    if most:
        return standing.perhaps, standing.resting_surely
    return standing.surely, standing.resting_perhaps


def goes_dark(facts: Facts, node: str, names: tuple[str, ...]) -> Truth:
    """Whether a node that a battery supplies is supplied no more without some equipment, in some mode."""
    answer: Truth = False
    for number in range(len(standings(facts))):
        dark = _dark_in(facts, number, node, names)
        if dark is True:
            return True
        if dark is not False:
            answer = dark
    return answer


def _on_the_way(facts: Facts, number: int, node: str) -> set[str]:
    """The equipment on one certain way to a node; every bank in turn is asked for the same node."""
    kept: dict[tuple[int, str], set[str]] = facts.store.setdefault("on the way", {})
    if (number, node) not in kept:
        kept[number, node] = passed(reaches(facts, number, most=False), node)
    return kept[number, node]


def _dark_in(facts: Facts, number: int, node: str, names: tuple[str, ...]) -> Truth:
    certain = reaches(facts, number, most=False)
    if node in certain and not _on_the_way(facts, number, node).intersection(names):
        return False
    if node not in certain and node not in reaches(facts, number, most=True):
        return False
    if node in left_without(facts, number, False, names):
        return False
    if node in certain and node not in left_without(facts, number, True, names):
        return True
    return UNKNOWN


def darkeners(facts: Facts, node: str, names: Iterable[str]) -> tuple[list[str], bool]:
    """Those of `names` without which a node goes dark for certain; and whether others perhaps leave it dark."""
    found, perhaps = [], False
    for name in names:
        dark = goes_dark(facts, node, (name,))
        if dark is True:
            found.append(name)
        elif dark is not False:
            perhaps = True
    return found, perhaps


def live_node(facts: Facts, item: Equipment) -> str | None:
    """The live terminal at which a load is connected."""
    return next((f"{item.name}:{pole}" for pole in ("+", "L") if f"{item.name}:{pole}" in facts.network.near), None)
