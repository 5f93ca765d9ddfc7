"""One outlet or mains appliance fed by one source: what protects a person who touches a fault on it.

States in which nothing differs for the load are taken together, so that one wiring gives one subject.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from checker.circuit.feeding import (
    Path,
    consumers,
    earth_path,
    live_node,
    neutral_links,
    residual_path,
    residual_works,
)
from checker.circuit.mains import Feed
from checker.circuit.states import State, Truth
from checker.design.given import Where
from checker.design.model import Equipment
from checker.facts.catalogue import fact, subjects
from checker.facts.mains import answer, read_switching, states_of, tell, tell_state
from checker.facts.state import METHOD
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Unknown, between, both, least, negate


class Supply(NamedTuple):
    """A load on a feed in the same way in some states; `certain` when at least one of them, the first, surely is so;
    those follow first that the fewest operations reach."""

    load: Equipment
    feed: Feed
    path: Path
    links: tuple[int, int]
    works: Truth
    earthed: Truth
    certain: bool
    states: tuple[str, ...]


def supplies_of(facts: Facts) -> tuple[Supply, ...]:
    """Every supply, load by load in file order; found once."""
    found: tuple[Supply, ...] | None = facts.store.get("supplies")
    if found is None:
        found = facts.store["supplies"] = tuple(_supplies(facts))
    return found


def _supplies(facts: Facts) -> Iterator[Supply]:
    states = states_of(facts)
    loads = consumers(facts.network)
    far = {state.name: states.ways.distance(state) for state in states.states}
    links = {(id(state), feed.name): neutral_links(state, feed) for state in states.states for feed in state.feeding}
    for load in loads:
        found: dict[Mark, dict[str, bool]] = {}
        node = live_node(load)
        for state in states.states:
            sure, may = state.feeds_of(node)
            for feed in (*sure, *may):
                mark = _mark(state, feed, node, links[(id(state), feed.name)])
                found.setdefault(mark, {})[state.name] = feed in sure and state.certain
        for mark, names in found.items():
            order = sorted(names, key=lambda name: (not names[name], far[name]))
            yield Supply(load, *mark, any(names.values()), tuple(order))


Mark = tuple[Feed, Path, tuple[int, int], Truth, Truth]


def _mark(state: State, feed: Feed, node: str, links: tuple[int, int]) -> Mark:
    path = residual_path(state, feed, node)
    works = residual_works(state, feed, f"{node[:-1]}N")
    return feed, path, links, works, earth_path(state.mains, feed, f"{node[:-1]}PE")


@subjects("supply", "One outlet or mains appliance fed by one source; states that do not differ for it are one.")
def supplies(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Named `load on source`, with a number where the same source reaches it in several ways."""
    seen: dict[str, int] = {}
    for supply in supplies_of(facts):
        name = f"{supply.load.name} on {supply.feed.name}"
        seen[name] = seen.get(name, 0) + 1
        yield (name if seen[name] == 1 else f"{name} ({seen[name]})"), supply.load.where, supply


def supplies_by_load(facts: Facts) -> dict[str, list[Subject]]:
    """The supplies of each load by its name, found once."""
    found: dict[str, list[Subject]] | None = facts.store.get("supplies by load")
    if found is None:
        found = facts.store["supplies by load"] = {}
        for subject in facts.subjects("supply"):
            found.setdefault(subject.item.load.name, []).append(subject)
    return found


@fact("supply", "is_certain", type="yes/no", says="The source surely reaches the load in some state.", method=METHOD)
def is_certain(s: Subject) -> Any:
    read_switching(s)
    supply: Supply = s.item
    return answer(True if supply.certain else None, f"whether {supply.feed.name} feeds {supply.load.name} is not known")


@fact("supply", "load", of="load", type="subject", says="What is fed; none for a charger.", method="graph")
def load(s: Subject) -> Any:
    return s.facts.subject("load", s.item.load.name)


@fact("supply", "load_name", type="text", says="The name of what is fed.", method="graph")
def load_name(s: Subject) -> str:
    return str(s.item.load.name)


@fact("supply", "source", of="ac_source", type="subject", says="What feeds it.", method=METHOD)
def source(s: Subject) -> Any:
    return s.facts.subject("ac_source", s.item.feed.name)


@fact("supply", "source_name", type="text", says="The name of what feeds it.", method=METHOD)
def source_name(s: Subject) -> str:
    return str(s.item.feed.name)


@fact("supply", "source_is_aboard", type="yes/no", says="What feeds it stands in the vehicle.", method="its kind")
def source_is_aboard(s: Subject) -> bool:
    feed: Feed = s.item.feed
    return feed.aboard


@fact("supply", "first_state", type="text", says="The first supply state that shows it.", method=METHOD)
def first_state(s: Subject) -> str:
    return str(s.item.states[0])


def own_residual(s: Subject, load: Equipment) -> Any:
    """Residual current of a device within an outlet, A; None where there is none."""
    return s.read(load, "own rcd") if load.allows("own rcd") else None


@fact(
    "supply",
    "has_residual_device",
    type="yes/no",
    says="Every way from the source to the load passes a residual-current device, or the outlet has its own.",
    method="the graph of the state with those devices taken out: is the load still reached?",
)
def has_residual_device(s: Subject) -> Any:
    read_switching(s)
    supply: Supply = s.item
    if supply.path.protected is True:
        names = ", ".join(device.name for device in supply.path.devices)
        tell(s, f"residual-current devices on the way: {names}")
        tell_state(s, supply.states[0])
        return True
    own = own_residual(s, supply.load)
    if own is None:
        tell(s, "no residual-current device on a way")
        tell_state(s, supply.states[0])
        return answer(supply.path.protected, "part of the run was not seen and may hide a device")
    return own if isinstance(own, Unknown) else True


@fact(
    "supply",
    "residual_current",
    unit="mA",
    says="Lowest rated residual current on the way; none without a residual-current device.",
    method="devices that every way passes, and one within the outlet",
)
def residual_current(s: Subject) -> Any:
    supply: Supply = s.item
    if supply.path.protected is None and own_residual(s, supply.load) is None:
        return Unknown("part of the run was not seen and may hide a device")
    found: list[Number] = [s.read(device, "trips at") for device in supply.path.devices]
    own = own_residual(s, supply.load)
    if own is not None:
        found.append(own)
    if not found:
        return None
    value = found[0]
    for one in found[1:]:
        value = least(value, one)
    return value


@fact(
    "supply",
    "residual_works",
    type="yes/no",
    says="A fault to earth unbalances the residual-current device: neutral meets earth on its supply side.",
    method="the graph of the state with residual-current devices taken out: bonds on the side of the source",
)
def residual_works_(s: Subject) -> Any:
    read_switching(s)
    tell_state(s, s.item.states[0])
    if own_residual(s, s.item.load) is not None and s.item.path.protected is not True:
        low, high = s.item.links
        return answer(True if low else None if high else False, "whether neutral meets earth is not known")
    return answer(s.item.works, "where neutral meets earth is not known")


@fact("supply", "neutral_earth_links", unit="count", says="Neutral-earth links on its neutral.", method=METHOD)
def neutral_earth_links(s: Subject) -> Any:
    read_switching(s)
    tell_state(s, s.item.states[0])
    low, high = s.item.links
    return between(float(low), float(high))


@fact(
    "supply",
    "earth_is_continuous",
    type="yes/no",
    says="The earth of the load is joined to the earth of the source by earth conductors.",
    method="graph of earth and bonding conductors",
)
def earth_is_continuous(s: Subject) -> Any:
    tell_state(s, s.item.states[0])
    return answer(s.item.earthed, "whether a circuit on the way has an earth conductor is not known")


@fact(
    "supply",
    "needs_earth",
    type="yes/no",
    says="What is fed relies on an earth: an outlet, or an appliance of class I.",
    method="kind and class of the load; not behind a separated winding that feeds it alone, nor on a low voltage",
)
def needs_earth(s: Subject) -> Any:
    source = s.facts.subject("ac_source", s.item.feed.name)
    low = False if source is None else source.is_low_voltage
    return both(both(_class_needs_earth(s), negate(s.is_separated)), negate(low))


def _class_needs_earth(s: Subject) -> Any:
    item = s.item.load
    if item.kind == "outlet":
        return True
    if item.kind == "charger":
        case = s.read(item, "case")
        return case if isinstance(case, Unknown) else case == "earthed"
    declared = s.read(item, "class")
    return declared if isinstance(declared, Unknown) else declared == "I"
