"""What each published requirement asks, condition by condition, and the example that shows it; `docs/conditions.md`."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

from checker.rulebook.load import Rulebook
from checker.rulebook.page import table

COLUMNS = ("requirement", "condition", "rule", "example")
HEAD = """# Conditions of the published requirements

Made from `rules/conditions/` and the rule files by `python docs/generate.py`; do not edit.

A requirement mostly asks several things. Each line names one of them, in our own words, and a whole design in which
exactly this is wrong (*breach*), in which the rule asks because only the fitter can know (*unproven*), or in which the
requirement excuses it (*met*, *not applicable*). A test holds that the rule covers the requirement and that the example
has this verdict. What no rule decides yet stands under *left* in [coverage](coverage.md).
"""


class Condition(NamedTuple):
    """One thing that a requirement asks or excuses, and the example of a rule that shows it."""

    topic: str
    requirement: str
    says: str
    rule: str
    example: str


def read_conditions(folder: Path) -> list[Condition]:
    """All conditions below `folder`, one file for each topic, in the order of the files.

    Raises
    ------
    OSError: a file cannot be read.
    ValueError: a file has other columns than requirement, condition, rule and example, or a line leaves one out.
    """
    found = []
    for file in sorted(folder.glob("*.csv")):
        with file.open(encoding="utf-8", newline="") as lines:
            rows = csv.DictReader(lines)
            if tuple(rows.fieldnames or ()) != COLUMNS:
                raise ValueError(f"{file.name}, line 1: the columns are {', '.join(COLUMNS)}")
            for row in rows:
                cells = [row[name] for name in COLUMNS]
                if None in row or not all(cells):
                    raise ValueError(
                        f"{file.name}, line {rows.line_num}: a line has four entries; one that holds a comma is quoted"
                    )
                found.append(Condition(file.stem, *cells))
    return found


def conditions_page(rulebook: Rulebook, conditions: Iterable[Condition]) -> str:
    """The whole page in Markdown.

    Raises
    ------
    ValueError: a condition names a rule, or an example of one, that is not there.
    """
    rules = {rule.id: rule for rule in rulebook.rules}
    verdicts = {(rule.id, example.name): example.verdict for rule in rulebook.rules for example in rule.examples}
    parts, topic, rows = [HEAD.strip()], "", list[list[str]]()
    held = sorted(conditions, key=lambda one: (one.topic, one.requirement))
    for one in held:
        if (one.rule, one.example) not in verdicts:
            raise ValueError(f"{one.topic}.csv, {one.requirement}: {one.rule} has no example {one.example}")
    for number, one in enumerate(held):
        if one.topic != topic:
            topic = one.topic
            parts.append(f"## {topic}")
        if number == 0 or one.requirement != held[number - 1].requirement:
            rows = []
        link = f"[{one.rule}](rules/{rules[one.rule].topic}.md#{one.rule})"
        rows.append([one.says, verdicts[one.rule, one.example], link, f"`{one.example}`"])
        if number + 1 == len(held) or held[number + 1].requirement != one.requirement:
            parts += [f"### {one.requirement}", table(["asks", "verdict", "rule", "example"], rows)]
    return "\n\n".join(parts) + "\n"
