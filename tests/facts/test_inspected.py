"""What only a look shows: asked for until somebody writes it."""

from __future__ import annotations

import pytest

from checker.design.vocabulary.papers import INSPECTIONS
from checker.facts.inspected import ASKED
from checker.quantities import Unknown
from tests.facts.van import ask


def test_there_is_a_fact_for_each_word_that_can_be_written() -> None:
    assert sorted(word for _, word, _ in ASKED) == sorted(INSPECTIONS)


@pytest.mark.parametrize(("name", "word"), [(name, word) for name, word, _ in ASKED])
def test_each_look_is_open_until_written_and_a_fault_found_stands_above_it(name: str, word: str) -> None:
    fact = f"{name}_inspected"
    right, wrong = ("papers.inspected", f"[{word}]"), ("papers.found wrong", f"[{word}]")
    assert isinstance(ask("design", "design", fact), Unknown)
    assert ask("design", "design", fact, right) is True
    assert ask("design", "design", fact, right, wrong) is False
