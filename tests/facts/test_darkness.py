"""What goes dark when a piece of equipment is taken away, for certain or perhaps."""

from __future__ import annotations

from checker.facts.darkness import darkeners, goes_dark, reaches, standings
from checker.quantities import Unknown
from tests.facts.house import house


def test_there_is_one_standing_with_all_closed_and_one_for_each_mode() -> None:
    facts = house()
    assert len(standings(facts)) == 1 + len(facts.design.modes)
    assert all(standing.decided for standing in standings(facts))


def test_a_relay_nobody_knows_makes_two_walks_differ() -> None:
    facts = house({"equipment.K1.driven by": "unknown", "equipment.isolator.rest": "open"})
    parked = 1 + list(facts.design.modes).index("parked")
    assert not standings(facts)[parked].decided
    assert "lights:+" in reaches(facts, parked, most=True)
    assert "lights:+" not in reaches(facts, parked, most=False)


def test_the_only_way_goes_dark_and_one_of_two_does_not() -> None:
    facts = house()
    assert goes_dark(facts, "gas-alarm:+", ("F9",)) is True
    assert goes_dark(facts, "gas-alarm:+", ("isolator",)) is False


def test_a_second_way_through_an_unknown_relay_leaves_it_open() -> None:
    facts = house({"equipment.K1.driven by": "unknown"})
    assert isinstance(goes_dark(facts, "lights:+", ("isolator",)), Unknown)
    assert goes_dark(facts, "lights:+", ("F4",)) is True


def test_what_darkens_for_certain_is_told_from_what_may() -> None:
    facts = house({"equipment.K1.driven by": "unknown"})
    found, perhaps = darkeners(facts, "lights:+", ["isolator", "F4", "sun-switch"])
    assert found == ["F4"]
    assert perhaps is True
