"""Empty capacitors of inverters, and the switches and breakers that close a battery onto them."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.facts.bank import home, loose_bank, stands_unseen
from checker.facts.catalogue import fact
from checker.facts.converter import INVERTERS
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import Unknown

METHOD = "graph: without it no battery reaches their battery terminals; one told to have a soft start charges its own"


@fact("switch", "capacitors_behind", of="converter", type="list", method=METHOD,
      says="The inverters whose empty capacitors are charged when it closes onto a battery.")  # fmt: skip
@where_it_stands
def capacitors_behind(s: Subject) -> Any:
    return _behind(s)


@fact("device", "capacitors_behind", of="converter", type="list", method=METHOD,
      says="The inverters whose empty capacitors are charged when it closes onto a battery.")  # fmt: skip
@where_it_stands
def device_capacitors_behind(s: Subject) -> Any:
    return _behind(s)


@fact("device", "precharge", words=("built in", "by hand", "separate"),
      says="How capacitors behind a breaker are charged first; none for what is no breaker.")  # fmt: skip
def device_precharge(s: Subject) -> Any:
    return s.read(s.item, "precharge") if s.item.allows("precharge") else None


def _behind(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    homes = [home(s.facts, bank.item) for bank in s.facts.subjects("bank")]
    network = s.facts.network
    if stands_unseen(s.facts, s.item):
        return Unknown(f"{s.id} stands in no run that was seen")

    def passes(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and edge.equipment is s.item)

    closed, opened = joined(network, homes), joined(network, homes, passes)
    found = []
    for converter in s.facts.subjects("converter"):
        node = f"{converter.id}:dc+"
        if converter.item.kind not in INVERTERS or node not in closed or node in opened:
            continue
        soft = s.read(converter.item, "dc.soft start")
        if isinstance(soft, Unknown):
            return Unknown(f"whether {converter.id} charges its own capacitors gently is not known")
        if not soft:
            found.append(converter)
    return tuple(found)
