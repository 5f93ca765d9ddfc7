"""The last stage of a charger."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

LEAD = {"parts.module.chemistry": "AGM lead acid", "parts.module.cells": "24"}
FLOAT = "equipment.sun.settings.float"


@pytest.mark.parametrize(
    ("volts", "edits", "fits"),
    [
        ("54.4 V", {}, True),  # 16 cells at 3.4 V
        ("54.41 V", {}, False),
        ("none", {}, True),
        ("none", LEAD, False),
        ("55.2 V", LEAD, True),  # 24 cells at 2.3 V
        ("55.21 V", LEAD, False),
        ("48 V", LEAD, False),
    ],
)
def test_a_float_holds_each_cell_within_its_bounds(volts: str, edits: dict[str, str], fits: bool) -> None:
    assert ask("converter", "sun", "stages_fit", {FLOAT: volts, **edits}) is fits


def test_a_float_that_is_not_told_and_a_range_about_the_bound_leave_a_question() -> None:
    assert isinstance(ask("converter", "sun", "stages_fit", {FLOAT: "unknown"}), Unknown)
    assert isinstance(ask("converter", "sun", "stages_fit", {FLOAT: "54..55 V"}), Unknown)
    assert ask("converter", "alternator", "stages_fit") is None
