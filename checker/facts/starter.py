"""Converters that draw from the starting battery: the signal that lets them, the voltage at which they stop."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.design.vocabulary.signals import MEANS
from checker.facts.bank import home
from checker.facts.catalogue import fact
from checker.facts.charging import outputs_of
from checker.facts.contacts import signal_item, signal_means
from checker.facts.subject import Subject
from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    equal,
    every,
    greater_equal,
    multiply,
    negate,
    some,
)


def _takes(s: Subject) -> list[str]:
    """The sides from which a dc converter may draw."""
    if s.item.kind != "dc converter":
        return []
    sides = {"low", "high"}
    gives = {one.source.port for one in outputs_of(s.facts, s.item)}
    return sorted(sides if len(gives) != 1 else sides - gives)


def drawn_from(s: Subject) -> list[tuple[str, Equipment]]:
    """(side, battery) for each side of a dc converter that hangs on a battery that is, or may be, for starting."""
    found = []
    for side in _takes(s):
        near = joined(s.facts.network, [f"{s.id}:{side}+"])
        for bank in s.facts.subjects("bank"):
            word = bank.purpose
            if (isinstance(word, Unknown) or word == "starting") and home(s.facts, bank.item) in near:
                found.append((side, bank.item))
    return found


TOWING_CONTACTS = ("charge+", "fridge+")
"""Contacts of the plug behind which the starting battery of the towing vehicle stands."""
RESERVE_V = 12.2
"""Rested voltage of a 12 V starting battery, of which the file tells nothing, that still starts: common practice, no
source."""


def towed_by(s: Subject) -> list[tuple[str, Equipment, str]]:
    """(side, coupling, node of its contact) for each side of a dc converter that hangs on a towing vehicle."""
    found = []
    for side in _takes(s):
        near = joined(s.facts.network, [f"{s.id}:{side}+"])
        for item in s.facts.network.equipment.values():
            if item.kind == "vehicle coupling":
                found += [(side, item, node) for end in TOWING_CONTACTS if (node := f"{item.name}:{end}") in near]
    return found


@fact("converter", "drains_starter", type="yes/no",
      says="A side from which it draws hangs on a starting battery, of this vehicle or of the one that tows it.",
      method="graph, every contact closed; not through a plug that its engine parts")  # fmt: skip
def drains_starter(s: Subject) -> Truth:
    answers: list[Truth] = [negate(s.read(coupling, "source end.switched")) for _, coupling, _ in towed_by(s)]
    for _, battery in drawn_from(s):
        bank = s.facts.of("bank", battery)
        word = UNKNOWN if bank is None else bank.purpose
        answers.append(word if isinstance(word, Unknown) else word == "starting")
    return some(answers)


def _relays_between(s: Subject) -> list[Equipment]:
    """Relays without which the starting battery does not reach the converter."""
    found = []
    starts = [(side, home(s.facts, battery)) for side, battery in drawn_from(s)]
    for side, start in [*starts, *((side, node) for side, _, node in towed_by(s))]:
        for item in s.facts.network.equipment.values():
            if item.kind in ("relay", "combiner"):
                near = joined(s.facts.network, [f"{s.id}:{side}+"], _without(item))
                if start not in near:
                    found.append(item)
    return found


def _without(item: Equipment) -> Callable[[Edge], bool]:
    return lambda edge: not (isinstance(edge, Link) and edge.equipment is item)


def rests_open(s: Subject, relay: Equipment) -> Truth:
    """Whether the contact of a relay is open without drive; where the file says nothing, as most relays are."""
    form = s.read(relay, "form") if relay.allows("form") and relay.has("form") else "make"
    rest = s.read(relay, "rest") if relay.has("rest") else "open"
    lost = s.read(relay, "on loss") if relay.has("on loss") else "opens"
    return every((equal(form, "make"), equal(rest, "open"), equal(lost, "opens")))


def _enabling(s: Subject) -> list[Any]:
    """Names of the signals that let it draw: its own, and those that drive relays in its supply."""
    found = [s.read(s.item, "enabled by")]
    opening = [relay for relay in _relays_between(s) if relay.kind == "relay" and rests_open(s, relay) is not False]
    found.extend(s.read(relay, "driven by") for relay in opening)
    told = [name for name in found if isinstance(name, str)]
    return told or found


@fact(
    "converter",
    "engine_signal",
    words=MEANS,
    says="What the signal means that lets it draw from the starting battery; none when nothing does.",
    method="its enabling signal, or that of a relay between it and the starting battery",
)
def engine_signal(s: Subject) -> Any:
    if s.drains_starter is False:
        return None
    means = [signal_means(s.facts, name) for name in _enabling(s)]
    if any(isinstance(word, str) and word == "engine running" for word in means):
        return "engine running"
    return next((word for word in means if isinstance(word, str)), means[0])


@fact("converter", "engine_signal_fails", words=("released", "given"),
      says="What the receiver takes that signal for when its wire breaks.")  # fmt: skip
def engine_signal_fails(s: Subject) -> Any:
    if s.drains_starter is False:
        return None
    for name in _enabling(s):
        item = signal_item(s.facts, name)
        if item is not None:
            return s.read(item, "fails")
        if isinstance(name, str):
            return Unknown("what the receiver does when the wire breaks is not told")
    return UNKNOWN


@fact(
    "converter",
    "spares_starter",
    type="yes/no",
    says="It stops drawing before the starting battery falls below its reserve.",
    method="the voltage at which it stops drawing against the reserve of the battery; 12.2 V for that of a towing "
    "vehicle of 12 V",
    source="12.2 V: common practice, no source",
)
def spares_starter(s: Subject) -> Truth:
    stops = s.read(s.item, "settings.holds low above")
    if not isinstance(stops, float | Range):
        stops = s.read(s.item, "settings.low stop")
    reserves = [s.read(battery, "reserve") for _, battery in drawn_from(s)]
    reserves += [reserve_over_there(s, coupling, node) for _, coupling, node in towed_by(s)]
    return every([greater_equal(stops, reserve) for reserve in reserves])


def reserve_over_there(s: Subject, coupling: Equipment, node: str) -> Number:
    """Voltage at which the battery of the towing vehicle still starts, V."""
    contact = node.partition(":")[2].rstrip("+")
    return multiply(s.read(coupling, f"supplies.{contact}.nominal"), RESERVE_V / 12.0)
