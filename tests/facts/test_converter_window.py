"""The voltages that converters work at, against the bus at each of their sides."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask

HIGH = "equipment.alarm-supply.sides.high.voltage"
STOP = "parts.module.bms.under voltage"


def test_the_input_of_a_converter_that_holds_up_loads_alone_falls_to_where_the_management_stops() -> None:
    for edits, volts in (({}, 42.0 - 36.0), ({HIGH: "40..60 V"}, 42.0 - 40.0), ({STOP: "45 V"}, 45.0 - 36.0)):
        found = ask("converter", "alarm-supply", "supply_margin", edits)
        assert volts - 0.07 < found.low < found.high < volts  # less what its circuit and its feeders lose


def test_other_converters_and_converters_beside_a_battery_have_no_such_margin() -> None:
    assert ask("converter", "inverter", "supply_margin") is None
    assert ask("converter", "sun", "supply_margin") is None


@pytest.mark.parametrize("edits", [{HIGH: "(remove)"}, {HIGH: "unknown"}, {STOP: "unknown"}])
def test_what_nobody_knows_leaves_it_open(edits: dict[str, str]) -> None:
    assert isinstance(ask("converter", "alarm-supply", "supply_margin", edits), Unknown)


def test_a_relay_that_decides_whether_a_battery_stands_beside_the_loads_leaves_it_open_upwards() -> None:
    relay = {
        "equipment.engine-run.means": "unknown",
        "equipment.converter.sides.high.voltage": "46..58 V",
    }
    found = ask("converter", "converter", "supply_margin", relay)
    assert isinstance(found, Range)
    assert found.low < 0.0
    assert found.high > 1000.0
