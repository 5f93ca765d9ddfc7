"""Changes to the tree before it is read."""

from __future__ import annotations

import pytest

from checker.quantities import Range
from tests.reading.small import SMALL, only, problems, read


def test_a_value_is_replaced() -> None:
    assert read(("equipment.F1.rating", "50..60 A")).equipment["F1"].value("rating") == Range(50.0, 60.0)


def test_an_edit_keeps_the_place_of_what_it_replaces() -> None:
    line = SMALL.splitlines().index("  F1: {kind: fuse, family: class T, rating: 100 A}") + 1
    assert read(("equipment.F1.rating", "5 A")).equipment["F1"].get("rating").where == (line, 45)
    assert only(("equipment.F1.rating", "5 V"))[1:3] == (line, 45)


def test_a_key_is_added_and_the_mappings_on_the_way() -> None:
    design = read(("equipment.F2", "{part: strip}"), ("equipment.house.bms.peak.current", "90 A"))
    assert design.equipment["F2"].value("rating") == 80.0
    assert design.equipment["house"].value("bms.peak.current") == 90.0 and design.equipment["house"].value("bms")


def test_a_key_is_removed() -> None:
    assert read(("equipment.F1.rating", "(remove)")).equipment["F1"].get("rating").basis == "missing"
    assert only(("circuits.main.cable", "(remove)"), ("vehicle.kind", "(remove)")).what.endswith("lacks `kind`")


def test_list_items_are_named_by_number() -> None:
    run = read(("circuits.main.run.1", "Q1"), ("circuits.main.run.4", "0.5 m")).circuits["main"].run
    assert [type(step).__name__ for step in run] == ["Length", "Through", "Length", "Hole", "Length"]
    assert len(read(("circuits.main.run.3", "(remove)")).circuits["main"].run) == 3


def test_steps_go_on_below_a_list_item() -> None:
    design = read(("circuits.light.run", "[{kind: fuse, rating: 5 A}]"), ("circuits.light.run.0.rating", "7 A"))
    assert design.equipment["light#1"].value("rating") == 7.0


def test_keys_with_dots_are_found() -> None:
    text = SMALL.replace("two:", "twin-2.5:").replace("cable: two", "cable: twin-2.5")
    assert problems(("cables.twin-2.5.size", "5"), text=text)[0].what.startswith("`size`")


def test_edits_are_made_in_their_order() -> None:
    design = read(("equipment.F1", "{kind: fuse}"), ("equipment.F1.rating", "7 A"))
    assert design.equipment["F1"].value("rating") == 7.0


@pytest.mark.parametrize(
    ("path", "text", "said"),
    [
        ("", "x", "a path is steps"), ("a..b", "x", "a path is steps"), ("title.x", "x", "cannot stand below one text"),
        ("circuits.main.run.9", "3 m", "no item of a list that runs from 0 to 4"),
        ("circuits.main.run.x", "3 m", "no item of a list"), ("circuits.main.run.4", "(remove)", "from 0 to 3"),
        ("circuits.main.run.9.kind", "fuse", "no item"), ("equipment.F7", "(remove)", "no `F7` to remove"),
        ("nothing.here", "(remove)", "no `nothing` to remove from"), ("title", "[a", "never closed"),
        ("title", "", "there is no value"), ("title", "*x", "alias"),
    ],
)  # fmt: skip
def test_an_edit_that_cannot_be_made_is_a_value_error(path: str, text: str, said: str) -> None:
    with pytest.raises(ValueError, match="edit") as caught:
        read((path, text))
    assert said in str(caught.value)
