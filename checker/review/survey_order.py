"""The questions of a survey in the order in which one person walks them: place by place, instrument by instrument.

Papers come first, since they settle much and nothing has to be isolated for them; tests with instruments come last,
because they are made on the finished work. Between them the place with the worst question comes first.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from checker.review.survey_entries import INSTRUMENTS, PAPERS

if TYPE_CHECKING:
    from checker.review.survey import Question

MOST_FIRST = 8
"""Entries named to begin with when time is short."""


class Step(NamedTuple):
    """What is done in one place with one instrument in hand; the questions are numbered from `first`."""

    place: str
    instrument: str
    first: int
    questions: tuple[Question, ...]

    @property
    def last(self) -> int:
        """Number of its last question."""
        return self.first + len(self.questions) - 1


def order_of_work(questions: Iterable[Question]) -> tuple[Step, ...]:
    """All questions, each once, as steps; `questions` come worst first and stay so within a step."""
    places: dict[str, dict[str, list[Question]]] = {}
    for one in questions:
        places.setdefault(one.place, {}).setdefault(one.way.instrument, []).append(one)
    found: list[Step] = []
    number = 1
    for place in sorted(places, key=_when):  # the sort is stable: equal places stay worst first
        for instrument, held in places[place].items():
            found.append(Step(place, instrument, number, tuple(held)))
            number += len(held)
    return tuple(found)


def _when(place: str) -> int:
    return {PAPERS: 0, INSTRUMENTS: 2}.get(place, 1)


def settle_most(steps: Iterable[Step]) -> tuple[int, ...]:
    """Numbers of the questions on which most findings hang, the most first."""
    numbered = [(step.first + at, one) for step in steps for at, one in enumerate(step.questions)]
    numbered.sort(key=lambda pair: (-len(pair[1].settles), pair[0]))
    return tuple(number for number, _ in numbered[:MOST_FIRST])
