"""The charts of a day say in words what they show."""

from __future__ import annotations

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.day import DayInputs, DayRun
from checker.physics.day import Step
from checker.reports.day_chart import charge_chart, power_chart

INPUTS = DayInputs(3.6e6, 1e3, 1.0, 0.2, (), (), (), ())


def steps(lowest: float) -> tuple[Step, ...]:
    return tuple(
        Step(hour * 3600.0, lowest if hour == 6 else 0.8, 100.0, (200.0 if 8 <= hour < 16 else 0.0, 0.0, 0.0), 0, 0, 0)
        for hour in range(24)
    )


def test_the_description_names_the_lowest_point_and_the_end() -> None:
    run = DayRun(INPUTS, steps(0.4), steps(0.4))
    assert "lowest at 07:00 with 40%" in charge_chart(run).svg
    assert "end of the day 80% full" in charge_chart(run).svg


def test_a_range_is_drawn_as_two_lines() -> None:
    run = DayRun(INPUTS, steps(0.4), steps(0.6))
    assert ">at worst<" in charge_chart(run).svg
    assert ">at best<" in charge_chart(run).svg


def test_only_sources_that_give_are_drawn_and_their_energy_is_told() -> None:
    svg = power_chart(DayRun(INPUTS, steps(0.4), steps(0.4))).svg
    assert ">sun<" in svg
    assert ">shore<" not in svg
    assert "2400 Wh are used; brought in: sun 1600 Wh." in svg
