"""Bus bars: rating, studs, cover."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import BONDING, LIVE, RETURN
from checker.design.given import Where
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.facts.terminal import high, low, wires_at
from checker.quantities import Number, Truth, Unknown, add, greatest, total
from checker.quantities.values import between


@subjects("bar", "A bus bar, both poles together.")
def bars(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.network.equipment.values():
        if item.kind == "bar":
            yield item.name, item.where, item


@fact("bar", "rating", unit="A", says="Current it may carry.")
def rating(s: Subject) -> Any:
    return s.read(s.item, "rating")


def joined(s: Subject, pole: str) -> list[Any]:
    """The conductors that end on one pole of it."""
    found = dict.fromkeys(wire.conductor for wire in wires_at(s.facts, f"{s.item.name}:{pole}"))
    twins = (s.facts.of("conductor", conductor) for conductor in found)
    return [twin for twin in twins if twin is not None]


@fact(
    "bar",
    "current",
    unit="A",
    says="Greatest lasting current that can meet in it.",
    method="what flows in flows out, so no section carries more than half the sum of its conductors; at least what one "
    "conductor carries when the others can take it; on a bar of the negative alone the returns, of which "
    "all may leave by its bonds",
)
def current(s: Subject) -> Any:
    live = [one.design_current for one in joined(s, "+") if one.item.role == LIVE]
    if live:
        return _through(s, live, bonds=0)
    # A bar of the negative alone: what returns there, and what leaves it by the bonds, whose share nobody tells.
    negative = joined(s, "-")
    returns = [_comes_back(s, one) for one in negative if one.item.role == RETURN]
    return _through(s, returns, bonds=sum(one.item.role == BONDING for one in negative))


def _comes_back(s: Subject, one: Any) -> Number:
    """What a return carries: that of its circuit, or, where it only joins negatives, what comes together in it."""
    alone = s.facts.network.conductor(one.item.circuit.name, LIVE) is None
    return one.gathered_current if alone else one.design_current  # type: ignore[no-any-return]


def _through(s: Subject, currents: list[Number], bonds: int) -> Number:
    """The greatest current that a section carries where these conductors meet, and so many bonds."""
    if not currents or len(currents) + bonds < 2:
        return 0.0
    top, all_of_them = greatest(currents), total(currents)
    if isinstance(top, Unknown) or isinstance(all_of_them, Unknown):
        return top if isinstance(top, Unknown) else all_of_them
    most, whole = high(top), high(all_of_them)
    if bonds:
        s.note(lambda: f"up to {whole:.4g} A leave it by its bonds; the largest alone is {most:.4g} A")
        return between(low(top), whole)
    upper = min(whole / 2.0, whole - most)
    s.note(lambda: f"half of {whole:.4g} A is {whole / 2:.4g} A; the largest alone is {most:.4g} A")
    return between(min(low(top), upper), upper) if upper > 0 else 0.0


@fact("bar", "studs", unit="count", says="Studs or screws of one pole.")
def studs(s: Subject) -> Any:
    return s.read(s.item, "studs")


@fact("bar", "lugs", unit="count", says="Lugs on its fuller pole.", method="conductors that end on it")
def lugs(s: Subject) -> Any:
    counts = []
    for pole in ("+", "-"):
        count: Number = 0.0
        for one in joined(s, pole):
            count = add(count, s.read(one.item.circuit, "in parallel"))
        counts.append(count)
    return greatest(counts)


@fact("bar", "covered", type="yes/no", says="Its live metal is covered.")
def covered(s: Subject) -> Truth:
    stated = s.read(s.item, "cover")
    return False if stated is None else stated
