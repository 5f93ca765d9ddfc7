"""What an entry that a finding needs is about: the thing in the file, its key, and where in the vehicle it is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.circuit.network import Network
from checker.design.item import Item
from checker.design.model import Circuit, Equipment
from checker.design.run import Length, Through
from checker.design.vocabulary import KINDS

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.design.vocabulary.key import Key

PAPERS = "papers, makers' sheets and the owner"
WHOLE = "the vehicle as a whole"
INSTRUMENTS = "with instruments, on the finished work"
ON_PAPER = ("papers", "people", "scope", "seen", "day", "modes", "essential", "date", "purpose")
RUN = "run via "
MISSING_READING = "readings: "
TERMINAL = KINDS["terminals", "terminal"]
PEOPLE = next(kind for (section, _), kind in KINDS.items() if section == "people")


class Entry(NamedTuple):
    """One entry of the file: the thing it belongs to (None for what has none), the name of its key there, the key in
    the vocabulary (None where none stands behind it), and the first place where somebody finds it."""

    path: str
    item: Item | None
    name: str
    key: Key | None
    place: str


def resolve(design: Design, path: str) -> Entry:
    """The entry at a dotted path of a need."""
    section, _, rest = path.partition(".")
    if section.startswith("readings"):
        return Entry(path, None, _test_of(design, path), None, INSTRUMENTS)
    if section == "vehicle":
        return Entry(path, design.vehicle, rest, _key(design.vehicle, rest), WHOLE)
    if section == "labels":
        return Entry(path, design.labels, rest, _key(design.labels, rest), WHOLE)
    mode, _, name = rest.partition(".")
    if section == "modes" and mode in design.modes:
        return Entry(path, design.modes[mode], name, _key(design.modes[mode], name), PAPERS)
    if section in ON_PAPER or section == "limits":
        item = getattr(design, section, None)
        whole = item if isinstance(item, Item) else None
        last = rest.rpartition(".")[2]
        return Entry(path, whole, rest, PEOPLE.keys.get(last) if section == "people" else _key(whole, rest), PAPERS)
    for item in _things(design, section):
        if path.startswith(item.path + "."):
            name = path[len(item.path) + 1 :]
            return Entry(path, item, name, _key(item, name), next(iter(places_of(design, item)), WHOLE))
    return Entry(path, None, rest, None, WHOLE)


def _test_of(design: Design, path: str) -> str:
    """The test that a reading is of: named by the need, or told by the reading that has the doubtful value."""
    if path.startswith(MISSING_READING):
        return path.removeprefix(MISSING_READING)
    number = path.split(".")[1]
    test = design.readings[int(number)].value("test") if number.isdigit() else ""
    return test if isinstance(test, str) else ""


def _things(design: Design, section: str) -> Iterator[Item]:
    """Whatever may hold an entry of a section; the longest paths first, so that a way comes before its board."""
    if section in ("equipment", "joints", "circuits"):
        found: list[Item] = []
        for item in design.equipment.values():
            found += [*item.ways, *item.terminals.values(), item]
        if section == "circuits":
            found += design.circuits.values()
        yield from sorted(found, key=lambda item: -len(item.path))
    else:
        held = getattr(design, section, {})
        yield from held.values() if hasattr(held, "values") else ()


def _key(item: Item | None, name: str) -> Key | None:
    if item is None:
        return None
    if "terminals." in name:
        return TERMINAL.keys.get(name.rpartition(".")[2])
    return item.vocabulary.keys.get(name)


def places_of(design: Design, item: Item) -> tuple[str, ...]:
    """The places where somebody finds a thing, in the order of its run, each once; empty when none is told."""
    return tuple(dict.fromkeys(_places(design, item)))


def _places(design: Design, item: Item) -> Iterator[str]:
    if isinstance(item, Circuit):
        yield from (step.place for step in item.run if isinstance(step, Length) and step.place is not None)
        return
    section, _, rest = item.path.partition(".")
    if section == "places":
        yield item.name
    elif section == "passes":
        between = item.value("between")
        yield from between if isinstance(between, tuple) else ()
    elif section == "cables":
        for circuit in design.circuits.values():
            if circuit.cable is not None and circuit.cable.path == item.path:
                yield from _places(design, circuit)
    elif section == "parts":
        for one in design.equipment.values():
            if one.part == item.name or (one.base is not None and one.base.path == item.path):
                yield from _own_place(one)
    else:
        name = rest.split(".ways.")[0].split(".terminals.")[0]
        owner = design.equipment.get(name)
        yield from _own_place(owner if owner is not None else item)


def _own_place(item: Item) -> Iterable[str]:
    place: Any = item.value("place") if item.allows("place") else None
    return (place,) if isinstance(place, str) else ()


def on_mains(network: Network) -> frozenset[str]:
    """Names of circuits that carry mains, and of the equipment they touch."""
    found: set[str] = set()
    for circuit in network.circuits:
        if network.systems[circuit.name] == "ac":
            found.add(circuit.name)
            found.update(port.equipment for port in (circuit.start, *circuit.ends))
            found.update(step.equipment for step in circuit.run if isinstance(step, Through))
    return frozenset(name.split(".")[0] for name in found)


def is_storage(item: Item | None) -> bool:
    """Whether a thing is a battery, or the part that the units of a bank are."""
    return isinstance(item, Equipment) and item.kind in ("battery", "bank")
