"""A lead-acid battery at the greatest power of a day, by hand."""

from __future__ import annotations

import pytest

from checker.facts.subject import Subject
from checker.quantities import Range, Unknown
from tests.facts.test_day import DAY, EQUIPMENT, design

LAMP = DAY.replace("{light: 5 h, cooler: 24 h}", "{light: 4 h}").replace("sun hours: 4 h", "sun hours: 0 h")


def lamp(power: str, chemistry: str = "AGM lead acid", day: str = LAMP) -> Subject:
    equipment = EQUIPMENT.replace("lithium iron phosphate", chemistry).replace("cells: 4, ", "")
    return design(day, equipment.replace("power: 20 W", f"power: {power}"))


def test_four_times_the_rated_current_by_hand() -> None:
    # 100 Ah in 20 h are 5 A, 60 W at 12 V; at 240 W a quarter to the power of 0.1 to 0.3.
    found = lamp("240 W").lead_share
    assert isinstance(found, Range)
    assert found.low == pytest.approx(0.25**0.3)
    assert found.high == pytest.approx(0.25**0.1)


@pytest.mark.parametrize("power", ["20 W", "60 W"])
def test_up_to_the_rated_current_it_gives_all_and_never_more(power: str) -> None:
    assert lamp(power).lead_share == 1.0


def test_a_power_that_is_a_range_widens_the_share() -> None:
    found = lamp("120..240 W").lead_share
    assert isinstance(found, Range)
    assert (found.low, found.high) == (pytest.approx(0.25**0.3), pytest.approx(0.5**0.1))


def test_lithium_has_none_and_what_is_not_known_stays_so() -> None:
    assert lamp("240 W", "lithium iron phosphate").lead_share is None
    assert isinstance(lamp("240 W", "unknown").lead_share, Unknown)
    assert isinstance(lamp("240 W", day=LAMP.replace("shore: 0 h, ", "")).lead_share, Unknown)
