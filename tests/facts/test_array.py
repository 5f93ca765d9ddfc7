"""Solar arrays and their controllers."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask, ids

FOUR = {"equipment.panels.arrangement": "4s1p", "equipment.panels.modules": "4"}


def test_open_voltage_rises_in_the_cold() -> None:
    # 4 x 24.3 V x (1 + 0.0028 x 30 K) = 105.4 V at -5 °C.
    assert ask("array", "panels", "open_voltage_cold", FOUR) == pytest.approx(4 * 24.3 * (1 + 0.0028 * 30))
    assert ask("converter", "sun", "open_voltage_cold", FOUR) == pytest.approx(105.36, abs=0.01)
    warmer = {**FOUR, "vehicle.ambient.low": "25 °C"}
    assert ask("array", "panels", "open_voltage_cold", warmer) == pytest.approx(97.2)


def test_an_unknown_arrangement_is_no_single_module() -> None:
    assert isinstance(ask("array", "panels", "open_voltage_cold", {"equipment.panels.arrangement": "unknown"}), Unknown)


def test_the_other_strings_push_back() -> None:
    three = {"equipment.panels.arrangement": "1s3p"}
    assert ask("array", "panels", "reverse_string_current", three) == pytest.approx(2 * 1.25 * 10.4)
    assert ask("array", "panels", "reverse_string_current") == 0.0


def test_an_array_finds_its_controller_and_the_controller_its_arrays() -> None:
    assert ask("array", "panels", "controller").id == "sun"
    assert ids(ask("converter", "sun", "arrays")) == ["panels"]
    assert ask("converter", "converter", "arrays") == ()


def test_power_of_the_array_over_that_of_the_controller() -> None:
    assert ask("converter", "sun", "array_power_ratio") == pytest.approx(600 / (15 * 56))


def test_the_isolator_of_an_array_is_read_with_its_ratings() -> None:
    assert ask("array", "panels", "isolator_voltage") == 150.0
    assert ask("array", "panels", "isolator_poles") == 2.0
    assert ask("array", "panels", "isolator_voltage", {"equipment.sun-switch.voltage": "250 V AC"}) is None
    bare = {"circuits.sun-in.run": "[3 m]"}
    assert ask("array", "panels", "has_isolator", bare) is False
    assert ask("array", "panels", "isolator_voltage", bare) is None
    assert isinstance(ask("array", "panels", "has_isolator", {"circuits.sun-in.run": "[3 m, unknown]"}), Unknown)


def test_strings_in_one_array_do_not_tell_of_fuses_of_their_own() -> None:
    assert isinstance(ask("array", "panels", "has_string_fuses", {"equipment.panels.arrangement": "1s3p"}), Unknown)


def test_string_fuses_count_as_told_when_no_larger_than_the_modules_permit() -> None:
    def fused(fuse: str) -> object:
        edits = {"equipment.panels.arrangement": "1s3p", "equipment.panels.string fuse": fuse}
        return ask("array", "panels", "has_string_fuses", edits)

    assert fused("15 A") is True
    assert fused("20 A") is False
    assert fused("none") is False
    assert isinstance(fused("unknown"), Unknown)


def test_arrays_on_one_controller_push_into_each_other() -> None:
    east = {
        "equipment.east": "{kind: solar array, modules: 1, arrangement: 1s1p, open voltage: 24 V, short current: 10 A, "
        "series fuse: 15 A, place: roof}",
        "circuits.east-in": "{from: east, to: sun.pv, run: [3 m via roof], cable: sun-4, return: same}",
    }
    own = ask("array", "panels", "short_current")
    assert ask("array", "east", "parallel_strings", east) == 2.0
    assert ask("array", "east", "reverse_string_current", east) == pytest.approx(1.25 * own)
    assert ask("array", "panels", "parallel_strings") == 1.0


def test_a_fuse_in_the_run_of_one_string_counts_when_its_modules_bear_it() -> None:
    def fused(rating: str) -> object:
        fuse = f"{{kind: fuse, family: cylindrical 10x38, rating: {rating}, voltage: 600 V DC}}"
        run = {"circuits.sun-in.run": f"[3 m via roof, {fuse}, sun-switch, 0.5 m via locker]"}
        return ask("array", "panels", "has_string_fuses", run)

    assert fused("15 A") is True
    assert fused("30 A") is False
    assert isinstance(ask("array", "panels", "has_string_fuses", {"circuits.sun-in.run": "[unknown]"}), Unknown)


def test_string_fuses_belong_to_several_strings_alone() -> None:
    two = {"equipment.panels.arrangement": "3s2p", "equipment.panels.modules": "6"}
    fused = {"equipment.panels.string fuse": "15 A"}
    assert ask("array", "panels", "string_fuse", fused) is None
    assert ask("array", "panels", "string_fuse", two | fused) == 15.0
    assert isinstance(ask("array", "panels", "string_fuse", two), Unknown)


def test_an_array_on_the_bar_of_a_battery_is_seen_and_a_run_that_nobody_saw_leaves_it_open() -> None:
    assert ask("array", "panels", "on_a_battery") is False
    assert ask("array", "panels", "on_a_battery", {"circuits.sun-in.to": "bar-48"}) is True
    unseen = {"circuits.sun-in.run": "[3 m via roof, unknown]"}
    assert isinstance(ask("array", "panels", "on_a_battery", unseen), Unknown)
