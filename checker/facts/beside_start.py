"""What a load sees while another on the same feeder starts."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any, NamedTuple

from checker.circuit.elements import LIVE
from checker.facts.catalogue import fact
from checker.facts.contacts import contacts
from checker.facts.least_fault import ASSUMED
from checker.facts.load_voltage import STARTS, Held, circuits_of, held_for_start, held_in_modes, node_of, start_or_stall
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Unknown, Window, add, least, multiply, show, subtract
from checker.quantities.values import or_more


@fact(
    "load",
    "voltage_beside_start",
    unit="V",
    says="Lowest voltage at its terminals while another load on its feeder starts or is held still; none where no "
    "other does.",
    method="held voltage less the greater of start and stall current times battery and shared resistance, less its "
    "own drop and its feeders'",
    source="Ohm's law; battery 10 % charged with 1.5 times its stated resistance: common practice, no source",
)
def voltage_beside_start(s: Subject) -> Any:
    node, own = node_of(s), circuits_of(s)
    if node is None or isinstance(own, Unknown):
        return None
    found: list[Number] = []
    for start in _neighbours(s, own):
        if isinstance(start.current, Unknown):
            found.append(Unknown(f"the start or stall current of {start.load.id} is not told"))
            continue
        for held in held_in_modes(s.facts, node):
            found.append(_left(s, held, start, own))
    if found and any(not isinstance(one, Unknown) for one in found):
        s.note(ASSUMED.__str__)
    return least(found) if found else None


INPUTS = {"dc converter": ("low", "high"), "inverter": ("dc",), "inverter-charger": ("dc",)}


@fact(
    "converter",
    "start_margin",
    unit="V",
    says="Lowest voltage at the input of an inverter or dc converter while a load on its feeder starts or is held "
    "still, less what it works down to; the least of its sides. None where no load does.",
    method="as load.voltage_beside_start; the starter of the engine, and what it holds up itself, left out",
    source="Ohm's law; battery 10 % charged with 1.5 times its stated resistance: common practice, no source",
)
def start_margin(s: Subject) -> Any:
    found = [margin for port in INPUTS.get(s.item.kind, ()) for margin in _margins(s, port)]
    return least(found) if found else None


def _margins(s: Subject, port: str) -> Iterator[Number]:
    node = f"{s.id}:{port}+"
    if s.item not in s.facts.network.sinks.get(node, ()):
        return
    ends = (one for one in s.facts.subjects("circuit") if one.system == "dc")
    own = [one for one in ends if any((end.equipment, end.port) == (s.id, port) for end in one.item.ends)]
    held = [one for one in held_in_modes(s.facts, node) if one.by_others(s.item)]
    window = s.read(s.item, f"{port}.voltage" if port == "dc" else f"sides.{port}.voltage")
    low = (
        window.low
        if isinstance(window, Window)
        else Unknown(f"the voltages that {s.id} works at are not told ({port})")
    )
    for start in _neighbours(s, own) if own and held else ():
        item = start.load.item
        purpose = s.read(item, "purpose") if item.allows("purpose") else None
        if isinstance(purpose, str) and purpose == "engine":
            continue
        if isinstance(start.current, Unknown):
            yield Unknown(f"the start or stall current of {start.load.id} is not told")
            continue
        for one in held:
            margin = subtract(_left(s, one, start, own), low)
            starter = isinstance(purpose, Unknown) and (item.has("purpose") or item.says("own", "factory"))
            yield or_more(margin) if starter else margin  # perhaps the starter of the engine, which nobody runs by it


class Start(NamedTuple):
    """A load that starts, the current it starts with, the circuits that a load and it hang on, and what is left at the
    end of those by what holds them up."""

    load: Subject
    current: Number
    shared: list[Subject]
    lowered: dict[int, tuple[Number, Number] | Unknown]


def _neighbours(s: Subject, own: list[Subject]) -> Iterator[Start]:
    """The starts that may lower the voltage of a load, one of those that lower it alike."""
    if s.facts.recorder is not None:  # what is asked of every other load shall be seen
        alike: set[tuple[str, ...]] = set()
        for other, theirs in _starting(s.facts):
            shared = _shared(own, theirs) if other.id != s.id else []
            if not shared:
                continue
            current = start_or_stall(s, other.item)
            key = _alike(other, current, shared)
            if key not in alike:
                alike.add(key)
                yield Start(other, current, shared, {})
        return
    for starts in _from_feeders(s.facts, own):
        first = next((start for start in starts if start.load.id != s.id), None)
        if first is not None:
            yield first


def _alike(other: Subject, current: Number, shared: list[Subject]) -> tuple[str, ...]:
    """As hard a start on the same feeders lowers a voltage as far; one that is not told is one of its own."""
    purpose = other.item.value("purpose") if other.item.allows("purpose") else None
    who = other.id if isinstance(current, Unknown) else f"{current!r} {purpose!r}"
    return (who, *(circuit.id for circuit in shared))


def _from_feeders(facts: Facts, own: list[Subject]) -> list[list[Start]]:
    """The starts alike, as seen from the circuits that a load hangs on together with others; found once for those."""
    chains, several = _chains(facts)
    chain = [one for id, one in _chain(own).items() if id in several]
    kept: dict[tuple[str, ...], list[list[Start]]] = facts.store.setdefault("starts from feeders", {})
    key = tuple(one.id for one in chain)
    if key not in kept:
        found: dict[tuple[str, ...], list[Start]] = {}
        for other, _ in _starting(facts):
            shared = [one for one in chain if one.id in chains[other.id]]
            if shared:
                current = start_or_stall(other, other.item)
                alike = found.setdefault(_alike(other, current, shared), [])
                alike.append(Start(other, current, shared, alike[0].lowered if alike else {}))
        kept[key] = list(found.values())
    return kept[key]


def _chains(facts: Facts) -> tuple[dict[str, dict[str, Subject]], set[str]]:
    """All that each load hangs on, and the circuits on which more than one does; found once."""
    kept: tuple[dict[str, dict[str, Subject]], set[str]] | None = facts.store.get("circuits loads hang on")
    if kept is None:
        ends = ((load.id, circuits_of(load)) for load in facts.subjects("load"))
        chains = {id: _chain(circuits) for id, circuits in ends if isinstance(circuits, list)}
        counts = Counter(id for chain in chains.values() for id in chain)
        kept = facts.store["circuits loads hang on"] = chains, {id for id, count in counts.items() if count > 1}
    return kept


def _starting(facts: Facts) -> list[tuple[Subject, list[Subject]]]:
    """The loads that start with more than they run on, or may, with their circuits; found once."""
    kept: list[tuple[Subject, list[Subject]]] | None = facts.store.get("starting loads")
    if kept is None:
        kept = facts.store["starting loads"] = []
        for load in facts.subjects("load"):
            if not load.item.allows("start.current"):
                continue
            told = not isinstance(start_or_stall(load, load.item), Unknown)
            ends = circuits_of(load)
            if not isinstance(ends, Unknown) and (told or load.item.kind in STARTS):
                kept.append((load, ends))
    return kept


def _chain(circuits: list[Subject]) -> dict[str, Subject]:
    """The circuits and those that feed them, by id."""
    return {one.id: one for circuit in circuits for one in (circuit, *circuit.fed_by)}


def _shared(own: list[Subject], theirs: list[Subject]) -> list[Subject]:
    """The circuits that both hang on, feeders included."""
    mine, other = _chain(own), _chain(theirs)
    return [one for id, one in mine.items() if id in other]


def _left(s: Subject, held: Held, start: Start, own: list[Subject]) -> Number:
    """The voltage left at a load, V."""
    if id(held) not in start.lowered:
        start.lowered[id(held)] = _lowered(held, start)
    found = start.lowered[id(held)]
    if isinstance(found, Unknown):
        return found
    low, lost = found
    left = subtract(low, add(lost, own[0].drop))
    if _unsure(s.facts, held.mode):
        left = or_more(left)  # a contact that is perhaps open parts it from the weaker source
    s.note(lambda: f"mode {held.mode}: {show(low, 'V')} held; {start.load.id} starts with {show(start.current, 'A')}")
    return left


def _unsure(facts: Facts, name: str) -> bool:
    """Whether it is open for some contact if it is closed in a mode; found once."""
    kept: dict[str, bool] = facts.store.setdefault("modes with unsure contacts", {})
    if name not in kept:
        state = contacts(facts, facts.design.modes[name])
        links = (link for link in facts.network.links if link.pole == LIVE and link.when != "always")
        kept[name] = any(isinstance(state.closed(link), Unknown) for link in links)
    return kept[name]


def _lowered(held: Held, start: Start) -> tuple[Number, Number] | Unknown:
    """The voltage held while it starts, and what is lost of it up to the end of the shared circuits, V."""
    one = held_for_start(held, start.current)
    if isinstance(one, Unknown):
        return one
    ohms = one.ohms
    for circuit in start.shared:
        ohms = add(ohms, circuit.loop_resistance)
    return one.low, multiply(start.current, ohms)
