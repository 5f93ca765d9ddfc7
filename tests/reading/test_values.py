"""The keys of one thing: shapes, records, basis, and what is wrong with them."""

from __future__ import annotations

import pytest

from checker.design.given import RatedVoltage, Where
from checker.quantities import UNKNOWN, Range
from tests.reading.small import SMALL, only, problems, read


def test_a_value_keeps_its_place_text_and_basis() -> None:
    given = read().equipment["F1"].get("rating")
    line = SMALL.splitlines().index("  F1: {kind: fuse, family: class T, rating: 100 A}") + 1
    assert (given.value, given.where, given.basis, given.text) == (100.0, Where(line, 45), "stated", "100 A")


def test_what_was_left_out_is_default_or_missing_at_the_place_of_the_thing() -> None:
    fuse = read().equipment["F1"]
    missing, default = fuse.get("voltage"), fuse.get("fitted")
    assert missing.value is UNKNOWN and missing.basis == "missing" and missing.where == fuse.where
    assert (default.value, default.basis) == ("now", "default") and default.is_assumed


@pytest.mark.parametrize("basis", ["measured", "read off", "datasheet", "assumed"])
def test_a_value_may_carry_its_basis(basis: str) -> None:
    given = read(("equipment.F1.rating", f"{{is: 90..110 A, basis: {basis}}}")).equipment["F1"].get("rating")
    assert given.value == Range(90.0, 110.0) and given.basis == basis


def test_a_record_may_carry_one_basis_for_all_in_it() -> None:
    edit = ("vehicle.masses.before", "{front: 900 kg, rear: {is: 800 kg, basis: read off}, basis: measured}")
    vehicle = read(edit).vehicle
    assert vehicle.get("masses.before.front").basis == "measured"
    assert vehicle.get("masses.before.rear").basis == "read off"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{is: 5 A, basis: guessed}", "`guessed` is no basis"),
        ("{is: 5 A}", "without a basis"),
        ("{is: 5 A, basis: measured, by: me}", "`by` stands beside `is`"),
        ("{is: {is: 5 A, basis: x}, basis: measured}", "no basis"),
        ("{is: [5 A], basis: measured}", "is a list"),
        ("{basis: measured}", "is a mapping"),
        ("{is: , basis: measured}", "no value"),
    ],
)
def test_a_wrong_basis_is_noted(text: str, said: str) -> None:
    assert said in problems(("equipment.F1.rating", text))[0].what


def test_records_are_flattened_with_dots() -> None:
    battery = read(("equipment.house.bms", "{charge limit: 50 A, peak: {current: 90 A, time: 10 s}}")).equipment[
        "house"
    ]
    assert battery.value("bms") is True
    assert [battery.value(f"bms.{name}") for name in ("charge limit", "peak.current", "peak.time")] == [
        50.0,
        90.0,
        10.0,
    ]
    assert battery.get("bms.discharge limit").basis == "missing"


def test_unknown_and_none_stand_for_all_of_a_record() -> None:
    unknown = read(("equipment.house.bms", "unknown")).equipment["house"]
    assert unknown.value("bms") is UNKNOWN and unknown.value("bms.peak.current") is UNKNOWN
    assert unknown.get("bms.peak.current").basis == "stated" and unknown.has("bms.peak.current")
    none = read(("equipment.house.bms", "none")).equipment["house"]
    assert none.value("bms") is None and none.value("bms.peak.current") is None
    part = read(("equipment.house.window", "{is: none, basis: datasheet}")).equipment["house"].get("window.charge")
    assert part.value is None and part.basis == "datasheet"


def test_a_yes_or_no_may_stand_for_a_record() -> None:
    battery = read(("equipment.house.restraint", "true")).equipment["house"]
    assert battery.value("restraint") is True and battery.get("restraint.for").basis == "missing"


def test_a_quoted_question_mark_is_unknown() -> None:
    assert read(("equipment.F1.rating", "'?'")).equipment["F1"].value("rating") is UNKNOWN


def test_rated_voltages_know_their_system() -> None:
    assert read().equipment["Q1"].value("voltage") == RatedVoltage(230.0, "ac")


def test_lists_take_a_single_one_too() -> None:
    one = read(("equipment.alarm", "{kind: alarm, detects: gas}")).equipment["alarm"]
    two = read(("equipment.alarm", "{kind: alarm, detects: [gas, {is: smoke, basis: read off}]}")).equipment["alarm"]
    assert one.value("detects") == ("gas",)
    assert two.value("detects") == ("gas", "smoke") and two.get("detects").basis == "read off"


@pytest.mark.parametrize(
    ("path", "text", "what", "right"),
    [
        ("equipment.F1.ratng", "5 A", "a fuse has no key `ratng`", "did you mean `rating`?"),
        ("equipment.F1.colour", "red", "a fuse has no key `colour`", "it has `terminals`, `part`, `kind`, `curve`"),
        ("equipment.house.bms.chrge limit", "5 A", "`bms` of a battery has no key `chrge limit`", "`charge limit`"),
        ("equipment.house.service", "0.2 m", "`service` is the text `0.2 m`", "`front`"),
        ("equipment.house.service", "[0.2 m]", "`service` is a list", "`front`"),
        ("equipment.F1.rating", "[5 A]", "`rating` is a list", "one value"),
        ("equipment.F1.rating", "{a: b}", "`rating` is a mapping", "one value"),
        ("equipment.F1.rating", "100", "bare number '100'", "'100 A'"),
        ("equipment.F1.rating", "100 V", "(a voltage)", "a current"),
        ("equipment.F1.rating", "NaN", "found 'NaN'", "'30 A'"),
        ("equipment.house.mass", "none", "`mass` cannot be `none`", "`unknown`"),
        ("papers.manual", "[charging, none]", "`none` stands in the list of `manual`", "leave it out"),
        ("equipment.house.chemistry", "none", "`chemistry` cannot be `none`", "`unknown`"),
        (
            "equipment.house.box",
            "{at: [1 m, none, 0 m], size: [1 m, 1 m, 1 m]}",
            "`none` is no part of this",
            "`unknown`",
        ),
        ("equipment.F1.rating", "-5 A", "below zero", "zero up"),
        ("cables.one.size", "6 mm", "'6 mm'", "'6 mm2' for the area, or '6 mm auto'"),
        ("equipment.F1.family", "class U", "`class U` is no word", "did you mean `class T`? the words are `blade`"),
        ("equipment.F1.holder", "glued", "`glued` is no word", "the words are `bolted`"),
        ("modes.parked.engine", "idel", "found 'idel'", "did you mean `idle`?"),
        ("modes.parked.engine", "2000", "bare number", "or `stopped` or `idle`"),
        ("equipment.alarm", "{kind: alarm, detects: [gas, [smoke]]}", "an item of `detects` is a list", "one value"),
        ("equipment.F1.place", "cabn", "no `cabn` in places", "did you mean `cabin`?"),
        ("papers.manual", "[chargin]", "`chargin` is no word", "`charging`"),
    ],
)
def test_a_wrong_key_or_value_says_what_is_right(path: str, text: str, what: str, right: str) -> None:
    problem = only((path, text))
    assert what in problem.what and right in problem.right


def test_a_value_left_empty_is_told_to_be_unknown() -> None:
    problem = only(text=SMALL.replace("rating: 100 A}", "rating: }"))
    assert "`rating` has no value" in problem.what and "`unknown`" in problem.right


def test_a_value_none_is_not_enough_where_a_key_is_required() -> None:
    assert only(("vehicle.kind", "none")).what == "`vehicle` lacks `kind`"
    assert only(("vehicle.kind", "unknown")).what == "`vehicle` lacks `kind`"
    assert "no word" in only(("vehicle.kind", "campervn")).what


def test_one_problem_hides_no_other() -> None:
    found = problems(
        ("equipment.F1.ratng", "5 A"), ("equipment.lamp.power", "20"), ("circuits.light.cable", "tow"),
        ("modes.parked.running.lump", "5 W"), ("places.bench.inside", "cabn"), ("title", "(remove)"),
    )  # fmt: skip
    assert len(found) == 6
    assert list(found) == sorted(found)
