"""The page of published requirements, `docs/coverage.md`: which rule decides each, from what, and what is left."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from checker.rulebook.load import Rulebook
from checker.rulebook.nodes import Fact, Limit, walk
from checker.rulebook.page import table
from checker.rulebook.rule import Rule

HEAD = """# Coverage of published requirements

Made from the rule files and the catalogue of requirements by `python docs/generate.py`; do not edit.

The catalogue says in our own words what published standards and regulators ask for; it is no substitute for them.
*Decided from*: `design`, the file alone can tell; `survey`, somebody must look; `test`, it must be measured. A rule for
one of the latter two asks until the answer is written into the file, and never takes silence for an answer.
*Limits* names those that the rule uses and the codes that give a value of their own; see [limits](rules/limits.md).
*With a rule* counts those that rules break and meet on whole designs, which a test holds of each that a design decides.
*Conditions* counts what each requirement asks or excuses, one by one; [conditions](conditions.md) shows each with the
design that breaks it. *Left* says what no rule decides yet: a condition that the *text* itself states, or an
*arrangement* in which a break escapes although each condition is decided where the text describes it. *All told
conditions* counts those without the former, *no gap known* those without either. Both shares are upper bounds: after
every requirement had been read condition by condition, two fresh readers who set out to find gaps in 32 found a
condition left out in 3 and an arrangement in 11 more. Whoever finds another adds a line to `rules/not-decided.csv`.
"""
WAYS = ("design", "survey", "test")


class Asked(NamedTuple):
    """One published requirement: how it is decided, and how bad it is not to meet it."""

    id: str
    topic: str
    decidable: str
    severity: str


class Left(NamedTuple):
    """What no rule decides of a requirement: part of its `text`, or an `arrangement` in which a break escapes."""

    of: str
    says: str


def coverage_page(
    rulebook: Rulebook, asked: Iterable[Asked], left: Mapping[str, Left], shown: Mapping[str, int]
) -> str:
    """The whole page in Markdown.

    `left` says of a requirement what no rule decides yet, or why there is no rule; `shown` counts its conditions.
    """
    everything = sorted(asked)
    rules = _by_requirement(rulebook.rules)
    parts = [HEAD.strip(), _count(everything, rules, left, shown)]
    for topic in sorted({one.topic for one in everything}):
        here = [one for one in everything if one.topic == topic]
        parts += [f"## {topic}", _topic(here, rules, rulebook, left, shown)]
    return "\n\n".join(parts) + "\n"


def _by_requirement(rules: Iterable[Rule]) -> dict[str, list[Rule]]:
    found: dict[str, list[Rule]] = {}
    for rule in rules:
        for id in rule.covers:
            found.setdefault(id, []).append(rule)
    return {id: sorted(held, key=lambda rule: rule.id) for id, held in found.items()}


def _count(
    asked: Iterable[Asked], rules: Mapping[str, list[Rule]], left: Mapping[str, Left], shown: Mapping[str, int]
) -> str:
    rows = []
    held = list(asked)
    for way in (*WAYS, "all"):
        these = [one for one in held if way in (one.decidable, "all")]
        with_rule = sum(one.id in rules for one in these)
        told = sum(one.id in rules and (one.id not in left or left[one.id].of != "text") for one in these)
        whole = sum(one.id in rules and one.id not in left for one in these)
        conditions = sum(shown.get(one.id, 0) for one in these)
        counts = [f"{count} ({100 * count / len(these):.0f} %)" if these else "" for count in (told, whole)]
        rows.append([way, str(len(these)), str(with_rule), str(conditions), *counts])
    head = ["decided from", "requirements", "with a rule", "conditions shown", "all told conditions", "no gap known"]
    return table(head, rows)


def _topic(
    asked: Iterable[Asked],
    rules: Mapping[str, list[Rule]],
    rulebook: Rulebook,
    left: Mapping[str, Left],
    shown: Mapping[str, int],
) -> str:
    rows = []
    for one in asked:
        held = rules.get(one.id, [])
        links = ", ".join(f"[{rule.id}](rules/{rule.topic}.md#{rule.id})" for rule in held)
        gap = left.get(one.id)
        said = f"{gap.of}: {gap.says}" if gap else "" if held else "not written yet"
        count = f"[{shown[one.id]}](conditions.md#{one.id})" if shown.get(one.id) else ""
        facts, limits = _facts(held), _limits(held, rulebook)
        rows.append([one.id, one.decidable, one.severity, links or "none", facts, limits, count, said])
    return table(["requirement", "decided from", "severity", "rules", "facts", "limits", "conditions", "left"], rows)


def _facts(rules: Iterable[Rule]) -> str:
    found: dict[str, None] = {}
    for rule in rules:
        for node in (*walk(rule.given_tree), *walk(rule.require_tree)):
            if isinstance(node, Fact):
                found[f"`{node.base.type.of}.{node.name}`"] = None
    return ", ".join(found)


def _limits(rules: Iterable[Rule], rulebook: Rulebook) -> str:
    found: dict[str, None] = {}
    for rule in rules:
        for node in (*walk(rule.given_tree), *walk(rule.require_tree)):
            if isinstance(node, Limit):
                codes = [code.name for code in rulebook.codes.values() if node.name in code.limits]
                found[f"`{node.name}` ({', '.join(codes) or 'no code'})"] = None
    return ", ".join(found)
