"""Circuits that join the same two points: they share a current as their cables are alike, or each is protected."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.facts.catalogue import fact
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Range, Truth, Unknown, equal, every


def _pairs(facts: Facts) -> dict[frozenset[str], list[str]]:
    """Two points -> the circuits whose live conductors join them; found once."""
    found: dict[frozenset[str], list[str]] | None = facts.shared.get("circuits side by side")
    if found is None:
        found = facts.shared["circuits side by side"] = {}
        for conductor in facts.network.conductors:
            if conductor.role == LIVE:
                found.setdefault(frozenset((conductor.start, conductor.end)), []).append(conductor.circuit.name)
    return found


@fact("circuit", "beside", of="circuit", type="list", says="Circuits that join the same two points as it does.",
      method="ends of the live conductors")  # fmt: skip
def beside(s: Subject) -> tuple[Any, ...]:
    live = s.facts.network.conductor(s.item.name, LIVE)
    if live is None:
        return ()
    names = _pairs(s.facts).get(frozenset((live.start, live.end)), [])
    found = (s.facts.subject("circuit", name) for name in names if name != s.id)
    return tuple(one for one in found if one is not None)


@fact("circuit", "alike_beside", type="yes/no",
      says="Those beside it have its length, its size and its metal, so that they share the current equally.",
      method="length of the runs, cross-section and metal of the live conductors, compared exactly")  # fmt: skip
def alike_beside(s: Subject) -> Truth:
    return every(_same(s, other) for other in s.beside)


def _same(s: Subject, other: Subject) -> Truth:
    one, two = s.live, other.live
    if isinstance(one, Unknown) or isinstance(two, Unknown) or one is None or two is None:
        return Unknown("a conductor beside it is not known")
    pairs: list[tuple[Number, Number]] = [
        (s.run_length, other.run_length), (one.area_in_parallel, two.area_in_parallel)
    ]  # fmt: skip
    return every([*(_equals(first, second) for first, second in pairs), equal(one.material, two.material)])


def _equals(first: Number, second: Number) -> Truth:
    if isinstance(first, Range) or isinstance(second, Range):
        return Unknown("whether two cables side by side are of one length and size is not told exactly")
    return equal(first, second)
