"""Joins of neutral and earth."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, VAN, ids, subject

WIRE = {"circuits.link": "{from: board.N, to: main-earth, run: [0.2 m via locker], cable: green-6, duty: bonding}"}


def test_relays_wires_and_bonded_bars_are_bonds() -> None:
    assert ids(VAN, "bond") == ["genset", "inverter"]
    assert subject(COACH, "bond", "link", WIRE).made_by == "wire"
    assert subject(COACH, "bond", "board", {"equipment.board.neutral bar": "bonded"}).made_by == "board"
    assert "board" not in ids(COACH, "bond")


def test_a_bond_is_counted_with_that_of_the_shore() -> None:
    assert subject(COACH, "bond", "inverter").most_links == 1.0
    assert subject(COACH, "bond", "link", WIRE).most_links == 2.0


def test_an_inverter_that_never_joins_them_is_no_bond() -> None:
    assert ids(COACH, "bond", {"equipment.inverter.bond.when": "never"}) == []


def test_a_bond_that_closes_on_shore_but_never_meets_its_neutral_is_alone() -> None:
    # It closes on shore alone, and the transfer then never joins its neutral to that of the shore.
    edits = {"equipment.inverter.bond.when": "shore present", "equipment.inverter.transfer.when": "never"}
    away = {**edits, "circuits.bypass.to": "surge"}
    assert subject(COACH, "bond", "inverter", away).most_links == 1.0
    assert subject(COACH, "bond", "inverter", away).is_closed_on_shore is False


def test_a_bond_is_closed_on_shore_only_where_the_shore_reaches_its_neutral() -> None:
    assert subject(COACH, "bond", "inverter").is_closed_on_shore is False
    assert subject(VAN, "bond", "genset").is_closed_on_shore is False
    assert subject(VAN, "bond", "genset", {"equipment.KG.poles": "1"}).is_closed_on_shore is True


def test_a_bar_that_nobody_saw_leaves_it_open_whether_there_is_a_bond() -> None:
    found = subject(COACH, "bond", "board", {"equipment.board.neutral bar": "unknown"})
    assert isinstance(found.is_there, Unknown)
    assert isinstance(found.is_closed_on_shore, Unknown)


def test_a_wire_with_a_switch_in_it_is_perhaps_open() -> None:
    edits = {
        "equipment.plug": "{kind: switch, poles: 1, rating: 20 A, operated: by hand, place: locker}",
        "circuits.link": "{from: board.N, to: main-earth, run: [0.1 m, plug, 0.1 m], cable: green-6, duty: bonding}",
    }
    assert isinstance(subject(COACH, "bond", "link", edits).is_there, Unknown)
