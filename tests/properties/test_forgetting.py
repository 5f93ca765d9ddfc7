"""Forgetting decides nothing: an entry that becomes unknown leaves each verdict as it is, or makes it a question."""

from __future__ import annotations

import pytest

from tests.properties.designs import leaves_of, verdicts_of
from tests.properties.forgetting import EXCUSES, Contradiction, contradictions, excused, forgotten, sample
from tests.properties.verdicts import verdicts

FLAWED, CAMPER = "estuary-coach-flawed.fitout.yaml", "heron-camper.fitout.yaml"
EVERY = 7
PARTS = 4
"""The sample is tried in parts, so that several processors share it."""


@pytest.mark.parametrize("name", [FLAWED, CAMPER])
@pytest.mark.parametrize("part", range(PARTS))
def test_a_forgotten_entry_decides_nothing(name: str, part: int) -> None:
    before = verdicts_of(name)
    tried = 0
    for leaf in sample(name, EVERY * PARTS, EVERY * part):
        design = forgotten(name, leaf)
        if design is not None:
            tried += 1
            assert contradictions([leaf.path], before, verdicts(design)) == [], leaf
    assert tried > len(leaves_of(name)) / (EVERY * PARTS) / 2, "most entries may be unknown"


def test_a_contradiction_would_be_seen() -> None:
    pair, paths = ("source-meets-a-device", "approach", "F1"), ["equipment.F1.rating"]
    for was, now in (("breach", "met"), ("breach", "not applicable"), ("met", "breach"), ("unproven", "met")):
        assert [(one.was, one.now) for one in contradictions(paths, {pair: was}, {pair: now})] == [(was, now)]
    for was, now in (("breach", "unproven"), ("met", "unproven"), ("met", "not applicable"), ("breach", "breach")):
        assert contradictions(paths, {pair: was}, {pair: now}) == []
    assert contradictions(paths, {pair: "breach"}, {}) == []


def test_an_excuse_holds_for_its_entries_rules_and_changes_alone() -> None:
    assert all(one.why for one in EXCUSES)
    short = ("conductor-stands-the-short", "conductor", "feed")
    fuse = ("source-meets-a-device", "approach", "feed from bank")
    assert excused("circuits.feed.run.1", Contradiction(short, "unproven", "met"))
    assert not excused("circuits.feed.run.1", Contradiction(short, "breach", "met"))
    assert not excused("circuits.feed.run.1", Contradiction(fuse, "unproven", "met"))
    assert not excused("circuits.feed.cable", Contradiction(short, "unproven", "met"))
    assert excused("code", Contradiction(("inlet-of-the-country", "inlet", "inlet"), "met", "breach"))
    assert not excused("vehicle.code", Contradiction(fuse, "met", "breach"))
