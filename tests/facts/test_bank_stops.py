"""Where the management of a bank stops, against what its cells stand."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask


def test_stop_and_limit_are_those_of_all_units_in_series() -> None:
    # 16 cells at 3.65 V
    assert ask("bank", "bank", "over_voltage_stop") == ask("bank", "bank", "cell_voltage_limit") == pytest.approx(58.4)
    two = {"equipment.bank.arrangement": "2s1p"}
    assert ask("bank", "bank", "over_voltage_stop", two) == pytest.approx(116.8)
    assert ask("bank", "bank", "cell_voltage_limit", two) == pytest.approx(116.8)


def test_what_never_stops_has_no_stop_and_silence_leaves_a_question() -> None:
    for key, fact in (("over voltage", "over_voltage_stop"), ("high temperature", "hot_stop")):
        assert ask("bank", "bank", fact, {f"parts.module.bms.{key}": "none"}) is None
        assert isinstance(ask("bank", "bank", fact, {f"parts.module.bms.{key}": "(remove)"}), Unknown)
