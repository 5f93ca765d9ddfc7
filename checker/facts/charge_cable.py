"""What comes together in a cable when every charger works at once, whether a mode joins them or not."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Edge, Link
from checker.circuit.limits import NOTHING, live_forest
from checker.circuit.sweep import Arrivals, Forest, Rules
from checker.facts.bank import home, loose_bank
from checker.facts.catalogue import fact
from checker.facts.charging import Output, charge_current, is_both_ways, outputs
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import may_be_fed
from checker.quantities import Number, add, equal, greatest, perhaps


def _feeds_loads(facts: Facts, output: Output) -> bool:
    """The low side of a converter both ways, which holds a bus and charges nothing while it works the other way."""
    item = output.source.equipment
    return item.kind == "dc converter" and output.source.port == "low" and is_both_ways(facts, item)


def _gives(facts: Facts) -> dict[str, Number]:
    """Live node of a charger -> what it charges with at most (A)."""
    found: dict[str, Number] = {}
    for output in outputs(facts):
        subject = facts.of("converter", output.source.equipment)
        if output.banks and subject is not None and not _feeds_loads(facts, output):
            found[output.source.live] = add(found.get(output.source.live, 0.0), charge_current(subject, output))
    return found


def _swept(forest: Forest, values: dict[str, Number], *, forward: bool) -> Arrivals[Number]:
    """What arrives at each end of each edge: along with the current, or what asks for it."""

    def through(edge: Edge, node: str, flow: Number) -> Number:
        against = isinstance(edge, Link) and edge.one_way and node == (edge.b if forward else edge.a)
        return NOTHING if against else flow

    return forest.sweep(Rules[Number](NOTHING, lambda node: values.get(node, NOTHING), add, through))


def _all_at_once(facts: Facts) -> dict[str, Number]:
    """Id of a live conductor -> current on the way to batteries with all chargers at work (A)."""
    found: dict[str, Number] | None = facts.store.get("charging currents")
    if found is not None:
        return found
    found = facts.store["charging currents"] = {}
    forest = live_forest(facts.network, {})
    stores = [(home(facts, bank.item), equal(bank.purpose, "starting")) for bank in facts.subjects("bank")]
    charging = _swept(forest, _gives(facts), forward=True)
    behind = _swept(forest, {node: 1.0 for node, _ in stores}, forward=False)
    shares = _swept(forest, {node: 1.0 for node, starting in stores if starting is False}, forward=False)
    may_share = _swept(forest, {node: 1.0 for node, starting in stores if starting is not True}, forward=False)
    for conductor in facts.network.conductors:
        most: list[Number] = [0.0]
        for wire in conductor.wires if conductor.role == LIVE else ():
            a, b = (id(wire), wire.a), (id(wire), wire.b)
            if a not in charging or id(wire) in forest.ring_edges:
                continue
            for into, out in ((a, b), (b, a)):
                # Another battery on the side of the chargers takes its share, and nobody knows how much.
                if behind[out] != 0.0 and shares[into] == 0.0:
                    most.append(charging[into] if may_share[into] == 0.0 else perhaps(charging[into]))
        found[conductor.id] = greatest(most)
    return found


@fact(
    "conductor",
    "charging_sum",
    unit="A",
    says="Current that it carries to batteries when all chargers behind it work at once.",
    method="settings, never above the rating, of every charger on one side with a battery on the other and none but a "
    "starting battery on its own; every contact closed; the low side of a converter both ways, and cables beside each "
    "other, left out",
)
def charging_sum(s: Subject) -> Any:
    if s.item.role != LIVE:
        return 0.0
    for unseen in (may_be_fed(s.facts, s.id, s.item.start), loose_bank(s.facts)):
        if unseen is not None:
            return unseen
    return _all_at_once(s.facts).get(s.item.id, 0.0)
