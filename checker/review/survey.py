"""The questions that a design leaves open, entry by entry: where to go, what to look at, what hangs on the answer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, NamedTuple

from checker.design.keys_page import takes
from checker.facts.inspected import ASKED
from checker.facts.subject import Facts
from checker.review.finding import SIGNALS, About, Finding, Need
from checker.review.survey_entries import WHOLE, Entry, on_mains, resolve
from checker.review.survey_ways import Way, way_for
from checker.rulebook.nodes import Fact, walk
from checker.rulebook.words import in_words

if TYPE_CHECKING:
    from checker.review.run import Review
    from checker.rulebook import Rule, Rulebook

LOOKED_AT = "papers.inspected"
FOUND_WRONG = "papers.found wrong"


class Hanging(NamedTuple):
    """A finding that an answer would settle, or help to: `alone` when nothing else is needed for it.

    `wanted` is what must be so; otherwise the `title` of the rule holds.
    """

    rule: str
    signal: str
    about: About
    alone: bool
    wanted: str
    title: str
    covers: tuple[str, ...]


class Question(NamedTuple):
    """One entry to find out. `now` is what the file says, `takes` what may be written; `settles` is worst first."""

    entry: str
    place: str
    now: str
    line: int
    takes: str
    way: Way
    settles: tuple[Hanging, ...]

    @property
    def signal(self) -> str:
        """The worst signal that hangs on it."""
        return min((one.signal for one in self.settles), key=SIGNALS.index)


class Survey(NamedTuple):
    """All questions, worst first, and the findings that no entry would settle."""

    questions: tuple[Question, ...]
    unasked: tuple[Finding, ...]
    undecided: int


def survey(review: Review, rulebook: Rulebook, facts: Facts) -> Survey:
    """The questions of a review: one for each entry that some unproven finding needs, one for each look.

    `facts` are those of the design that was reviewed.
    """
    rules = {rule.id: rule for rule in rulebook.rules}
    mains = on_mains(facts.network)
    open_ = [finding for finding in review.findings if finding.verdict == "unproven"]
    told: dict[tuple[str, str], list[Hanging]] = {}
    now: dict[tuple[str, str], tuple[str, int]] = {}
    for finding in open_:
        rule = rules.get(finding.rule)
        look = _look(rule)
        needs = _needs(finding, look)
        for need in needs:
            key = (need.path, look if need.path == LOOKED_AT else "")
            told.setdefault(key, []).append(_hanging(finding, rule, len(needs) == 1))
            now.setdefault(key, (need.what, need.line))
    found = [_question(key, told[key], now[key], facts, mains) for key in told]
    found.sort(key=lambda one: (SIGNALS.index(one.signal), -len(one.settles), one.entry, one.way.write))
    unasked = tuple(one for one in open_ if not _needs(one, _look(rules.get(one.rule))))
    return Survey(tuple(found), unasked, len(open_))


def _needs(finding: Finding, look: str) -> tuple[Need, ...]:
    """What a finding needs; of a look at the vehicle the one list that takes the answer, written or not."""
    if not look:
        return finding.needs
    others = [need for need in finding.needs if need.path not in (LOOKED_AT, FOUND_WRONG)]
    lines = [need.line for need in finding.needs if need.path in (LOOKED_AT, FOUND_WRONG)]
    return (Need(LOOKED_AT, f"`{look}` is not on the list", lines[0] if lines else finding.where.line, 1), *others)


def _look(rule: Rule | None) -> str:
    """The word under `papers.inspected` that a rule asks for; empty when it asks for none."""
    if rule is None:
        return ""
    names = {node.name for node in walk(rule.require_tree) if isinstance(node, Fact)}
    return next((word for name, word, _ in ASKED if f"{name}_inspected" in names), "")


def _hanging(finding: Finding, rule: Rule | None, alone: bool) -> Hanging:
    wanted = in_words(rule.require_tree) if rule is not None else ""
    return Hanging(finding.rule, finding.signal, finding.about, alone, wanted, finding.title, finding.covers)


def _question(
    key: tuple[str, str], settles: list[Hanging], now: tuple[str, int], facts: Facts, mains: frozenset[str]
) -> Question:
    path, look = key
    entry = resolve(facts.design, path)
    way = way_for(entry, _touches(entry, mains), (look,) if look else ())
    worst = sorted(settles, key=lambda one: (SIGNALS.index(one.signal), not one.alone, one.rule, one.about))
    text = takes(entry.key).replace("`", "") if entry.key is not None and not look else ""
    return Question(path, WHOLE if look else entry.place, now[0], now[1], text, way, tuple(worst))


def _touches(entry: Entry, mains: frozenset[str]) -> bool:
    return entry.item is not None and entry.item.name.split(".")[0] in mains


def by_place(questions: tuple[Question, ...]) -> Mapping[str, tuple[Question, ...]]:
    """The questions by where to go, the place with the worst question first."""
    found: dict[str, list[Question]] = {}
    for question in questions:
        found.setdefault(question.place, []).append(question)
    return {place: tuple(held) for place, held in found.items()}
