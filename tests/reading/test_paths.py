"""How the return and the earth of a circuit go."""

from __future__ import annotations

import pytest

from checker.design.run import Length, Path
from tests.reading.small import only, read


def returns(*edits: tuple[str, str], circuit: str = "light") -> Path:
    return read(*edits).circuits[circuit].returns


def earth(*edits: tuple[str, str], circuit: str = "light") -> Path:
    return read(*edits).circuits[circuit].earth


def test_two_cores_return_in_the_cable() -> None:
    assert returns().how == "in cable" and earth().how == "none"


@pytest.mark.parametrize("how", ["same", "chassis", "none", "unknown", "in cable"])
def test_a_written_return_stands(how: str) -> None:
    assert returns(("circuits.light.return", how)).how == how


def test_a_return_may_carry_a_basis() -> None:
    assert returns(("circuits.light.return", "{is: chassis, basis: assumed}")).how == "chassis"


def test_a_return_may_name_its_point_on_the_chassis() -> None:
    for text in ("chassis.rear-stud", "{to: chassis.rear-stud}"):
        path = returns(("circuits.light.return", text))
        assert (path.how, str(path.to)) == ("chassis", "chassis.rear-stud")


def test_a_return_may_have_a_run_of_its_own() -> None:
    path = returns(
        ("circuits.light.return", "{run: [2 m via cabin, F1], to: house.-, size: 10 mm2}"),
        ("circuits.main.run.1", "1 m"),
    )
    assert path.how == "run" and str(path.to) == "house.-" and path.size is not None and path.size.value == 10e-6
    assert isinstance(path.run[0], Length) and len(path.run) == 2


def test_a_single_core_must_say_how_its_current_returns() -> None:
    problem = only(("circuits.main.return", "(remove)"))
    assert "`main` runs in a single core" in problem.what and "`return: same`" in problem.right
    one_of_two = only(("circuits.light.cores", "[1]"))
    assert "single core" in one_of_two.what


@pytest.mark.parametrize("duty", ["safety", "charge", "load", "arc free"])
def test_a_single_core_that_carries_power_must_say_it_whatever_its_duty(duty: str) -> None:
    assert "single core" in only(("circuits.main.return", "(remove)"), ("circuits.main.duty", duty)).what


@pytest.mark.parametrize("duty", ["bonding", "control", "sense"])
def test_bonds_and_signals_need_no_return(duty: str) -> None:
    edits = (("circuits.main.return", "(remove)"), ("circuits.main.duty", duty))
    assert returns(*edits, circuit="main").how == "none"
    assert returns(*edits, ("circuits.main.cable", "unknown"), circuit="main").how == "none"
    assert returns(*edits, ("circuits.main.cable", "two"), circuit="main").how == "in cable"


@pytest.mark.parametrize(
    ("end", "needs"),
    [("house.-", False), ("house.allow", False), ("inverter.case", False), ("house.+", True), ("Q1.load", True)],
)
def test_a_pole_without_a_partner_needs_no_return(end: str, needs: bool) -> None:
    edits = [("circuits.light.cable", "one"), ("circuits.light.from", end)]
    if needs:
        assert "single core" in only(*edits).what
    else:
        assert returns(*edits).how == "none"


@pytest.mark.parametrize(
    ("text", "what", "right"),
    [
        ("sam", "cannot be `sam`", "did you mean `same`?"),
        ("[same]", "`return` is a list", "one value"),
        ("{too: bar, run: [1 m]}", "no key `too`", "`to`"),
        ("{size: 6 mm2}", "lacks `run`", "load back"),
        ("{run: [1 m], size: 6}", "bare number", "'6 mm2'"),
        ("{run: [1 m], size: [6 mm2]}", "`size` is a list", "16 mm2"),
        ("{run: [1 m], to: brr}", "no `brr` in equipment", "did you mean `bar`?"),
        ("{run: 1 m}", "a run is a list", "`[1.1 m"),
    ],
)
def test_a_wrong_return_says_what_is_right(text: str, what: str, right: str) -> None:
    problem = only(("circuits.light.return", text))
    assert what in problem.what and right in problem.right


def test_what_is_in_the_cable_needs_a_core() -> None:
    assert "no core for the return" in only(("circuits.main.return", "in cable")).what
    assert "no core for the earth" in only(("circuits.light.earth", "in cable")).what


MAINS = ("circuits.light.from", "inverter.ac")


@pytest.mark.parametrize(
    ("edits", "how"),
    [
        ([("circuits.light.cable", "three"), MAINS], "in cable"),
        ([("circuits.light.cable", "three")], "unknown"),
        ([("circuits.light.cable", "three"), ("equipment.lamp.system", "mains")], "in cable"),
        ([("circuits.light.cable", "three"), ("equipment.lamp.system", "dc")], "none"),
        ([("circuits.light.cable", "three"), ("equipment.lamp.voltage", "207..253 V")], "in cable"),
        ([("circuits.light.cable", "three"), ("equipment.lamp.voltage", "10..15 V")], "none"),
        (
            [("circuits.light.cable", "three"), ("circuits.light.from", "tee"), ("circuits.light.run", "[Q1]")],
            "in cable",
        ),
        (
            [
                ("circuits.light.cable", "three"),
                ("circuits.light.from", "board.lights"),
                ("equipment.board.voltage", "12 V"),
            ],
            "none",
        ),
        ([("circuits.light.cable", "two"), MAINS], "none"),
        ([("circuits.light.cable", "unknown"), MAINS], "unknown"),
        ([("circuits.light.cable", "three"), ("circuits.light.from", "house")], "none"),
        ([("circuits.light.cable", "three"), MAINS, ("circuits.light.earth", "none")], "none"),
        ([("circuits.light.cable", "three"), MAINS, ("circuits.light.duty", "control")], "none"),
    ],
)
def test_the_third_core_is_the_earth_on_the_mains(edits: list[tuple[str, str]], how: str) -> None:
    # A bar stands in direct current only; a tee in either.
    start = [] if any(path == "circuits.light.from" for path, _ in edits) else [("circuits.light.from", "tee")]
    assert earth(*edits, *start).how == how


def test_an_earth_may_have_a_run_or_a_size_of_its_own() -> None:
    edits = (("circuits.light.cable", "three"), MAINS)
    apart = earth(*edits, ("circuits.light.earth", "{run: [2 m], size: 6 mm2}"))
    assert apart.how == "run" and apart.size is not None and apart.size.value == 6e-6
    thinner = earth(*edits, ("circuits.light.earth", "{size: 1.5 mm2}"))
    assert thinner.how == "in cable" and thinner.size is not None and thinner.size.value == 1.5e-6
