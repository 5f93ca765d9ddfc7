"""The page on rules says what the program does: its keys, its sample rule, its sample conditions, its limits."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.catalogue import CATALOGUE
from checker.review.examples import example_verdict
from checker.rulebook import judge_example, load_rulebook
from checker.rulebook.check import DEEPEST_LOOP, check_expression
from checker.rulebook.keys import KEYS
from checker.rulebook.syntax import LONGEST

PAGE = (Path(__file__).parents[2] / "docs" / "rule-language.md").read_text("utf-8")


def part(name: str) -> str:
    """What stands between two marks of the page."""
    return PAGE.split(f"<!-- {name} -->\n")[1].split(f"<!-- end of {name} -->")[0]


def keys_table() -> str:
    lines = ["| key | needed | what it says |", "| --- | --- | --- |"]
    lines += [f"| `{key.name}` | {'yes' if key.required else 'no'} | {key.says} |" for key in KEYS]
    return "\n".join(lines) + "\n"


SAMPLES = re.findall(r"^\| (\w+) \| `(.*)` \|$", part("samples"), re.MULTILINE)


def test_the_keys_on_the_page_are_those_of_the_reader() -> None:
    assert part("keys") == keys_table()


def test_the_rule_on_the_page_loads_and_its_examples_hold(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FITOUT_CACHE", "none")
    text = PAGE.split("```yaml\n")[1].split("```")[0]
    (tmp_path / "page").mkdir()
    (tmp_path / "page" / "fuse-within-cable-capacity.yaml").write_text(text, "utf-8")
    book = load_rulebook([tmp_path])
    rule = book.by_id["fuse-within-cable-capacity"]
    limits = book.limits_for("intl")
    assert [judge_example(rule, one, limits) for one in rule.examples] == [one.verdict for one in rule.examples]


def test_the_house_rule_on_the_page_loads_and_its_examples_hold(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("FITOUT_CACHE", "none")
    (tmp_path / "workshop").mkdir()
    text = part("house rule").removeprefix("```yaml\n").removesuffix("```\n")
    (tmp_path / "workshop" / "relay-outside-living-space.yaml").write_text(text, "utf-8")
    book = load_rulebook([tmp_path])
    rule = book.by_id["relay-outside-living-space"]
    assert any(one.design for one in rule.examples), "the page shows an example that changes a base design"
    assert [example_verdict(rule, one, book) for one in rule.examples] == [one.verdict for one in rule.examples]


@pytest.mark.parametrize(("about", "condition"), SAMPLES)
def test_a_condition_on_the_page_is_taken(about: str, condition: str) -> None:
    check_expression(condition, about, CATALOGUE, load_rulebook().limits)


def test_there_are_samples_and_the_figures_are_those_of_the_program() -> None:
    assert len(SAMPLES) >= 5
    assert f"at most {LONGEST:,} characters" in PAGE
    assert DEEPEST_LOOP == 2
    assert "two deep" in PAGE
