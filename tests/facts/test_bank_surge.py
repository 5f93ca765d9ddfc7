"""A surge or an in-rush against the battery itself."""

from __future__ import annotations

from typing import Any

import pytest

from checker.quantities import Range, Unknown, same
from tests.facts.house import ask

HARD = {"equipment.isolator.precharge": "none"}


def lead(**keys: str) -> dict[str, str]:
    """The house with cells of lead and an inverter of these keys."""
    return {"parts.module.chemistry": "AGM lead acid", "parts.module.bms": "none", "parts.module.cells": "24", **keys}


def test_who_is_managed() -> None:
    assert ask("bank", "bank", "is_managed") is True
    assert ask("bank", "bank", "is_managed", lead()) is False
    assert ask("bank", "start-battery", "is_managed") is False
    assert isinstance(
        ask("bank", "bank", "is_managed", {"parts.module.chemistry": "unknown", "parts.module.bms": "none"}), Unknown
    )
    assert isinstance(
        ask("bank", "bank", "is_managed", {"parts.module.chemistry": "unknown", "parts.module.bms": "(remove)"}),
        Unknown,
    )


def test_an_inverter_that_hangs_on_it_by_a_relay_alone_is_not_asked_of_it() -> None:
    assert ask("bank", "bank", "inverter_stop") == 42.0
    assert ask("bank", "start-battery", "inverter_stop") is None
    not_read = {"equipment.inverter.dc.voltage": "unknown"}
    assert same(ask("bank", "bank", "inverter_stop", not_read), Range(0.0, 44.0))  # it lies somewhere below the stop


def test_a_lead_bank_sags_by_its_resistance_times_what_is_asked() -> None:
    found: Any = ask("bank", "bank", "voltage_at_surge", lead())
    ohm = ask("bank", "bank", "highest_voltage", lead()) / ask("bank", "bank", "short_circuit_current", lead())
    asked = ask("bank", "bank", "peak_sum", lead()) * 44.0 / 42.0
    assert isinstance(found, Range)
    assert found.low == pytest.approx(24 * 2.0 - ohm * asked)
    assert found.high == pytest.approx(24 * 2.042 - ohm * asked)
    assert isinstance(ask("bank", "bank", "voltage_at_surge"), Unknown)


def test_what_a_management_takes_for_a_short_is_that_of_all_strings() -> None:
    assert ask("bank", "bank", "short_trip_current") == 800.0
    assert ask("bank", "bank", "short_trip_time") == pytest.approx(0.001)


def test_an_in_rush_is_asked_of_a_bank_where_no_maker_answers_for_the_precharge() -> None:
    assert ask("bank", "bank", "inrush_peak") is None
    assert ask("bank", "bank", "inrush_time") is None
    assert ask("bank", "bank", "inrush_peak", HARD) == ask("switch", "isolator", "closing_current", HARD)
    assert ask("bank", "start-battery", "inrush_peak", HARD) is None
    assert isinstance(ask("bank", "bank", "inrush_peak", {"equipment.isolator.precharge": "unknown"}), Unknown)
    longer = ask("bank", "bank", "inrush_time", {**HARD, "equipment.inverter.dc.input capacitance": "60 mF"})
    assert longer > ask("bank", "bank", "inrush_time", HARD)
