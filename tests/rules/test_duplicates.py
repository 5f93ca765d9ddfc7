"""No two rules say the same, and every rule is shown to go both ways."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import NamedTuple

import checker.facts  # noqa: F401 - fills the catalogue
from checker.rulebook import Rule, Rulebook, load_rulebook
from checker.rulebook.nodes import Fact, walk


@cache
def book() -> Rulebook:
    """The shipped rules."""
    return load_rulebook()


def facts_of(rule: Rule) -> frozenset[str]:
    """The facts that decide a rule."""
    trees = (rule.given_tree, rule.require_tree)
    return frozenset(
        f"{node.base.type.of}.{node.name}" for tree in trees for node in walk(tree) if isinstance(node, Fact)
    )


class Says(NamedTuple):
    """What two rules must not share: the requirements, the facts, the signal."""

    covers: frozenset[str]
    facts: frozenset[str]
    signal: str


def duplicates(rules: Iterable[tuple[str, Says]]) -> list[tuple[str, str]]:
    """Pairs of rules with the same requirements, facts and signal."""
    first: dict[Says, str] = {}
    found = []
    for id, says in rules:
        if says in first:
            found.append((first[says], id))
        first.setdefault(says, id)
    return found


def said() -> list[tuple[str, Says]]:
    return [(rule.id, Says(frozenset(rule.covers), facts_of(rule), rule.signal)) for rule in book().rules]


def test_no_two_rules_cover_the_same_with_the_same_facts_and_signal() -> None:
    assert duplicates(said()) == []


def test_a_rule_written_twice_would_be_told() -> None:
    id, says = said()[0]
    assert duplicates([*said(), ("written-again", says)]) == [(id, "written-again")]


def test_no_two_rules_have_one_condition() -> None:
    held: dict[tuple[str, str, str], list[str]] = {}
    for rule in book().rules:
        held.setdefault((rule.about, rule.given, rule.require), []).append(rule.id)
    assert [ids for ids in held.values() if len(ids) > 1] == []


def one_way(rules: Iterable[tuple[str, Iterable[str]]]) -> list[str]:
    """Rules that no example decides in one of the two ways; their names and the verdicts of their examples go in."""
    return [id for id, verdicts in rules if not {"met", "breach"} <= set(verdicts)]


def test_every_rule_is_shown_to_go_both_ways() -> None:
    assert one_way((rule.id, [example.verdict for example in rule.examples]) for rule in book().rules) == []


def test_a_rule_shown_one_way_alone_would_be_told() -> None:
    shown = [("both", ["met", "breach"]), ("never-broken", ["met", "unproven"]), ("never-met", ["breach"])]
    assert one_way(shown) == ["never-broken", "never-met"]


def test_a_rule_that_only_asks_is_about_something_that_can_be_answered() -> None:
    assert [rule.id for rule in book().rules if not facts_of(rule)] == []
