"""How often a known fault in the example coach is seen, and how often the right cause is named first.

The floors are what was reached when they were written (a failure lists what was missed); none is set for a case.
"""

from __future__ import annotations

from random import Random
from typing import NamedTuple

import pytest

from checker.facts.causes import Cause, causes, reads_of
from checker.facts.subject import Facts, Subject
from tests.facts.coach_faults import MODES, Drawn, Known, coach, known, network, readings, sound_point, taken
from tests.facts.dc_designs import point_of

MOST_LOOKED_AT = 3


class Rate(NamedTuple):
    """Over all faults and modes: how many there were, how many seen, ranked first, ranked among the first three."""

    faults: int
    seen: int
    first: int
    among: int
    missed: list[str]


def outside(taken_in: list[Subject]) -> list[Subject]:
    return [one for one in taken_in if one.agrees is False]


def of_mode(facts: Facts, mode: str) -> list[Subject]:
    return [one for one in facts.subjects("reading") if one.item.item.value("mode") == mode]


def names_it(cause: Cause, fault: Known) -> bool:
    """The right sort, at the right place or with that among the places that readings cannot tell apart."""
    return cause.fault.sort in fault.sorts and any(one in fault.places for one in (cause.fault.where, *cause.also))


def rate(case: str) -> Rate:
    seen = first = among = 0
    missed = []
    faults = known()
    for fault in faults:
        facts = taken(case, fault)
        for mode in MODES:
            there = of_mode(facts, mode)
            if not outside(there):
                continue
            point = point_of(facts, mode)
            found = causes(point, reads_of(there, point))
            ranks = [rank for rank, cause in enumerate(found, 1) if names_it(cause, fault)]
            seen += 1
            first += ranks[:1] == [1]
            among += bool(ranks) and ranks[0] <= MOST_LOOKED_AT
            if ranks[:1] != [1]:
                told = [f"{one.fault.sort} {one.fault.where}" for one in found[:MOST_LOOKED_AT]]
                missed.append(f"{fault.name}, {mode}: {told}")
    return Rate(len(faults) * len(MODES), seen, first, among, missed)


def test_with_the_likely_numbers_every_fault_that_is_seen_is_named_first() -> None:
    found = rate("likely")
    assert found.seen >= 44
    assert found.first == found.seen, found


def test_with_numbers_drawn_and_instruments_that_err_most_faults_seen_are_named_first() -> None:
    found = rate("1")
    assert found.seen >= 50
    assert found.first >= 0.9 * found.seen, found
    assert found.among >= 0.94 * found.seen, found


@pytest.mark.parametrize("seed", range(6))
def test_a_sound_coach_has_no_reading_outside(seed: int) -> None:
    """The numbers drawn within their ranges, the instruments within their tolerance; the first seed: all likely."""
    lines = []
    for mode in MODES:
        point = sound_point(mode)
        found = network(point, Drawn(seed) if seed else "likely", None)
        lines += readings(point, found, Random(seed))
    facts = coach(lines)
    assert len(facts.subjects("reading")) == len(lines)
    assert [one.id for one in facts.subjects("reading") if one.agrees is not True] == []
