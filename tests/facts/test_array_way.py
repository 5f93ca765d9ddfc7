"""The way of the current of an array, there and back."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask, ids

ALONE = {
    "equipment.minus": "{kind: bar, poles: [-], rating: 50 A, place: roof}",
    "circuits.sun-in.return": "none",
    "circuits.back": "{from: panels.-, to: minus.-, run: [1 m via roof], cable: sun-4, duty: charge}",
    "circuits.down": "{from: minus.-, to: sun.pv-, run: [3 m via roof], cable: sun-4, duty: charge}",
}
SECOND = {
    "equipment.second": "{kind: solar array, modules: 3, arrangement: 3s1p, power: 200 W, open voltage: 24.3 V, "
    "short current: 8 A, place: roof}",
    "circuits.sun-2": "{from: second, to: sun.pv, run: [1 m via roof], cable: sun-4, return: none, duty: charge}",
    "circuits.back-2": "{from: second.-, to: minus.-, run: [1 m via roof], cable: sun-4, duty: charge}",
}


def test_a_return_of_its_own_carries_the_current_back() -> None:
    assert ids(ask("array", "panels", "return_conductors")) == ["sun-in return"]
    assert ask("conductor", "sun-in return", "array_current") == pytest.approx(10.4)
    assert ask("conductor", "main return", "array_current") is None


def test_a_return_that_two_arrays_share_carries_both() -> None:
    both = {**ALONE, **SECOND}
    assert ids(ask("array", "panels", "return_conductors", both)) == ["back return", "down return"]
    assert ask("conductor", "back return", "array_current", both) == pytest.approx(10.4)
    assert ask("conductor", "down return", "array_current", both) == pytest.approx(18.4)
    unsaid = {**both, "equipment.second.short current": "unknown"}
    assert isinstance(ask("conductor", "down return", "array_current", unsaid), Unknown)


def test_a_switch_carries_what_the_conductors_at_it_carry() -> None:
    assert ask("switch", "sun-switch", "array_current") == pytest.approx(10.4)
    assert ask("switch", "isolator", "array_current") is None
    unsaid = {"equipment.panels.short current": "unknown"}
    assert isinstance(ask("switch", "sun-switch", "array_current", unsaid), Unknown)


def test_connectors_of_both_poles_are_found_and_a_run_not_seen_may_hide_one() -> None:
    assert ids(ask("array", "panels", "plugs")) == []
    joints = {f"joints.{name}": "{kind: connector, place: roof}" for name in ("P", "M")}
    run = {"circuits.sun-in.run": "[1 m via roof, P, 2 m via roof, sun-switch, 0.5 m via locker]"}
    back = {
        **ALONE,
        "circuits.down": ALONE["circuits.down"].replace("[3 m via roof]", "[1 m via roof, M, 2 m via roof]"),
    }
    assert ids(ask("array", "panels", "plugs", {**joints, **run, **back})) == ["P", "M"]
    unseen = {"circuits.sun-in.run": "[1 m via roof, unknown, sun-switch, 0.5 m via locker]"}
    assert isinstance(ask("array", "panels", "plugs", unseen), Unknown)
