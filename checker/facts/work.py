"""Classes of work on this fit-out and who may do them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.design.given import MISSING, Given, Where
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown, equal, greatest

MAINS_WORK, ELV_WORK = "mains work", "elv work"
OTHER_TRADES = (
    "auto-electrician", "auto electrician", "automotive electrician", "gas fitter", "mechanic", "plumber", "carpenter",
    "builder", "apprentice", "owner", "none",
)  # fmt: skip
"""Classes of licence that do not cover work on dangerous voltage, in the words of the trade."""
NOT_A_LICENCE = ("none needed", "not needed", "no", "owner", "not required", "unlicensed")


@subjects("work", "A class of work that this fit-out takes, with the licence of the person who does it.")
def works(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Mains work and battery work where there are such circuits; the other classes as the file names them."""
    people = facts.design.people
    for name, system in ((MAINS_WORK, "ac"), (ELV_WORK, "dc")):
        if name not in people and system in facts.network.systems.values():
            yield name, facts.design.vehicle.where, None
    for name, person in people.items():
        yield name, person.where, person


@fact("design", "works", of="work", type="list", says="The classes of work that this fit-out takes.")
def design_works(s: Subject) -> Any:
    return s.facts.subjects("work")


@fact("work", "is_on_mains", type="yes/no", says="It is work on the mains side.", method="class of work")
def is_on_mains(s: Subject) -> bool:
    return s.id == MAINS_WORK and "ac" in s.facts.network.systems.values()


@fact("work", "highest_direct_voltage", unit="V",
      says="Highest voltage of the direct-current circuits that battery work is about; none for other work.",
      method="conductor.highest_voltage of every live conductor that did not come with the vehicle")  # fmt: skip
def highest_direct_voltage(s: Subject) -> Any:
    if s.id != ELV_WORK:
        return None
    lines = [one for one in s.facts.subjects("conductor") if one.is_live is not False]
    mine = [one for one in lines if equal(one.system, "dc") is not False and equal(one.own, "factory") is not True]
    found = [one.highest_voltage for one in mine]
    return greatest(found) if found else None


@fact(
    "work",
    "has_licence",
    type="yes/no",
    says="A licence for it is named.",
    method="`licence` under `people`; words such as `none needed` are no licence, words without a number prove none; "
    "for mains and battery work not that of another trade, by its class where that is told",
)
def has_licence(s: Subject) -> Any:
    if s.item is None:
        missing = Unknown(f"who does the {s.id}, with which licence, is not said")
        return s.use(f"people.{s.id}.licence", Given(missing, s.where, MISSING))
    told = s.read(s.item, "licence")
    if isinstance(told, Unknown):
        return Unknown(f"the licence for {s.id} is not known")
    if not isinstance(told, str) or told.strip().lower() in NOT_A_LICENCE:
        return False
    trade = s.read(s.item, "class") if s.item.has("class") else None
    if s.id in (MAINS_WORK, ELV_WORK) and isinstance(trade, str) and trade.strip().lower() in OTHER_TRADES:
        return False
    if any(letter.isdigit() for letter in told):
        return trade if isinstance(trade, Unknown) else True
    return Unknown(f"`{told}` holds no number of a licence")
