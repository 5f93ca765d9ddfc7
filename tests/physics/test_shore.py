"""Demand and diversity."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import shore

loads = st.lists(st.floats(1, 5000), min_size=1, max_size=8)


@given(loads, st.floats(1, 5))
def test_diversity_and_group_demand_undo_each_other(greatest: list[float], factor: float) -> None:
    together = shore.group_demand(greatest, factor)
    assert together <= sum(greatest) * (1 + 1e-12)
    assert shore.diversity_factor(greatest, together) == pytest.approx(factor)
    assert shore.coincidence_factor(greatest, together) == pytest.approx(1 / factor)


@pytest.mark.parametrize(
    "call",
    [
        lambda: shore.demand(100, 1.01),
        lambda: shore.group_demand([100], 0.99),
        lambda: shore.diversity_factor([100], 0),
        lambda: shore.coincidence_factor([], 10),
        lambda: shore.supply_current(100, 0),
        lambda: shore.supply_current(1, 230, 0),
    ],
)
def test_what_has_no_answer_is_refused(call) -> None:
    with pytest.raises(OutOfRange):
        call()


def test_a_poor_power_factor_draws_more() -> None:
    assert shore.supply_current(2300, 230) == 10
    assert shore.supply_current(2300, 230, 0.5) == 20
    assert shore.demand(2300, 0.5) == 1150
