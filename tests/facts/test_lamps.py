"""Whether one fault takes every lamp."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask


def test_lamps_on_one_fuse_are_lost_together_unless_one_has_a_cell() -> None:
    assert ask("design", "design", "lamps_lost_by_one_fault", {"equipment.lights.own cell": "none"}) is True
    assert ask("design", "design", "lamps_lost_by_one_fault", {"equipment.lights.own cell": "3 h"}) is False
    assert isinstance(ask("design", "design", "lamps_lost_by_one_fault"), Unknown)


SECOND = {
    "equipment.lights.own cell": "none",
    "circuits.second": "{from: start-battery, to: lights, run: [0.1 m, FS, 3 m, KZ], cable: pair-4}",
    "equipment.FS": "{part: strip, rating: 5 A}",
}


@pytest.mark.parametrize(
    ("contact", "lost"),
    [
        ("{kind: relay, rating: 10 A, voltage: 24 V DC, operated: signal, driven by: engine-run, rest: open}", True),
        ("{kind: relay, rating: 10 A, voltage: 24 V DC, operated: by hand, driven by: engine-run, rest: open}", False),
        ("{kind: relay, rating: 10 A, voltage: 24 V DC, operated: unknown, driven by: engine-run, rest: open}", None),
        ("{kind: switch, rating: 10 A, voltage: 24 V DC, operated: by hand, rest: open}", False),
    ],
)
def test_a_second_way_counts_where_a_hand_can_close_it(contact: str, lost: bool | None) -> None:
    found = ask("design", "design", "lamps_lost_by_one_fault", SECOND | {"equipment.KZ": contact})
    assert isinstance(found, Unknown) if lost is None else found is lost
