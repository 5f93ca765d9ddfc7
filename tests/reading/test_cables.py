"""Reels, cables in place, and the cores a circuit takes."""

from __future__ import annotations

import pytest

from checker.design.given import Where
from checker.quantities import UNKNOWN
from tests.reading.small import SMALL, only, read


def test_a_reel_is_named_by_its_circuits() -> None:
    design = read()
    circuit = design.circuits["main"]
    assert circuit.cable is design.cables["one"] and circuit.cable.value("size") == 16e-6
    line = next(n for n, line in enumerate(SMALL.splitlines(), 1) if line.startswith("  main:"))
    assert circuit.cable_where == Where(line, 88)


def test_trade_sizes_are_no_square_millimetres() -> None:
    assert read(("cables.one.size", "6 mm auto")).cables["one"].value("size") < 5e-6


def test_a_cable_may_be_written_in_place() -> None:
    cable = read(("circuits.light.cable", "{size: 4 mm2, cores: 2}")).circuits["light"].cable
    assert cable is not None and (cable.value("size"), cable.path) == (4e-6, "circuits.light.cable")


@pytest.mark.parametrize("text", ["unknown", "'?'", "(remove)", "{is: unknown, basis: assumed}"])
def test_a_cable_may_be_unknown(text: str) -> None:
    circuit = read(("circuits.light.cable", text)).circuits["light"]
    assert circuit.cable is None and circuit.returns.how == "unknown"


def test_a_reel_may_be_unknown() -> None:
    cable = read(("cables.two", "unknown")).cables["two"]
    assert cable.value("size") is UNKNOWN and cable.value("cores") is UNKNOWN


def test_a_cable_may_carry_a_basis() -> None:
    design = read(("circuits.light.cable", "{is: two, basis: assumed}"))
    assert design.circuits["light"].cable is design.cables["two"]


def test_a_circuit_takes_cores_of_a_shared_cable() -> None:
    circuit = read(("cables.two.cores", "5"), ("circuits.light.cores", "[3, 4]")).circuits["light"]
    assert circuit.cores == (3, 4) and circuit.returns.how == "in cable"


@pytest.mark.parametrize(
    ("path", "text", "what", "right"),
    [
        ("circuits.light.cable", "tow", "no `tow` in cables", "did you mean `two`?"),
        ("circuits.light.cable", "none", "no circuit", "`unknown`"),
        ("circuits.light.cable", "[two]", "`cable` is a list", "one value"),
        ("circuits.light.cable", "{sise: 4 mm2, cores: 2}", "no key `sise`", "`size`"),
        ("circuits.light.cores", "[1, 3]", "no core 3", "it has 2"),
        ("circuits.light.cores", "[1, 1, 2]", "core 1 stands twice", "once"),
        ("circuits.light.cores", "[1, 2, 0]", "the text `0`", "from 1"),
        ("circuits.light.cores", "[1, 2, red]", "the text `red`", "from 1"),
        ("circuits.light.cores", "2", "`cores` is the text `2`", "`cores: [1, 2]`"),
        ("circuits.light.cores", "[]", "`cores` is a list", "from 1"),
        ("cables.two.size", "6 mm", "'6 mm'", "mm auto"),
        ("cables.two.size", "-6 mm2", "below zero", "zero up"),
        ("cables.two", "6 mm2", "the text", "keys"),
        ("cables.two.outer", "8", "bare number", "'8 m'"),
        ("cables.two.insulation", "90 C", "coulomb", "'90 °C'"),
    ],
)
def test_a_wrong_cable_says_what_is_right(path: str, text: str, what: str, right: str) -> None:
    problem = only((path, text), ("circuits.light.return", "same"))
    assert what in problem.what and right in problem.right
