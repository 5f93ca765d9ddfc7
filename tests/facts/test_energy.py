"""One day of the house."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask

WH = 3600.0


def test_a_day_uses_loads_through_the_inverter_and_what_waits() -> None:
    fridge, lights, pump = 140 * 10 / 0.92, 40 * 4, 6 * 12 * 0.3
    waits = (6 + 1 + 15 + 0.5) * 24
    assert ask("design", "design", "standing_use") == pytest.approx(waits * WH)
    assert ask("design", "design", "daily_use") == pytest.approx((fridge + lights + pump + waits) * WH)


def test_energy_that_is_told_counts_as_it_stands() -> None:
    lamps_alone = {"modes.parked.running": "{lights: 40 W}", "day.uses": "{lights: 0.2 kWh}"}
    found = ask("design", "design", "daily_use", lamps_alone)
    assert found == pytest.approx((200 + 22.5 * 24) * WH)


def test_what_runs_on_the_bank_needs_a_use_of_its_own() -> None:
    told = {"day.uses": "{fridge: 10 h, lights: 4 h}"}
    assert isinstance(ask("design", "design", "daily_use", told), Unknown)
    for rest in ("engine", "shore"):
        fed = {**told, f"modes.parked.{rest}": {"engine": "2000 rpm", "shore": "16 A"}[rest]}
        assert not isinstance(ask("design", "design", "daily_use", fed), Unknown)
    assert not isinstance(
        ask("design", "design", "daily_use", {**told, "modes.parked.running": "{pump: 0 A}"}), Unknown
    )


def test_sun_driving_and_shore_bring_their_share() -> None:
    assert ask("design", "design", "solar_yield") == pytest.approx(600 * 4 * 0.75 * WH)
    assert ask("design", "design", "driving_yield") == pytest.approx(20 * 56 * 1 * WH)
    assert ask("design", "design", "shore_yield", {"day.shore": "2 h"}) == pytest.approx(25 * 56 * 2 * WH)


def test_the_deficit_is_what_they_do_not_cover() -> None:
    use, sun, road = (ask("design", "design", fact) for fact in ("daily_use", "solar_yield", "driving_yield"))
    assert ask("design", "design", "energy_deficit") == pytest.approx(use - sun - road)


def test_autonomy_is_usable_energy_over_daily_use() -> None:
    use = ask("design", "design", "daily_use")
    assert ask("design", "design", "usable_energy") == pytest.approx(3840 * WH)
    assert ask("design", "design", "autonomy") == pytest.approx(3840 * WH / use * 86400)


def test_what_is_kept_limits_what_may_be_used() -> None:
    assert ask("design", "design", "usable_energy", {"day.keep": "50 %"}) == pytest.approx(2400 * WH)


def test_a_day_that_is_not_told_gives_no_number() -> None:
    assert isinstance(ask("design", "design", "daily_use", {"day.uses": "unknown"}), Unknown)
    assert isinstance(ask("design", "design", "autonomy", {"equipment.inverter.no load": "unknown"}), Unknown)
