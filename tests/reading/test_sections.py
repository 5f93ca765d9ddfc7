"""The parts of a file at its top level."""

from __future__ import annotations

import pytest

from checker.design.given import NOWHERE
from checker.quantities import UNKNOWN
from tests.reading.small import SMALL, only, problems, read


def test_single_values_are_read_and_what_was_left_out_is_said() -> None:
    design = read(("date", "2026-10-30"), ("essential", "[lamp]"))
    assert (design.title.value, design.code.value, design.date.value) == ("small", "intl", "2026-10-30")
    assert design.essential.value == ("lamp",)
    assert design.purpose.value == "design" and design.purpose.basis == "default"
    assert read().date.value is UNKNOWN and read().date.basis == "missing" and read().date.where == NOWHERE


@pytest.mark.parametrize("number", ["2", "1.0", "0", "one", "[1]", "unknown"])
def test_an_unknown_format_names_the_known_ones(number: str) -> None:
    problem = only(("fitout", number), ("equipment.F1.ratng", "5"))
    assert "this is format" in problem.what and "`fitout: 1`" in problem.right
    assert (problem.line, problem.column) == (1, 9)


def test_a_file_without_a_format_is_told_so() -> None:
    assert "does not say its format" in only(("fitout", "(remove)")).what


@pytest.mark.parametrize("section", ["title", "code", "vehicle", "equipment", "circuits", "modes"])
def test_what_a_design_cannot_do_without_is_asked_for(section: str) -> None:
    assert any(problem.what == f"the file lacks `{section}:`" for problem in problems((section, "(remove)")))


@pytest.mark.parametrize("section", ["date", "cables", "parts", "joints", "usual", "scope"])
def test_what_a_design_can_do_without_is_not_asked_for(section: str) -> None:
    found = problems(
        ("circuits.main.cable", "unknown"), ("circuits.light.cable", "unknown"), (section, "{}"), (section, "(remove)")
    )
    assert not found


def test_a_misspelt_section_finds_its_name() -> None:
    problem = only(text=SMALL + "reedings: []\n")
    assert "no section `reedings`" in problem.what and problem.right == "did you mean `readings`?"
    assert "the sections are `fitout`" in only(text=SMALL + "xyzzy: []\n").right


@pytest.mark.parametrize(
    ("section", "text", "what"),
    [
        ("looms", "[a]", "`looms` is a list"),
        ("readings", "{a: b}", "`readings` is a mapping"),
        ("modes", "{}", "`modes` is empty"),
        ("modes", "unknown", "`modes` is the text `unknown`"),
        ("day", "[a]", "`day` is a list"),
        ("looms.l", "[a]", "loom `l` is a list"),
        ("readings", "[5 V]", "an entry of `readings` is the text"),
        ("title", "[a]", "`title` is a list"),
        ("services.gas", "{}", "service `gas` lacks `carries`"),
        ("people.any work", "{licence: x}", "`any work` is no name in people"),
        ("vehicle", "{kindd: van}", "no key `kindd`"),
        ("departures", "[{rule: x}]", "departure `1` lacks"),
        ("code", "french", "`french` is no word"),
    ],
)
def test_a_wrong_section_is_noted(section: str, text: str, what: str) -> None:
    assert any(what in problem.what for problem in problems((section, text)))


@pytest.mark.parametrize("section", ["looms", "readings", "departures", "moving", "people", "services"])
def test_sections_may_be_unknown(section: str) -> None:
    assert not problems((section, "unknown"))


def test_unknown_and_none_may_stand_for_a_whole_thing() -> None:
    design = read(("papers", "none"), ("labels", "unknown"), ("places.attic", "unknown"))
    assert design.papers.value("diagram") is None and design.papers.has("certificate.date")
    assert design.labels.value("material") is UNKNOWN and design.labels.get("material").basis == "stated"
    assert design.places["attic"].value("kind") is UNKNOWN


def test_sections_left_out_are_empty_things() -> None:
    design = read()
    assert design.day.get("driving").basis == "missing" and not design.looms and design.readings == ()


def test_a_section_holds_a_vehicle_and_no_more() -> None:
    entries = "".join(f"  b{number}: {{kind: bar}}\n" for number in range(5001))
    problem = only(text=SMALL.replace("equipment:\n", f"equipment:\n{entries}"))
    assert "`equipment` holds 5,009 entries" in problem.what and "5,000" in problem.right


def test_lists_number_their_entries() -> None:
    design = read(("readings", "[{at: bar, voltage: 12.6 V}, {at: main, current: -5 A}]"))
    assert [(item.name, item.path) for item in design.readings] == [("1", "readings.0"), ("2", "readings.1")]
    assert design.readings[1].value("current") == -5.0
