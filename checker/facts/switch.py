"""Switches, relays, combiners and changeovers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import LIVE, Wire
from checker.design.given import RatedVoltage, Where
from checker.design.vocabulary.words import ACCESS, OPERATED
from checker.facts.catalogue import fact, subjects
from checker.facts.currents import design_currents
from checker.facts.levels import level_at, read_level
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import UNKNOWN, Number, Unknown, greatest

KINDS = ("switch", "relay", "combiner", "changeover")


@subjects("switch", "A switch, relay, combiner or changeover.")
def switches(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.network.equipment.values():
        if item.kind in KINDS:
            yield item.name, item.where, item


@fact("switch", "type_of_switch", words=KINDS, says="Switch, relay, combiner or changeover.")
def type_of_switch(s: Subject) -> str:
    return str(s.item.kind)


@fact("switch", "contact_rating", unit="A", says="Current its contacts may carry and, where it may, break.")
def contact_rating(s: Subject) -> Any:
    return s.read(s.item, "rating")


def _rated(s: Subject, system: str) -> Any:
    volts = s.read(s.item, "voltage")
    if not isinstance(volts, RatedVoltage):
        return volts if volts is None else Unknown("its voltage rating is not stated")
    if volts.system is None:
        return Unknown(f"the rating does not say whether it holds for {system}")
    return volts.volts if volts.system == system else None


@fact("switch", "contact_voltage_dc", unit="V", says="Rated voltage on direct current; none when rated for ac alone.")
def contact_voltage_dc(s: Subject) -> Any:
    return _rated(s, "dc")


@fact("switch", "contact_voltage_ac", unit="V", says="Rated voltage on alternating current; none when for dc alone.")
def contact_voltage_ac(s: Subject) -> Any:
    return _rated(s, "ac")


@fact("switch", "breaks_load", type="yes/no", says="It may be opened under its rated current.")
def breaks_load(s: Subject) -> Any:
    return s.read(s.item, "breaks load")


@fact("switch", "isolates", type="yes/no", says="It isolates when open.")
def isolates(s: Subject) -> Any:
    return s.read(s.item, "isolates")


@fact("switch", "operated", words=OPERATED, says="How it is worked.")
def operated(s: Subject) -> Any:
    return s.read(s.item, "operated")


@fact("switch", "poles", unit="each", says="Conductors it opens together.")
def poles(s: Subject) -> Any:
    return s.read(s.item, "poles")


@fact("switch", "state_on_loss", words=("opens", "closes", "stays"), says="What it does when its drive is lost.")
def state_on_loss(s: Subject) -> Any:
    return s.read(s.item, "on loss")


@fact("switch", "state_on_return", words=("stays open", "closes"),
      says="What it does when its drive returns after it had opened on the loss.")  # fmt: skip
def state_on_return(s: Subject) -> Any:
    return s.read(s.item, "on return")


@fact("switch", "manual_override", type="yes/no", says="A hand can work it when its drive fails.")
def manual_override(s: Subject) -> Any:
    return s.read(s.item, "manual override")


@fact("switch", "shows_state", type="yes/no", says="It shows whether it is open.")
def shows_state(s: Subject) -> Any:
    return s.read(s.item, "shows state")


@fact("switch", "supply_is_polarised", type="yes/no", says="Live and neutral of the sites cannot be swapped.")
def supply_is_polarised(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.polarised")


@fact("switch", "access", words=ACCESS, says="How a hand gets to it.")
def access(s: Subject) -> Any:
    return s.read(s.item, "access")


@fact("switch", "in_return", type="yes/no", says="It opens a return, a bond or an earth alone.", method="graph")
@where_it_stands
def in_return(s: Subject) -> bool:
    links = [link for link in s.facts.network.links if link.equipment is s.item]
    owners = [s.facts.network.by_link.get(id(link)) for link in links]
    return bool(links) and all(one is not None and one.role != LIVE for one in owners)


@fact("switch", "marked", type="yes/no", says="It is marked with its function.")
def marked(s: Subject) -> Any:
    return s.read(s.item, "marked")


@fact("switch", "break_before_make", type="yes/no", says="A changeover leaves one throw before it reaches the next.")
def break_before_make(s: Subject) -> Any:
    return s.read(s.item, "break before make") if s.item.allows("break before make") else None


@fact("switch", "gap", unit="ms", says="How long a changeover joins nothing on the way.")
def gap(s: Subject) -> Any:
    return s.read(s.item, "gap") if s.item.allows("gap") else None


@fact("switch", "precharge", words=("built in", "by hand", "separate"), says="How capacitors behind it are charged.")
def precharge(s: Subject) -> Any:
    return s.read(s.item, "precharge") if s.item.allows("precharge") else None


def _nodes(s: Subject) -> list[str]:
    return s.facts.network.nodes_of(s.item.name)


def _level(s: Subject) -> Any:
    for node in _nodes(s):
        level = level_at(s.facts, node)
        if level is not None and not isinstance(level.nominal, Unknown):
            return level
    return None


@fact("switch", "system", words=("dc", "ac"), says="The system of the circuit it stands in.", method="graph")
def system(s: Subject) -> Any:
    level = _level(s)
    return Unknown(f"{s.id} stands in no circuit") if level is None else level.system


@fact("switch", "circuit_voltage", unit="V", says="Highest voltage of the circuit it stands in.", method="graph")
def circuit_voltage(s: Subject) -> Any:
    level = _level(s)
    read_level(s, level)
    return UNKNOWN if level is None else level.highest


@fact(
    "switch",
    "greatest_current",
    unit="A",
    says="Greatest lasting current through it over all modes.",
    method="design current of the conductors at its terminals",
)
@where_it_stands
def greatest_current(s: Subject) -> Any:
    most: Number = 0.0
    currents = design_currents(s.facts)
    for node in _nodes(s):
        for edge, _ in s.facts.network.near[node]:
            if isinstance(edge, Wire) and edge.conductor.role == LIVE:
                current = currents.get(edge.conductor.id, (UNKNOWN, ""))[0]
                most = current if isinstance(current, Unknown) else greatest(most, current)
    return most


@fact("switch", "place", of="place", type="subject", says="Where it stands.")
def place(s: Subject) -> Any:
    name = s.read(s.item, "place")
    return s.facts.subject("place", name) if isinstance(name, str) else name


@fact("switch", "scope", words=("habitation", "automotive"),
      says="Which rules the circuit of its run falls under; living quarters where it stands in none.")  # fmt: skip
@where_it_stands
def scope(s: Subject) -> Any:
    for link in s.facts.network.links:
        run = s.facts.network.by_link.get(id(link)) if link.equipment is s.item else None
        if run is not None:
            return s.read(run.circuit, "scope")
    return "habitation"
