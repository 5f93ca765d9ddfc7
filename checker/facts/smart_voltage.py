"""Charging from an alternator that changes its voltage: of this vehicle, or of the one that tows it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import Any

from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.alternator import live_node
from checker.facts.bank import home
from checker.facts.catalogue import fact
from checker.facts.plug import LIVE_NODES
from checker.facts.subject import Subject
from checker.quantities import (
    UNKNOWN,
    Truth,
    Unknown,
    Window,
    either,
    equal,
    every,
    greater_equal,
    less_equal,
    multiply,
    within,
)

CHARGING = 1.1
"""Lowest charging voltage over nominal; common practice, no source."""
STOPS = {"low": ("settings.holds low above", "settings.low stop"), "high": ("settings.low stop",)}
"""Settings by which a converter stops drawing, by the side from which it draws."""


@fact(
    "converter",
    "works_over_set_voltage",
    type="yes/no",
    says="What charges from an alternator works at every voltage it holds, and no relay in its way acts on voltage.",
    method="the window of each converter on its bus, and the voltage at which it stops, against the set voltages; "
    "combiners that sense voltage; the lowest setting against 1.1 times the nominal voltage of a house battery that "
    "contacts alone join to it",
    source="1.1 times nominal, below which a battery takes next to nothing: common practice, no source",
)
def works_over_set_voltage(s: Subject) -> Any:
    if s.item.kind != "alternator":
        return None
    return _works(s, [live_node(s)], s.read(s.item, "set voltage"))


@fact(
    "equipment",
    "charged_by_a_smart_vehicle",
    type="yes/no",
    says="Its charge contact feeds a converter or a battery, and the towing vehicle changes its charging voltage.",
    method="graph from its contacts, every contact closed; `smart` of the other end",
)
def charged_by_a_smart_vehicle(s: Subject) -> Truth:
    if s.item.kind != "vehicle coupling":
        return False
    near = joined(s.facts.network, _contacts(s))
    banks = any(home(s.facts, bank.item) in near for bank in s.facts.subjects("bank"))
    if not banks and not any(True for _ in _converters(s, near)):
        return False
    return s.read(s.item, "source end.smart")  # type: ignore[no-any-return]


@fact(
    "equipment",
    "works_over_towing_voltage",
    type="yes/no",
    says="What charges through the plug works at every voltage of the towing vehicle; none for other equipment.",
    method="as converter.works_over_set_voltage, with the voltages at the other end",
    source="1.1 times nominal, below which a battery takes next to nothing: common practice, no source",
)
def works_over_towing_voltage(s: Subject) -> Any:
    if s.item.kind != "vehicle coupling":
        return None
    return _works(s, _contacts(s), s.read(s.item, "source end.voltage"))


def _contacts(s: Subject) -> list[str]:
    return [node for name in LIVE_NODES if (node := f"{s.id}:{name}") in s.facts.network.near]


def _converters(s: Subject, near: Collection[str]) -> Iterator[tuple[Equipment, str]]:
    """The converters that draw from a bus, each with the side it draws from."""
    for node in near:
        for item in s.facts.network.sinks.get(node, ()):
            if item.kind == "dc converter":
                yield item, node.split(":", 1)[1].rstrip("+")


def _works(s: Subject, starts: Iterable[str], volts: Any) -> Truth:
    near = joined(s.facts.network, starts)
    answers: list[Truth] = []
    for item, side in _converters(s, near):
        window = s.read(item, f"sides.{side}.voltage")
        answers.append(UNKNOWN if isinstance(volts, Unknown) else within(volts, window))
        answers.extend(_goes_on(s, item, side, volts))
    for item in s.facts.network.equipment.values():
        if item.kind == "combiner" and any(node.startswith(f"{item.name}:") for node in near):
            senses = s.read(item, "senses")
            answers.append(senses if isinstance(senses, Unknown) else senses != "voltage")
    return every([*answers, *_charges_joined(s, near, volts)])


def _goes_on(s: Subject, item: Equipment, side: str, volts: Any) -> Iterator[Truth]:
    """Whether a converter still draws at the lowest voltage, by each stop that is told; by none that is left out
    beside another."""
    low = volts.low if isinstance(volts, Window) else volts
    told = [key for key in STOPS[side] if item.allows(key) and item.has(key)]
    if not told:
        yield Unknown(f"at which voltage {item.name} stops drawing is not told")
    for stop in (s.read(item, key) for key in told):
        if stop is not None:
            yield low if isinstance(low, Unknown) else less_equal(stop, low)


def _charges_joined(s: Subject, near: Collection[str], volts: Any) -> Iterator[Truth]:
    """Of each house battery that contacts join straight to it: whether its lowest setting still charges that."""
    for bank in s.facts.subjects("bank"):
        if home(s.facts, bank.item) not in near or equal(bank.purpose, "starting") is True:
            continue
        low = volts.low if isinstance(volts, Window) else volts
        charges: Truth = (
            low if isinstance(low, Unknown) else greater_equal(low, multiply(bank.nominal_voltage, CHARGING))
        )
        yield either(equal(bank.purpose, "starting"), charges)
