"""Codes of degree of protection."""

from __future__ import annotations

import pytest

from checker.facts.degree import against_objects, against_water
from checker.quantities import UNKNOWN, Unknown


@pytest.mark.parametrize(
    ("code", "objects", "water"),
    [("IP44", 4.0, 4.0), ("IP20", 2.0, 0.0), ("IP69K", 6.0, 9.0), ("IP6K9K", 6.0, 9.0), ("IP5K4", 5.0, 4.0)],
)
def test_the_digits_are_read(code: str, objects: float, water: float) -> None:
    assert (against_objects(code), against_water(code)) == (objects, water)


def test_an_x_and_an_unknown_code_say_nothing_and_none_stays_none() -> None:
    assert isinstance(against_objects("IPX4"), Unknown)
    assert against_water("IPX4") == 4.0
    assert against_water(UNKNOWN) is UNKNOWN
    assert against_water(None) is None
