"""Converters in a ring."""

from __future__ import annotations

from checker.facts.subject import Subject
from checker.quantities import Unknown
from tests.facts.house import one

BOOSTER = (
    "{kind: dc converter, both ways: false, isolated: true, place: cabin, SIGNAL "
    "sides: {low: {nominal: 12 V, current: 20 A}, high: {nominal: 48 V, current: 5 A}}, "
    "settings: {charge voltage: 56 V, STOP}}"
)
WIRED = {
    "circuits.boost-in": "{from: bar-12, to: booster.low, run: [0.5 m via cabin], cable: red-35, return: same}",
    "circuits.boost-out": "{from: booster.high, to: bar-48, run: [1 m via cabin], cable: red-35, return: same}",
}


def ring(about: str, *, signal: str = "", stop: str = "", **more: str) -> Subject:
    booster = BOOSTER.replace("SIGNAL", signal and f"{signal},").replace("STOP", stop)
    return one("converter", about, {"equipment.booster": booster, **WIRED, **more})


def test_a_converter_beside_one_that_works_the_other_way_makes_a_ring_for_both() -> None:
    assert ring("booster").in_a_ring is True
    assert ring("converter").in_a_ring is True
    assert ring("alarm-supply").in_a_ring is False


def test_one_converter_of_both_ways_is_no_ring() -> None:
    assert one("converter", "converter").in_a_ring is False
    assert one("converter", "inverter").in_a_ring is False


def test_a_signal_or_a_stop_above_what_the_other_holds_ends_it() -> None:
    # The other holds the 12 V bus at 13.4 V.
    assert ring("booster", stop="holds low above: 13.5 V").ring_stops is True
    assert ring("booster", stop="holds low above: 13.4 V").ring_stops is False
    assert ring("booster", signal="enabled by: engine-run", stop="holds low above: 12 V").ring_stops is True
    assert ring("converter", signal="wakes by: engine-run", stop="holds low above: 12 V").ring_stops is True


def test_what_is_not_told_or_not_known_leaves_it_open() -> None:
    assert isinstance(ring("booster").ring_stops, Unknown)
    assert isinstance(ring("booster", signal="enabled by: unknown", stop="holds low above: 12 V").ring_stops, Unknown)
    assert isinstance(ring("booster", stop="holds low above: 13.3..13.5 V").ring_stops, Unknown)
