"""Classes of work on this fit-out and who may do them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.design.given import MISSING, Given, Where
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown

MAINS_WORK = "mains work"
NOT_A_LICENCE = ("none needed", "not needed", "no", "owner", "not required")


@subjects("work", "A class of work that this fit-out takes, with the licence of the person who does it.")
def works(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Mains work where there are mains circuits; the other classes as the file names them."""
    people = facts.design.people
    if MAINS_WORK not in people and "ac" in facts.network.systems.values():
        yield MAINS_WORK, facts.design.vehicle.where, None
    for name, person in people.items():
        yield name, person.where, person


@fact("work", "is_on_mains", type="yes/no", says="It is work on the mains side.", method="class of work")
def is_on_mains(s: Subject) -> bool:
    return s.id == MAINS_WORK and "ac" in s.facts.network.systems.values()


@fact(
    "work",
    "has_licence",
    type="yes/no",
    says="A licence for it is named.",
    method="`licence` under `people`; words such as `none needed` are no licence",
)
def has_licence(s: Subject) -> Any:
    if s.item is None:
        missing = Unknown("who does the mains work, with which licence, is not said")
        return s.use(f"people.{MAINS_WORK}.licence", Given(missing, s.where, MISSING))
    told = s.read(s.item, "licence")
    if isinstance(told, Unknown):
        return Unknown(f"the licence for {s.id} is not known")
    return isinstance(told, str) and told.strip().lower() not in NOT_A_LICENCE
