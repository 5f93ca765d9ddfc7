"""Whether one fault takes every lamp of the living quarters."""

from __future__ import annotations

from collections.abc import Iterator

from checker.circuit.elements import Edge, Wire
from checker.circuit.supply import Passes, passed, storage_nodes, supplied, ways
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.contacts import contacts
from checker.facts.darkness import live_node
from checker.facts.essential import own_cell_lasts
from checker.facts.mains import tell
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth, Unknown, both, some

FAILING = (
    "fuse",
    "breaker",
    "rcbo",
    "relay",
    "combiner",
    "switch",
    "connector",
    "dc converter",
    "inverter",
    "inverter-charger",
)


@fact(
    "design",
    "lamps_lost_by_one_fault",
    type="yes/no",
    says="One fuse, relay, switch, connector or converter takes all lamps of the living quarters at once.",
    method="each taken out in turn; walk from every battery, else from every source, to each lamp, road lamps left "
    "out; what a hand works counts as closed, what a signal works stands as in each mode",
)
def lamps_lost_by_one_fault(s: Subject) -> Truth:
    lamps = [load for load in s.facts.subjects("load") if load.item.kind == "lamp" and not _road(load.item)]
    if not lamps:
        return Unknown("no lamp of the living quarters is described")
    own = some([_own_cell(load) for load in lamps])
    if own is True:
        return False
    nodes = [node for load in lamps if (node := live_node(s.facts, load.item)) is not None]
    lost = some([*(_lost(s, nodes, sure, perhaps) for sure, perhaps in _standings(s.facts)), _unseen(s, nodes)])
    return both(lost, True if own is False else own) if lost is not False else False


def _own_cell(s: Subject) -> Truth:
    value = s.own_cell
    return value if isinstance(value, Unknown) else False if value is None else own_cell_lasts(s)


def _road(item: Equipment) -> bool:
    purpose = item.value("purpose") if item.allows("purpose") else None
    return isinstance(purpose, str) and purpose == "road lamps"


def _standings(facts: Facts) -> Iterator[tuple[Passes, Passes]]:
    """What conducts for certain and what may: with every contact closed, then with relays as in each mode."""
    yield _all, _all
    for mode in facts.design.modes.values():
        state = contacts(facts, mode)
        yield (
            lambda edge, state=state: _by_hand(edge) is True or state.surely(edge),  # type: ignore[misc]
            lambda edge, state=state: _by_hand(edge) is not False or state.perhaps(edge),  # type: ignore[misc]
        )


def _all(edge: Edge) -> bool:
    return True


def _by_hand(edge: Edge) -> Truth:
    """Whether a hand can close it, or nothing is there to close: a lamp behind a switch that is open is not lost."""
    if isinstance(edge, Wire) or edge.when == "hand":
        return True
    item = edge.equipment
    worked = item.value("operated") if item.allows("operated") else ""
    if isinstance(worked, Unknown):
        return worked if item.has("operated") else False
    return worked in ("by hand", "remote")


def _starts(facts: Facts) -> list[str]:
    network = facts.network
    return list(storage_nodes(network)) or list(dict.fromkeys(source.live for source in network.sources))


def _unseen(s: Subject, nodes: list[str]) -> Truth:
    """Unknown where all lamps hang on one stretch that nobody saw, which may hide a fuse."""
    network = s.facts.network
    for wire in (one for one in network.wires() if one.gap is not None):
        left = supplied(network, _starts(s.facts), lambda edge, hiding=wire: edge is not hiding)  # type: ignore[misc]
        if not any(node in left for node in nodes):
            return Unknown(
                f"all lamps hang on {wire.conductor.circuit.name}, of which part was not seen and may hide a fuse"
            )
    return False


def _lost(s: Subject, nodes: list[str], sure: Passes, perhaps: Passes) -> Truth:
    """Whether one piece, missing, leaves no lamp lit of those that were."""
    network, starts = s.facts.network, _starts(s.facts)
    reached = ways(network, starts, sure)
    lit = next((node for node in nodes if node in reached), None)
    if lit is None:
        most = supplied(network, starts, perhaps)
        return Unknown("whether a lamp is lit is not known") if any(node in most for node in nodes) else False
    on_the_way = passed(reached, lit)
    found: Truth = False
    of_boards = [way.name for item in network.equipment.values() for way in item.ways]
    for name in [*(item.name for item in network.equipment.values() if item.kind in FAILING), *of_boards]:
        if name not in on_the_way or any(node in supplied(network, starts, sure, {name}) for node in nodes):
            continue  # a lamp stays lit
        if not any(node in supplied(network, starts, perhaps, {name}) for node in nodes):
            tell(s, f"without {name} no lamp is left")
            return True
        found = Unknown(f"whether a lamp has a way past {name} is not known")
    return found
