"""What stands below and beside a battery."""

from __future__ import annotations

from math import inf

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask

HEATER = (
    "{kind: load, power: 40 W, hot surface: 120 °C, place: cabin, "
    "box: {at: [%s m, -0.9 m, 0.4 m], size: [0.4 m, 0.2 m, 0.2 m]}}"
)


def test_fuel_counts_at_any_height_above_or_below() -> None:
    for z, over in (("1.5", True), ("0.01", True)):
        assert (
            ask("equipment", "house", "over_or_under_fuel", ("equipment.house.box.at", f"[2.1 m, 0.3 m, {z} m]"))
            is over
        )
    assert ask("equipment", "house", "over_or_under_fuel") is False
    assert ask("equipment", "house", "over_or_under_fuel", ("places.tank", "(remove)")) is None


def test_the_distance_to_a_hot_surface_is_measured_between_boxes() -> None:
    # the battery reaches to x = 1.4 m
    hot = ("equipment.heater", HEATER % "1.7")
    assert ask("equipment", "house", "distance_to_hot", hot) == pytest.approx(0.3)
    assert ask("equipment", "house", "distance_to_appliance", hot) == pytest.approx(0.3)
    cool = ("equipment.heater", (HEATER % "1.7").replace("120 °C", "60 °C"))
    assert ask("equipment", "house", "distance_to_hot", cool) is None


def test_a_surface_of_which_nobody_knows_how_hot_it_gets_leaves_a_question() -> None:
    unknown = ("equipment.heater", (HEATER % "1.7").replace("120 °C", "unknown"))
    at_least = ask("equipment", "house", "distance_to_hot", unknown)
    assert (at_least.low, at_least.high) == (pytest.approx(0.3), inf)
    untold = ("equipment.heater", (HEATER % "1.7").replace("hot surface: 120 °C", "purpose: heating"))
    assert ask("equipment", "house", "distance_to_hot", untold) == at_least
    perhaps = ("equipment.heater", (HEATER % "1.7").replace("1.7 m", "1.5..1.7 m"))
    assert isinstance(ask("equipment", "house", "distance_to_hot", perhaps), Range)


def test_an_exhaust_counts_as_hot_and_one_that_is_not_drawn_leaves_a_question() -> None:
    # the battery reaches down to z = 0.4 m; the flue passes 0.2 m below it and is 24 mm thick
    flue = "{flue: {carries: %s, along: [[4 m, -0.8 m, 0.2 m], [0 m, -0.8 m, 0.2 m]], outer: 24 mm}}"
    assert ask("equipment", "house", "distance_to_hot", ("services", flue % "exhaust")) == pytest.approx(0.188)
    assert ask("equipment", "house", "distance_to_hot", ("services", flue % "gas")) is None
    nowhere = ("services", "{flue: {carries: exhaust}}")
    assert isinstance(ask("equipment", "house", "distance_to_hot", nowhere), Unknown)


def test_an_engine_is_at_least_as_far_as_its_space() -> None:
    # the battery reaches to y = -0.7 m
    engine = "{kind: engine space, box: {at: [1 m, %s m, 0.4 m], size: [0.6 m, 0.5 m, 0.4 m]}}"
    found = ask("equipment", "house", "distance_to_hot", ("places.engine-bay", engine % "-0.4"))
    assert (found.low, found.high) == (pytest.approx(0.3), inf)
    assert ask("equipment", "house", "distance_to_hot", ("places.engine-bay", "{kind: engine space}")) is None
    around = (("places.engine-bay", "{kind: engine space}"), ("places.bay.inside", "engine-bay"))
    assert isinstance(ask("equipment", "house", "distance_to_hot", *around), Unknown)
    flue = ("services", "{flue: {carries: exhaust, along: [[4 m, -0.8 m, 0.2 m], [0 m, -0.8 m, 0.2 m]], outer: 24 mm}}")
    assert ask("equipment", "house", "distance_to_hot", *around, flue) == pytest.approx(0.188)


def test_a_bare_line_of_fuel_counts_where_it_rises_above_the_battery() -> None:
    # the battery reaches up to z = 0.6 m
    line = "{line: {carries: %s, along: [[1 m, -0.8 m, %s m], [1.5 m, -0.8 m, %s m]], outer: 10 mm%s}}"

    def to_fuel(carries: str, height: str, more: str = "") -> object:
        return ask("equipment", "house", "distance_to_bare_fuel", ("services", line % (carries, height, height, more)))

    tank = ask("equipment", "house", "distance_to_fuel")
    assert to_fuel("petrol", "0.8", ", insulated: false") == pytest.approx(0.195)
    assert to_fuel("diesel", "0.8", ", insulated: true") == to_fuel("diesel", "0.5", ", insulated: false") == tank
    assert to_fuel("water", "0.8") == tank
    perhaps = to_fuel("diesel", "0.8")
    assert isinstance(perhaps, Range)
    assert (perhaps.low, perhaps.high) == (pytest.approx(0.195), tank)


def test_insulated_fuel_is_left_out_and_what_may_be_insulated_only_narrows() -> None:
    bare = ask("equipment", "house", "distance_to_bare_fuel")
    assert bare == ask("equipment", "house", "distance_to_fuel")
    assert ask("equipment", "house", "distance_to_bare_fuel", ("places.tank.insulated", "true")) is None
    found = ask("equipment", "house", "distance_to_bare_fuel", ("places.tank.insulated", "unknown"))
    assert isinstance(found, Range)
    assert found.low == pytest.approx(bare)
    assert isinstance(ask("equipment", "house", "distance_to_bare_fuel", ("places.tank", "(remove)")), Unknown)


def test_a_way_out_right_above_is_measured_upwards() -> None:
    hatch = "{kind: exit, box: {at: [1 m, -0.9 m, %s], size: [0.6 m, 0.6 m, 0.05 m]}}"
    top = ask("equipment", "house", "exit_above", ("places.hatch", hatch % "2 m"))
    assert ask("equipment", "house", "exit_above", ("places.hatch", hatch % "1.5 m")) == pytest.approx(top - 0.5)
    assert ask("equipment", "house", "exit_above") is None
    assert isinstance(ask("equipment", "house", "exit_above", ("places.hatch", hatch % "0.5..2 m")), Unknown)


def test_at_the_engine_the_exhaust_has_to_be_told() -> None:
    engine = ("places.bay.kind", "engine space")
    assert isinstance(ask("equipment", "house", "distance_to_hot", engine), Unknown)
    flue = "{flue: {carries: exhaust, along: [[4 m, -0.8 m, 0.2 m], [0 m, -0.8 m, 0.2 m]], outer: 24 mm}}"
    assert ask("equipment", "house", "distance_to_hot", engine, ("services", flue)) == pytest.approx(0.188)


def test_an_appliance_right_above_counts_by_the_height_between() -> None:
    # the battery reaches up to z = 0.6 m
    box = "{at: [%s m, -0.9 m, 1.4 m], size: [0.5 m, 0.5 m, 0.3 m]}"
    cooler = f"{{kind: fridge, works by: compressor, place: cabin, box: {box}}}"
    assert ask("equipment", "house", "appliance_above", ("equipment.cooler", cooler % "1.1")) == pytest.approx(0.8)
    assert ask("equipment", "house", "appliance_above", ("equipment.cooler", cooler % "2.1")) is None
    nowhere = ("equipment.cooler", "{kind: fridge, works by: compressor, place: cabin}")
    assert isinstance(ask("equipment", "house", "appliance_above", nowhere), Unknown)
