"""The examples of a rule, put to the rule: this is how rules are tested, shipped ones and those of a user alike."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Any

from checker.facts.subject import Facts
from checker.review.run import code_of
from checker.rulebook import Broken, Rule, Rulebook, judge, judge_example
from checker.rulebook.examples import Example
from checker.rulebook.keys import FALLBACK
from checker.shipped import shipped

ENDING = ".fitout.yaml"


class ExampleError(Exception):
    """An example that cannot be put to its rule: the file and line, and why."""

    def __init__(self, example: Example, what: str) -> None:
        super().__init__(f"{example.file}:{example.line}: the example `{example.name}`: {what}")


def example_verdict(rule: Rule, example: Example, rulebook: Rulebook, folders: Iterable[str | Path] = ()) -> str:
    """The verdict that the rule gives on the example.

    A base design is looked for in `designs/` of the shipped rules, then of the `folders`. Raises ExampleError.
    """
    if example.subject is not None:
        try:
            return judge_example(rule, example, rulebook.limits_for(example.code or FALLBACK))
        except ValueError as error:
            raise ExampleError(example, str(error)) from error
    facts = _facts(example, folders)
    subject = facts.subject(rule.about, example.about)
    if subject is None:
        there = ", ".join(one.id for one in facts.subjects(rule.about)) or "none"
        raise ExampleError(example, f"there is no {rule.about} `{example.about}`; there are: {there}")
    broken: list[Broken] = []
    limits = rulebook.limits_for(code_of(facts.design))
    whole = facts.subjects("design")[0]
    verdict = judge(rule, [subject], whole, limits, broken)[0]
    if broken:
        raise ExampleError(example, f"a computation broke: {broken[0].cause}")
    return verdict


def _facts(example: Example, folders: Iterable[str | Path]) -> Facts:
    """The facts of the base design with the changes of the example."""
    name = example.design + ENDING
    places = [Path(str(shipped("rules"))), *map(Path, folders)]
    file = next((place / "designs" / name for place in places if (place / "designs" / name).is_file()), None)
    if file is None:
        raise ExampleError(example, f"there is no base design `{name}` in `rules/designs/`")
    try:
        return _read(file, example.edits, example.code)
    except ValueError as error:
        raise ExampleError(example, str(error)) from error


@lru_cache(maxsize=64)
def _read(file: Path, edits: tuple[tuple[str, str], ...], code: str) -> Facts:
    """Many examples share a base design unchanged; that one is read and computed once. Raises ValueError."""
    from checker.reading import ReadingErrors, read_text

    try:
        design: Any = read_text(file.read_text("utf-8"), file.name, edits)
    except ReadingErrors as errors:
        raise ValueError(str(errors)) from errors
    return Facts(design.under(code or None))
