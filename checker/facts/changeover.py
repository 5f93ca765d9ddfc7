"""What changes a part of the mains side from one source to another: changeovers, and the transfer in an inverter."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.inside import throws_of
from checker.design.given import Where
from checker.facts.catalogue import fact, subjects
from checker.facts.mains import TOO_MANY, answer, read_switching, states_of
from checker.facts.state import METHOD
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import UNKNOWN, Number, Unknown, divide, greatest


@subjects("changeover", "A mains changeover, or the transfer inside an inverter-charger.")
def changeovers(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In the order of their links."""
    mains = states_of(facts).mains
    for item in dict.fromkeys(link.equipment for link in mains.switching if link.when in ("throw", "transfer")):
        if item.kind in ("changeover", "inverter-charger"):
            yield item.name, item.where, item


def _built_in(s: Subject) -> bool:
    return bool(s.item.kind == "inverter-charger")


@fact("changeover", "is_built_in", type="yes/no", says="It is the transfer inside an inverter-charger.")
def is_built_in(s: Subject) -> bool:
    return _built_in(s)


@fact("changeover", "poles", unit="count", says="Conductors it moves together.")
def poles(s: Subject) -> Any:
    return s.read(s.item, "transfer.poles" if _built_in(s) else "poles")


@fact("changeover", "breaks_before_make", type="yes/no", says="It leaves one source before it reaches the next.")
def breaks_before_make(s: Subject) -> Any:
    if not _built_in(s):
        return s.read(s.item, "break before make")
    feedback = s.read(s.item, "transfer.backfeed")
    return feedback if isinstance(feedback, Unknown) else feedback == "blocked"


@fact("changeover", "contact_rating", unit="A", says="Rated current of its contacts.")
def contact_rating(s: Subject) -> Any:
    return s.read(s.item, "transfer.rating" if _built_in(s) else "rating")


def _ends(s: Subject) -> dict[str, str]:
    """The live node of each throw, or of each side of a transfer."""
    name = s.item.name
    if _built_in(s):
        return {"input": f"{name}:ac-inL", "output": f"{name}:ac-outL"}
    if s.item.kind != "changeover":  # of contacts that the states do not move both sides are one
        mine = [link for link in states_of(s.facts).mains.switching if link.equipment is s.item and link.pole == LIVE]
        return {side: node for link in mine for side, node in (("a", link.a), ("b", link.b))}
    return {throw: f"{name}:{throw}" for throw in throws_of(s.item) if throw != "open"}


def _reached(s: Subject) -> tuple[dict[str, set[str]], dict[str, set[str]]]:
    """For each throw the names of the sources that are ever behind it: surely, and perhaps. Found once."""
    kept: dict[str, tuple[dict[str, set[str]], dict[str, set[str]]]] = s.facts.shared.setdefault("behind throws", {})
    if s.id in kept:
        return kept[s.id]
    sure: dict[str, set[str]] = {}
    may: dict[str, set[str]] = {}
    ends = _ends(s)
    for state in states_of(s.facts).states:
        for throw, (surely, perhaps) in state.feeds_without(s.item, ends).items():
            if state.certain:
                sure.setdefault(throw, set()).update(surely)
            may.setdefault(throw, set()).update(surely, perhaps)
    kept[s.id] = sure, may
    return sure, may


def _two(reached: dict[str, set[str]]) -> bool:
    """Whether two throws can be fed by different sources."""
    sides = [names for names in reached.values() if names]
    return any(len(a | b) > 1 for index, a in enumerate(sides) for b in sides[index + 1 :])


@fact(
    "changeover",
    "is_between_sources",
    type="yes/no",
    says="Different sources of mains can stand at two of its throws.",
    method=METHOD,
)
@fact(
    "switch",
    "is_between_sources",
    type="yes/no",
    says="Different sources of mains can stand at its two sides.",
    method=METHOD,
)
@where_it_stands
def is_between_sources(s: Subject) -> Any:
    read_switching(s)
    if not states_of(s.facts).complete:
        return TOO_MANY
    sure, may = _reached(s)
    return answer(True if _two(sure) else None if _two(may) else False, "what stands at its throws is not known")


@fact(
    "changeover",
    "source_current",
    unit="A",
    says="Greatest current of a source that it may carry.",
    method="site outlet (else the inlet), generator or inverter power over the mains voltage",
)
@fact(
    "switch",
    "source_current",
    unit="A",
    says="Greatest current of a source that it may carry.",
    method="site outlet (else the inlet), generator or inverter power over the mains voltage",
)
@where_it_stands
def source_current(s: Subject) -> Any:
    most: Number = 0.0
    for item in sources_behind(s):
        current = current_of(s, item)
        if isinstance(current, Unknown):
            return current
        most = greatest(most, current)
    return most


def sources_behind(s: Subject) -> list[Any]:
    """The equipment of the sources that may stand behind its throws."""
    _, may = _reached(s)
    names = {name for reached in may.values() for name in reached}
    return [feed.equipment for feed in states_of(s.facts).mains.feeds if feed.name in names]


def current_of(s: Subject, item: Any) -> Any:
    """Rated current of a source of mains, A."""
    vehicle = s.facts.design.vehicle
    if item.kind == "shore inlet":
        # Left out it is as the inlet; one that is there and that nobody can read may be larger.
        return s.read(vehicle, "site outlet") if vehicle.has("site outlet") else s.read(item, "rating")
    if item.kind == "transformer":
        return s.read(item, "secondary.current")
    volts = s.read(vehicle, "supply.voltage") if item.kind == "generator" else s.read(item, "ac.voltage")
    power = s.read(item, "power")
    if isinstance(power, Unknown) or power is None:
        return UNKNOWN
    return divide(power, volts)
