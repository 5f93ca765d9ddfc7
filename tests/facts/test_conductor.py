"""Facts of conductors against published values and hand calculation."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, Subject, trace
from checker.quantities import Range, Unknown
from tests.circuit.designs import battery, design, fuse, lamp

FEED = "  feed: {from: bank, to: light, run: [1 m via cabin, F1, 9 m via cabin], cable: CABLE, return: same}"


def feed(cable: str = "red", more: str = "", watts: float = 24) -> Subject:
    equipment = "\n".join([battery("bank"), fuse("F1", 50), lamp("light", watts)])
    facts = Facts(design(equipment, FEED.replace("CABLE", cable), more))
    found = facts.subject("conductor", "feed")
    assert found is not None
    return found


def test_cold_resistance_is_that_of_the_published_table() -> None:
    # IEC 60228:2004 table 3, class 5, 35 mm2 plain: 0.554 ohm/km at 20 °C (seen); 10 m.
    assert feed().cold_resistance == pytest.approx(5.54e-3, rel=1e-6)


def test_hot_resistance_grows_by_the_published_coefficient() -> None:
    # 0.00393 per K at 20 °C (seen): 105 °C is 85 K above.
    assert feed().resistance == pytest.approx(5.54e-3 * (1 + 0.00393 * 85), rel=1e-4)


def test_capacity_is_never_above_the_published_cell() -> None:
    # 33 CFR 183.425 Table 5 (seen): 2 AWG, 105 °C: 210 A; at 30 °C air and alone no factor applies.
    found = feed("{size: 2 AWG, cores: 1, insulation: 105 °C}")
    assert found.carrying_capacity <= 210.0
    assert found.table_capacity == pytest.approx(210.0)


def test_two_cables_a_diameter_apart_carry_twice_as_much_and_side_by_side_less() -> None:
    one = feed()
    text = FEED.replace("CABLE", "red").replace("return: same", "return: same, in parallel: 2")
    equipment = "\n".join([battery("bank"), fuse("F1", 50), lamp("light")])

    def two(looms: str) -> Subject:
        found = Facts(design(equipment, text, looms)).subject("conductor", "feed")
        assert found is not None
        return found

    assert two("looms: {apart: {carries: [feed], bunched: 1}}").carrying_capacity == pytest.approx(
        2 * one.carrying_capacity
    )
    # 33 CFR 183.425 Table 5 note 2 (seen): four conductors together, 0.6.
    assert two("").table_capacity == pytest.approx(0.6 * one.table_capacity)
    assert two("").carrying_capacity < 2 * one.carrying_capacity


def test_a_trade_size_is_turned_into_metal_area() -> None:
    # Australian trade size 6 mm: about 4.6 mm2 of copper, three public pages (seen).
    area = feed("{size: 6 mm auto, cores: 1}").area
    assert (area.low if isinstance(area, Range) else area) == pytest.approx(4.59e-6, rel=0.02)


def test_hot_air_lowers_the_capacity_and_air_at_the_limit_leaves_none() -> None:
    warm = feed(more="\n").carrying_capacity
    hot_places = "places: {cabin: {kind: engine space, temperature: 20..70 °C}}"
    equipment = "\n".join([battery("bank"), fuse("F1", 50), lamp("light")])

    def at(places: str) -> Subject:
        from checker.reading import read_text
        from tests.circuit.designs import HEAD

        head = HEAD.replace("places: {cabin: {kind: living space, thermal insulation: none}}", places)
        text = f"{head}\nequipment:\n{equipment}\ncircuits:\n{FEED.replace('CABLE', 'red')}\n"
        found = Facts(read_text(text)).subject("conductor", "feed")
        assert found is not None
        return found

    assert at(hot_places).carrying_capacity < warm
    assert at(hot_places.replace("70 °C", "105 °C")).carrying_capacity == 0.0


def test_an_unknown_size_leaves_capacity_and_resistance_unknown() -> None:
    found = feed("{size: unknown, cores: 1}")
    assert isinstance(found.carrying_capacity, Unknown)
    assert isinstance(found.cold_resistance, Unknown)


def test_a_range_of_sizes_gives_a_range_of_capacities_that_holds_both_ends() -> None:
    found = feed("{size: 16..35 mm2, cores: 1, insulation: 105 °C}").carrying_capacity
    thin = feed("{size: 16 mm2, cores: 1, insulation: 105 °C}").carrying_capacity
    thick = feed("{size: 35 mm2, cores: 1, insulation: 105 °C}").carrying_capacity
    assert isinstance(found, Range)
    assert (found.low, found.high) == (thin, thick)


def test_a_size_beyond_the_table_is_unknown_and_not_extrapolated() -> None:
    assert isinstance(feed("{size: 400 mm2, cores: 1, insulation: 105 °C}").carrying_capacity, Unknown)


def test_the_design_current_of_a_lamp_is_its_power_over_the_nominal_voltage() -> None:
    assert feed(watts=60).design_current == pytest.approx(5.0)


def test_the_working_names_the_entries_of_the_file() -> None:
    step = trace(feed(), "carrying_capacity")
    paths = [given.path for given in step.leaves()]
    assert "cables.red.size" in paths
    assert "vehicle.ambient.high" in paths
    assert any("Table 5" in note for note in step.notes)
    assert step.value == feed().carrying_capacity


def test_what_was_not_written_is_marked_as_assumed() -> None:
    step = trace(feed("{size: 35 mm2, cores: 1}"), "carrying_capacity")
    assumed = {given.path.split(".")[-1] for given in step.leaves() if given.basis == "default"}
    assert "insulation" in assumed


def test_insulation_that_nobody_told_leaves_the_capacity_between_surrounded_and_open() -> None:
    from checker.reading import read_text
    from tests.circuit.designs import HEAD

    def at(places: str, run: str = "cabin") -> Subject:
        head = HEAD.replace("{cabin: {kind: living space, thermal insulation: none}}", places)
        equipment = "\n".join([battery("bank"), fuse("F1", 50), lamp("light")])
        feed_text = FEED.replace("CABLE", "red").replace("via cabin", f"via {run}")
        text = f"{head}\nequipment:\n{equipment}\ncircuits:\n{feed_text}\n"
        found = Facts(read_text(text)).subject("conductor", "feed")
        assert found is not None
        return found

    open_a = at("{cabin: {thermal insulation: none}}").carrying_capacity
    surrounded_a = at("{cabin: {thermal insulation: both sides}}").carrying_capacity
    for untold in ("{cabin: {}}", "{cabin: {thermal insulation: unknown}}"):
        found = at(untold).carrying_capacity
        assert isinstance(found, Range)
        assert (found.low, found.high) == (surrounded_a, open_a)
    # A place within another shares its word, a cavity does not; nothing is asked of the open air.
    room = "{cabin: {thermal insulation: none}, box: {kind: KIND, inside: cabin}}"
    assert at(room.replace("KIND", "locker"), "box").in_thermal_insulation is None
    assert isinstance(at(room.replace("KIND", "cavity"), "box").in_thermal_insulation, Unknown)
    assert at("{cabin: {kind: under body}}").in_thermal_insulation is None


def test_a_stretch_without_a_place_may_lie_in_a_hotter_one() -> None:
    equipment = "\n".join([battery("bank"), fuse("F1", 50), lamp("light")])
    text = FEED.replace("CABLE", "red").replace("9 m via cabin", "9 m")
    found = Facts(design(equipment, text)).subject("conductor", "feed")
    assert found is not None
    assert isinstance(found.ambient, Range)
    assert found.ambient.low == feed().ambient
    assert isinstance(found.in_thermal_insulation, Unknown)
    loom = Facts(design(equipment, text, "looms: {one: {carries: [feed], place: cabin}}")).subject("conductor", "feed")
    assert loom is not None
    assert loom.ambient == feed().ambient
