"""Knowing more never overturns a verdict: a range in a design is replaced by a number within it, and what was met,
broken or not applicable stays so."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from checker.design.item import Item
from checker.facts.subject import Facts
from checker.quantities import Range, exact, show
from checker.reading import ReadingErrors, read_text
from checker.review import Review, review
from checker.rulebook import Rulebook, load_rulebook
from checker.rulebook.logic import truth
from checker.rulebook.walk import Scene, evaluate
from checker.shipped import shipped

FILE = Path(str(shipped("examples"))) / "saltbush-survey.fitout.yaml"
TEXT = FILE.read_text("utf-8")


@cache
def book() -> Rulebook:
    return load_rulebook()


def items(design: Any) -> Iterator[Item]:
    """Everything in the design that has keys."""
    yield design.vehicle
    for name in ("cables", "parts", "places", "passes", "moving", "circuits", "modes"):
        yield from getattr(design, name).values()
    for equipment in design.equipment.values():
        yield equipment
        yield from equipment.terminals.values()


@cache
def ranges() -> tuple[tuple[str, Range, str], ...]:
    """Path, range and unit of every entry of the design that is a range with two ends."""
    found = {}
    for item in items(read_text(TEXT)):
        for key, written in item.written():
            unit = item.vocabulary.keys[key].unit
            if type(written.value) is Range and exact(written.value.low) and exact(written.value.high):
                found[f"{item.path}.{key}"] = (written.value, unit)
    return tuple((path, value, unit) for path, (value, unit) in found.items())


@cache
def before() -> tuple[Review, Facts]:
    facts = Facts(read_text(TEXT))
    return review(facts.design, book(), facts=facts, keep_all=True), facts


def applies_for_sure(rule_id: str, kind: str, id: str) -> bool:
    """Whether the rule certainly applied before more was known."""
    done, facts = before()
    rule = book().by_id[rule_id]
    scene = Scene((facts.subject(kind, id), facts.subjects("design")[0]), book().limits_for(done.rulebook["code"]))
    return truth(evaluate(rule.given_tree, scene)) is True


def test_the_design_holds_ranges_enough_for_the_test_to_mean_something() -> None:
    assert len(ranges()) >= 10
    assert before()[0].counts["unproven"] > 20


shares = st.lists(st.sampled_from((0.0, 0.25, 0.5, 1.0, None)), min_size=60, max_size=60)


# No shrinking: one review takes a tenth of a second, and a case names its entries anyway.
PHASES = (Phase.explicit, Phase.generate)


@settings(max_examples=15, deadline=None, phases=PHASES)
@given(shares)
def test_a_number_within_each_range_keeps_every_verdict_that_was_decided(shares: list[float | None]) -> None:
    edits = []
    for (path, value, unit), share in zip(ranges(), shares, strict=False):
        if share is not None:
            edits.append((path, show(value.low + share * (value.high - value.low), unit, 12)))
    after = review(read_text(TEXT, edits=edits), book(), keep_all=True)
    verdicts = {finding.key: finding.verdict for finding in after.findings}
    for finding in before()[0].findings:
        if finding.verdict == "unproven" or finding.key not in verdicts:
            continue
        now = verdicts[finding.key]
        if finding.verdict == "met" and now == "not applicable":
            assert not applies_for_sure(finding.rule, *finding.about), (finding.key, edits)
        else:
            assert now == finding.verdict, (finding.key, edits)


@pytest.mark.parametrize("share", [0.0, 0.5, 1.0])
def test_no_subject_is_lost_when_more_is_known(share: float) -> None:
    edits = [(path, show(value.low + share * (value.high - value.low), unit, 12)) for path, value, unit in ranges()]
    after = review(read_text(TEXT, edits=edits), book(), keep_all=True)
    lost = {finding.key for finding in before()[0].findings} - {finding.key for finding in after.findings}
    assert not lost
    assert after.counts["unproven"] < before()[0].counts["unproven"], "knowing more decides more"


FLAWED = (Path(str(shipped("examples"))) / "estuary-coach-flawed.fitout.yaml").read_text("utf-8")
SHAPES = ("quantity", "ratio", "count", "window", "rated voltage", "word", "yes/no")


@cache
def exact_entries() -> tuple[str, ...]:
    """Paths of the entries of the flawed coach that can be forgotten."""
    found = []
    for item in items(read_text(FLAWED)):
        for key, written in item.written():
            spec = item.vocabulary.keys[key]
            if spec.shape in SHAPES and not spec.required and written.basis == "stated" and "#" not in item.path:
                found.append(f"{item.path}.{key}")
    return tuple(dict.fromkeys(found))


@cache
def flawed() -> Review:
    return review(read_text(FLAWED), book(), keep_all=True)


def known(paths: list[str]) -> list[str]:
    """Those of the paths that the reader lets be unknown."""
    taken = []
    for path in paths:
        try:
            read_text(FLAWED, edits=[(path, "unknown")])
        except (ReadingErrors, ValueError):
            continue
        taken.append(path)
    return taken


@settings(max_examples=10, deadline=None, phases=PHASES)
@given(st.lists(st.integers(0, 10_000), min_size=1, max_size=6))
def test_what_is_forgotten_makes_nothing_met_that_was_not(places: list[int]) -> None:
    paths = known([exact_entries()[place % len(exact_entries())] for place in places])
    after = review(read_text(FLAWED, edits=[(path, "unknown") for path in paths]), book(), keep_all=True)
    before_verdicts = {finding.key: finding.verdict for finding in flawed().findings}
    for finding in after.findings:
        was = before_verdicts.get(finding.key)
        if finding.verdict == "met":
            assert was in (None, "met", "not applicable"), (finding.key, was, paths)
