"""Conductors as they are laid."""

from __future__ import annotations

import math

import pytest

from checker.quantities import Unknown
from tests.facts.house import ask as house_ask
from tests.facts.van import ask, van


def test_a_sheath_is_what_the_cable_says_and_silence_leaves_it_open() -> None:
    assert ask("conductor", "drive", "sheathed") is True
    assert isinstance(ask("conductor", "trunk", "sheathed"), Unknown)
    assert ask("conductor", "drive", "sheathed", ("cables.pair-4.sheath", "none")) is False


def test_the_places_of_the_run_say_where_it_lies() -> None:
    assert ask("conductor", "drive", "under_body") is True
    assert ask("conductor", "lights", "under_body") is False
    assert ask("conductor", "valve", "in_gas_locker") is True


def test_conduit_and_ducts_enclose_it_and_a_sleeve_or_a_slit_tube_does_not() -> None:
    assert ask("conductor", "drive", "enclosed") is True
    for word in ("sleeve", "split tube", "none"):
        assert ask("conductor", "drive", "enclosed", ("circuits.drive.covering", word)) is False
    assert isinstance(ask("conductor", "drive", "enclosed", ("circuits.drive.covering", "unknown")), Unknown)
    assert ask("conductor", "lights", "enclosed") is True
    assert isinstance(ask("conductor", "lights", "enclosed", ("places.duct.kind", "unknown")), Unknown)


def test_a_device_between_two_stretches_in_the_locker_is_a_joint_there() -> None:
    run = "[0.1 m via cabin, 0.2 m via gas, FV, 0.2 m via gas]"
    assert ask("conductor", "valve", "joint_in_gas_locker") is False
    assert ask("conductor", "valve", "joint_in_gas_locker", ("circuits.valve.run", run)) is True


def test_only_what_lies_free_needs_supports() -> None:
    # lights: 0.1 m in the cabin and 0.5 m in the lounge; duct and loop hold the rest.
    assert ask("conductor", "lights", "free_run") == pytest.approx(0.6)
    assert ask("conductor", "drive", "free_run") == 0.0
    assert ask("conductor", "house-neg", "free_run") == pytest.approx(0.5)
    assert ask("conductor", "lights return", "free_run") == 0.0
    back = ("circuits.trunk.return", "{run: [1 m via cabin, 0.5 m via duct]}")
    assert ask("conductor", "trunk return", "free_run", back) == pytest.approx(1.0)


def test_a_told_box_makes_a_cupboard_of_a_place_within_and_of_no_other() -> None:
    below = ("circuits.house-neg.run", "[0.5 m via underbody]")
    box = "{at: [0 m, -1 m, 0.2 m], size: [4 m, 2 m, 0.3 m]}"
    assert ask("conductor", "house-neg", "free_run", below, ("places.underbody.box", box)) == pytest.approx(0.5)
    cupboard = ("places.underbody", f"{{inside: cabin, box: {box}}}")
    assert ask("conductor", "house-neg", "free_run", below, cupboard) == 0.0


def test_solid_or_aluminium_is_no_stranded_copper() -> None:
    assert ask("conductor", "trunk", "stranded_copper") is True
    assert ask("conductor", "trunk", "stranded_copper", ("cables.red-16.material", "aluminium")) is False
    assert ask("conductor", "trunk", "stranded_copper", ("cables.red-16.strands", "solid")) is False
    assert isinstance(ask("conductor", "trunk", "stranded_copper", ("cables.red-16.strands", "unknown")), Unknown)


def test_a_cooler_terminal_lowers_the_current_by_the_root_of_the_rise_it_leaves() -> None:
    facts = van(("equipment.house.terminals", "{+: {stud: M8, limit: 75 °C}}"), ("vehicle.terminal limit", "105 °C"))
    trunk = facts.subject("conductor", "trunk")
    assert trunk is not None
    # 90 °C insulation at 40 °C air: rises of 50 K and 35 K.
    assert trunk.capacity_at_terminals == pytest.approx(trunk.carrying_capacity * math.sqrt(35 / 50))


def test_a_terminal_without_a_told_limit_stands_sixty_degrees_or_more() -> None:
    trunk = van().subject("conductor", "trunk")
    assert trunk is not None
    assert (trunk.terminal_limit.low, trunk.terminal_limit.high) == (60.0, math.inf)
    # 90 °C insulation at 40 °C air: rises of 50 K and 20 K.
    low = trunk.carrying_capacity * math.sqrt(20 / 50)
    assert trunk.capacity_at_terminals.low == pytest.approx(low)
    assert trunk.capacity_at_terminals.high == pytest.approx(trunk.carrying_capacity)
    told = van(("vehicle.terminal limit", "105 °C")).subject("conductor", "trunk")
    assert told is not None
    assert told.capacity_at_terminals == told.carrying_capacity


def test_a_cable_at_a_battery_is_one_that_ends_there() -> None:
    assert house_ask("conductor", "link", "at_battery") is True
    assert house_ask("conductor", "feed", "at_battery") is False
    assert house_ask("circuit", "feed", "feeds_board") is True
    assert house_ask("circuit", "link", "feeds_board") is False


def test_the_negative_to_the_chassis_is_more_than_a_bond() -> None:
    assert ask("conductor", "house-neg", "bonds_metal") is False
    assert ask("conductor", "trunk", "bonds_metal") is False
    bond = ("circuits.bond", "{from: inlet.PE, to: chassis, run: [1 m via cabin], cable: red-16, duty: bonding}")
    assert ask("conductor", "bond", "bonds_metal", bond) is True


@pytest.mark.parametrize(
    ("joint", "run", "answer"),
    [
        ("{kind: joint, place: gas}", "[0.1 m via cabin, FV, 4 m via cabin, J, 0.4 m via gas]", True),
        ("{kind: joint, place: cabin}", "[0.1 m via cabin, FV, 4 m via cabin, J, 0.4 m via gas]", False),
    ],
)
def test_a_joint_that_stands_in_the_locker_is_one_there(joint: str, run: str, answer: bool) -> None:
    edits = (("joints.J", joint), ("circuits.valve.run", run))
    assert ask("conductor", "valve", "joint_in_gas_locker", *edits) is answer


def test_a_block_where_a_circuit_ends_is_a_joint_where_it_stands() -> None:
    ends = ("circuits.valve.to", "J"), ("circuits.more", "{from: J, to: solenoid, run: [0.2 m via gas], cable: pair-4}")
    asked = ("conductor", "valve", "joint_in_gas_locker", *ends)
    assert ask(*asked, ("joints.J", "{kind: terminal block, place: gas}")) is True
    assert isinstance(ask(*asked, ("joints.J", "{kind: terminal block}")), Unknown)


@pytest.mark.parametrize(("covering", "free"), [("split tube", 4.5), ("sleeve", 4.5), ("conduit", 0.0)])
def test_a_limp_covering_needs_supports_as_its_cable_does(covering: str, free: float) -> None:
    assert ask("conductor", "valve", "free_run", ("circuits.valve.covering", covering)) == pytest.approx(free)
