"""What follows when an alternator loses its battery: by a cable that comes off, by a management that opens."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.alternator import live_node
from checker.facts.bank import KINDS, home
from checker.facts.catalogue import fact
from checker.facts.contacts import is_word
from checker.facts.converter import given
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    both,
    least,
    less_equal,
    negate,
    some,
)

CLAMPED_V = {12.0: (12.0, 35.0), 24.0: (24.0, 65.0)}
UNCLAMPED_V = {12.0: (79.0, 101.0), 24.0: (151.0, 202.0)}
"""Load dump by nominal voltage, V: no more than the suppressed test voltage where it is clamped, the unsuppressed one
where it is not: ISO 16750-2, tests A and B, from memory."""


@fact(
    "converter",
    "load_dump_level",
    unit="V",
    says="Voltage that follows when an alternator loses its battery.",
    method="as told; where the level is left out, up to 35 V at 12 V and 65 V at 24 V if it is clamped, 79 V to 101 V "
    "and 151 V to 202 V if it is not",
    source="ISO 16750-2, 2023 (from memory)",
)
def load_dump_level(s: Subject) -> Any:
    told = given(s, "load dump.level")
    if s.item.kind != "alternator" or s.item.has("load dump.level") or not isinstance(told, Unknown):
        return told
    clamped, nominal = s.load_dump_clamped, given(s, "nominal")
    if not isinstance(clamped, bool) or not isinstance(nominal, float):
        return told
    bounds = (CLAMPED_V if clamped else UNCLAMPED_V).get(nominal)
    return told if bounds is None else Range(*bounds)


@fact("converter", "load_dump_clamped", type="yes/no", says="An alternator clamps its own load dump.")
def load_dump_clamped(s: Subject) -> Any:
    return given(s, "load dump.clamped")


@fact(
    "converter",
    "weakest_transient",
    unit="V",
    says="Transient that the weakest electronic equipment added to the bus of an alternator endures.",
    method="least of the stated transient levels of converters and electronic loads, factory equipment left out",
)
def weakest_transient(s: Subject) -> Any:
    return _weakest(s, "transient level")


@fact(
    "converter",
    "weakest_in_jump_start",
    unit="V",
    says="Voltage of a jump start that the weakest electronic equipment added to the bus of an alternator endures.",
    method="least of the stated levels of converters and electronic loads, factory equipment left out",
)
def weakest_in_jump_start(s: Subject) -> Any:
    return _weakest(s, "jump start")


JUMP_V = {12.0: 24.0, 24.0: 36.0}
"""Voltage of a jump start by nominal voltage: ISO 16750-2, from memory."""


@fact(
    "converter",
    "jump_start_voltage",
    unit="V",
    says="Voltage that a jump start puts on the bus of an alternator; none for others, and above 24 V nominal.",
    method="24 V on a bus of 12 V, 36 V on one of 24 V",
    source="ISO 16750-2, 2023 (from memory)",
)
def jump_start_voltage(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    nominal = given(s, "nominal")
    if isinstance(nominal, float):
        return JUMP_V.get(nominal)
    return Unknown(f"the nominal voltage of {s.id} is not told")


def _weakest(s: Subject, key: str) -> Any:
    return weakest_at(s, [live_node(s)], key) if s.item.kind == "alternator" else None


def weakest_at(s: Subject, nodes: list[str], key: str) -> Any:
    """The least of what converters and electronic loads on a bus endure, V; none when nothing is on it."""
    network = s.facts.network
    found: dict[str, Number] = {}
    for node in joined(network, nodes):
        makers = [source.equipment for source in network.sources_at.get(node, ())]
        for item in (*network.sinks.get(node, ()), *makers):
            if item.kind in KINDS or not item.allows(key) or _is_factory(s.facts, item, node):
                continue
            found[item.name] = s.read(item, key)
    return least(list(found.values())) if found else None


def _is_factory(facts: Facts, item: Equipment, node: str) -> bool:
    """Equipment that came with the vehicle, or that hangs on a factory circuit."""
    if is_word(item.value("own"), "factory") is True:
        return True
    for edge, _ in facts.network.near.get(node, ()):
        if not isinstance(edge, Link) and is_word(edge.conductor.circuit.value("own"), "factory") is True:
            return True
    return False


@fact(
    "converter",
    "charges_managed_directly",
    type="yes/no",
    says="An alternator whose output reaches a battery whose management may open, without a converter between.",
    method="graph, every contact closed; a lithium battery, or another of which a management is told",
)
def charges_managed_directly(s: Subject) -> Truth:
    if s.item.kind != "alternator":
        return False
    banks = s.charges
    return banks if isinstance(banks, Unknown) else some(bank.is_managed for bank in banks)


@fact(
    "converter",
    "charges_low_resistance_directly",
    type="yes/no",
    says="An alternator whose output reaches a house battery of low resistance without a converter between.",
    method="graph, every contact closed; lithium, sodium ion, AGM and lead carbon have a low resistance",
    source="common practice, no source",
)
def charges_low_resistance_directly(s: Subject) -> Truth:
    if s.item.kind != "alternator":
        return False
    if isinstance(s.charges, Unknown):
        return s.charges
    return some(both(_is_low(bank.chemistry), _is_added(bank.purpose)) for bank in s.charges)


LOW_RESISTANCE = ("AGM lead acid", "lead carbon", "sodium ion")


def _is_low(chemistry: Any) -> Truth:
    if isinstance(chemistry, Unknown):
        return chemistry
    return isinstance(chemistry, str) and (chemistry.startswith("lithium") or chemistry in LOW_RESISTANCE)


def _is_added(purpose: Any) -> Truth:
    """The starting battery and its alternator are matched by the maker of the vehicle."""
    return purpose if isinstance(purpose, Unknown) else purpose != "starting"


@fact(
    "converter",
    "keeps_another_battery",
    type="yes/no",
    says="When a management opens, another battery stays on the bus of the alternator.",
    method="graph: a battery without a management, reached through wires and fuses alone",
)
def keeps_another_battery(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None

    def always(edge: Edge) -> bool:
        return not isinstance(edge, Link) or edge.when == "always"

    near = joined(s.facts.network, [live_node(s)], always)
    if isinstance(s.charges, Unknown):
        return s.charges
    answers = [negate(bank.is_managed) for bank in s.charges if home(s.facts, bank.item) in near]
    return some(answers)


@fact(
    "converter",
    "dump_is_harmless",
    type="yes/no",
    says="The load dump of an alternator is clamped, and no higher than the added electronics on its bus endure.",
    method="stated level and clamp against the weakest transient level",
)
def dump_is_harmless(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    weakest = s.weakest_transient
    endured: Truth = True if weakest is None else less_equal(s.load_dump_level, weakest)
    return both(s.load_dump_clamped, endured)


@fact(
    "converter",
    "stays_in_bounds",
    type="yes/no",
    says="When the management opens while an alternator charges, the voltage stays within what the electronics endure.",
    method="another battery stays, or its regulator is told to stop before, or the dump is clamped and endured",
)
def stays_in_bounds(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    # Few regulators can be told; where the file says nothing, this one is not.
    told = s.stops_on_management if s.item.has("charge stop.by") else False
    return some((s.keeps_another_battery, s.dump_is_harmless, told))
