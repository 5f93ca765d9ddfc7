"""Openings for hydrogen against the published formula."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown, show
from tests.facts.van import ask

FLOODED = ("equipment.house.chemistry", "flooded lead acid")
SIX_CELLS = ("equipment.house.cells", "6")


def test_the_openings_follow_the_published_formula() -> None:
    # EN 50272-2 7.2 (seen): Q = 0.05 n I_gas C / 1000 m3/h; I_gas 20 mA/Ah, vented, IU (EN 50272-3, seen).
    # 0.05 * 6 * 20 * 100 / 1000 = 0.6 m3/h; A = 28 * 0.6 = 16.8 cm2 for each opening.
    assert ask("place", "bay", "gas_flow_needed", FLOODED, SIX_CELLS) * 3600 == pytest.approx(0.6)
    assert ask("place", "bay", "vent_needed", FLOODED, SIX_CELLS) * 1e4 == pytest.approx(16.8)


def test_cells_not_told_are_counted_from_the_voltage() -> None:
    cells = "{kind: battery, chemistry: flooded lead acid, nominal: 24 V, capacity: 100 Ah, place: bay}"
    lead = ("equipment.house", cells)
    assert ask("place", "bay", "gas_flow_needed", lead) * 3600 == pytest.approx(1.2)


def test_a_valve_regulated_battery_needs_half_of_it() -> None:
    # 10 mA/Ah against 20 (EN 50272-3, seen)
    gel = ("equipment.house.chemistry", "gel lead acid")
    assert ask("place", "bay", "gas_flow_needed", gel, SIX_CELLS) * 3600 == pytest.approx(0.3)


def test_lithium_gives_off_no_hydrogen_in_use() -> None:
    assert ask("place", "bay", "vent_needed") == 0.0


def test_an_unknown_capacity_leaves_the_openings_unknown() -> None:
    found = ask("place", "bay", "vent_needed", FLOODED, ("equipment.house.capacity", "unknown"))
    assert isinstance(found, Unknown)
    assert show(found, "cm2").startswith("unknown")


def test_the_close_range_follows_the_published_formula() -> None:
    # d = 28.8 mm * cbrt(I_gas C): 20 mA/Ah * 100 Ah = 2000 mA; cbrt(2000) = 12.599; 362.9 mm.
    assert ask("equipment", "house", "close_range", FLOODED) == pytest.approx(0.36285, abs=1e-5)


def test_a_fan_that_nobody_watches_does_not_stop_the_charger() -> None:
    fan = "{kind: fan, power: 5 W, voltage: 10..15 V, place: bay, flow sensed: true, stops charging of: FS}"
    told = ("places.bay.vents.fan", "blower")
    assert ask("place", "bay", "fan_guarded", ("equipment.blower", fan), told) is True
    deaf = fan.replace("flow sensed: true", "flow sensed: false")
    assert ask("place", "bay", "fan_guarded", ("equipment.blower", deaf), told) is False


ONE = "{kind: charger, dc: {nominal: 12 V, current: 10 A}, charge stop: {by: none}, enabled by: none, place: cabin}"
WIRED = "{from: %s.dc, to: plus, run: [1 m via cabin], cable: pair-4, duty: charge}"
FAN = "{kind: fan, power: 5 W, voltage: 10..15 V, place: bay, flow sensed: true, stops charging of: %s}"


def guarded(stops: str, *more: tuple[str, str]) -> object:
    two = [("equipment.one", ONE), ("circuits.one", WIRED % "one"), ("equipment.two", ONE)]
    two += [("circuits.two", WIRED % "two")]
    lead = ("equipment.house.chemistry", "gel lead acid")
    return ask("place", "bay", "fan_guarded", lead, *two, ("equipment.blower", FAN % stops),
               ("places.bay.vents.fan", "blower"), *more)  # fmt: skip


def test_every_charger_of_the_battery_has_to_stop_not_only_one() -> None:
    assert guarded("[one, two]") is True
    assert guarded("one") is False


def test_a_charger_that_a_signal_of_flowing_air_stops_or_enables_needs_no_other_word() -> None:
    air = ("equipment.air", "{kind: signal, means: air flowing, fails: released}")
    for key in ("equipment.two.charge stop.by", "equipment.two.enabled by"):
        assert guarded("one", air, (key, "air")) is True


def test_a_charger_of_which_the_file_does_not_say_what_stops_it_leaves_a_question() -> None:
    assert isinstance(guarded("one", ("equipment.two.charge stop.by", "unknown")), Unknown)


def test_what_is_no_lead_acid_battery_has_no_range_in_which_nothing_may_spark() -> None:
    assert ask("equipment", "FL", "close_range") is None
    assert ask("equipment", "house", "close_range") is None


def test_a_fan_that_stands_in_a_closed_box_drives_its_air_unless_that_is_denied() -> None:
    inside = ("equipment.blower", FAN % "none")
    assert ask("place", "bay", "fan", inside) is True
    assert ask("place", "bay", "fan", inside, ("places.bay.vents.fan", "none")) is False
    assert ask("place", "cabin", "fan", ("equipment.blower", (FAN % "none").replace("bay", "cabin"))) is False
    perhaps = ask("place", "bay", "fan", inside, ("places.bay.kind", "unknown"))
    assert isinstance(perhaps, Unknown)
    assert ask("place", "bay", "fan") is False
