"""Where the time of a review goes: reading, graph, facts (by kind and one by one), rules, report.

Each fact is charged with its own time only, without that of the facts it rests on. `every_fact` asks all facts of all
subjects, whether a rule uses them or not.
"""

from __future__ import annotations

import gc
from time import process_time
from typing import Any

from checker.commands import RINGS
from checker.facts.catalogue import CATALOGUE, FactSpec
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown
from checker.reading import read_text
from checker.reports import render
from checker.reports.document import document
from checker.review import review
from checker.rulebook import Rulebook

Times = dict[str, float]


class TimedFacts(Facts):
    """Facts that note how long each one took by itself, in processor seconds, under `kind.name`."""

    def __init__(self, *given: Any) -> None:
        super().__init__(*given)
        self.spent: Times = {}
        self.asked: dict[str, int] = {}
        self.broken: dict[str, str] = {}
        self._inside: list[float] = []

    def compute(self, subject: Subject, spec: FactSpec) -> Any:
        """As `Facts.compute`, with a watch."""
        start = process_time()
        self._inside.append(0.0)
        try:
            return super().compute(subject, spec)
        finally:
            whole = process_time() - start
            name = f"{spec.kind}.{spec.name}"
            self.spent[name] = self.spent.get(name, 0.0) + whole - self._inside.pop()
            self.asked[name] = self.asked.get(name, 0) + 1
            if self._inside:
                self._inside[-1] += whole

    def by_kind(self) -> Times:
        """Own time of the facts of each kind."""
        found: Times = {}
        for name, seconds in self.spent.items():
            kind = name.split(".", 1)[0]
            found[kind] = found.get(kind, 0.0) + seconds
        return found


def stages(text: str, rulebook: Rulebook) -> Times:
    """Processor seconds of each stage of one review: `reading`, `graph`, `listing`, `facts`, `rules`, `report`."""
    gc.collect()
    gc.set_threshold(RINGS)  # as the command does
    found: Times = {}
    start = process_time()
    design = read_text(text)
    found["reading"] = process_time() - start

    facts = TimedFacts(design)
    start = process_time()
    _ = facts.network
    found["graph"] = process_time() - start

    start = process_time()
    for kind in CATALOGUE.kinds:
        facts.subjects(kind)
    found["listing"] = process_time() - start

    start = process_time()
    told = review(design, rulebook, facts=facts)
    whole = process_time() - start
    found["facts"] = sum(facts.spent.values())
    found["rules"] = whole - found["facts"]

    start = process_time()
    for piece in render(document(told), "text"):
        len(piece)
    found["report"] = process_time() - start
    return found


def every_fact(text: str) -> TimedFacts:
    """All facts of all subjects of a design, timed; one that breaks is noted in `broken` with its cause."""
    facts = TimedFacts(read_text(text))
    for kind in CATALOGUE.kinds:
        for subject in facts.subjects(kind):
            for spec in CATALOGUE.facts(kind):
                try:
                    getattr(subject, spec.name)
                except Exception as error:  # noqa: BLE001 - whatever it is, the table tells it and goes on
                    facts.broken.setdefault(f"{kind}.{spec.name}", f"{type(error).__name__}: {error}")
    return facts


def unknowns(facts: Facts) -> int:
    """How many of the facts asked so far are unknown: a benchmark of nothing but unknowns would measure nothing."""
    return sum(
        isinstance(value, Unknown)
        for kind in CATALOGUE.kinds
        for subject in facts.subjects(kind)
        for value in vars(subject).values()
    )
