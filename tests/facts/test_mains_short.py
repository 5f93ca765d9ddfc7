"""Short circuits along mains circuits: what flows, what it brings into the copper, what ends it."""

from __future__ import annotations

import math

import pytest

from checker.quantities import Range, Unknown, less_equal
from tests.facts.mains_subjects import COACH, VAN, ids, subject

TOLD = {"vehicle.supply.loop impedance": "0.5 Ω"}
LIMITED = {"equipment.inverter.ac.fault current": "30 A", "equipment.inverter.ac.fault time": "0.5 s"}


def test_each_circuit_has_one_for_each_source_that_reaches_it() -> None:
    found = ids(COACH, "short")
    assert "heating on inlet" in found
    assert "heating on inverter" in found
    assert "shore-in on inverter" not in found


def test_the_least_current_goes_round_site_lead_and_both_conductors_hot() -> None:
    one = subject(COACH, "short", "heating on inlet", TOLD)
    ohm = one.circuit.loop_resistance
    names = ("shore-in", "inverter-in", "normal", "board-feed")
    before = [subject(COACH, "circuit", name, TOLD).loop_resistance for name in names]
    bypass = [subject(COACH, "circuit", name, TOLD).loop_resistance for name in ("shore-in", "bypass", "board-feed")]
    lead = 2 * 25.0 * 7.98e-3 * (1 + 0.00393 * 50.0)
    ways = [0.95 * 230.0 / (0.5 + lead + ohm + sum(way)) for way in (before, bypass)]
    assert min(abs(one.least / way - 1.0) for way in ways) < 0.01


def test_a_site_of_untold_impedance_lies_between_strong_and_just_keeping_its_drop() -> None:
    told = subject(COACH, "short", "heating on inlet", TOLD).least
    untold = subject(COACH, "short", "heating on inlet").least
    assert isinstance(untold, Range)
    assert untold.low < told < untold.high
    unknown = subject(COACH, "short", "heating on inlet", {"vehicle.supply.loop impedance": "unknown"}).least
    assert isinstance(unknown, Unknown)


def test_the_loop_through_electrodes_says_nothing_of_line_and_neutral() -> None:
    tt = {"vehicle.supply.loop impedance": "40 Ω", "vehicle.supply.earthing": "TT"}
    assert subject(COACH, "short", "heating on inlet", tt).least.low > 100.0


def test_a_loop_of_a_site_of_unknown_earthing_may_be_that_of_an_electrode() -> None:
    told = {"vehicle.supply.loop impedance": "40 Ω", "vehicle.supply.earthing": "unknown"}
    assert isinstance(subject(COACH, "short", "heating on inlet", told).least, Unknown)


def test_an_inverter_ends_the_short_itself() -> None:
    one = subject(COACH, "short", "heating on inverter", LIMITED)
    assert (one.least, one.source_limits) == (30.0, True)
    assert one.far_energy == pytest.approx(30.0**2 * 0.5)
    assert isinstance(subject(COACH, "short", "heating on inverter").far_energy, Unknown)


def test_what_its_maker_says_of_opening_at_once_shortens_the_promise() -> None:
    plain = subject(COACH, "short", "heating on inlet", TOLD)
    quick = subject(COACH, "short", "heating on inlet", TOLD | {"parts.mcb.instant.within": "10 ms"})
    assert plain.far_energy == pytest.approx(plain.least**2 * 0.1)
    assert quick.far_energy == pytest.approx(plain.least**2 * 0.01)
    doubt = subject(COACH, "short", "heating on inlet", TOLD | {"parts.mcb.instant.within": "unknown"})
    assert isinstance(doubt.far_energy, Unknown)
    either = subject(COACH, "short", "heating on inlet", TOLD | {"parts.mcb.instant.within": "10..50 ms"})
    found = either.far_energy
    assert (found.low, found.high) == pytest.approx((plain.least**2 * 0.01, plain.least**2 * 0.05))


def test_the_energy_along_a_run_is_never_below_that_at_its_far_end() -> None:
    for name in ("heating on inlet", "kitchen on inlet", "board-feed on inlet"):
        one = subject(COACH, "short", name, TOLD)
        assert less_equal(one.far_energy, one.greatest_energy.high) is True


def test_ahead_of_every_device_nothing_is_asked() -> None:
    ahead = subject(COACH, "short", "inverter-in on inlet", {"circuits.shore-in.run": "[1 m via locker]"})
    assert (ahead.has_device, ahead.greatest_energy, ahead.far_energy) == (False, None, math.inf)


def test_a_transformer_tells_what_its_secondary_gives() -> None:
    edits = {
        "equipment.T": "{kind: transformer, primary: {voltage: 230 V AC}, secondary: {voltage: 24 V AC}, "
        "windings: separate, place: locker}",
        "circuits.heating": "{from: T.secondary, to: heater, run: [3 m via duct], cable: flex-2.5}",
        "circuits.stepping": "{from: board.heater, to: T.primary, run: [0.5 m via locker], cable: flex-2.5}",
    }
    assert isinstance(subject(COACH, "short", "heating on T", edits).least, Unknown)
    told = edits | {"equipment.T.secondary.fault current": "80 A"}
    assert subject(COACH, "short", "heating on T", told).least == 80.0


def test_a_feeder_is_cleared_by_the_site_a_breaker_or_the_source() -> None:
    untold = subject(COACH, "short", "inverter-in on inlet")
    assert isinstance(untold.earth_clears_by, Unknown)
    assert (untold.feeds_on, untold.ends_at_load) == (False, False)
    site = subject(COACH, "short", "inverter-in on inlet", {"vehicle.site rcd.trips at": "30 mA"})
    assert site.earth_clears_by == Range(0.0, 0.15)
    breaker = subject(COACH, "short", "inverter-in on inlet", TOLD | {"vehicle.site rcd.trips at": "none"})
    assert breaker.earth_clears_by == pytest.approx(0.1)
    electrode = {"vehicle.supply.loop impedance": "40 Ω", "vehicle.supply.earthing": "TT"}
    weak = electrode | {"vehicle.site rcd.trips at": "none"}
    assert subject(COACH, "short", "inverter-in on inlet", weak).earth_clears_by == math.inf
    assert subject(COACH, "short", "board-feed on inverter", LIMITED).feeds_on is True


def test_a_generator_counts_as_a_source_that_limits() -> None:
    assert any("on generator" in one or "on genset" in one for one in ids(VAN, "short"))


def test_a_quick_residual_device_bounds_what_the_earth_core_takes() -> None:
    told = TOLD | {"vehicle.site rcd.trips at": "none", "equipment.R1.time": "10 ms"}
    quick = subject(COACH, "short", "heating on inlet", told).earth_energy
    slow = subject(COACH, "short", "heating on inlet", told | {"equipment.R1.time": "2 s"}).earth_energy
    assert less_equal(quick, slow.high) is True
    assert quick.high < slow.high
