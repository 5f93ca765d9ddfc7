"""Equipment, joints, parts and banks."""

from __future__ import annotations

import pytest

from checker.design.given import Where
from checker.quantities import UNKNOWN
from tests.reading.small import SMALL, only, problems, read


def test_equipment_and_joints_stand_together_and_know_their_section() -> None:
    design = read()
    assert [design.equipment[name].section for name in ("F1", "tee")] == ["equipment", "joints"]
    assert design.equipment["tee"].path == "joints.tee" and design.equipment["F1"].path == "equipment.F1"
    assert list(design.equipment)[:3] == ["house", "F1", "Q1"]


def test_the_place_of_a_thing_is_that_of_its_name() -> None:
    line = SMALL.splitlines().index("  bar: {kind: bar}") + 1
    assert read().equipment["bar"].where == Where(line, 3)


def test_an_entry_overrides_its_part_key_by_key() -> None:
    fuse = read(("equipment.F2", "{part: strip, rating: 60 A}")).equipment["F2"]
    assert (fuse.kind, fuse.part) == ("fuse", "strip")
    assert (fuse.value("rating"), fuse.value("family")) == (60.0, "bolt-down strip")
    assert fuse.get("family").where.line < fuse.where.line < fuse.get("rating").where.line + 1


def test_an_override_goes_one_level_deep() -> None:
    battery = read(("equipment.B", "{part: cell, bms: {discharge limit: 90 A}}")).equipment["B"]
    assert battery.value("bms.discharge limit") == 90.0 and battery.get("bms.charge limit").basis == "missing"
    assert battery.value("capacity") == 180_000.0


def test_terminals_override_key_by_key() -> None:
    battery = read(("equipment.B", "{part: cell, terminals: {+: {torque: 12 N m}, -: {stud: M8}}}")).equipment["B"]
    assert (battery.terminals["+"].value("torque"), battery.terminals["+"].value("stud")) == (12.0, "M8")
    assert battery.terminals["-"].path == "equipment.B.terminals.-"
    assert list(read(("equipment.B", "{part: cell}")).equipment["B"].terminals) == ["+"]
    assert not read(("equipment.house.terminals", "{+: unknown}")).equipment["house"].terminals["+"].written()
    assert not read(("equipment.house.terminals", "unknown")).equipment["house"].terminals


@pytest.mark.parametrize(
    ("entry", "what", "right"),
    [
        ("{kind: fus}", "no kind `fus`", "did you mean `fuse`?"),
        ("{kind: chassis}", "no kind `chassis`", "the kinds are"),
        ("{rating: 5 A}", "neither `kind` nor `part`", "`kind: fuse`"),
        ("{knd: fuse, rating: 5 A}", "no key `knd`", "did you mean `kind`?"),
        ("{part: stripp}", "no `stripp` in parts", "did you mean `strip`?"),
        ("{part: strip, kind: breaker}", "is a fuse, not a breaker", "one kind"),
        ("5 A", "is the text `5 A`", "keys and values"),
        ("{kind: [fuse]}", "`kind` is a list", "one value"),
        ("{kind: }", "`kind` has no value", "unknown"),
        ("{kind: fuse, terminals: {c: {stud: M8}}}", "no terminal `c`", "a fuse has `a` or `b`"),
        ("{kind: fuse, terminals: [a]}", "`terminals` is a list", "`{+: {stud"),
        ("{kind: fuse, terminals: {a: M8}}", "the text `M8`", "keys"),
        ("{kind: inverter, terminals: {dc: {stud: M8}}}", "no terminal `dc`", "did you mean `dc+`?"),
        ("{kind: fuse, terminals: {a: {studd: M8}}}", "a terminal has no key `studd`", "`stud`"),
        ("{kind: fuse, ways: {a: 5 A}}", "a fuse has no key `ways`", "it has"),
        ("{kind: fuse, of: house}", "a fuse has no key `of`", "it has"),
        ("{kind: changeover, throws: [a, bus], rest: buss}", "no throw `buss`", "did you mean `bus`?"),
        ("{kind: relay, driven by: F1}", "`F1` is a fuse, not a signal", "name a port"),
        ("{kind: relay, driven by: house.alow}", "`house` has no port `alow`", "did you mean `allow`?"),
        ("{kind: relay, driven by: hous}", "no `hous` in equipment", "did you mean `house`?"),
    ],
)
def test_a_wrong_entry_says_what_is_right(entry: str, what: str, right: str) -> None:
    problem = problems(("equipment.X", entry))[0]
    assert what in problem.what and right in problem.right


def test_some_kinds_stand_only_under_equipment() -> None:
    problem = only(("joints.F9", "{kind: fuse}"))
    assert "a fuse cannot stand in joints" in problem.what and "`equipment:`" in problem.right
    assert "a fuse cannot stand in joints" in only(("joints.F9", "{part: strip}")).what


def test_parts_go_one_level_deep() -> None:
    assert "a part builds on another part" in problems(("parts.x", "{part: strip, kind: fuse}"))[0].what
    assert "neither `kind`" in only(("parts.x", "{rating: 5 A}")).what


def test_a_signal_is_named_or_a_port() -> None:
    design = read(("equipment.S", "{kind: signal, from: house.allow}"), ("equipment.K2", "{kind: relay, driven by: S}"))
    assert design.equipment["S"].value("from") == "house.allow" and design.equipment["K2"].value("driven by") == "S"


def test_a_bank_is_made_of_a_part_or_of_a_battery() -> None:
    bank = read(("equipment.B", "{kind: bank, of: cell, units: 3}")).equipment["B"]
    assert bank.base is not None and bank.base.value("capacity") == 180_000.0
    design = read(("equipment", "{B: {kind: bank, of: house}, " + "house: {kind: battery}}"), ("joints", "{}"),
                  ("circuits", "{c: {from: B, to: house, run: [1 m], cable: two}}"), ("modes", "{m: {}}"))  # fmt: skip
    assert design.equipment["B"].base is design.equipment["house"]
    assert read(("equipment.B", "{kind: bank, of: unknown}")).equipment["B"].base is None


@pytest.mark.parametrize(
    ("entry", "what", "right"),
    [
        ("{kind: bank}", "lacks `of`", "name the battery"),
        ("{kind: bank, of: cel}", "no part or battery `cel`", "did you mean `cell`?"),
        ("{kind: bank, of: F1}", "`F1` is a fuse", "made of batteries"),
        ("{kind: bank, of: strip}", "`strip` is a fuse", "made of batteries"),
        ("{kind: bank, of: [cell]}", "`of` is a list", "one value"),
        ("{kind: bank, of: cell, joined by: br}", "no `br` in equipment", "`bar`"),
    ],
)
def test_a_wrong_bank_says_what_is_right(entry: str, what: str, right: str) -> None:
    problem = only(("equipment.B", entry))
    assert what in problem.what and right in problem.right


def test_the_fuses_of_a_bank_may_be_a_part() -> None:
    bank = read(("equipment.B", "{kind: bank, of: cell, unit fuses: {part: strip, rating: 60 A}}")).equipment["B"]
    assert bank.value("unit fuses") is True
    assert (bank.value("unit fuses.rating"), bank.value("unit fuses.family")) == (60.0, "bolt-down strip")


def test_a_changeover_has_few_throws() -> None:
    throws = ", ".join(f"t{number}" for number in range(51))
    assert "has 51 throws" in only(("equipment.X", f"{{kind: changeover, throws: [{throws}]}}")).what


def test_what_a_part_does_not_say_is_missing() -> None:
    assert read(("equipment.F2", "{part: strip}")).equipment["F2"].value("breaking capacity") is UNKNOWN
