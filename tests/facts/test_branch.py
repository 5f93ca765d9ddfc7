"""Branches before their own device, and negatives that are not on the chassis."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown
from tests.circuit.designs import battery, design, fuse, lamp

EQUIPMENT = "\n".join(
    [battery("bank"), fuse("F1", 300), fuse("F2", 40), lamp("light"), "  bar: {kind: bar, poles: [+, -]}"]
)
CIRCUITS = """
  main: {from: bank, to: bar, run: [0.1 m via cabin, F1, 1 m via cabin], cable: {size: 95 mm2, cores: 1}, return: same}
  feed: {from: bar, to: light, run: [0.4 m via cabin, F2, 5 m via cabin], cable: red, return: same}
"""


def of(kind: str, id: str, circuits: str = CIRCUITS, equipment: str = EQUIPMENT) -> Subject:
    found = Facts(design(equipment, circuits)).subject(kind, id)
    assert found is not None
    return found


def test_a_branch_runs_unprotected_as_far_as_its_own_device() -> None:
    feed = of("conductor", "feed")
    assert feed.is_branch is True
    assert feed.branch_length == pytest.approx(0.4)


def test_a_conductor_that_carries_what_feeds_it_is_no_branch() -> None:
    assert of("conductor", "feed", equipment=EQUIPMENT.replace("rating: 300 A", "rating: 60 A")).is_branch is False


def test_a_branch_without_a_device_runs_unprotected_over_its_whole_length() -> None:
    assert of("conductor", "feed", CIRCUITS.replace(", F2, 5 m", ", 5 m")).branch_length == pytest.approx(5.4)


TEE = EQUIPMENT + "\n  tee: {kind: terminal block}"
IN_TWO = """
  main: {from: bank, to: bar, run: [0.1 m via cabin, F1, 1 m via cabin], cable: {size: 95 mm2, cores: 1}, return: same}
  tail: {from: bar, to: tee, run: [2 m via cabin], cable: red, return: same}
  feed: {from: tee, to: light, run: [0.4 m via cabin, F2, 5 m via cabin], cable: red, return: same}
"""


def test_thin_cable_that_leads_up_to_a_branch_counts_with_it_and_thick_cable_does_not() -> None:
    assert of("conductor", "feed", IN_TWO, TEE).branch_length == pytest.approx(2.4)
    thick = IN_TWO.replace("run: [2 m via cabin], cable: red", "run: [2 m via cabin], cable: {size: 95 mm2, cores: 1}")
    fused = TEE.replace("rating: 300 A", "rating: 200 A")
    assert of("conductor", "feed", thick, fused).branch_length == pytest.approx(0.4)


def test_a_branch_divides_where_a_second_one_leaves_it_before_its_device() -> None:
    assert of("conductor", "tail", IN_TWO, TEE).divides_before_device is False
    assert of("conductor", "feed", IN_TWO, TEE).divides_before_device is False
    more = IN_TWO + "  step: {from: tee, to: step-light, run: [1 m], cable: red, return: same}\n"
    assert of("conductor", "tail", more, TEE + "\n" + lamp("step-light")).divides_before_device is True
    assert isinstance(
        of(
            "conductor", "tail", IN_TWO.replace("run: [2 m via cabin]", "run: [2 m via cabin, unknown]"), TEE
        ).divides_before_device,
        Unknown,
    )


def test_the_lead_of_the_battery_is_no_branch() -> None:
    assert of("conductor", "main").is_branch is False


def test_without_a_bond_the_negative_floats() -> None:
    assert of("device", "F2").negative_on_chassis is False
    assert of("device", "F2").both_poles_protected is False


def test_a_bond_brings_the_negative_to_the_chassis() -> None:
    bond = CIRCUITS + "  bond: {from: bank.-, to: chassis, run: [0.3 m], cable: red, duty: bonding}\n"
    assert of("device", "F2", bond).negative_on_chassis is True


@pytest.mark.parametrize(("isolated", "answer"), [("true", False), ("false", True), ("unknown", None)])
def test_a_converter_joins_its_negatives_unless_it_isolates(isolated: str, answer: bool | None) -> None:
    equipment = EQUIPMENT + f"\n  box: {{kind: dc converter, both ways: false, isolated: {isolated}}}"
    circuits = (
        CIRCUITS
        + """
  into: {from: bar, to: box.high, run: [1 m], cable: red, return: same}
  bond: {from: box.low-, to: chassis, run: [0.3 m], cable: red, duty: bonding}
"""
    )
    found = of("device", "F2", circuits, equipment).negative_on_chassis
    assert isinstance(found, Unknown) if answer is None else found is answer


def test_two_poles_protect_both() -> None:
    two = EQUIPMENT.replace(
        "  F2: {kind: fuse, family: bolt-down strip,", "  F2: {kind: breaker, family: thermal, poles: 2,"
    )
    assert of("device", "F2", equipment=two).both_poles_protected is True
