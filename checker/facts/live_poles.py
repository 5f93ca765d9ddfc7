"""How many live conductors a source of mains brings: its lines and the neutral."""

from __future__ import annotations

from checker.circuit.elements import LIVE
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.changeover import sources_behind
from checker.facts.mains import states_of
from checker.facts.space import lower, upper
from checker.facts.subject import Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import Number, Range, add, between, equal, greatest, least, subtract

ONE_LINE = 2.0
"""Line and neutral."""
MOST = 4.0
"""Three lines and neutral."""


def live_poles(s: Subject, item: Equipment) -> Number:
    """Live conductors of a source: of an inlet the poles told, else line and neutral of one line. Of more lines one
    may be used alone, and the neutral may be left out, so that anything between is left open."""
    if item.kind == "shore inlet":
        told = s.read(item, "poles")
        if isinstance(told, float | Range):
            return greatest(told, ONE_LINE)
        lines = s.read(s.facts.design.vehicle, "supply.phases")
        return ONE_LINE if equal(lines, 1.0) is True else _up_to(lines, ONE_LINE)
    if item.kind == "generator":
        lines = s.read(item, "phases")
        return ONE_LINE if equal(lines, 1.0) is True else _up_to(lines, lower(lines))
    return ONE_LINE


def _up_to(lines: Number, fewest: float) -> Number:
    """From that to all the lines and a neutral."""
    return between(fewest, upper(add(lines, 1.0)) if isinstance(lines, float | Range) else MOST)


@fact(
    "changeover",
    "live_conductors",
    unit="count",
    says="Most live conductors, the neutral among them, of a source behind it.",
    method="poles of the inlet, else the lines of the site and of a generator with their neutral; two of an inverter",
)
@where_it_stands
def live_conductors(s: Subject) -> Number:
    found = [live_poles(s, item) for item in sources_behind(s)]
    return greatest(*found) if found else ONE_LINE


@fact(
    "switch",
    "live_conductors",
    unit="count",
    says="Live conductors, the neutral among them, of the mains circuit it stands in.",
    method="cores of the cable in whose run it stands, without the one for the earth, no more than any source brings",
)
@where_it_stands
def switch_live_conductors(s: Subject) -> Number:
    feeds = states_of(s.facts).mains.feeds
    most = greatest(*(live_poles(s, feed.equipment) for feed in feeds)) if feeds else ONE_LINE
    if equal(most, ONE_LINE) is True:
        return ONE_LINE
    found: Number = ONE_LINE
    for link in s.facts.network.links:
        owner = s.facts.network.by_link.get(id(link)) if link.equipment is s.item and link.pole == LIVE else None
        if owner is None:
            continue
        cable = owner.circuit.cable
        cores = s.read(cable, "cores") if cable is not None else None
        told = isinstance(cores, float | Range)
        found = greatest(found, least(subtract(cores, 1.0), most) if told else between(ONE_LINE, upper(most)))
    return found
