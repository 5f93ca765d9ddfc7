"""The switches of a bank: which bank one isolates, what it must open, where the one that works it is reached."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Edge, Link
from checker.circuit.supply import is_live
from checker.design.model import Equipment
from checker.design.vocabulary.words import ACCESS
from checker.facts.bank import loose_bank, stands_unseen
from checker.facts.bank_isolation import First, control_of, isolating, main_ways, perhaps_exempt
from checker.facts.bank_management import driven_by
from checker.facts.catalogue import fact
from checker.facts.darkness import darkeners, live_node
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import UNKNOWN, Number, Range, Truth, Unknown, either, greatest, least, multiply, some
from checker.quantities.values import between

BREAKERS = ("breaker", "rcbo")


def bank_of(facts: Facts, switch: Equipment) -> Any:
    """The bank that a switch isolates, None when it isolates none; unknown where the duty of its way is."""
    doubt: Unknown | None = None
    for bank in facts.subjects("bank"):
        for way in main_ways(bank):
            if any(first.item is switch for first in way.first):
                if perhaps_exempt(way) is False:
                    return bank
                doubt = Unknown(f"what {way.conductor.circuit.name} is for is not told")
    return doubt


@fact("switch", "isolates_bank", of="bank", type="subject", says="The bank it isolates; none when it isolates none.",
      method="the first switch on a way from a bank to loads")  # fmt: skip
@where_it_stands
def isolates_bank(s: Subject) -> Any:
    found = bank_of(s.facts, s.item)
    if found is None:
        loose = loose_bank(s.facts)
        if loose is not None:
            return loose
        if stands_unseen(s.facts, s.item):
            return Unknown(f"{s.id} stands in no run that was seen")
    return found


@fact("device", "isolates_bank", of="bank", type="subject",
      says="The bank that it isolates as a breaker in place of a switch; none when it isolates none.",
      method="the first switch or isolating breaker on a way from a bank to loads")  # fmt: skip
def device_isolates_bank(s: Subject) -> Any:
    if s.item.kind not in BREAKERS:
        return None
    found = bank_of(s.facts, s.item)
    ways = [way for bank in s.facts.subjects("bank") for way in main_ways(bank)]
    asked = any(s.item in way.perhaps and not way.first for way in ways)
    return Unknown(f"whether {s.id} isolates is not told") if found is None and asked else found


@fact("device", "access", words=ACCESS, says="How a hand gets to it.")
def access(s: Subject) -> Any:
    return s.read(s.item, "access")


@fact(
    "load",
    "dark_by_breaker",
    of="device",
    type="list",
    says="Breakers isolating a bank in place of a switch that take every battery away from it, in some mode.",
    method="each taken out in turn; walk from every battery through converters, contacts as in each mode",
)
def dark_by_breaker(s: Subject) -> Any:
    node = live_node(s.facts, s.item)
    breakers = [one for one in s.facts.subjects("device") if one.isolates_bank is not None]
    if node is None:
        return Unknown(f"{s.id} is not connected")
    found, perhaps = darkeners(s.facts, node, [one.id for one in breakers])
    if perhaps:
        return Unknown("part of its supply was not seen, or a contact on it is not known")
    return tuple(one for one in breakers if one.id in found)


@fact(
    "switch",
    "opens_bank",
    of="bank",
    type="subject",
    says="The bank that goes dead with it: one that it isolates, or whose first switch stands in series with it; none "
    "for others.",
    method="from the first switches of a bank on while nothing branches off; what its management drives left out",
)
@where_it_stands
def opens_bank(s: Subject) -> Any:
    found = s.isolates_bank
    for bank in s.facts.subjects("bank") if found is None else ():
        managed = driven_by(s.facts, bank.item)
        for way in main_ways(bank):
            serves = some([_in_series_with(s, first) for first in way.first])
            if s.item in way.perhaps:
                serves = isolating(s.facts, s.item)
            if serves is not False and s.id not in managed:
                return bank if serves is True and perhaps_exempt(way) is False else either(serves, UNKNOWN)
    return found


def _in_series_with(s: Subject, first: First) -> Truth:
    """Whether a switch stands behind the first one of a bank, and nothing branches off between them."""
    came: Edge = first.link
    node, seen = first.behind, {first.behind}
    while True:
        onward = [(edge, end) for edge, end in s.facts.network.near.get(node, ()) if edge is not came and is_live(edge)]
        if len(onward) != 1 or onward[0][1] in seen:
            return False
        came, node = onward[0]
        seen.add(node)
        if isinstance(came, Link) and came.equipment is s.item:
            return isolating(s.facts, s.item)


@fact("switch", "control_access", words=ACCESS, says="How a hand gets to the small switch that works it from afar.",
      method="where its signal comes from, or in the line of its coil")  # fmt: skip
def control_access(s: Subject) -> Any:
    control = control_of(s.facts, s.item)
    return Unknown(f"what works {s.id} is not told") if control is None else s.read(control, "access")


@fact(
    "switch",
    "current_to_break",
    unit="A",
    says="Greatest lasting current that a battery switch carries and must be able to open.",
    method="what all that the bank feeds can ask at once, or all its chargers give; no more than the fuse in its "
    "run, and on one branch of several no more than its conductors carry in use",
)
def current_to_break(s: Subject) -> Any:
    bank = s.isolates_bank
    if bank is None or isinstance(bank, Unknown):
        return bank
    out, back = bank.load_sum, bank.charge_sum
    asked = greatest(out, back) if not isinstance(out, Unknown) and not isinstance(back, Unknown) else UNKNOWN
    if sum(len(way.first) for way in main_ways(bank)) > 1:  # it opens one branch of several
        asked = least([one for one in (asked, s.greatest_current) if not isinstance(one, Unknown)] or [UNKNOWN])
    fuses: list[Number] = [s.read(device, "rating") for device in _in_series(s)]
    known = [one for one in fuses if isinstance(one, float | Range)]
    if isinstance(asked, Unknown):
        if not known:
            return Unknown(f"what {bank.id} can be asked for is not known")
        return between(0.0, min(one.high if isinstance(one, Range) else one for one in known))
    most = least([asked, *known])
    return most if len(known) == len(fuses) else multiply(most, Range(0.0, 1.0))


def _in_series(s: Subject) -> list[Equipment]:
    """The protective devices that stand in the same run as the switch."""
    for link in s.facts.network.links:
        if link.equipment is s.item and link.pole == LIVE:
            run = s.facts.network.by_link.get(id(link))
            if run is not None:
                return [one.equipment for one in run.links if one.is_protective]
    return []
