"""What an entry that nobody knows leaves open: each fact that rested on it is a question, not another answer."""

from __future__ import annotations

from typing import Any

import pytest

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts
from checker.facts.unseen import half_standing, standing
from checker.quantities import Range, Unknown, exact
from checker.reading import read_text
from checker.shipped import shipped
from tests.clean.designs import NAMES, text_of

FLAWED, SURVEY = "estuary-coach-flawed", "saltbush-survey"
EXAMPLES = (FLAWED, SURVEY)


def design(name: str, *forgotten: str) -> Facts:
    """The facts of a shipped or a clean design with some entries unknown."""
    folder = shipped("examples") if name in EXAMPLES else shipped("rules").joinpath("designs")
    text = text_of(name) if name in NAMES else folder.joinpath(f"{name}.fitout.yaml").read_text(encoding="utf-8")
    return Facts(read_text(text, edits=[(path, "unknown") for path in forgotten]))


def ask(facts: Facts, kind: str, id: str, fact: str) -> Any:
    """One fact of one subject."""
    found = facts.subject(kind, id)
    assert found is not None, f"there is no {kind} {id}"
    return getattr(found, fact)


FORGOTTEN = [
    # a device that no run names any more may stand where the run was not seen
    ("generator-van", "circuits.battery.run.1", "device", "F1", "has_starts"),
    ("generator-van", "circuits.battery.run.1", "device", "F1", "fed_by_storage"),
    ("generator-van", "circuits.sockets.run.1", "device", "Q1", "protects_mains_loads"),
    (SURVEY, "circuits.shore.run.1", "device", "board-mcb", "is_fed_from_shore"),
    (SURVEY, "circuits.old-feed.run.1", "switch", "boot-switch", "isolates_bank"),
    (SURVEY, "circuits.old-feed.run.1", "approach", "old-feed from bank", "has_device"),
    (SURVEY, "circuits.relay-out.run.1", "approach", "relay-out from bank", "devices"),
    ("slide-van", "circuits.trunk.run.1", "approach", "trunk from house", "devices"),
    # and what was not seen may hide one
    ("mains-coach", "circuits.shore-in.run.1", "ac_source", "inlet", "has_main_switch"),
    ("generator-van", "circuits.sockets.run.1", "supply", "sockets on inlet", "disconnection_time"),
    ("mains-coach", "circuits.lighting.run.1", "design", "design", "lamps_lost_by_one_fault"),
    ("slide-van", "circuits.trunk.run.1", "device", "FS", "shares_with_essentials"),
    ("slide-van", "circuits.trunk.run.1", "device", "FS", "opens_before_upstream"),
    (SURVEY, "circuits.inverter-feed.run.1", "conductor", "inverter-feed", "is_cleared_by_device"),
    # a stretch that was not seen may lie anywhere
    (SURVEY, "circuits.charge-line.run.0", "conductor", "charge-line", "under_body"),
    (SURVEY, "circuits.outlets.run.0", "place", "ceiling", "carries_both"),
    ("slide-van", "circuits.lights.run.3", "loop", "drag", "bend_needed"),
    # a cable of unknown cores may have an earth and a neutral
    ("generator-van", "circuits.generator.cable", "supply", "sockets on genset", "earth_is_continuous"),
    ("generator-van", "circuits.common.cable", "inlet", "inlet", "chassis_is_earthed"),
    ("coach-48", "circuits.low.return", "device", "F1", "negative_on_chassis"),
    # what stands in no known place may stand in any
    ("generator-van", "equipment.bank.place", "place", "locker", "holds_lead"),
    ("generator-van", "equipment.bank.place", "place", "locker", "holds_battery"),
    (SURVEY, "equipment.bank.place", "hole", "boot-hole", "from_battery_to_living"),
    ("slide-van", "places.cabin.kind", "conductor", "valve", "joint_in_gas_locker"),
    (FLAWED, "looms.duct-mains.place", "place", "floor-duct", "chamber_mixed"),
    (FLAWED, "looms.duct-mains.carries.0", "place", "floor-duct", "chamber_mixed"),
    (FLAWED, "equipment.converter.box.at.0", "equipment", "converter", "box_known"),
    (FLAWED, "equipment.converter.box.at.0", "moving", "slide", "sweep_hits"),
    (FLAWED, "equipment.converter.box.at.0", "equipment", "converter", "swept_by"),
    (FLAWED, "places.seat-base.box.at.0", "equipment", "converter", "place_box_told"),
    (FLAWED, "equipment.converter.place", "equipment", "converter", "place_box_told"),
    (FLAWED, "equipment.bar-12.place", "circuit", "converter-low", "way_known"),
    (FLAWED, "circuits.pump.run.0", "circuit", "pump", "way_known"),
    (FLAWED, "equipment.converter.service.front", "equipment", "converter", "service_told"),
    (FLAWED, "places.seat-base.box.at.0", "circuit", "converter-low", "way_known"),
    # what something is for, or which way it works
    ("coach-48", "equipment.start-battery.purpose", "bank", "start-battery", "purpose"),
    ("coach-48", "equipment.converter.both ways", "load", "heater-48", "lowest_voltage"),
    (FLAWED, "circuits.link-12.duty", "bank", "start-battery", "isolator"),
    ("slide-van", "essential.0", "device", "FS", "shares_with_essentials"),
    (FLAWED, "equipment.gas-alarm.own cell", "device", "F5", "shares_with_essentials"),
    ("house-48", "equipment.bank.joined by", "device", "F9", "fed_by_storage"),
    ("house-48", "equipment.bank.joined by", "mode", "parked", "has_operating_point"),
    ("house-48", "equipment.bank.of", "conductor", "main", "let_through"),
    (FLAWED, "equipment.house-bank.joined by", "bank", "house-bank", "ahead_of_isolator"),
    (FLAWED, "equipment.house-bank.joined by", "conductor", "bank-main", "approaches"),
    (FLAWED, "circuits.exit-light.duty", "design", "design", "all_dead_after_shutdown"),
    (FLAWED, "circuits.shore-in.run.1", "device", "Q2", "is_first_from_shore"),
    (FLAWED, "equipment.inverter.settings.shore limit", "inlet", "inlet", "is_overdrawn"),
    ("house-48", "equipment.gas-alarm.detects", "equipment", "gas-alarm", "serves_gas"),
    ("house-48", "equipment.bank.joined by", "load", "fridge", "only_when_driven"),
    # what was not seen may hide where something is joined, or another contact
    ("gannet-boat", "circuits.start-main.run.1", "design", "design", "driving_yield"),
    ("gannet-boat", "circuits.join.run.3", "switch", "air-relay", "joins_starter"),
    ("gannet-boat", "circuits.shore-in.run.1", "inlet", "inlet", "length_to_residual"),
    ("gannet-boat", "circuits.shore-in.run.1", "inlet", "inlet", "first_residual_current"),
    # what lets a converter work, and where a battery is kept warm
    ("drover-truck", "equipment.running.means", "mode", "stored", "holds"),
    ("drover-truck", "equipment.booster.enabled by", "mode", "stored", "holds"),
    ("drover-truck", "equipment.bank.place", "design", "design", "cold_hours"),
    # what was tested
    (FLAWED, "readings.10.result", "mode", "shore", "link_tested"),
    (FLAWED, "readings.12.test", "design", "design", "polarity_proven"),
]


@pytest.mark.parametrize(("name", "entry", "kind", "id", "fact"), FORGOTTEN)
def test_what_is_not_told_leaves_a_question(name: str, entry: str, kind: str, id: str, fact: str) -> None:
    assert isinstance(ask(design(name, entry), kind, id, fact), Unknown)


SHORE_LOADS = (950 + 140 + 800) / 230
"""What the coach runs on the shore besides its charger (A); the charger takes from nothing to what is left."""
SPANS = [
    ("house-48", "equipment.converter.settings.charge current", "design", "design", "driving_yield", (0.0, None)),
    ("house-48", "equipment.sun.settings.equalise", "device", "F8", "circuit_voltage", (58.4, 72.0)),
    ("house-48", "equipment.bank.joined by", "conductor", "alarming", "branch_length", (0.0, None)),
    ("house-48", "circuits.link.duty", "bank", "start-battery", "added_draw", (0.0, None)),
    ("coach-48", "equipment.converter.place", "place", "locker", "heat", (0.0, None)),
    ("generator-van", "circuits.charge.run.1", "approach", "charge from bank", "length_before_device", (0.0, None)),
    ("coach-48", "circuits.heating.run.1", "conductor", "heating", "let_through", (0.0, None)),
    (FLAWED, "equipment.converter.sides.low.current", "converter", "converter", "drawn_current", (0.0, None)),
    (FLAWED, "equipment.converter.sides.low.current", "conductor", "link-12", "design_current", (0.0, None)),
    ("house-48", "equipment.K1.driven by", "conductor", "link", "design_current", (0.0, 150.0)),
    ("house-48", "equipment.engine-run.means", "conductor", "link", "design_current", (0.0, 150.0)),
    ("house-48", "equipment.converter.both ways", "conductor", "link", "design_current", (0.0, 150.0)),
    ("house-48", "equipment.converter.settings.charge current", "conductor", "link", "design_current", (0.0, 150.0)),
    (FLAWED, "equipment.inverter.settings.shore limit", "conductor", "shore-in", "design_current", (SHORE_LOADS, 15.0)),
]


@pytest.mark.parametrize(("name", "entry", "kind", "id", "fact", "ends"), SPANS)
def test_a_number_spans_what_is_not_told(
    name: str, entry: str, kind: str, id: str, fact: str, ends: tuple[float, float | None]
) -> None:
    before, after = (ask(facts, kind, id, fact) for facts in (design(name), design(name, entry)))
    assert isinstance(after, Range)
    assert after.low == pytest.approx(ends[0])
    assert ends[1] is None or after.high == ends[1]
    if exact(before):
        assert after.low <= before <= after.high


def test_a_bond_is_one_whatever_it_is_said_to_be_for() -> None:
    facts = design("generator-van", "circuits.chassis-bond.duty")
    assert ask(facts, "conductor", "chassis-bond", "is_earth") is True
    assert ask(facts, "inlet", "inlet", "chassis_is_earthed") is True
    facts = design("mains-coach", "circuits.case.duty")
    assert ask(facts, "converter", "inverter", "case_bond_area") == pytest.approx(16e-6)


def test_where_all_was_seen_a_device_in_no_run_stands_nowhere() -> None:
    facts = design("generator-van")
    assert "F1" in standing(facts)
    assert half_standing(facts) == ()


def test_a_device_with_one_side_joined_is_half_standing_until_its_run_is_known() -> None:
    assert half_standing(design(SURVEY, "circuits.old-feed.run.1")) == ("boot-switch",)
    assert "boot-switch" in standing(design(SURVEY))


def test_a_bank_of_unknown_joints_breaks_no_rule_on_shutting_down() -> None:
    found = ask(
        design("estuary-coach-flawed", "equipment.house-bank.joined by"), "design", "design", "all_dead_after_shutdown"
    )
    assert found is not False
