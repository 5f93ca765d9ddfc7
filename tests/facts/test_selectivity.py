"""Devices in series, on curves of their own so that every answer can be read off."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown
from tests.circuit.designs import battery, design, lamp

CIRCUITS = """
  main: {from: bank, to: bar, run: [0.2 m via cabin, F1, 1 m via cabin], cable: red, return: same}
  first: {from: bar, to: light, run: [0.2 m via cabin, F2, 2 m via cabin], cable: red, return: same}
  second: {from: bar, to: glow, run: [0.2 m via cabin, F3, 2 m via cabin], cable: red, return: same}
"""
SLOW = "{200 A: 10..20 s, 1000 A: 1..2 s, 5000 A: 0.2..0.4 s}"
FAST = "{20 A: 1..2 s, 200 A: 10..20 ms, 5000 A: 1..2 ms}"


def device(id: str, first: str, second: str, kind: str = "fuse") -> Subject:
    equipment = "\n".join([
        battery("bank"), lamp("light"), lamp("glow").replace("voltage:", "essential: true, voltage:"),
        "  bar: {kind: bar, poles: [+, -]}",
        f"  F1: {{kind: {kind}, rating: 100 A, voltage: 58 V DC, curve: {first}}}",
        f"  F2: {{kind: {kind}, rating: 20 A, voltage: 58 V DC, curve: {second}}}",
        f"  F3: {{kind: {kind}, rating: 20 A, voltage: 58 V DC, curve: {FAST}}}",
    ])  # fmt: skip
    found = Facts(design(equipment, CIRCUITS)).subject("device", id)
    assert found is not None
    return found


def test_the_device_upstream_is_the_next_towards_the_battery() -> None:
    assert [one.id for one in device("F2", SLOW, FAST).upstream] == ["F1"]
    assert device("F1", SLOW, FAST).upstream == ()


def test_bands_apart_are_selective() -> None:
    found = device("F2", SLOW, FAST)
    assert found.opens_before_upstream is True
    assert [one.id for one in found.selective_with] == ["F1"]


def test_bands_that_overlap_are_not() -> None:
    found = device("F2", SLOW, "{20 A: 100..200 s, 200 A: 5..20 s, 5000 A: 0.1..0.3 s}")
    assert found.opens_before_upstream is False
    assert found.selective_with == ()


def test_the_wrong_order_is_not() -> None:
    assert device("F2", FAST, SLOW).opens_before_upstream is False


def test_beyond_the_points_of_a_breaker_nobody_knows() -> None:
    short = "{200 A: 10..20 s, 400 A: 1..2 s}"
    assert isinstance(device("F2", short, FAST, "breaker").opens_before_upstream, Unknown)


@pytest.mark.parametrize(("id", "shares"), [("F2", True), ("F3", False)])
def test_only_a_device_beside_an_essential_load_shares_with_it(id: str, shares: bool) -> None:
    assert device(id, SLOW, FAST).shares_with_essentials is shares


def test_a_cell_of_its_own_spares_an_essential_load() -> None:
    equipment = "\n".join([
        battery("bank"), lamp("light"), lamp("glow").replace("voltage:", "essential: true, own cell: 24 h, voltage:"),
        "  bar: {kind: bar, poles: [+, -]}",
        *(f"  {name}: {{kind: fuse, rating: 20 A, voltage: 58 V DC, curve: {FAST}}}" for name in ("F1", "F2", "F3")),
    ])  # fmt: skip
    found = Facts(design(equipment, CIRCUITS)).subject("device", "F2")
    assert found is not None
    assert found.shares_with_essentials is False
