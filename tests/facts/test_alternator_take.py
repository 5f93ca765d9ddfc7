"""What an alternator with no converter between drives into a lead-acid bank."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask

AUX = {
    "equipment.aux": "{kind: battery, chemistry: AGM lead acid, nominal: 12 V, cells: 6, capacity: 100 Ah, "
    "place: locker, purpose: house}",
    "circuits.aux": "{from: bar-12, to: aux, run: [0.2 m via cabin], cable: red-70, return: same, duty: charge}",
}


def test_a_low_battery_takes_a_share_of_its_capacity_by_age_and_temperature() -> None:
    found = ask("bank", "aux", "alternator_take", AUX)
    assert isinstance(found, Range)
    assert (found.low, found.high) == (pytest.approx(10.5), pytest.approx(42.0))
    weak = ask("bank", "aux", "alternator_take", {**AUX, "equipment.alternator.rating": "20 A"})
    assert weak.high == pytest.approx(20.0)


def test_a_current_read_with_the_engine_running_says_it() -> None:
    read = {**AUX, "readings": "[{mode: driving, at: aux, current: -18 A}, {mode: idling, at: aux, current: 12 A}]"}
    assert ask("bank", "aux", "alternator_take", read) == 18.0
    unread = {**AUX, "readings": "[{mode: driving, at: aux, current: unknown}]"}
    assert isinstance(ask("bank", "aux", "alternator_take", unread), Unknown)
    parked = {**AUX, "readings": "[{mode: parked, at: aux, current: 18 A}]"}
    assert isinstance(ask("bank", "aux", "alternator_take", parked), Range)


def test_a_bank_that_no_alternator_reaches_unconverted_is_not_asked() -> None:
    assert ask("bank", "bank", "alternator_take") is None
    assert isinstance(ask("bank", "aux", "alternator_take", {**AUX, "equipment.aux.chemistry": "unknown"}), Unknown)
