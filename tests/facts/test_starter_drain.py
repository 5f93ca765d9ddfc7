"""What draws from the starting battery with the engine stopped, and what joins it to others."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask, ids

LAMP = {
    "equipment.step-lamp": "{kind: lamp, power: 12 W, place: cabin}",
    "circuits.step": "{from: start-battery, to: step-lamp, run: [2 m via cabin], cable: pair-4}",
}


def test_what_stands_behind_a_relay_of_the_engine_does_not_drain_the_starting_battery() -> None:
    assert ids(ask("bank", "start-battery", "drained_by")) == []


def test_a_load_at_its_terminal_drains_it_and_so_does_all_behind_a_contact_that_stays_closed() -> None:
    assert ids(ask("bank", "start-battery", "drained_by", LAMP)) == ["step-lamp"]
    shut = {"equipment.K1.rest": "closed"}
    assert set(ids(ask("bank", "start-battery", "drained_by", shut))) == {"lights", "pump"}


def test_loads_that_came_with_the_vehicle_are_its_makers_business() -> None:
    assert ids(ask("bank", "start-battery", "drained_by", {**LAMP, "equipment.step-lamp.own": "factory"})) == []


def test_a_contact_of_unknown_drive_leaves_a_question_and_never_an_empty_list() -> None:
    for key in ("equipment.K1.driven by", "equipment.K1.rest", "equipment.engine-run.means"):
        assert isinstance(ask("bank", "start-battery", "drained_by", {key: "unknown"}), Unknown)


def test_a_combiner_spares_it_when_it_parts_at_the_reserve_or_above() -> None:
    def drained(volts: str) -> object:
        combiner = f"{{kind: combiner, rating: 200 A, senses: voltage, parts at: {volts}, place: cabin}}"
        return ask("bank", "start-battery", "drained_by", {"equipment.K1": combiner})

    assert ids(drained("12.2 V")) == []
    assert ids(drained("12.1 V")) != []
    assert isinstance(drained("unknown"), Unknown)


def test_what_was_added_is_taken_together() -> None:
    link = ask("conductor", "link", "design_current")
    assert ask("bank", "start-battery", "added_draw") == link
    assert ask("bank", "start-battery", "added_draw", LAMP) == pytest.approx(link + 1)
    factory = {**LAMP, "circuits.step.own": "factory"}
    assert ask("bank", "start-battery", "added_draw", factory) == link


def test_a_relay_opens_on_a_broken_wire_only_when_signal_and_contact_both_do() -> None:
    assert ask("switch", "K1", "opens_when_wire_breaks") is True
    for key, word in (("engine-run.fails", "given"), ("K1.form", "break"), ("K1.on loss", "stays")):
        assert ask("switch", "K1", "opens_when_wire_breaks", {f"equipment.{key}": word}) is False
    assert isinstance(ask("switch", "K1", "opens_when_wire_breaks", {"equipment.engine-run.fails": "unknown"}), Unknown)
