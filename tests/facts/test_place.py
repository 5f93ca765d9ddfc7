"""Places: living space, seals, vents, what stands in them."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask, van


def test_a_place_is_lived_in_when_what_it_is_inside_of_is() -> None:
    assert ask("place", "bay", "inside_living_space") is True
    assert ask("place", "bay", "inside_living_space", ("places.bay.inside", "outer skin")) is False


def test_a_locker_of_which_nobody_says_where_it_is_may_be_lived_in() -> None:
    assert isinstance(ask("place", "bay", "inside_living_space", ("places.bay.inside", "unknown")), Unknown)


def test_sealed_from_none_is_a_no_and_silence_is_not() -> None:
    assert ask("place", "bay", "sealed_from_living") is True
    assert ask("place", "bay", "sealed_from_living", ("places.bay.sealed from", "none")) is False
    assert isinstance(ask("place", "bay", "sealed_from_living", ("places.bay.sealed from", "unknown")), Unknown)


def test_a_living_space_is_not_sealed_from_itself() -> None:
    assert ask("place", "cabin", "sealed_from_living") is False


@pytest.mark.parametrize(
    ("to", "said"),
    [("outside", "outside"), ("cabin", "living space"), ("gas", "another place"), ("underbody", "outside")],
)
def test_a_vent_leads_where_its_place_is(to: str, said: str) -> None:
    assert ask("place", "bay", "vent_to", ("places.bay.vents.to", to)) == said


def test_a_place_without_openings_vents_nowhere() -> None:
    assert ask("place", "bay", "vent_to", ("places.bay.vents", "none")) is None


def test_batteries_are_found_by_what_they_are_made_of() -> None:
    assert ask("place", "bay", "holds_lithium") is True
    assert ask("place", "bay", "holds_lithium", ("equipment.house.chemistry", "gel lead acid")) is False
    assert isinstance(ask("place", "bay", "holds_lithium", ("equipment.house.chemistry", "unknown")), Unknown)


def test_a_battery_planned_for_later_does_not_stand_there() -> None:
    assert ask("place", "bay", "holds_battery", ("equipment.house.fitted", "later")) is False


def test_openings_into_a_gas_locker_share_its_gas() -> None:
    assert ask("place", "bay", "shared_with_gas") is False
    assert ask("place", "bay", "shared_with_gas", ("places.bay.vents.to", "gas")) is True


def test_openings_of_which_nobody_says_where_they_lead_may_lead_to_the_gas() -> None:
    assert isinstance(ask("place", "bay", "shared_with_gas", ("places.bay.vents.to", "unknown")), Unknown)
    assert ask("place", "bay", "shared_with_gas", ("places.bay.vents", "{low: none, high: none}")) is False


def test_an_alarm_that_stands_in_the_place_detects_there() -> None:
    silent = ("places.bay.detector", "none")
    assert ask("place", "bay", "detected", silent) is False
    alarm = ("equipment.smoke", "{kind: alarm, detects: [smoke], place: bay}")
    assert ask("place", "bay", "detected", silent, alarm) is True


def test_the_ground_clearance_is_the_underside_of_the_box() -> None:
    assert ask("place", "bay", "ground_clearance") == pytest.approx(0.4)


def test_everything_in_the_bay_is_listed() -> None:
    bay = van().subject("place", "bay")
    assert bay is not None
    assert [one.id for one in bay.holds] == ["house", "FH"]


def test_where_cylinders_stand_is_a_gas_locker_whatever_it_is_called() -> None:
    plain = ("places.gas.kind", "locker")
    assert ask("place", "gas", "holds_cylinders", plain) is True
    assert ask("place", "gas", "holds_cylinders", plain, ("places.gas.cylinders", "0")) is False
    assert isinstance(ask("place", "gas", "holds_cylinders", plain, ("places.gas.cylinders", "unknown")), Unknown)
    assert ask("place", "bay", "holds_cylinders") is False
