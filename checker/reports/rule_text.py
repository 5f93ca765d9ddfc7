"""One rule in full, without a design: what it asks of what, why, what puts it right, its limits by code and sources."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, TypedDict

from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.paragraphs import Painter, heading, labelled, paragraph
from checker.rulebook.nodes import Fact, Limit, walk
from checker.rulebook.page import cited, shown
from checker.rulebook.words import in_words, spoken
from checker.source.problems import article

if TYPE_CHECKING:
    from checker.rulebook import Rule, Rulebook


class LimitAt(TypedDict):
    """A limit under one code of practice."""

    limit: str
    says: str
    code: str
    value: str
    source: str


class WholeRule(TypedDict):
    """One rule: conditions in words and as written, the facts they name, limits under each code that gives one."""

    caution: str
    id: str
    topic: str
    signal: str
    title: str
    holds_for: str
    given: str
    requires: str
    require: str
    facts: dict[str, str]
    limits: list[LimitAt]
    why: str
    mend: str
    told_under: list[str]
    covers: list[str]
    sources: list[str]
    deferral: str


def whole_rule(rule: Rule, rulebook: Rulebook) -> WholeRule:
    """All of a rule as plain data."""
    always = isinstance(getattr(rule.given_tree, "value", None), bool)
    about = article(spoken(rule.about))
    nodes = [*walk(rule.given_tree), *walk(rule.require_tree)]
    return {
        "caution": CAUTION,
        "id": rule.id,
        "topic": rule.topic,
        "signal": rule.signal.upper(),
        "title": rule.title,
        "holds_for": f"every {spoken(rule.about)}" if always else f"{about} where {_plain(in_words(rule.given_tree))}",
        "given": "" if always else rule.given,
        "requires": _plain(in_words(rule.require_tree)),
        "require": rule.require,
        "facts": {
            f"{node.base.type.of}.{node.name}": rule.catalogue.find(node.base.type.of, node.name).says
            for node in nodes
            if isinstance(node, Fact)
        },
        "limits": [
            one for name in dict.fromkeys(node.name for node in nodes if isinstance(node, Limit))
            for one in _limits(name, rulebook)
        ],
        "why": rule.why,
        "mend": rule.mend,
        "told_under": list(rule.after),
        "covers": list(rule.covers),
        "sources": [cited(source) for source in rule.sources],
        "deferral": DEFERRAL,
    }  # fmt: skip


def _plain(words: str) -> str:
    """Without the stars that set names of limits apart in Markdown."""
    return words.replace("*", "")


def _limits(name: str, rulebook: Rulebook) -> Iterator[LimitAt]:
    spec = rulebook.limits[name]
    for code in rulebook.codes.values():
        if name in code.limits:
            yield {
                "limit": name,
                "says": spec.says,
                "code": code.name,
                "value": shown(spec, code.limits[name]),
                "source": cited(code.limits[name].source),
            }


def rule_text(found: WholeRule, *, colour: bool = False) -> Iterator[str]:
    """For a terminal, line by line."""
    for line in _lines(found, Painter(colour)):
        yield line + "\n"


def _lines(found: WholeRule, paint: Painter) -> Iterator[str]:
    yield from paragraph(found["caution"])
    yield ""
    yield from heading(f"{found['topic']}: {found['id']}", paint)
    yield from paragraph(f"{found['signal']}: {found['title']}.")
    yield ""
    yield from labelled("about", [f"{found['holds_for']}."])
    yield from labelled("requires", [f"{found['requires']}."])
    yield from labelled("why", [found["why"]])
    yield from labelled("mend", [found["mend"]])
    yield from labelled("under", found["told_under"])
    yield from labelled("covers", found["covers"])
    yield from labelled("source", found["sources"])
    last = ""
    for one in found["limits"]:
        if one["limit"] != last:
            last = one["limit"]
            yield ""
            yield from heading(f"Limit {spoken(last)}", paint)
            yield from paragraph(f"{one['says']}.")
        yield from paragraph(f"{one['code']}: {one['value']}; {one['source']}", "  ", "      ")
    yield ""
    yield from heading("As written in the rule file", paint)
    yield from labelled("given", [found["given"]])
    yield from labelled("require", [found["require"]])
    for name, says in found["facts"].items():
        yield from paragraph(f"{name}: {says}", "  ", "      ")
    yield ""
    yield from paragraph(found["deferral"])
