"""The conditions of the requirements are read line by line, and the page shows each with its verdict."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from checker.rulebook import load_rulebook
from checker.rulebook.conditions import Condition, conditions_page, read_conditions

HEAD = "requirement,condition,rule,example\n"


def written(folder: Path, text: str) -> Path:
    (folder / "solar.csv").write_text(text, encoding="utf-8")
    return folder


def test_a_line_becomes_a_condition_of_the_topic_of_its_file(tmp_path: Path) -> None:
    text = HEAD + 'made-up,"a fuse, or a breaker",some-rule,some-example\n'
    assert read_conditions(written(tmp_path, text)) == [
        Condition("solar", "made-up", "a fuse, or a breaker", "some-rule", "some-example")
    ]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("requirement,condition,rule\n", "solar.csv, line 1: the columns are"),
        (HEAD + "made-up,a fuse,some-rule,\n", "solar.csv, line 2: a line has four"),
        (HEAD + "made-up,a fuse,some-rule\n", "solar.csv, line 2: a line has four"),
        (HEAD + "made-up,a fuse, or a breaker,some-rule,some-example\n", "solar.csv, line 2: a line has four"),
    ],
)
def test_a_line_with_too_little_or_too_much_is_refused(tmp_path: Path, text: str, says: str) -> None:
    with pytest.raises(ValueError, match=re.escape(says)):
        read_conditions(written(tmp_path, text))


def test_the_page_shows_a_condition_with_the_verdict_of_its_example() -> None:
    rule = next(rule for rule in load_rulebook().rules if rule.id == "belt-carries-the-alternator")
    page = conditions_page(
        load_rulebook(),
        [
            Condition("solar", "second", "belt told", rule.id, "belt-not-told"),
            Condition("alternator", "first", "belt wide enough", rule.id, "narrow-belt"),
        ],
    )
    link = "[belt-carries-the-alternator](rules/alternator.md#belt-carries-the-alternator)"
    assert "## alternator\n\n### first\n\n| asks | verdict | rule | example |" in page
    assert f"| belt wide enough | breach | {link} | `narrow-belt` |" in page
    assert f"| belt told | unproven | {link} | `belt-not-told` |" in page
    assert page.index("### first") < page.index("### second")


def test_a_condition_whose_example_is_gone_is_told() -> None:
    with pytest.raises(ValueError, match=r"solar\.csv, made-up: no-rule has no example gone"):
        conditions_page(load_rulebook(), [Condition("solar", "made-up", "belt", "no-rule", "gone")])
