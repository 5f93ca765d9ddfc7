"""Bus bars."""

from __future__ import annotations

import pytest

from checker.quantities import Range
from tests.facts.van import ask, van


def upper(value: float | Range) -> float:
    return value.high if isinstance(value, Range) else value


def test_no_section_carries_more_than_half_of_what_its_conductors_carry() -> None:
    facts = van()
    bar = facts.subject("bar", "plus")
    assert bar is not None
    currents = [facts.subject("conductor", name).design_current for name in ("trunk", "drive", "lights", "valve")]  # type: ignore[union-attr]
    assert upper(bar.current) == pytest.approx(min(sum(currents) / 2, sum(currents) - max(currents)))


def test_a_bar_with_one_conductor_carries_nothing() -> None:
    alone = ("equipment.spare", "{kind: bar, poles: [+, -], rating: 50 A, place: cabin}")
    feed = ("circuits.tail", "{from: plus, to: spare, run: [1 m via cabin], cable: red-16, return: same}")
    assert ask("bar", "spare", "current", alone, feed) == 0.0


def test_lugs_are_counted_on_the_fuller_pole() -> None:
    # trunk, drive, lights and valve on both poles; the bond to the chassis on the negative one.
    assert ask("bar", "plus", "lugs") == 5.0
