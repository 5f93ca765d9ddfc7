"""What a bank may give and take, and what is asked of it."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.house import ask, ids

WRITTEN_OUT = {
    "equipment.bank": "{part: module, place: locker, purpose: house}",
    "equipment.bank-2": "{part: module, place: locker, purpose: house}",
    "equipment.FU1": "{part: strip, rating: 100 A}",
    "equipment.FU2": "{part: strip, rating: 100 A}",
    "circuits.lead-1": "{from: bank, to: bar-bank, run: [FU1, 0.4 m], cable: link-25, return: same, duty: charge}",
    "circuits.lead-2": "{from: bank-2, to: bar-bank, run: [FU2, 0.4 m], cable: link-25, return: same, duty: charge}",
}


@pytest.mark.parametrize(
    ("fact", "amperes"), [("charge_limit", 100.0), ("discharge_limit", 200.0), ("peak_limit", 300.0)]
)
def test_limits_of_strings_in_parallel_are_summed(fact: str, amperes: float) -> None:
    assert ask("bank", "bank", fact) == amperes


@pytest.mark.parametrize(
    "fact", ["charge_limit", "discharge_limit", "peak_limit", "capacity", "load_sum", "charge_sum"]
)
def test_a_bank_written_out_has_the_same_limits_as_the_short_form(fact: str) -> None:
    assert ask("bank", "bank", fact, WRITTEN_OUT) == ask("bank", "bank", fact)


def test_a_peak_that_is_not_told_is_at_least_the_lasting_limit() -> None:
    assert ask("bank", "bank", "peak_limit", {"parts.module.bms.peak": "unknown"}) == Range(200.0, float("inf"))


def test_a_stated_short_circuit_current_is_summed_over_the_strings() -> None:
    assert ask("bank", "bank", "short_circuit_current") == 4800.0


def test_without_a_stated_one_the_voltage_drives_it_through_the_resistance() -> None:
    # 58.4 V / 9 mOhm for each of two strings.
    found = ask("bank", "bank", "short_circuit_current", {"parts.module.short circuit current": "(remove)"})
    assert found == pytest.approx(2 * 58.4 / 0.009)


def test_all_chargers_count_together_at_their_settings() -> None:
    # Converter set to 20 A of 50 A, controller 15 A, inverter-charger 25 A.
    assert ask("bank", "bank", "charge_sum") == 60.0
    assert ask("bank", "bank", "charge_sum", {"equipment.converter.settings.charge current": "(remove)"}) == 90.0
    assert isinstance(ask("bank", "bank", "charge_sum", {"equipment.sun.output.current": "unknown"}), Unknown)


def test_what_a_bank_feeds_is_asked_for_at_its_rating() -> None:
    # 2 kW / (0.92 x 44 V low stop) + 50 A converter + 2 A alarm supply.
    assert ask("bank", "bank", "load_sum") == pytest.approx(2000 / (0.92 * 44) + 50 + 2)
    assert ask("bank", "bank", "peak_sum") == pytest.approx(4000 / (0.92 * 44) + 50 + 2)


def test_an_inverter_without_a_stated_surge_asks_at_least_its_power() -> None:
    found = ask("bank", "bank", "peak_sum", {"equipment.inverter.surge": "unknown"})
    assert isinstance(found, Range)
    assert found.low == pytest.approx(2000 / (0.92 * 44) + 52)
    assert found.high == float("inf")


def test_equal_leads_share_alike_and_unequal_ones_do_not() -> None:
    assert ask("bank", "bank", "unit_imbalance") == 0.0
    # 9 mOhm + 2 x 0.3 m and 2 x 1.6 m of 25 mm2 at 0.780 mOhm/m (IEC 60228 table 3, class 5).
    short, long = 9 + 2 * 0.3 * 0.78, 9 + 2 * 1.6 * 0.78
    even = (1 / short + 1 / long) / 2
    found = ask("bank", "bank", "unit_imbalance", {"equipment.bank.unit leads.length": "[0.3 m, 1.6 m]"})
    assert found == pytest.approx((1 / short - 1 / long) / even, rel=1e-6)


def test_leads_known_as_ranges_may_still_be_equal() -> None:
    found = ask("bank", "bank", "unit_imbalance", {"equipment.bank.unit leads.length": "[0.3..0.5 m, 0.4 m]"})
    assert isinstance(found, Range)
    assert found.low == 0.0


def test_a_chain_taken_off_at_one_end_shares_worse_than_across() -> None:
    chain = {"equipment.bank.joined by": "chain", "equipment.bank.units": "4", "equipment.bank.arrangement": "1s4p"}
    same = ask("bank", "bank", "unit_imbalance", {**chain, "equipment.bank.take-off": "{+: 1, -: 1}"})
    across = ask("bank", "bank", "unit_imbalance", {**chain, "equipment.bank.take-off": "{+: 1, -: 4}"})
    assert same > 3 * across > 0
    assert ask("bank", "bank", "take_off_diagonal", {**chain, "equipment.bank.take-off": "{+: 1, -: 4}"}) is True


def test_batteries_on_both_sides_of_a_converter_are_not_mixed() -> None:
    assert ask("bank", "bank", "mixed_with") == ()


def test_batteries_joined_by_a_relay_are_mixed() -> None:
    edits = {
        "equipment.buffer": "{kind: battery, chemistry: lithium iron phosphate, nominal: 12 V, purpose: house}",
        "circuits.buffer": "{from: buffer, to: bar-12, run: [0.3 m], cable: red-35, return: same}",
    }
    assert ids(ask("bank", "start-battery", "mixed_with", edits)) == ["buffer"]
    assert isinstance(
        ask("bank", "start-battery", "mixed_with", {**edits, "equipment.bank.joined by": "unknown"}), Unknown
    )


def test_the_lesser_of_management_and_maker_limits_charging() -> None:
    assert ask("bank", "bank", "charge_limit", {"parts.module.charge limit": "20 A"}) == 40.0
    assert ask("bank", "bank", "charge_limit", {"parts.module.charge limit": "60 A"}) == 100.0
    assert ask("bank", "bank", "charge_limit_told") is False
    assert ask("bank", "bank", "charge_limit_told", {"parts.module.charge limit": "unknown"}) is True


def test_the_maker_of_the_cells_may_allow_less_than_their_management() -> None:
    for key, fact, managed in (("charge limit", "charge_limit", 100.0), ("discharge limit", "discharge_limit", 200.0)):
        assert ask("bank", "bank", fact, {f"parts.module.{key}": "25 A"}) == 50.0
        assert ask("bank", "bank", fact, {f"parts.module.{key}": "250 A"}) == managed
        assert isinstance(ask("bank", "bank", fact, {f"parts.module.{key}": "unknown"}), Unknown)
