"""Heat of the solved currents in places, against volts times amperes of what stands in them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from checker.facts.operating_point import operating_point
from checker.facts.solved_heat import by_name, heat_of_parts, parts
from checker.facts.subject import Facts, trace
from checker.quantities import Range, Unknown
from checker.reading import read_text
from tests.facts.van import van

COACH = (Path(__file__).parents[2] / "examples" / "estuary-coach.fitout.yaml").read_text("utf-8")
RUN = ("circuits.lights.run", "[FL, 2 m via duct, 1 m via drag]")


@cache
def coach(mode: str):  # type: ignore[no-untyped-def]
    facts = Facts(read_text(COACH, "coach.fitout.yaml", ()))
    subject = facts.subject("mode", mode)
    assert subject is not None
    return operating_point(subject, subject.item)


def parked(*edits: tuple[str, str]):  # type: ignore[no-untyped-def]
    subject = van(*edits).subject("mode", "parked")
    assert subject is not None
    return operating_point(subject, subject.item)


def test_the_heat_of_a_cable_is_the_voltage_it_loses_times_its_current() -> None:
    point = parked(("circuits.lights.run", "[FL, 2 m via duct]"))
    lost = [point.likely.flows[name] for ids in ("lights", "lights return") for name in point.plan.wires[ids]]
    heat = sum(by_name(point, parts(point, "duct")).values())
    assert heat == pytest.approx(sum(flow.volts * flow.amps for flow in lost)) and heat > 0.01


def test_a_cable_heats_its_places_by_the_length_that_lies_in_them() -> None:
    point = parked(RUN)
    duct, drag = (sum(by_name(point, parts(point, place)).values()) for place in ("duct", "drag"))
    assert duct == pytest.approx(2.0 * drag) and drag > 0.01


def test_an_inverter_heats_by_what_it_takes_less_what_it_gives() -> None:
    point = coach("driving")
    taken = point.likely.flows["inverter"].watts
    # 18 W of its own, the rest at 92 %: 1090 W of air conditioner and fridge.
    given = (taken - 18.0) * 0.92
    assert given == pytest.approx(1090.0, rel=1e-6)
    assert by_name(point, parts(point, "inverter-locker"))["inverter"] == pytest.approx(taken - given)


def test_a_converter_heats_by_what_goes_in_less_what_comes_out() -> None:
    point = coach("driving")
    flow = point.likely.flows["converter"]
    heat = by_name(point, parts(point, "seat-base"))["converter"]
    assert heat == pytest.approx(flow.volts * flow.amps - flow.volts_out * flow.amps_out)
    assert heat == pytest.approx(0.04 * flow.volts * flow.amps, rel=0.1)  # 96 %, and 6 W of its own


def test_a_battery_heats_by_its_resistance() -> None:
    point = coach("driving")
    amps = [point.likely.flows[name].amps for name in point.plan.units["house-bank"]]
    heat = by_name(point, parts(point, "bank-bay"))["house-bank"]
    assert heat == pytest.approx(sum(one**2 * 9e-3 for one in amps)) and len(amps) == 3


def test_nothing_is_heated_twice_or_lost() -> None:
    """Cables and contacts of all places together, and what the file puts in no place, are all their losses."""
    point = coach("driving")
    placed = 0.0
    for place in point.plan.facts.design.places:
        cables = {*point.plan.wires, *point.plan.links}
        placed += sum(watts for name, watts in by_name(point, parts(point, place)).items() if name in cables)
    names = [name for group in (*point.plan.wires.values(), *point.plan.links.values()) for name in group]
    every = sum(abs(point.likely.flows[name].watts or 0.0) for name in names if name in point.likely.flows)
    assert 0.8 * every < placed <= every  # stretches and returns without a place are left


def test_the_worst_mode_counts_and_the_working_names_them_all() -> None:
    facts = coach("driving").plan.facts
    seat = facts.subject("place", "seat-base")
    assert seat is not None
    found = seat.heat_solved
    assert isinstance(found, Range) and found.low < 150.0 < found.high
    notes = trace(seat, "heat_solved").notes
    assert {note.split(":")[0] for note in notes} == set(facts.design.modes)
    assert seat.temperature_solved.high > 58.0  # warmer than the file states


def test_without_an_operating_point_there_is_no_heat() -> None:
    point = parked(("equipment.house.internal resistance", "unknown"), ("equipment.house.chemistry", "unknown"))
    assert isinstance(heat_of_parts(point, parts(point, "duct")), Unknown | Range)
    assert point.likely is None or not isinstance(heat_of_parts(point, parts(point, "duct")), float)
