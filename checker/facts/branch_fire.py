"""A thin branch before its own device: whether it stands the short its feeder lets through, and what it lies on."""

from __future__ import annotations

from checker.facts.branch import outer_stretches, unseen_feeder
from checker.facts.catalogue import fact
from checker.facts.clearing import SOURCE, clearing_borders, energy_of
from checker.facts.source_run import does_not_burn
from checker.facts.subject import Subject
from checker.quantities import Truth, every, less_equal


@fact(
    "conductor",
    "branch_stands_the_short",
    type="yes/no",
    says="Before its own device it stands what the devices that feed it let through in a short.",
    method="greatest I² t of the devices outside it that feed a stretch, added as currents, at most k² S²",
    source=SOURCE,
)
def branch_stands_the_short(s: Subject) -> Truth:
    own = {part.equipment.name for part in s.item.links}
    there = [borders for wire, borders in clearing_borders(s) if wire.lengths or wire.gap is not None]
    feeding = ([one for one in borders if one.link.equipment.name not in own] for borders in there)
    answer = every(less_equal(energy_of(s, borders), s.short_time_limit) for borders in feeding if borders)
    loose = unseen_feeder(s)
    return answer if answer is False or loose is None else loose


@fact(
    "conductor",
    "branch_off_combustible",
    type="yes/no",
    says="Before its own device nothing that burns carries it, or metal conduit is around it.",
    method="covering; what its circuit is fixed to, else the surface and the walls of the places passed",
)
def branch_off_combustible(s: Subject) -> Truth:
    wires = [wire for wire, _ in outer_stretches(s)]
    answers = [does_not_burn(s, s.item.circuit, one.place) for wire in wires for one in wire.lengths]
    if any(not wire.gap_measured for wire in wires):
        answers.append(does_not_burn(s, s.item.circuit, None))
    answer, loose = every(answers), unseen_feeder(s)
    return answer if answer is False or loose is None else loose
