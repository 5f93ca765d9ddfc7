"""The shipped rules on the shipped example designs: whole, repeatable, and without a silent pair."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from checker.facts.subject import Facts
from checker.reading import read_design
from checker.review import Review, review
from checker.rulebook import Rulebook, load_rulebook
from checker.rulebook.walk import Scene, decide
from checker.shipped import shipped

FILES = sorted(Path(str(shipped("examples"))).glob("*.fitout.yaml"))
DESIGNS = [pytest.param(file, id=file.name.removesuffix(".fitout.yaml")) for file in FILES]


@cache
def book() -> Rulebook:
    return load_rulebook()


@cache
def facts(file: Path) -> Facts:
    return Facts(read_design(file))


@cache
def done(file: Path) -> Review:
    return review(facts(file).design, book(), facts=facts(file), keep_all=True)


@pytest.mark.parametrize("file", DESIGNS)
def test_every_pair_of_rule_and_subject_has_one_verdict(file: Path) -> None:
    pairs = sum(len(facts(file).subjects(rule.about)) for rule in book().rules)
    found = [finding for finding in done(file).findings if finding.about.kind != "departure"]
    assert len({finding.key for finding in found}) == len(found) == pairs
    assert sum(done(file).counts.values()) == len(done(file).findings)


@pytest.mark.parametrize("file", DESIGNS)
def test_nothing_breaks(file: Path) -> None:
    assert done(file).broken == ()


@pytest.mark.parametrize("file", DESIGNS)
def test_an_unproven_finding_says_what_is_missing_or_why_it_cannot_be_known(file: Path) -> None:
    for finding in done(file).findings:
        if finding.verdict == "unproven":
            assert finding.needs or any("unknown" in line or ".." in line for line in finding.working), finding.key


@pytest.mark.parametrize("file", DESIGNS)
def test_a_finding_says_where_and_what_in_words(file: Path) -> None:
    for finding in done(file).findings:
        assert finding.where.line >= 1
        assert finding.says.strip()
        assert "object at 0x" not in finding.says + finding.mend + " ".join(finding.working)
        if finding.verdict in ("breach", "unproven") and finding.about.kind != "departure":
            assert finding.working
            assert finding.mend


@pytest.mark.parametrize("file", DESIGNS)
def test_compiled_rules_decide_like_the_walk_over_their_trees(file: Path) -> None:
    limits = book().limits_for(done(file).rulebook["code"])
    whole = facts(file).subjects("design")[0]
    verdicts = {finding.key: finding.verdict for finding in done(file).findings}
    for rule in book().rules:
        for subject in facts(file).subjects(rule.about):
            found = verdicts[f"{rule.id}:{subject.kind}:{subject.id}"]
            walked = decide(rule.given_tree, rule.require_tree, Scene((subject, whole), limits))
            assert found == walked or (found, walked) == ("set aside", "breach")


@pytest.mark.parametrize("file", DESIGNS)
def test_a_second_review_finds_the_same(file: Path) -> None:
    first = review(read_design(file), book())
    second = review(read_design(file), load_rulebook())
    assert first == second


@pytest.mark.parametrize("file", DESIGNS)
def test_a_folded_finding_is_under_one_that_stands_for_itself(file: Path) -> None:
    under = {finding.key: finding.under for finding in done(file).findings}
    for head in filter(None, under.values()):
        assert under[head] is None
