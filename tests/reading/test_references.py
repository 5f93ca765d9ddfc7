"""Names that point to other things."""

from __future__ import annotations

import pytest

from checker.design.vocabulary import kind
from checker.reading.references import ports_of
from tests.reading.small import only, problems, read


def test_a_kind_has_its_ports_and_each_of_their_poles() -> None:
    inverter = kind("inverter", "equipment")
    assert inverter is not None
    ports = ports_of(inverter)
    assert ports["dc"] == ("+", "-") and ports["dc+"] == ("+",) and ports["acPE"] == ("PE",) and ports["case"] == ("",)
    assert "" not in ports


@pytest.mark.parametrize(
    ("end", "port"),
    [
        ("house", "house"),
        ("house.+", "house.+"),
        ("house.-", "house.-"),
        ("house.allow", "house.allow"),
        ("chassis", "chassis"),
        ("chassis.front-stud", "chassis.front-stud"),
        ("inverter.ac", "inverter.ac"),
        ("inverter.dc+", "inverter.dc+"),
        ("K1", "K1.common"),
        ("K1.shore", "K1.shore"),
        ("K1.coil", "K1.coil"),
        ("board", "board"),
        ("board.lights", "board.lights"),
        ("board.PE", "board.PE"),
        ("Q1.line", "Q1.line"),
        ("light#1.b", "light#1.b"),
    ],
)
def test_ports_of_all_sorts_resolve(end: str, port: str) -> None:
    design = read(
        ("circuits.light.run", "[{kind: fuse}]"), ("circuits.light.from", end), ("circuits.light.return", "same")
    )
    assert str(design.circuits["light"].start) == port


def test_a_device_is_left_at_its_second_terminal_and_reached_at_its_first() -> None:
    circuit = read(("circuits.light.from", "F1"), ("circuits.light.to", "Q1")).circuits["light"]
    assert (str(circuit.start), str(circuit.ends[0])) == ("F1.b", "Q1.line")


@pytest.mark.parametrize(
    ("end", "what", "right"),
    [
        ("hous", "no `hous` in equipment", "did you mean `house`?"),
        ("house.alow", "no port `alow`", "did you mean `allow`?"),
        ("inverter", "`inverter` has several ports", "`inverter.dc`"),
        ("inverter.cd", "no port `cd`", "did you mean `dc`?"),
        ("Q1.out", "no port `out`", "it has `line` or `load`"),
        ("chasis", "no `chasis`", "did you mean `chassis`?"),
        ("K1.shor", "no port `shor`", "did you mean `shore`?"),
        ("[house]", "`from` is a list", "one value"),
    ],
)
def test_a_wrong_port_says_what_is_right(end: str, what: str, right: str) -> None:
    problem = only(("circuits.light.from", end), ("circuits.light.return", "same"))
    assert what in problem.what and right in problem.right


def test_what_has_no_port_is_not_wired() -> None:
    problem = only(("equipment.lead", "{kind: supply lead, cable: three}"), ("circuits.light.from", "lead"))
    assert "has no port" in problem.what and "a supply lead is not wired" in problem.right


def test_equipment_that_could_not_be_read_gives_one_problem_only() -> None:
    assert "no kind" in only(("equipment.F1.kind", "fus")).what


@pytest.mark.parametrize(
    "name", ["house", "house.+", "board.lights", "light", "cabin", "hole", "chassis", "chassis.stud", "tee"]
)
def test_a_reading_may_be_taken_anywhere(name: str) -> None:
    assert read(("readings", f"[{{at: {name}, voltage: 12.6 V}}]")).readings[0].value("at") == name


@pytest.mark.parametrize(
    ("name", "right"), [("hosue", "did you mean `house`?"), ("house.pls", "it has"), ("nowhere.x", "name equipment")]
)
def test_a_reading_is_taken_somewhere(name: str, right: str) -> None:
    assert right in only(("readings", f"[{{at: {name}, voltage: 12.6 V}}]")).right


@pytest.mark.parametrize(
    ("path", "text", "right"),
    [
        ("places.bench.inside", "cabim", "`cabin`"),
        ("passes.hole.between", "[cabin, bnch]", "`bench`"),
        ("moving", "{slide: {carries: [bnch]}}", "`bench`"),
        ("places.bench.carried by", "slied", "`moving:`"),
        ("looms", "{l: {carries: [lihgt]}}", "`light`"),
        ("looms", "{l: {cable: onee}}", "`one`"),
        ("readings", "[{mode: parkd}]", "`parked`"),
        ("essential", "[lmap]", "`lamp`"),
        ("day", "{uses: {lamb: 2 h}}", "`lamp`"),
        ("seen", "{not opened: [bnch]}", "`bench`"),
        ("papers", "{shut down: [hose]}", "`house`"),
        ("equipment.K1.coil on", "lihgt", "`light`"),
        ("equipment.board.main", "Q11", "`Q1`"),
    ],
)
def test_every_name_is_looked_up_in_its_section(path: str, text: str, right: str) -> None:
    found = problems((path, text))
    assert len(found) == 1 and "there is no" in found[0].what and right in found[0].right
