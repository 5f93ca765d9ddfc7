"""A device directly outside the box of its battery."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

BOX = {"places.locker.kind": "battery box", "places.side": "{kind: locker}", "equipment.F1.place": "side"}
RUN = "[0.9 m via locker, {} via side, F1, 0.3 m via locker, isolator, 0.5 m via locker]"


@pytest.mark.parametrize(("outside", "beside"), [("0.05 m", True), ("0.1 m", True), ("0.11 m", False)])
def test_a_device_is_directly_outside_within_a_hand(outside: str, beside: bool) -> None:
    edits = BOX | {"circuits.main.run": RUN.format(outside)}
    assert ask("approach", "main from bank", "device_beside_enclosure", edits) is beside


def test_a_device_of_which_nobody_knows_the_place_leaves_it_open() -> None:
    lost = BOX | {"circuits.main.run": RUN.format("0.05 m"), "equipment.F1.place": "unknown"}
    assert isinstance(ask("approach", "main from bank", "device_beside_enclosure", lost), Unknown)


def test_a_locker_for_all_sorts_is_no_box_and_a_range_leaves_it_open() -> None:
    common = BOX | {"circuits.main.run": RUN.format("0.05 m"), "places.locker.kind": "locker"}
    assert ask("approach", "main from bank", "device_beside_enclosure", common) is False
    straddles = BOX | {"circuits.main.run": RUN.format("0.05..0.2 m")}
    assert isinstance(ask("approach", "main from bank", "device_beside_enclosure", straddles), Unknown)
