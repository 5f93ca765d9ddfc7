"""What a clean design no longer tells makes nothing met, broken or vanished, with and without a fault put in."""

from __future__ import annotations

import pytest

from tests.clean.designs import NAMES, Edits, faults
from tests.clean.hidden import found, hidden
from tests.properties.forgetting import contradictions

CASES = [(name, ()) for name in NAMES] + [(fault.design, fault.edits) for fault in faults()]
SEED = 0
"""One drawing of values here; `python -m tests.clean.hidden` draws more."""


@pytest.mark.parametrize(
    ("name", "made"), CASES, ids=[f"{name}-{len(made)}-{n}" for n, (name, made) in enumerate(CASES)]
)
def test_hidden_values_leave_questions_and_decide_nothing(name: str, made: Edits) -> None:
    edits = hidden(name, SEED, made)
    assert len(edits) > 10, "few values may be unknown, so this would show little"
    assert contradictions([path for path, _ in edits], found(name, made), found(name, (*made, *edits))) == []
