"""What was added to a starting battery: loads that draw with the engine stopped, contacts that join it, all that is
taken."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Edge, Link, Source, Wire
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.model import Circuit, Equipment
from checker.design.vocabulary.signals import MEANS
from checker.facts.bank import home, loose_bank, some_gap
from checker.facts.catalogue import fact
from checker.facts.contacts import signal_item, signal_means
from checker.facts.joining import joined_sides
from checker.facts.starter import TOWING_CONTACTS, rests_open
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    Number,
    Range,
    Truth,
    Unknown,
    both,
    either,
    equal,
    every,
    greater_equal,
    multiply,
    negate,
    some,
    total,
)

SPARING = ("engine running", "ignition on", "battery low", "discharge allowed")
"""Signals by which a contact opens before the starting battery is drawn down; whether one is a true sign of the engine
is asked by another rule."""


def _parts(s: Subject, item: Equipment, battery: Equipment) -> Truth:
    """Whether a relay or combiner opens when the engine stops, or before the reserve of a battery."""
    if item.kind == "combiner":
        senses = s.read(item, "senses")
        if isinstance(senses, Unknown):
            return senses
        if senses != "voltage":
            return senses is not None
        return greater_equal(s.read(item, "parts at"), s.read(battery, "reserve"))
    means = signal_means(s.facts, s.read(item, "driven by"))
    if isinstance(means, Unknown):
        return means
    return both(isinstance(means, str) and means in SPARING, rests_open(s, item))


def _walk(s: Subject, *, perhaps: bool) -> dict[str, None]:
    """Nodes that the battery feeds with the engine stopped and its reserve gone; with `perhaps` also in doubt."""

    def kept(edge: Edge) -> bool:
        if isinstance(edge, Wire) and edge.gap is not None:
            return perhaps  # what was not seen may hold a contact that parts them
        if not isinstance(edge, Link) or edge.equipment.kind not in ("relay", "combiner"):
            return True
        parts = _parts(s, edge.equipment, s.item)
        return parts is False or (perhaps and isinstance(parts, Unknown))

    return joined(s.facts.network, [home(s.facts, s.item)], kept)


def _loads_at(facts: Facts, nodes: dict[str, None]) -> list[Equipment]:
    found: dict[str, Equipment] = {}
    for node in nodes:
        for item in facts.network.sinks.get(node, ()):
            if item.kind in LOADS or item.kind in ("inverter", "inverter-charger"):
                found.setdefault(item.name, item)
    return list(found.values())


def cut_without_engine(s: Subject, node: str) -> Truth:
    """Whether a node is cut off from batteries and converters by contacts that a running engine closes."""
    lasting = [(one.live, _rests_with_the_engine(s, one)) for one in s.facts.network.sources]
    parts = {
        item.name: _by_engine(s, item)
        for item in s.facts.network.equipment.values()
        if item.kind in ("relay", "combiner")
    }

    def reached(*, perhaps: bool) -> bool:
        homes = [live for live, rests in lasting if rests is False or (perhaps and isinstance(rests, Unknown))]

        def kept(edge: Edge) -> bool:
            answer = parts.get(edge.equipment.name, False) if isinstance(edge, Link) else False
            return answer is False or (perhaps and isinstance(answer, Unknown))

        return node in joined(s.facts.network, homes, kept)

    loose = loose_bank(s.facts)
    if reached(perhaps=False):
        return False
    if loose is not None or some_gap(s.facts) or reached(perhaps=True):
        doubt = Unknown("whether a running engine closes a contact on its way is not told")
        return doubt if loose is None else loose
    engine = [one.live for one in s.facts.network.sources if one.equipment.kind == "alternator"]
    return node in joined(s.facts.network, [live for live, _ in lasting if live not in engine])


def _rests_with_the_engine(s: Subject, source: Source) -> Truth:
    """Whether a source rests while the engine does: an alternator, a contact that the towing vehicle parts."""
    if source.equipment.kind == "alternator":
        return True
    if source.equipment.kind != "vehicle coupling":
        return False
    parted = f"{source.port}+" in TOWING_CONTACTS
    return s.read(source.equipment, "source end.switched") if parted else True


def _by_engine(s: Subject, item: Equipment) -> Truth:
    if item.kind == "combiner":
        return equal(s.read(item, "senses"), "engine")
    means = signal_means(s.facts, s.read(item, "driven by"))
    if isinstance(means, Unknown):
        return means
    return both(means == "engine running", rests_open(s, item))


@fact(
    "bank",
    "drained_by",
    of="equipment",
    type="list",
    says="Loads and inverters that were added and draw from it with the engine stopped, with nothing to cut them off.",
    method="graph; relays by a signal of engine, ignition or low battery and combiners that part at the reserve are "
    "taken as open; converters have a rule of their own",
)
def drained_by(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    sure = {item.name for item in _loads_at(s.facts, _walk(s, perhaps=False))}
    found: list[Any] = []
    doubt: Unknown | None = None
    for item in _loads_at(s.facts, _walk(s, perhaps=True)):
        added = _added(s, item)
        if added is False:
            continue
        if item.name in sure and added is True:
            found.append(s.facts.of("equipment", item))
        else:
            doubt = Unknown(f"whether {item.name} draws from {s.id} with the engine stopped is not told")
    return tuple(found) if found or doubt is None else doubt


def _added(s: Subject, item: Equipment) -> Truth:
    """Whether a load, or the circuit that feeds it, did not come with the vehicle."""
    fed = [
        came_with_it(s, circuit)
        for circuit in s.facts.network.circuits
        if any(port.equipment == item.name for port in circuit.ends)
    ]
    return negate(either(equal(s.read(item, "own"), "factory"), every(fed) if fed else False))


@fact(
    "bank",
    "added_draw",
    unit="A",
    says="Greatest lasting current of the circuits that were added at it, together.",
    method="conductor.design_current of each live conductor at its terminal that did not come with the vehicle, added "
    "up; none of battery sensing and control",
)
def added_draw(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    found: list[Number] = [0.0]
    for edge, _ in s.facts.network.near.get(home(s.facts, s.item), ()):
        if not isinstance(edge, Wire) or edge.conductor.role != LIVE:
            continue
        circuit = edge.conductor.circuit
        conductor = s.facts.of("conductor", edge.conductor)
        if conductor is None:
            continue
        sparing = either(equal(conductor.duty, "sense"), equal(conductor.duty, "control"))
        counts = negate(either(came_with_it(s, circuit), sparing))
        if counts is not False:
            drawn: Number = conductor.design_current
            found.append(drawn if counts is True else multiply(drawn, Range(0.0, 1.0)))
    return total(found)


def came_with_it(s: Subject, circuit: Circuit) -> Truth:
    """Whether a circuit is the work of the maker of the vehicle."""
    return either(equal(s.read(circuit, "own"), "factory"), equal(s.read(circuit, "scope"), "automotive"))


@fact("bank", "permitted_draw", unit="A", says="Current that the maker of the vehicle permits to be taken at it.")
def permitted_draw(s: Subject) -> Any:
    return s.read(s.item, "allows")


@fact(
    "switch",
    "joins_starter",
    type="yes/no",
    says="A relay or combiner that joins a starting battery with another battery, and that alone parts them.",
    method="graph of the battery side without it, every other contact closed; not where a second contact in the same "
    "run parts them with the engine or by their voltage",
)
def joins_starter(s: Subject) -> Truth:
    anyway = some([*(_parts_anyway(s.facts, one) for one in _in_its_run(s)), _hides_another(s)])
    if s.item.kind not in ("relay", "combiner") or anyway is True:
        return False
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    one, other = joined_sides(s)
    pairs = [(a, b) for a in one for b in other]
    joins = some(_starting_and_not(a, b) for first, second in pairs for a, b in ((first, second), (second, first)))
    return both(negate(anyway), joins)


def _hides_another(s: Subject) -> Truth:
    """Whether a contact that nobody saw may stand in the same run."""
    runs = [s.facts.network.by_link.get(id(link)) for link in s.facts.network.links if link.equipment is s.item]
    hidden = any(wire.gap is not None for run in runs if run is not None for wire in run.wires)
    return Unknown("a part of its run was not seen and may hide another contact") if hidden else False


def _in_its_run(s: Subject) -> list[Equipment]:
    """The other relays and combiners that stand in the same run."""
    found: list[Equipment] = []
    for link in s.facts.network.links:
        run = s.facts.network.by_link.get(id(link)) if link.equipment is s.item and link.pole == LIVE else None
        others = (one.equipment for one in run.links) if run is not None else ()
        found.extend(one for one in others if one is not s.item and one.kind in ("relay", "combiner"))
    return found


def _parts_anyway(facts: Facts, item: Equipment) -> Truth:
    """Whether a contact opens with the engine, or by the voltage of the batteries."""
    if item.kind == "combiner":
        kept = equal(item.value("on loss"), "closes") if item.has("on loss") else False
        return both(equal(item.value("senses"), "voltage"), negate(kept))
    means = signal_means(facts, item.value("driven by"))
    return both(equal(means, "engine running"), equal(item.value("rest"), "open"))


def _starting_and_not(a: Subject, b: Subject) -> Truth:
    other = b.purpose
    return both(equal(a.purpose, "starting"), other if isinstance(other, Unknown) else other != "starting")


@fact("switch", "drive_means", words=MEANS, says="What the signal that closes it means; none when nothing drives it.",
      method="the signal that drives a relay; what a combiner senses")  # fmt: skip
def drive_means(s: Subject) -> Any:
    if s.item.kind == "combiner":
        senses = s.read(s.item, "senses")
        words = {"engine": "engine running", "ignition": "ignition on"}
        return words.get(senses) if isinstance(senses, str) else senses
    if not s.item.allows("driven by"):
        return None
    return signal_means(s.facts, s.read(s.item, "driven by"))


@fact("switch", "follows_a_signal", type="yes/no", says="A signal closes it, and not the voltage.",
      method="whether something drives a relay; what a combiner senses")  # fmt: skip
def follows_a_signal(s: Subject) -> Truth:
    if s.item.kind == "combiner":
        means = s.drive_means
    else:
        means = s.read(s.item, "driven by") if s.item.allows("driven by") else None
    return means if isinstance(means, Unknown) else means is not None


@fact("switch", "opens_when_wire_breaks", type="yes/no", says="It opens when its drive is lost or the wire breaks.",
      method="what the signal fails to, what it does on loss and its state at rest")  # fmt: skip
def opens_when_wire_breaks(s: Subject) -> Truth:
    if s.item.kind == "combiner" and not s.item.says("on loss", "closes"):
        return equal(s.read(s.item, "on loss"), "opens") if s.item.has("on loss") else True
    item = signal_item(s.facts, s.read(s.item, "driven by")) if s.item.allows("driven by") else None
    fails: Truth = True if item is None else equal(s.read(item, "fails"), "released")
    return both(fails, rests_open(s, s.item))
