"""Colours of cores and what could be taken for what."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject

FLEX = "cables.flex-2.5.core colours"


def test_the_cores_of_a_cable_are_live_return_and_last_the_earth() -> None:
    edits = {FLEX: "[brown, blue, green-yellow]"}
    found = [
        subject(COACH, "conductor", name, edits).core_colour for name in ("kitchen", "kitchen return", "kitchen earth")
    ]
    assert found == ["brown", "blue", "green-yellow"]


def test_a_cable_without_told_colours_has_none() -> None:
    assert subject(COACH, "conductor", "kitchen").core_colour is None
    assert isinstance(subject(COACH, "conductor", "kitchen", {FLEX: "unknown"}).core_colour, Unknown)


def test_the_colour_of_a_like_cable_for_the_return_is_not_told() -> None:
    edits = {"cables.red-35.colour": "red"}
    assert subject(COACH, "conductor", "battery", edits).core_colour == "red"
    assert subject(COACH, "conductor", "battery return", edits).core_colour is None


def test_a_cable_laid_the_other_way_round_is_taken_for_the_other_pole() -> None:
    turned = "{size: 2.5 mm2, cores: 3, voltage: 450 V, core colours: [blue, brown, green-yellow]}"
    edits = {FLEX: "[brown, blue, green-yellow]", "circuits.heating.cable": turned}
    assert "kitchen return" in [one.id for one in subject(COACH, "conductor", "heating", edits).taken_for]
    assert subject(COACH, "conductor", "kitchen earth", edits).taken_for == ()


def test_the_battery_side_and_the_mains_have_colours_of_their_own() -> None:
    edits = {FLEX: "[brown, blue, green-yellow]", "cables.pair-4.core colours": "[blue, black]"}
    assert subject(COACH, "conductor", "lighting", edits).taken_for == ()


def test_colours_are_settled_when_all_are_told_and_each_pole_has_one() -> None:
    every = {
        "cables": "{red-35: {size: 35 mm2, cores: 2, core colours: [red, black]}, pair-4: {size: 4 mm2, cores: 2, "
        "core colours: [red, black]}, flex-2.5: {size: 2.5 mm2, cores: 3, core colours: [brown, blue, green-yellow]}, "
        "green-6: {size: 6 mm2, cores: 1, colour: green-yellow}, "
        "green-16: {size: 16 mm2, cores: 1, colour: green-yellow}}",
    }
    edits = every | {"circuits.battery.return": "(remove)"}
    assert subject(COACH, "design", "design").colours_settled is False
    assert subject(COACH, "design", "design", edits).colours_settled is True
    second = edits | {"cables.pair-4.core colours": "[orange, black]"}
    assert subject(COACH, "design", "design", second).colours_settled is False
    wrong = edits | {"papers": "{found wrong: [colours]}"}
    assert subject(COACH, "design", "design", wrong).colours_settled is False


def test_two_colours_told_for_one_pole_are_at_odds() -> None:
    told = {"cables.pair-4.core colours": "[red, black]"}
    assert subject(COACH, "design", "design", told).colours_at_odds is False
    other = {"cables.red-35": "{size: 35 mm2, cores: 2, core colours: [red, blue]}"}
    assert subject(COACH, "design", "design", {**told, **other}).colours_at_odds is True
