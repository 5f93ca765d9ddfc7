"""Bus bars."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts
from checker.quantities import Range
from checker.reading import read_text
from tests.clean.designs import text_of
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


def test_on_a_bar_of_the_negative_all_returns_may_leave_by_its_bonds() -> None:
    bar = Facts(read_text(text_of("gannet-boat"))).subject("bar", "neg-bar")
    assert bar is not None
    returns = [bar.facts.subject("conductor", f"{name} return").design_current for name in ("engine", "start-main")]  # type: ignore[union-attr]
    assert bar.current == Range(max(returns), sum(returns))
