"""Circuits that join the same two points share a current only when they are alike."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask, ids


def second(run: str = "0.7 m via locker", cable: str = "red-35") -> dict[str, str]:
    return {
        "circuits.inverting.run": "[0.7 m via locker]",
        "circuits.inverting-2": f"{{from: bar-48, to: inverter.dc, run: [{run}], cable: {cable}, return: same}}",
    }


def test_they_are_found_by_the_points_they_join() -> None:
    assert ids(ask("circuit", "inverting", "beside")) == []
    assert ids(ask("circuit", "inverting", "beside", second())) == ["inverting-2"]


def test_length_and_size_have_to_be_the_same() -> None:
    assert ask("circuit", "inverting", "alike_beside", second()) is True
    assert ask("circuit", "inverting", "alike_beside", second("0.8 m via locker")) is False
    assert ask("circuit", "inverting", "alike_beside", second(cable="red-70")) is False


def test_a_range_or_an_unknown_length_decides_nothing() -> None:
    assert isinstance(ask("circuit", "inverting", "alike_beside", second("0.6..0.8 m via locker")), Unknown)
    assert isinstance(ask("circuit", "inverting", "alike_beside", second("unknown")), Unknown)
