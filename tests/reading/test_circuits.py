"""Circuits: their ends, and what each must say."""

from __future__ import annotations

import pytest

from checker.design.given import Where
from tests.reading.small import SMALL, only, problems, read


def test_a_circuit_joins_port_to_port() -> None:
    circuit = read().circuits["main"]
    line = next(n for n, line in enumerate(SMALL.splitlines(), 1) if line.startswith("  main:"))
    assert (str(circuit.start), [str(end) for end in circuit.ends]) == ("house", ["bar"])
    assert circuit.where == Where(line, 3) and circuit.start.where == Where(line, 16)
    assert circuit.path == "circuits.main"


def test_several_outlets_hang_on_one_circuit() -> None:
    circuit = read(("circuits.light.to", "[lamp, tee]")).circuits["light"]
    assert [str(end) for end in circuit.ends] == ["lamp", "tee.a"]


def test_ends_say_how_they_were_made() -> None:
    circuit = read(("circuits.main.ends", "{from: {lug: 16-8, crimp: die, torqued: 9 N m}, to: unknown}")).circuits[
        "main"
    ]
    assert circuit.terminations["from"].value("torqued") == 9.0
    assert circuit.terminations["to"].get("crimp").basis == "missing"
    assert not read(("circuits.main.ends", "unknown")).circuits["main"].terminations


def test_what_is_usual_holds_unless_a_circuit_says_otherwise() -> None:
    design = read(
        ("usual", "{covering: conduit, support spacing: 0.3 m, insulation: 90 °C}"), ("circuits.main.covering", "none")
    )
    main, light = design.circuits["main"], design.circuits["light"]
    assert (main.value("covering"), light.value("covering")) == (None, "conduit")
    assert light.get("support spacing").basis == "stated" and light.get("support spacing").value == 0.3
    assert design.cables["one"].value("insulation") == 90.0


@pytest.mark.parametrize(
    ("path", "text", "what", "right"),
    [
        ("circuits.main.from", "(remove)", "lacks `from`", "feeds it"),
        ("circuits.main.to", "(remove)", "lacks `to`", "it feeds"),
        ("circuits.main.run", "(remove)", "lacks `run`", "`[1.1 m via PLACE, F1]`"),
        ("circuits.main", "unknown", "is the text", "keys"),
        ("circuits.main.to", "[]", "an empty list", "name the equipment"),
        ("circuits.main.to", "[[bar]]", "`to` is a list", "one value"),
        ("circuits.main.form", "x", "a circuit has no key `form`", "did you mean `from`?"),
        ("circuits.main.duty", "chargee", "no word", "did you mean `charge`?"),
        ("circuits.main.ends", "[a]", "`ends` is a list", "`{from:"),
        ("circuits.main.ends", "{form: {lug: x}}", "no end `form`", "`from` and `to`"),
        ("circuits.main.ends", "{from: {lg: x}}", "an end has no key `lg`", "`lug`"),
        ("circuits.main.ends", "{from: 70-8}", "the text `70-8`", "keys"),
        ("circuits.main.loom", "trunk", "no `trunk` in looms", "`looms:`"),
    ],
)
def test_a_wrong_circuit_says_what_is_right(path: str, text: str, what: str, right: str) -> None:
    problem = only((path, text))
    assert what in problem.what and right in problem.right


def test_a_circuit_that_cannot_be_read_hides_no_other_problem() -> None:
    found = problems(("circuits.main.from", "hous"), ("circuits.main.run.1", "F7"), ("circuits.main.cable", "on"))
    assert len(found) == 3


def test_an_end_may_carry_a_basis() -> None:
    circuit = read(("circuits.main.from", "{is: house, basis: assumed}")).circuits["main"]
    assert str(circuit.start) == "house"
