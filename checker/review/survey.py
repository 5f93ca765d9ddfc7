"""The questions that a design leaves open, entry by entry: where to go, what to look at, what hangs on the answer."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from checker.facts.catalogue import CATALOGUE
from checker.facts.inspected import ASKED
from checker.facts.subject import Facts
from checker.review.finding import SIGNALS, About, Finding, Need
from checker.review.survey_entries import WHOLE, Entry, on_mains, resolve
from checker.review.survey_ways import Way, section_named, taken, way_for
from checker.rulebook.nodes import Const, Fact, Logic, Member, Node, Not, walk
from checker.rulebook.words import in_words

if TYPE_CHECKING:
    from checker.review.run import Review
    from checker.rulebook import Rule, Rulebook

LOOKED_AT = "papers.inspected"
FOUND_WRONG = "papers.found wrong"


class Hanging(NamedTuple):
    """A finding that an answer would settle, or help to: `alone` when nothing else is needed for it.

    `wanted` is what must be so; otherwise the `title` of the rule holds. `names` are words that its rule looks for in
    a list, such as those a label has to say.
    """

    rule: str
    signal: str
    about: About
    alone: bool
    wanted: str
    title: str
    covers: tuple[str, ...]
    names: tuple[str, ...] = ()


class Question(NamedTuple):
    """One entry to find out. `now` is what the file says, `takes` what may be written; `settles` is worst first.

    `word` is the one to add to the list of what was looked at, empty where something else is to be written.
    """

    entry: str
    word: str
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
    wanted = _wanted(rule) if rule is not None else ""
    names = _looked_for(rule) if rule is not None else ()
    return Hanging(finding.rule, finding.signal, finding.about, alone, wanted, finding.title, finding.covers, names)


def _looked_for(rule: Rule) -> tuple[str, ...]:
    members = [node for node in walk(rule.require_tree) if isinstance(node, Member) and isinstance(node.group, Fact)]
    return tuple(dict.fromkeys(str(one.item.value) for one in members if isinstance(one.item, Const)))


def _named(entry: Entry, settles: list[Hanging]) -> tuple[str, ...]:
    """The words that the rules look for in a list, of those that its key takes, in the order of the key."""
    wanted = {word for one in settles for word in one.names}
    return tuple(word for word in entry.key.words if word in wanted) if entry.key is not None else ()


def _wanted(rule: Rule) -> str:
    """What must be so: the sentences of plain yes/no facts, and the condition in words where it is more than that."""
    tree = rule.require_tree
    parts = tree.parts if isinstance(tree, Logic) and tree.op == "and" else (tree,)
    said = [_sentence(part) for part in parts]
    return "; ".join(said) if all(said) else in_words(tree)


def _sentence(node: Node) -> str:
    """The sentence of a yes/no fact, or its denial; empty for anything else."""
    denied = isinstance(node, Not)
    inner = node.part if isinstance(node, Not) else node
    spec = CATALOGUE.find(inner.base.type.of, inner.name) if isinstance(inner, Fact) else None
    if spec is None or spec.type != "yes/no":
        return ""
    return f"{'not: ' if denied else ''}{spec.says.rstrip('.')}"


def _question(
    key: tuple[str, str], settles: list[Hanging], now: tuple[str, int], facts: Facts, mains: frozenset[str]
) -> Question:
    path, look = key
    entry = resolve(facts.design, path)
    known = tuple(getattr(facts.design, section_named(entry), ()))
    way = way_for(entry, _touches(entry, mains), (look,) if look else (), _named(entry, settles), known)
    worst = sorted(settles, key=lambda one: (SIGNALS.index(one.signal), not one.alone, one.rule, one.about))
    text = "" if look else taken(entry)
    return Question(path, look, WHOLE if look else entry.place, now[0], now[1], text, way, tuple(worst))


def _touches(entry: Entry, mains: frozenset[str]) -> bool:
    return entry.item is not None and entry.item.name.split(".")[0] in mains
