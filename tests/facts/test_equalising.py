"""How high a lead-acid battery may be equalised."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

CELLS = {"parts.module.cells": "24"}


@pytest.mark.parametrize(
    ("chemistry", "volts"), [("flooded lead acid", 64.8), ("AGM lead acid", 58.4), ("gel lead acid", 57.6)]
)
def test_a_sealed_battery_may_see_no_more_than_while_charging(chemistry: str, volts: float) -> None:
    found = ask("converter", "sun", "equalise_limit", {**CELLS, "parts.module.chemistry": chemistry})
    assert found == pytest.approx(volts)


def test_lithium_and_the_side_that_feeds_loads_have_no_limit() -> None:
    assert ask("converter", "sun", "equalise_limit") is None
    assert ask("converter", "converter", "equalise_limit") is None
    assert ask("converter", "alternator", "equalise_limit") is None


def test_an_unknown_chemistry_leaves_it_open() -> None:
    assert isinstance(ask("converter", "sun", "equalise_limit", {"parts.module.chemistry": "unknown"}), Unknown)
