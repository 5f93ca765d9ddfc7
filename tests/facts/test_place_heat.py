"""How warm a place gets: by hand, and with everything that may not be told."""

from __future__ import annotations

from math import inf

import pytest

from checker.physics.panels import box_surface
from checker.physics.ventilation import steady_rise
from checker.quantities import Range, Unknown
from tests.facts.van import ask

WARM = (
    "equipment.plus",
    "{kind: bar, poles: [+, -], rating: 150 A, studs: 5, voltage: 48 V DC, heat: 60 W, place: bay}",
)
WALLS = ("places.bay.wall conductance", "6 W/K")
BLOWN = ("places.bay.vents", "{low: none, high: none, fan: blower}")
CLOSED = ("places.bay.vents", "none")
# The bay: 0.6 × 0.5 × 0.4 m in a cabin of at most 40 °C; openings of 30 cm2 each, 0.3 m apart, to the outside.


def test_a_place_without_heat_is_as_warm_as_the_air_around_it() -> None:
    assert ask("place", "bay", "air_temperature") == 40.0


def test_a_closed_box_is_warmer_by_its_heat_over_the_conductance_of_its_walls() -> None:
    assert ask("place", "bay", "computed_temperature", WARM, WALLS, CLOSED) == pytest.approx(40 + 60 / 6)


def test_openings_carry_part_of_the_heat_away_by_the_stack_effect() -> None:
    found = ask("place", "bay", "computed_temperature", WARM, WALLS)
    assert found == pytest.approx(40 + steady_rise(60.0, 6.0, 30e-4, 30e-4, 0.3, 0.0, 40.0), abs=1e-6)
    assert found < 50.0


def test_one_opening_alone_makes_no_draught() -> None:
    one = ("places.bay.vents.high", "none")
    assert ask("place", "bay", "computed_temperature", WARM, WALLS, one) == pytest.approx(50.0)


def test_a_height_that_is_not_told_is_anything_within_the_box() -> None:
    vents = ("places.bay.vents", "{low: 30 cm2, high: 30 cm2, to: outside}")
    found = ask("place", "bay", "computed_temperature", WARM, WALLS, vents)
    assert isinstance(found, Range) and found.high == pytest.approx(50.0) and found.low < 50.0


def test_a_fan_takes_the_heat_with_its_air() -> None:
    fan = ("equipment.blower", "{kind: fan, power: 3 W, flow: 36 m3/h, place: bay}")
    found = ask("place", "bay", "computed_temperature", WARM, WALLS, BLOWN, fan)
    # 0.01 m3/s of air of 40 °C, 353 / 313.15 kg/m3: 11.34 W/K beside the walls' 6 W/K.
    assert found == pytest.approx(40 + 60 / (6 + 353.0 / 313.15 * 1006 * 0.01), rel=1e-6)


def test_a_fan_of_unknown_flow_leaves_the_temperature_open() -> None:
    fan = ("equipment.blower", "{kind: fan, power: 3 W, place: bay}")
    found = ask("place", "bay", "computed_temperature", WARM, WALLS, BLOWN, fan)
    assert found == Range(40.0, 50.0)


def test_walls_that_are_not_told_lie_between_thin_sheet_and_foam() -> None:
    found = ask("place", "bay", "wall_conductance")
    surface = box_surface(0.6, 0.5, 0.4)
    assert isinstance(found, Range)
    assert found.low == pytest.approx(surface / (0.26 + 0.03 / 0.022))
    assert found.high == pytest.approx(surface / 0.26)


def test_walls_that_are_told_follow_from_thickness_and_material() -> None:
    walls = (("places.bay.wall thickness", "10 mm"), ("places.bay.material", "steel"))
    assert ask("place", "bay", "wall_conductance", *walls) == pytest.approx(1.48 / (0.26 + 0.01 / 50), rel=1e-6)


def test_without_box_or_walls_a_warm_locker_is_at_least_as_hot_as_the_air_around_it() -> None:
    locker = ("places.bay", "{kind: battery locker, inside: cabin}")
    assert ask("place", "bay", "computed_temperature", WARM, locker) == Range(40.0, inf)


def test_heat_that_nothing_carries_away_gives_a_temperature_without_end() -> None:
    found = ask("place", "bay", "computed_temperature", WARM, CLOSED, ("places.bay.wall conductance", "0.1 W/K"))
    assert found == Range(150.0, inf)


def test_a_room_is_aired_and_the_engine_space_is_asked_for() -> None:
    assert ask("place", "cabin", "air_temperature", ("equipment.plus.heat", "500 W")) == 40.0
    assert isinstance(ask("place", "tank", "air_temperature", ("places.tank.kind", "engine space")), Unknown)


def test_what_lies_on_the_roof_lies_in_the_sun() -> None:
    assert ask("place", "tank", "air_temperature", ("places.tank", "{kind: outside}")) == pytest.approx(76.0)


def test_a_stated_temperature_stands_until_the_heat_in_the_place_makes_more_for_certain() -> None:
    high, measured = ("places.bay.temperature", "0..51 °C"), "{is: 0..45 °C, basis: measured}"
    assert ask("place", "bay", "air_temperature", WARM, WALLS, CLOSED, high) == 51.0
    assert ask("place", "bay", "air_temperature", WARM, WALLS, CLOSED, ("places.bay.temperature", measured)) == 45.0
    stated = ("places.bay.temperature", "0..45 °C")
    assert ask("place", "bay", "air_temperature", WARM, WALLS, CLOSED, stated) == pytest.approx(50.0)
    # Walls of 5 to 7 W/K: 48.6 °C to 52 °C, so 49 °C may still be right.
    perhaps = (WARM, CLOSED, ("places.bay.wall conductance", "5..7 W/K"), ("places.bay.temperature", "0..49 °C"))
    assert ask("place", "bay", "air_temperature", *perhaps) == 49.0


def test_the_computed_temperature_can_be_compared_with_the_stated_one() -> None:
    stated = ("places.bay.temperature", "0..45 °C")
    assert ask("place", "bay", "computed_temperature", WARM, WALLS, CLOSED, stated) == pytest.approx(50.0)
    assert ask("place", "bay", "temperature_stated", stated) is True
    assert (
        ask("place", "bay", "temperature_stated", ("places.bay.temperature", "{is: 0..45 °C, basis: measured}"))
        is False
    )


def test_places_that_air_each_other_in_a_circle_are_at_least_as_warm_as_the_day() -> None:
    circle = (("places.bay.vents.to", "gas"), ("places.gas.vents.to", "bay"))
    found = ask("place", "bay", "air_temperature", *circle)
    assert isinstance(found, Range) and found.low == 40.0


def test_an_inverter_loses_by_what_is_asked_of_it() -> None:
    inverter = (
        "equipment.inverter",
        "{kind: inverter, power: 1 kW, no load: 10 W, heat at full: 110 W, efficiency: 90 %, place: bay, "
        "dc: {nominal: 12 V}, ac: {voltage: 230 V}}",
    )
    heat = ask("place", "bay", "heat_in_use", inverter, ("modes.parked.inverter", "inverting"))
    assert heat == pytest.approx(10.0)  # nothing hangs on it
    assert ask("place", "bay", "heat_in_use", inverter) == pytest.approx(10.0)  # resting: its idle draw


def test_what_is_perhaps_at_work_gives_its_heat_or_none() -> None:
    solar = (
        "equipment.sun",
        "{kind: solar controller, output: {nominal: 12 V, current: 20 A}, efficiency: 80 %, place: bay}",
    )
    for shining, heat in (("800 W/m2", 60.0), ("0 W/m2", 0.0), ("unknown", Range(0.0, 60.0))):
        mode = ("modes", f"{{parked: {{engine: stopped, sun: {shining}}}}}")
        assert ask("place", "bay", "heat_in_use", solar, mode) == heat, shining
