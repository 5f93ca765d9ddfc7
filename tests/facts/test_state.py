"""Facts of single supply states."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, subject


def test_a_state_says_what_it_is() -> None:
    found = subject(COACH, "state", "shore absent, inverter inverting, K2 inverter")
    assert (found.is_certain, found.is_fed, found.on_shore) == (True, True, False)
    assert (found.least_neutral_earth_links, found.most_neutral_earth_links) == (1.0, 1.0)


def test_a_dead_state_has_no_links_to_count() -> None:
    found = subject(COACH, "state", "shore absent, inverter resting, K2 open")
    assert found.is_fed is False
    assert found.most_neutral_earth_links is None


def test_joined_sources_and_live_pins_are_seen_in_their_state() -> None:
    edits = {"circuits.inverting.to": "inlet"}
    both = subject(VAN, "state", "shore present, genset stopped, inverter inverting, KG shore", edits)
    assert (both.sources_joined, both.inlet_pins_live) == (True, False)
    unplugged = subject(VAN, "state", "shore absent, genset stopped, inverter inverting, KG shore", edits)
    assert (unplugged.sources_joined, unplugged.inlet_pins_live) == (False, True)


def test_a_state_that_rests_on_an_unknown_is_not_certain() -> None:
    edits = {"equipment.K2.operated": "unknown"}
    assert isinstance(subject(COACH, "state", "shore present, inverter passing, K2 shore", edits).is_certain, Unknown)
