"""What goes dark."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.house import ask, ids

BEHIND_THE_BOARD = {"circuits.alarm.from": "board.lights"}
FROM_THE_STARTER = {
    "circuits.alarm": "{from: start-battery, to: gas-alarm, run: [0.1 m, F9, 3 m], cable: pair-4, duty: safety}",
    "circuits.alarming": "(remove)",
}


def test_an_alarm_ahead_of_the_isolator_goes_dark_with_no_switch() -> None:
    assert ask("circuit", "alarm", "feeds_alarm") is True
    assert ask("circuit", "lamps", "feeds_alarm") is False
    assert ask("circuit", "alarm", "dark_by_switch") == ()


def test_an_alarm_on_the_board_goes_dark_with_the_switch_of_the_bank_while_parked() -> None:
    # While driving the starting battery feeds the bus through K1; parked, only the bank does.
    assert ids(ask("circuit", "alarm", "dark_by_switch", BEHIND_THE_BOARD)) == ["isolator"]


def test_a_way_that_was_not_seen_may_hide_a_switch() -> None:
    hidden = {"circuits.alarming.run": "[0.1 m, F9, unknown]"}
    assert isinstance(ask("circuit", "alarm", "dark_by_switch", hidden), Unknown)


def test_a_cell_or_another_battery_outlives_the_bank() -> None:
    assert ask("load", "gas-alarm", "survives_bank_loss") is True
    bare = {"equipment.gas-alarm.own cell": "none"}
    assert ask("load", "gas-alarm", "survives_bank_loss", bare) is False
    assert ask("load", "gas-alarm", "survives_bank_loss", {**bare, **FROM_THE_STARTER}) is True
    assert isinstance(
        ask("load", "gas-alarm", "survives_bank_loss", {"equipment.gas-alarm.own cell": "unknown"}), Unknown
    )


def test_essential_loads_are_told_by_a_list_or_by_a_mark() -> None:
    assert ask("design", "design", "essential_loads_told") is True
    assert ask("design", "design", "essential_loads_told", {"essential": "unknown"}) is True
    silent = {"essential": "unknown", "equipment.gas-alarm.essential": "unknown"}
    assert isinstance(ask("design", "design", "essential_loads_told", silent), Unknown)


def test_only_what_is_said_to_be_for_the_road_is() -> None:
    assert ask("load", "lights", "is_road_load") is False
    assert ask("load", "lights", "is_road_load", {"equipment.lights.purpose": "road lamps"}) is True


def test_a_converter_that_rests_with_the_engine_off_is_no_second_source() -> None:
    parted = {
        "equipment.lights.own cell": "none",
        "equipment.buffer": "{kind: battery, chemistry: lithium iron phosphate, nominal: 12 V, purpose: house}",
        "circuits.buffer": "{from: buffer, to: board, run: [0.3 m], cable: red-35, return: same}",
        "circuits.feed.from": "converter.low",
        "circuits.low": "(remove)",
        "equipment.converter.both ways": "false",
    }
    assert ask("load", "lights", "survives_bank_loss", parted) is True
    asleep = {**parted, "equipment.converter.enabled by": "engine-run"}
    assert ask("load", "lights", "survives_bank_loss", asleep) is False
    unknown = {**parted, "equipment.converter.enabled by": "engine-run", "equipment.engine-run.means": "unknown"}
    assert isinstance(ask("load", "lights", "survives_bank_loss", unknown), Unknown)
