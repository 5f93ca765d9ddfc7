"""Batteries in parallel."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.sharing import shares_at_bar, shares_in_chain, spread

OHMS = st.floats(1e-4, 1.0)


def test_two_branches_share_against_their_resistance() -> None:
    assert shares_at_bar([1.0, 3.0]) == pytest.approx((0.75, 0.25))
    assert spread(shares_at_bar([1.0, 3.0])) == pytest.approx(1.0)


def test_a_chain_of_two_taken_across_shares_equally() -> None:
    assert shares_in_chain(0.004, 0.001, 2, 1, 2) == pytest.approx((0.5, 0.5))


def test_a_chain_of_two_taken_at_one_end_obeys_kirchhoff() -> None:
    # Two links of 1 mOhm lie in series with the far unit: 4 mOhm against 6 mOhm.
    assert shares_in_chain(0.004, 0.001, 2, 1, 1) == pytest.approx((0.6, 0.4))


@given(unit=OHMS, link=st.floats(0.0, 1.0), units=st.integers(2, 12), ends=st.tuples(st.floats(0, 1), st.floats(0, 1)))
def test_shares_of_a_chain_add_up_to_one_and_mirror_with_the_take_offs(
    unit: float, link: float, units: int, ends: tuple[float, float]
) -> None:
    plus, minus = (1 + round(end * (units - 1)) for end in ends)
    shares = shares_in_chain(unit, link, units, plus, minus)
    assert sum(shares) == pytest.approx(1.0)
    mirrored = shares_in_chain(unit, link, units, units + 1 - plus, units + 1 - minus)
    assert mirrored == pytest.approx(tuple(reversed(shares)))


@given(st.lists(OHMS, min_size=2, max_size=8))
def test_the_smallest_resistance_carries_most(branches: list[float]) -> None:
    shares = shares_at_bar(branches)
    assert sum(shares) == pytest.approx(1.0)
    assert shares[branches.index(min(branches))] == max(shares)


def test_a_take_off_outside_the_chain_is_refused() -> None:
    with pytest.raises(OutOfRange):
        shares_in_chain(0.004, 0.001, 2, 3, 1)
    with pytest.raises(OutOfRange):
        shares_at_bar([0.0, 1.0])
