"""Whatever is undecided says what would decide it: entries to find out, or in words why nobody can tell."""

from __future__ import annotations

import pytest

from checker.reading import read_text
from checker.review import review
from tests.properties.designs import texts
from tests.properties.verdicts import rulebook


@pytest.mark.parametrize("name", texts())
def test_every_open_question_says_why_it_is_open(name: str) -> None:
    found = review(read_text(texts()[name]), rulebook())
    open_questions = [one for one in found.findings if one.verdict == "unproven"]
    silent = [one for one in open_questions if not one.needs and "Not known because: " not in one.says]
    assert [(one.rule, one.about.id, one.says) for one in silent] == []
    assert all(one.mend for one in open_questions)
