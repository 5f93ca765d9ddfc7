"""What merely passes the current on."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.coach import one


def test_a_shunt_in_the_return_carries_what_its_circuit_carries() -> None:
    shunt, main = one("equipment", "shunt"), one("conductor", "bank-main")
    assert shunt.passes_current is True
    assert shunt.through_current == main.design_current
    assert shunt.through_rating == 500.0


def test_a_board_carries_what_feeds_it_and_not_the_sum_of_its_fuses() -> None:
    board = one("equipment", "fuse-box")
    # Largest of the loads alone, the step: 12 A; no mode runs more on it.
    assert board.through_current == pytest.approx(12.0)
    assert one("equipment", "mains-board").through_current == one("conductor", "board-feed").design_current


@pytest.mark.parametrize("id", ["cabin-lights", "F1", "bank-isolator", "bar-48"])
def test_loads_devices_contacts_and_bars_have_rules_of_their_own(id: str) -> None:
    assert one("equipment", id).passes_current is False


def test_what_stands_in_no_run_passes_nothing() -> None:
    assert one("equipment", "spare", ("equipment.spare", "{kind: shunt, rating: 20 A}")).passes_current is False


def test_a_rating_that_was_not_read_is_unknown() -> None:
    assert isinstance(one("equipment", "shunt", ("equipment.shunt.rating", "unknown")).through_rating, Unknown)
