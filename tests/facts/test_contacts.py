"""Contacts as they stand in a mode."""

from __future__ import annotations

import pytest

from checker.facts.contacts import contacts, has_battery, signal_means
from checker.facts.subject import Facts
from checker.quantities import Unknown
from tests.facts.house import house


def closed(facts: Facts, name: str, mode: str) -> object:
    link = next(one for one in facts.network.links if one.equipment.name == name)
    return contacts(facts, facts.design.modes[mode]).closed(link)


def test_a_switch_is_closed_unless_a_mode_or_its_rest_opens_it() -> None:
    assert closed(house(), "isolator", "parked") is True
    assert closed(house({"modes.parked.set": "{isolator: open}"}), "isolator", "parked") is False
    assert closed(house({"equipment.isolator.rest": "open"}), "isolator", "parked") is False


def test_a_relay_follows_the_engine() -> None:
    facts = house()
    assert closed(facts, "K1", "driving") is True
    assert closed(facts, "K1", "parked") is False
    assert closed(house({"equipment.K1.form": "break"}), "K1", "parked") is True
    assert isinstance(closed(house({"equipment.K1.driven by": "unknown"}), "K1", "parked"), Unknown)


@pytest.mark.parametrize(("senses", "parked"), [("ignition", False), ("engine", False)])
def test_a_combiner_that_senses_the_engine_opens_with_it(senses: str, parked: bool) -> None:
    facts = house({"equipment.K1": f"{{kind: combiner, rating: 200 A, senses: {senses}}}"})
    assert closed(facts, "K1", "driving") is True
    assert closed(facts, "K1", "parked") is parked


def test_a_combiner_that_senses_voltage_is_not_decided_while_the_engine_stands() -> None:
    facts = house({"equipment.K1": "{kind: combiner, rating: 200 A, senses: voltage}"})
    assert isinstance(closed(facts, "K1", "parked"), Unknown)


def test_the_running_terminal_of_an_alternator_means_that_the_engine_runs() -> None:
    facts = house()
    assert signal_means(facts, "alternator.d+") == "engine running"
    assert signal_means(facts, "engine-run") == "engine running"
    assert signal_means(facts, "bank.allow") == "charge allowed"
    assert signal_means(facts, None) is None


def test_a_part_not_seen_may_hide_a_contact_to_the_battery() -> None:
    facts = house()
    assert has_battery(facts, "converter:low+", facts.design.modes["driving"]) is True
    assert has_battery(facts, "converter:low+", facts.design.modes["parked"]) is False
    hidden = house({"circuits.link.run": "[0.15 m, F2, unknown]"})
    assert isinstance(has_battery(hidden, "converter:low+", hidden.design.modes["parked"]), Unknown)
